import type { QuantityKind } from "@wingseed/engine";

/** One comparison with published data, as the validation runs write it. */
export interface ValidationRow {
  readonly check: string;
  /** Key of the source. */
  readonly source: string;
  readonly quantity: string;
  readonly rows: number;
  /** How many of the rows decide about passing. */
  readonly gatedRows: number;
  readonly bias: number | string;
  readonly rms: number | string;
  readonly largest: number | string;
  readonly tolerance: number | string;
  readonly passed: boolean;
  readonly note?: string;
  /** Short name of the source. */
  readonly title?: string;
  /** Analysis that was asked. */
  readonly component?: string;
  /** Only what was measured says how true the model is. */
  readonly reference?: "measured" | "computed" | "formula";
  /** Why the tolerance is what it is. */
  readonly reason?: string;
  /** Output field that the comparison is about. */
  readonly field?: string;
  readonly picture?: ValidationPicture;
}

export interface ValidationPicture {
  /** Of the expected and computed values. */
  readonly quantity: QuantityKind;
  readonly along: { readonly name: string; readonly quantity: QuantityKind } | null;
  /** Place along the axis or null, expected, computed, and the bounds of the error where the row is gated. SI. */
  readonly rows: readonly (readonly (number | null)[])[];
}
