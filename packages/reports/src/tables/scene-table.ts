import type { QuantityKind, SceneFigure, ScenePoint, TableColumn, TableFigure } from "@wingseed/engine";
import type { Content } from "./table-content.ts";

type Row = TableFigure["rows"][number];

const length = (label: string): TableColumn => ({ label, quantity: "length", unit: "m" });

/** What a scene shows, one thing a row: forces where they act, or lengths, marks and outlines with where they begin and end. */
export function sceneContent(figure: SceneFigure): Content {
  return figure.arrows ? arrowContent(figure.arrows) : placeContent(figure);
}

function arrowContent(arrows: NonNullable<SceneFigure["arrows"]>): Content {
  const along = (what: string, quantity: QuantityKind) =>
    ["forward", "right", "down"].map((way): TableColumn => ({ label: `${what} ${way}`, quantity }));
  const sum = (name: string, kind: "force" | "moment") =>
    arrows
      .filter((each) => each.name === name && each.kind === kind)
      .reduce<ScenePoint | undefined>(
        (total, { vector: [x, y, z] }) => [x + (total?.[0] ?? 0), y + (total?.[1] ?? 0), z + (total?.[2] ?? 0)],
        undefined,
      );
  const rows = [...new Set(arrows.map((each) => each.name))].map((name): Row => {
    const at = arrows.find((each) => each.name === name)?.at ?? [0, 0, 0];
    return [name, ...(sum(name, "force") ?? [null, null, null]), ...(sum(name, "moment") ?? [null, null, null]), ...at];
  });
  const places = ["x", "y", "z"].map((axis) => length(`acts at ${axis}`));
  return { columns: [{ label: "" }, ...along("force", "force"), ...along("moment", "torque"), ...places], rows };
}

function placeContent(figure: SceneFigure): Content {
  const columns = [{ label: "" }, length("length"), ...["x", "y", "z"].flatMap((axis) => [length(`${axis} from`), length(`${axis} to`)])];
  const dimensions = (figure.dimensions ?? []).map(
    ({ name, from, to }): Row => [name, Math.hypot(...from.map((value, axis) => value - (to[axis] as number))), ...bounds([from, to])],
  );
  const marks = (figure.marks ?? []).map(({ name, at }): Row => [name, null, ...bounds([at])]);
  const limits = (figure.bounds ?? []).map(
    ({ name, axis, value }): Row => [
      name,
      null,
      ...(["x", "y", "z"] as const).flatMap((each) => (each === axis ? [value, value] : [null, null])),
    ],
  );
  const outlines = figure.lines.map(({ name, points }): Row => [name, null, ...bounds(points)]);
  return { columns, rows: [...dimensions, ...marks, ...limits, ...outlines] };
}

function bounds(points: readonly ScenePoint[]): readonly number[] {
  return [0, 1, 2].flatMap((axis) => {
    const values = points.map((point) => point[axis] as number);
    return [Math.min(...values), Math.max(...values)];
  });
}

/** Every point of a scene: what is drawn, in full, for a file. */
export function scenePoints(figure: SceneFigure): Content {
  const points = (kind: string, name: string, all: readonly ScenePoint[]) =>
    all.map((point, index): Row => [kind, name, index + 1, ...point]);
  return {
    columns: [{ label: "kind" }, { label: "name" }, { label: "point" }, ...["x forward", "y right", "z down"].map(length)],
    rows: [
      ...figure.lines.flatMap((line) => points("line", line.name, line.points)),
      ...(figure.marks ?? []).flatMap((mark) => points("mark", mark.name, [mark.at])),
      ...(figure.dimensions ?? []).flatMap((each) => points("length", each.name, [each.from, each.to])),
    ],
  };
}
