import type { Figure, Meaning, ScenePoint, Series } from "@wingseed/engine";

/** One line of numbers in a figure, whatever its kind. What is drawn comes from here, on every face. */
export interface FigureSeries {
  /** Panel of a profile, counted from 0. */
  readonly panel?: number;
  readonly name: string;
  readonly meaning: Meaning | "none";
  readonly x: readonly (number | string)[];
  readonly y: readonly (number | string | boolean | null)[];
  /** Third coordinate in a scene. */
  readonly z?: readonly number[];
}

/** The numbers of a figure as flat series [SI; degrees on maps], for holding screen and dossier to the same values. */
export function figureSeries(figure: Figure): readonly FigureSeries[] {
  switch (figure.kind) {
    case "lines":
      return [
        ...(figure.regions ?? []).map(({ name, meaning, x, y }) => ({ name, meaning, x, y })),
        ...figure.series.map((series) => flat(series)),
        ...(figure.borders ?? []).map(({ name, x, y }) => ({ name, meaning: "limit" as const, x, y })),
      ];
    case "stacked":
      return [
        ...figure.layers.map((layer) => ({ name: layer.name, meaning: layer.meaning, x: figure.at, y: layer.values })),
        ...(figure.overlays ?? []).map((series) => flat(series)),
      ];
    case "profile":
      return figure.panels.flatMap((panel, index) => panel.series.map((series) => ({ panel: index, ...flat(series) })));
    case "table":
      return figure.columns.map((column, index) => ({
        name: column.label,
        meaning: "none",
        x: figure.rows.map((_, row) => row + 1),
        y: figure.rows.map((row) => row[index] ?? null),
      }));
    case "grid":
      return figure.ys.map((y, row) => ({
        name: `${figure.y.label} ${y}`,
        meaning: "none",
        x: figure.xs,
        y: figure.values.slice(row * figure.xs.length, (row + 1) * figure.xs.length),
      }));
    case "map":
      return [
        ...figure.tracks.map((track) => ({ name: track.name, meaning: track.meaning, ...columns(track.points) })),
        ...figure.sites.map((site) => ({ name: site.name, meaning: "site" as const, x: [site.at[0]], y: [site.at[1]] })),
      ];
    case "scene":
      return [
        ...figure.lines.map(({ name, meaning, points }) => ({ name, meaning, ...inSpace(points) })),
        ...(figure.marks ?? []).map(({ name, meaning, at }) => ({ name, meaning, ...inSpace([at]) })),
        ...(figure.arrows ?? []).map(({ name, meaning, at, vector }) => ({ name, meaning, ...inSpace([at, vector]) })),
      ];
    case "tree":
    case "text":
      return [];
  }
}

function flat(series: Series): FigureSeries {
  return { name: series.name, meaning: series.meaning, x: series.x, y: series.y };
}

function inSpace(points: readonly ScenePoint[]): Pick<FigureSeries, "x" | "y"> & { readonly z: readonly number[] } {
  return { x: points.map((point) => point[0]), y: points.map((point) => point[1]), z: points.map((point) => point[2]) };
}

function columns(points: readonly (readonly number[])[]): { readonly x: readonly number[]; readonly y: readonly number[] } {
  return { x: points.map((point) => point[0] as number), y: points.map((point) => point[1] as number) };
}
