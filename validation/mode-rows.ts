import type { CaseRow } from "./cases.ts";

/** What the checks of modes use of the outputs of `stability`. */
export interface StabilityOutputs {
  readonly conditions: readonly { readonly modes: readonly ModeRow[] }[];
  readonly lanchesterPeriod: number | null;
}

export interface ModeRow {
  readonly name: string;
  readonly real: number;
  readonly imaginary: number;
  readonly timeToHalf: number | null;
  readonly timeToDouble: number | null;
  readonly period: number | null;
  readonly damping: number | null;
  readonly naturalFrequency: number;
}

/** Finds the mode that a row of a table names; a mode that has another name here is a failure of the check. */
export function modesOfAnalysis({ conditions }: StabilityOutputs): (row: CaseRow) => ModeRow {
  return ({ place }) => {
    const found = conditions[0]?.modes.find(({ name }) => name === place);
    if (!found) throw new Error(`no mode is called ${place}`);
    return found;
  };
}
