import type { LinesFigure, TableFigure } from "@wingseed/engine";
import { type Content, column } from "./table-content.ts";

/** Every point of paths over a plane, with what it belongs to. */
export function planeContent(figure: LinesFigure): Content {
  const paths = [...figure.series, ...(figure.borders ?? []), ...(figure.regions ?? [])];
  const rows = paths.flatMap(({ name, x, y }) =>
    x.flatMap((at, index): TableFigure["rows"] => {
      const value = y[index];
      return value === null || value === undefined ? [] : [[name, at, value]];
    }),
  );
  const named = (figure.notable ?? []).map(({ name, x, y }) => [name, x, y]);
  return { columns: [{ label: "" }, column(figure.x), column(figure.y)], rows: [...named, ...rows] };
}
