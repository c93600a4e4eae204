import { type FullOutcome, type FullTrimmed, fullObjective } from "../equilibrium/index.ts";
import type { PoweredMode } from "./cheapest-flight.ts";
import { type EnvelopeTrimmer, levelAt } from "./envelope-trimmer.ts";

/** Speeds beyond a border at which a flight is looked for again: every so many, and the last. */
const sentinelStep = 12;
/** Air must come up through a free rotor or past it: slower than this none is looked for [m/s]. */
const slowestFreeFlight = 2;
/** Another optimum is taken when it is cheaper by this much [1]. */
const cheaper = 1e-4;
/** A point this much dearer than the mean of its neighbours is tried again [1]. */
const bulge = 0.002;

/** Where a line is entered, as shares of its length: the first that flies. */
const entries: Readonly<Record<PoweredMode, readonly number[]>> = {
  "clutch-closed": [0, 0.5, 0.75, 0.25, 1],
  "clutch-open": [0.5, 0.75, 0.25, 1, 0],
};

/**
 * Level trims over speeds. From a speed that flies the line is followed both ways, each speed from its neighbour, from every way of flying
 * where that fails. Where it ends the last speed that flies is searched again for a cheaper way, followed back as far as it is. Beyond a border every twelfth speed and the last are searched; those between carry the border's own refusal.
 *
 * @param speeds ascending [m/s]
 * @derivation not a formula
 */
export function followedLine(trimmer: EnvelopeTrimmer, mode: PoweredMode, speeds: readonly number[]): readonly FullOutcome[] {
  const line = new FollowedLine(trimmer, mode, speeds);
  const entered = line.enter();
  if (entered !== undefined) {
    line.walk(entered, 1);
    line.walk(entered, -1);
    line.repair();
  }
  return line.outcomes();
}

class FollowedLine {
  readonly #trimmer: EnvelopeTrimmer;
  readonly #mode: PoweredMode;
  readonly #speeds: readonly number[];
  readonly #found: (FullOutcome | undefined)[];

  constructor(trimmer: EnvelopeTrimmer, mode: PoweredMode, speeds: readonly number[]) {
    this.#trimmer = trimmer;
    this.#mode = mode;
    this.#speeds = speeds;
    this.#found = new Array(speeds.length).fill(undefined);
  }

  /** Number of the first entry that flies. */
  enter(): number | undefined {
    for (const share of entries[this.#mode]) {
      const i = Math.round(share * (this.#speeds.length - 1));
      if (this.#found[i] === undefined && this.#cold(i).kind === "trimmed") return i;
    }
    return undefined;
  }

  /** Follows the line from a speed that flies to its end, across stretches that do not. */
  walk(from: number, step: 1 | -1): void {
    let i = from + step;
    while (this.#exists(i)) {
      if (this.#beside(i, this.#found[i - step] as FullTrimmed) || this.#onAnotherWay(i, step)) i += step;
      else {
        const next = this.#sentinel(i, step);
        if (next === undefined) return;
        this.#fill(next, step);
        i = next + step;
      }
    }
    if (step > 0) this.#lookBack(i - step, step);
  }

  /** From a neighbour, or from every way of flying; false where neither flies. */
  #beside(i: number, neighbour: FullTrimmed): boolean {
    if (this.#found[i]?.kind === "trimmed") return true;
    const warm = this.#trimmer.warm(this.#point(i), neighbour.start);
    if (warm.kind !== "trimmed") return this.#found[i] === undefined && this.#cold(i).kind === "trimmed";
    this.#found[i] = warm;
    return true;
  }

  /** At a border: whether another way of flying, cheaper before it, leads across. */
  #onAnotherWay(i: number, step: 1 | -1): boolean {
    const refusal = this.#found[i];
    if (!this.#lookBack(i - step, step)) return false;
    const other = this.#trimmer.warm(this.#point(i), (this.#found[i - step] as FullTrimmed).start);
    this.#found[i] = other.kind === "trimmed" ? other : refusal;
    return other.kind === "trimmed";
  }

  /** The next speed beyond a border that flies all the same. */
  #sentinel(border: number, step: 1 | -1): number | undefined {
    for (let i = border + step; this.#exists(i); i += step) {
      const isLast = !this.#exists(i + step);
      if (!isLast && (i - border) % sentinelStep !== 0) continue;
      if (this.#found[i] === undefined && this.#cold(i).kind === "trimmed") return i;
    }
    return undefined;
  }

  /** From a flight beyond a stretch without any, back to where the stretch begins. */
  #fill(from: number, step: 1 | -1): void {
    for (let i = from - step; this.#exists(i) && this.#found[i] === undefined; i -= step) {
      const near = this.#found[i + step] as FullTrimmed;
      if (!this.#beside(i, near)) return;
    }
  }

  /** At the end of a stretch that flies: whether another way of flying is cheaper there, followed back as far as it is. */
  #lookBack(end: number, step: 1 | -1): boolean {
    let other = this.#trimmer.cold(this.#point(end));
    let isCheaper = false;
    for (let i = end; other.kind === "trimmed"; i -= step) {
      const here = this.#found[i];
      if (here?.kind !== "trimmed" || fullObjective(other) > fullObjective(here) * (1 - cheaper)) break;
      this.#found[i] = other;
      isCheaper = true;
      if (!this.#exists(i - step)) break;
      other = this.#trimmer.warm(this.#point(i - step), other.start);
    }
    return isCheaper;
  }

  /** Tries a point again from both neighbours where they show that something better exists. */
  repair(): void {
    this.#found.forEach((here, i) => {
      const below = this.#found[i - 1];
      const above = this.#found[i + 1];
      if (below?.kind !== "trimmed" || above?.kind !== "trimmed") return;
      const mean = (fullObjective(below) + fullObjective(above)) / 2;
      if (here?.kind === "trimmed" && fullObjective(here) <= mean * (1 + bulge)) return;
      for (const near of [below, above]) {
        const again = this.#trimmer.warm(this.#point(i), near.start);
        const kept = this.#found[i];
        if (again.kind === "trimmed" && (kept?.kind !== "trimmed" || fullObjective(again) < fullObjective(kept))) this.#found[i] = again;
      }
    });
  }

  /** Every speed with its own answer, or with that of the nearest speed that has one. */
  outcomes(): readonly FullOutcome[] {
    return this.#speeds.map((_, i) => this.#found[i] ?? { ...this.#nearestRefusal(i), point: this.#point(i) });
  }

  #nearestRefusal(i: number): FullOutcome {
    for (let away = 1; away < this.#speeds.length; away++)
      for (const near of [this.#found[i - away], this.#found[i + away]]) if (near !== undefined && near.kind !== "trimmed") return near;
    throw new Error("a speed was left out between two that fly");
  }

  #point(i: number) {
    return levelAt(this.#mode, this.#speeds[i] as number);
  }

  #exists(i: number): boolean {
    return i >= 0 && i < this.#speeds.length;
  }

  #cold(i: number): FullOutcome {
    const point = this.#point(i);
    const isIdle = this.#mode === "clutch-open" && point.airspeed < slowestFreeFlight;
    const outcome = isIdle ? idle(point) : this.#trimmer.cold(point);
    this.#found[i] = outcome;
    return outcome;
  }
}

function idle(point: FullOutcome["point"]): FullOutcome {
  return {
    kind: "no-equilibrium",
    point,
    limit: "a free rotor cannot hover",
    family: "air",
    violation: Number.POSITIVE_INFINITY,
    start: { x: new Float64Array() },
  };
}
