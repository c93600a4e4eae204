import type { QuantityKind } from "../../quantities/index.ts";

/** Most rows that one table may have, in a file or written out. */
export const mostTableRows = 20_000;

/** A table as read from a file: numbers only, SI, columns by name. The data of a `ReadDocument` of kind `table`. */
export interface TableData {
  readonly columns: readonly {
    readonly name: string;
    /** As written in square brackets; null where there are none. */
    readonly unit: string | null;
    /** Kinds of quantity that the unit may measure; a name without unit is a number without dimension. */
    readonly kinds: readonly QuantityKind[];
    /** Zero of the unit in SI, other than 0 for temperatures in degrees; it is contained in the rows. */
    readonly offset: number;
    readonly line: number;
    readonly column: number;
  }[];
  readonly rows: readonly (readonly number[])[];
  /** Line of each row in the file, and the column at which each of its cells begins. */
  readonly places: readonly { readonly line: number; readonly columns: readonly number[] }[];
}
