import type { Axis, Figure, Series } from "@wingseed/engine";
import { formatReading, type ReadingText, type UnitSystem } from "../format/index.ts";

/** What one line says where the reader stands. */
export interface FigureReading {
  readonly name: string;
  readonly meaning: Series["meaning"];
  /** Between two computed points the straight line between them is read; null where the line has a gap. */
  readonly value: number | null;
  readonly text?: ReadingText;
}

/** Every line of a figure read at x [SI]: the row under a picture. Empty for figures without a shared x axis. */
export function figureReadings(figure: Figure, x: number, system: UnitSystem = "si"): readonly FigureReading[] {
  return linesOf(figure).map(({ series, axis }) => {
    const value = valueAt(series, x);
    if (value === null) return { name: series.name, meaning: series.meaning, value };
    return { name: series.name, meaning: series.meaning, value, text: axisReading(value, axis, system) };
  });
}

/** The x of a figure as people read it. */
export function axisReading(value: number, axis: Axis, system: UnitSystem = "si"): ReadingText {
  const unit = axis.unit === undefined ? {} : { unit: axis.unit };
  const datum = axis.datum === undefined ? {} : { datum: axis.datum };
  return formatReading(value, axis.quantity, { ...unit, ...datum, system });
}

function linesOf(figure: Figure): readonly { readonly series: Series; readonly axis: Axis }[] {
  if (figure.kind === "lines" && figure.plane) return [];
  if (figure.kind === "lines") return figure.series.map((series) => ({ series, axis: figure.y }));
  if (figure.kind === "profile") return figure.panels.flatMap((panel) => panel.series.map((series) => ({ series, axis: panel.y })));
  if (figure.kind !== "stacked") return [];
  const layers = figure.layers.map((layer): Series => ({ name: layer.name, meaning: layer.meaning, x: figure.at, y: layer.values }));
  return [...layers, ...(figure.overlays ?? [])].map((series) => ({ series, axis: figure.y }));
}

function valueAt(series: Series, x: number): number | null {
  for (let index = 0; index < series.x.length; index++) {
    const [here, value] = [series.x[index] as number, series.y[index] ?? null];
    if (here === x) return value;
    const [next, following] = [series.x[index + 1], series.y[index + 1] ?? null];
    if (next === undefined || (here - x) * (next - x) > 0) continue;
    if (next === x) return following;
    return value === null || following === null ? null : value + ((x - here) / (next - here)) * (following - value);
  }
  return null;
}
