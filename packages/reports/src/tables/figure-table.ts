import type { Axis, Figure, Series, TableFigure } from "@wingseed/engine";
import { sentence } from "../format/index.ts";
import { planeContent } from "./plane-table.ts";
import { sceneContent } from "./scene-table.ts";
import { type Content, column } from "./table-content.ts";

type Row = TableFigure["rows"][number];

/** The table behind any figure: what the picture shows, as columns of numbers in SI. */
export function figureTable(figure: Figure): TableFigure {
  const { columns, rows } = content(figure);
  return { kind: "table", id: figure.id, caption: figure.caption, columns, rows };
}

function content(figure: Figure): Content {
  switch (figure.kind) {
    case "table":
      return figure;
    case "lines":
      return figure.plane === true
        ? planeContent(figure)
        : overX(
            figure.x,
            figure.series.map((series) => ({ series, axis: figure.y })),
          );
    case "stacked": {
      const layers = figure.layers.map((layer): Series => ({ name: layer.name, meaning: layer.meaning, x: figure.at, y: layer.values }));
      return overX(
        figure.x,
        [...layers, ...(figure.overlays ?? [])].map((series) => ({ series, axis: figure.y })),
      );
    }
    case "profile":
      return overX(
        figure.x,
        figure.panels.flatMap((panel) => panel.series.map((series) => ({ series, axis: panel.y }))),
      );
    case "grid":
      return gridContent(figure);
    case "map":
      return mapContent(figure);
    case "scene":
      return sceneContent(figure);
    case "tree":
      return { columns: [{ label: "level" }, { label: "item" }, { label: "note" }], rows: treeRows(figure.root, 0) };
    case "text":
      return { columns: [{ label: "text" }], rows: figure.paragraphs.map((tokens) => [sentence(tokens)]) };
  }
}

/** Series side by side over all their x values, in order. */
function overX(x: Axis, all: readonly { readonly series: Series; readonly axis: Axis }[]): Content {
  const places = [...new Set(all.flatMap(({ series }) => series.x))].sort((a, b) => a - b);
  const maps = all.map(({ series }) => new Map(series.x.map((at, index) => [at, series.y[index] ?? null])));
  return {
    columns: [column(x), ...all.map(({ series, axis }) => ({ ...column(axis), label: seriesLabel(series, axis, all) }))],
    rows: places.map((at) => [at, ...maps.map((map) => map.get(at) ?? null)]),
  };
}

/** The series' name; with the axis' label where the same name stands for another quantity too. */
function seriesLabel(series: Series, axis: Axis, all: readonly { readonly series: Series; readonly axis: Axis }[]): string {
  const twice = all.some((other) => other.series.name === series.name && other.axis !== axis);
  return twice ? `${series.name}: ${axis.label}` : series.name;
}

function gridContent(figure: Extract<Figure, { kind: "grid" }>): Content {
  const width = figure.xs.length;
  const rows = figure.ys.flatMap((y, row) => figure.xs.map((x, at): Row => [x, y, figure.values[row * width + at] ?? null]));
  return { columns: [column(figure.x), column(figure.y), column(figure.value)], rows };
}

function mapContent(figure: Extract<Figure, { kind: "map" }>): Content {
  const tracks = figure.tracks.flatMap((track) =>
    track.points.map((point, index): Row => [track.name, index + 1, point[0], point[1], null]),
  );
  const sites = figure.sites.map((site): Row => [site.name, null, site.at[0], site.at[1], site.note ?? null]);
  const columns = ["name", "point", "longitude, degrees", "latitude, degrees", "note"].map((label) => ({ label }));
  return { columns, rows: [...sites, ...tracks] };
}

function treeRows(node: Extract<Figure, { kind: "tree" }>["root"], level: number): readonly Row[] {
  return [[level, node.label, node.note ?? null], ...(node.children ?? []).flatMap((child) => treeRows(child, level + 1))];
}
