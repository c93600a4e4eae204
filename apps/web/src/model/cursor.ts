import type { Axis, Figure, TableColumn } from "@wingseed/engine";
import { figureReadings, figureTable } from "@wingseed/reports/draw";
import type { UnitSystem } from "@wingseed/reports/format";

/** A picture that a cursor can read: its shared axis and every computed place on it, ascending [SI]. */
export interface Readable {
  readonly figure: Figure;
  readonly axis: Axis;
  readonly places: readonly number[];
}

/** One line read where the cursor stands; null where the line has no value. */
export interface LineReading {
  readonly column: TableColumn;
  readonly value: number | null;
}

/** Undefined for pictures without an axis that their lines share. */
export function readableFigure(figure: Figure): Readable | undefined {
  if (figure.kind !== "lines" && figure.kind !== "stacked" && figure.kind !== "profile") return undefined;
  if (figure.kind === "lines" && figure.plane) return undefined;
  const places = figureTable(figure).rows.flatMap((row) => (typeof row[0] === "number" ? [row[0]] : []));
  return places.length === 0 ? undefined : { figure, axis: figure.x, places };
}

/** Every line of the picture at x [SI]. Lines in parts of one name (full and thin) are read as one. */
export function lineReadings(figure: Figure, x: number, system: UnitSystem): readonly LineReading[] {
  const columns = figureTable(figure).columns.slice(1);
  const byName = new Map<string, LineReading>();
  figureReadings(figure, x, system).forEach(({ value }, index) => {
    const column = columns[index];
    if (!column) return;
    const key = `${column.label} ${column.quantity}`;
    const before = byName.get(key);
    byName.set(key, { column, value: before?.value ?? value });
  });
  return [...byName.values()];
}

/** The computed place nearest to x. */
export function nearestIndex(places: readonly number[], x: number): number {
  let best = 0;
  for (let index = 1; index < places.length; index++) {
    if (Math.abs((places[index] ?? 0) - x) < Math.abs((places[best] ?? 0) - x)) best = index;
  }
  return best;
}
