import type { QuantityKind } from "@wingseed/engine";

/** How far a computed value is from a published one. */
export interface ComparedRow {
  readonly expected: number;
  readonly computed: number;
  /** Errors outside fail the check; a row without bounds is only reported. In the error's own unit. */
  readonly bounds?: readonly [low: number, high: number];
}

/** Rows of one quantity of one source. */
export interface Comparison {
  readonly quantity: string;
  /** `relative`: computed over expected less 1. Otherwise computed less expected, in this unit. */
  readonly error: ErrorUnit;
  readonly rows: readonly ComparedRow[];
  /** The settled tolerance in words. */
  readonly tolerance: string;
  /** Why the tolerance is what it is; without it the words of tolerance.md stand in the table. */
  readonly reason?: string;
  readonly note?: string;
  /**
   * Why the gate is not met, where it is known not to be: the miss then stands on record and in every table, and the check fails
   * when it is met after all, so that the word cannot outlive the miss.
   */
  readonly missed?: string;
  /** Name of the output field of the analysis that this is about: faces show the errors beside that figure. */
  readonly field?: string;
  /** What expected and computed are; `dimensionless` without it. In SI. */
  readonly quantityKind?: QuantityKind;
  /** What the rows run along, one value per row in SI: the horizontal axis of the picture of this comparison. */
  readonly along?: { readonly name: string; readonly quantity: QuantityKind; readonly values: readonly number[] } | undefined;
}

/** `relative`, or the unit of the difference. */
export type ErrorUnit = "relative" | "rad" | "m" | "1" | "V" | "K" | "s" | "A";

export interface ErrorFigures {
  readonly rows: number;
  /** Mean error with its sign. */
  readonly bias: number;
  readonly rms: number;
  /** Largest error in size. */
  readonly largest: number;
}

/** A row on record. */
export interface RecordedRow extends ComparedRow {
  /** Where along the axis, in SI; absent where the comparison names no axis. */
  readonly along?: number;
}

export interface ComparisonResult {
  readonly quantity: string;
  readonly error: ErrorUnit;
  readonly all: ErrorFigures;
  /** Null when no row of the quantity is gated. */
  readonly gated: ErrorFigures | null;
  readonly tolerance: string;
  /** Null when no row is gated. */
  readonly passed: boolean | null;
  readonly note: string;
  readonly reason?: string;
  readonly field?: string;
  readonly quantityKind: QuantityKind;
  readonly along: { readonly name: string; readonly quantity: QuantityKind } | null;
  readonly rows: readonly RecordedRow[];
}

/** The figures of a comparison with its rows; throws when there is nothing to compare. */
export function compared(comparison: Comparison): ComparisonResult {
  const { quantity, error, rows, tolerance, note = "", missed, reason, field, quantityKind = "dimensionless", along } = comparison;
  if (along && along.values.length !== rows.length)
    throw new Error(`${quantity}: ${along.values.length} values of ${along.name} for ${rows.length} rows`);
  const errors = rows.map((row) => rowError(row, error));
  const gated = rows.flatMap((row, i) => (row.bounds ? [{ error: errors[i] ?? Number.NaN, bounds: row.bounds }] : []));
  return {
    quantity,
    error,
    all: figures(errors, quantity),
    gated:
      gated.length > 0
        ? figures(
            gated.map((row) => row.error),
            quantity,
          )
        : null,
    tolerance,
    passed: gated.length > 0 ? gated.every((row) => row.error >= row.bounds[0] && row.error <= row.bounds[1]) : null,
    note: [note, missed].filter((text) => text).join("; "),
    ...(reason === undefined ? {} : { reason }),
    ...(field === undefined ? {} : { field }),
    quantityKind,
    along: along ? { name: along.name, quantity: along.quantity } : null,
    rows: rows.map(({ expected, computed, bounds }, i) => ({
      ...(along ? { along: along.values[i] ?? Number.NaN } : {}),
      expected,
      computed,
      ...(bounds ? { bounds } : {}),
    })),
  };
}

export function rowError(row: ComparedRow, kind: ErrorUnit): number {
  return kind === "relative" ? row.computed / row.expected - 1 : row.computed - row.expected;
}

function figures(errors: readonly number[], quantity: string): ErrorFigures {
  if (errors.length === 0 || errors.some((error) => !Number.isFinite(error)))
    throw new Error(`${quantity}: nothing, or no number, to compare`);
  const mean = errors.reduce((sum, error) => sum + error, 0) / errors.length;
  const square = errors.reduce((sum, error) => sum + error * error, 0) / errors.length;
  return { rows: errors.length, bias: mean, rms: Math.sqrt(square), largest: Math.max(...errors.map(Math.abs)) };
}
