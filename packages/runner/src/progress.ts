/** How far a run has come, in the words of whoever does the work. */
export interface Progress {
  readonly done: number;
  readonly total: number;
  readonly doing: string;
  /** From the pace so far [s]; null while that says nothing. */
  readonly remainingSeconds: number | null;
}

/** Before this much has passed [ms] a pace is not worth telling. */
const settling = 300;

/**
 * Puts the progress of all cases of a run together: one case tells its own steps, several are counted.
 * Only faces see this; no result depends on the clock.
 */
export function progressOf(cases: number, tell: (progress: Progress) => void, now: () => number = () => performance.now()) {
  const began = now();
  const shares = new Array<number>(cases).fill(0);
  let finished = 0;

  function remaining(): number | null {
    const share = shares.reduce((sum, value) => sum + value, 0) / cases;
    const elapsed = now() - began;
    return share > 0 && elapsed > settling ? (elapsed * (1 - share)) / share / 1000 : null;
  }
  return {
    step(index: number, done: number, total: number, doing: string): void {
      shares[index] = total > 0 ? Math.min(1, done / total) : 0;
      if (cases === 1) tell({ done, total, doing, remainingSeconds: remaining() });
      else tell({ done: finished, total: cases, doing: `cases (${doing})`, remainingSeconds: remaining() });
    },
    finish(index: number): void {
      shares[index] = 1;
      finished++;
      if (cases > 1) tell({ done: finished, total: cases, doing: "cases", remainingSeconds: remaining() });
    },
  };
}
