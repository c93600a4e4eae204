import type { LinesFigure, Series } from "@wingseed/engine";
import { errorText } from "./error-text.ts";
import type { ValidationRow } from "./validation-row.ts";

/**
 * Published values as marks and computed ones as a line over what the rows run along; where they run along nothing, over
 * their number. Undefined when the record keeps no rows, or fewer than two: a point is no picture.
 */
export function comparisonFigure(row: ValidationRow): LinesFigure | undefined {
  const rows = row.picture?.rows ?? [];
  if (!row.picture || rows.length < 2) return undefined;
  const { along, quantity } = row.picture;
  const onRecord = rows.map(([place, expected, computed], index) => ({
    x: along && place !== null ? (place ?? index + 1) : index + 1,
    expected,
    computed,
  }));
  const points = onRecord.toSorted((a, b) => a.x - b.x);
  const x = points.map((point) => point.x);
  const isMeasured = row.reference === "measured" || row.reference === undefined;
  const published: Series = {
    name: isMeasured ? "measured" : "published",
    meaning: isMeasured ? "measured" : "before",
    x,
    y: points.map((point) => point.expected ?? null),
  };
  const values = points.map((point) => point.computed ?? null);
  // Several settings or runs, at one place or one after the other: a line through them would zigzag, so they stay points.
  const branching = !isOneRun(onRecord.map((point) => point.x));
  const computed: Series = {
    name: "computed",
    meaning: "rotor",
    x: branching ? x.flatMap((place) => [place, place]) : x,
    y: branching ? values.flatMap((value) => [value, null]) : values,
  };
  return {
    kind: "lines",
    id: `${row.check}-${row.quantity.replace(/[^a-z0-9]+/giu, "-").toLowerCase()}`,
    caption: `${row.quantity}: ${errorWords(row)}`,
    x: along ? { label: capital(along.name), quantity: along.quantity } : { label: "Row", quantity: "dimensionless" },
    y: { label: capital(row.quantity), quantity },
    series: [computed, published],
  };
}

/** True for places that go one way without standing still. */
function isOneRun(places: readonly number[]): boolean {
  const rises = (places[1] ?? 0) > (places[0] ?? 0);
  return places.every((place, index) => index === 0 || (rises ? place > (places[index - 1] ?? 0) : place < (places[index - 1] ?? 0)));
}

/** "bias −4.2 %, rms 5.8 %, largest 11 % of 25 rows; gate ±12 %: met". */
export function errorWords(row: ValidationRow): string {
  const errors = `bias ${errorText(row.bias)}, rms ${errorText(row.rms)}, largest ${errorText(row.largest)} of ${row.rows} ${row.rows === 1 ? "row" : "rows"}`;
  return row.gatedRows === 0 ? `${errors}; not gated` : `${errors}; gate ${errorText(row.tolerance)}: ${row.passed ? "met" : "not met"}`;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
