import published from "./published-data.json" with { type: "json" };

/** Range of one coordinate over the rows of a check, in SI. */
export interface CoveredRange {
  readonly name: string;
  readonly low: number;
  readonly high: number;
}

/** Error of one compared quantity over all rows of a check. */
export interface PublishedError {
  readonly quantity: string;
  /** Output field that it is about; null where the comparison is about none. */
  readonly field: string | null;
  /** `relative`: computed over published less 1. Otherwise the unit of computed less published. */
  readonly unit: string;
  readonly rows: number;
  readonly gatedRows: number;
  readonly bias: number;
  readonly rms: number;
  readonly largest: number;
  /** Smallest and largest error with their sign. */
  readonly lowest: number;
  readonly highest: number;
  /** Null when no row is gated. */
  readonly passed: boolean | null;
}

/** One published source as the program was held against it. */
export interface PublishedCheck {
  /** Folder under validation/. */
  readonly check: string;
  /** Analysis that was asked. */
  readonly component: string;
  /** Short name of the source. */
  readonly title: string;
  /** Key of docs/sources.bib. */
  readonly source: string;
  /** Only what was measured says how true the model is; the others hold the arithmetic. */
  readonly reference: "measured" | "computed" | "formula";
  readonly domain: readonly CoveredRange[];
  readonly series: readonly {
    readonly label: string;
    /** Output fields of the analysis. */
    readonly x: string;
    readonly y: string;
    /** In SI, by rising x. */
    readonly points: readonly (readonly number[])[];
  }[];
  readonly errors: readonly PublishedError[];
}

/** Every check on record, in the order of the folder names. Made by tools/validation-table.mjs. */
export const publishedChecks = published.checks as readonly PublishedCheck[];

/** The checks of a component: those with measurements, or the others where nothing was measured. */
export function checksOf(component: string, checks: readonly PublishedCheck[] = publishedChecks): readonly PublishedCheck[] {
  const own = checks.filter((check) => check.component === component);
  const measured = own.filter((check) => check.reference === "measured");
  return measured.length > 0 ? measured : own;
}
