import type { Figure } from "@wingseed/engine";
import type { UnitSystem } from "../format/index.ts";
import type { DrawContext } from "./context.ts";
import { drawGrid } from "./grid-figure.ts";
import { drawLines } from "./lines-figure.ts";
import { drawMap } from "./map-figure.ts";
import type { SvgNode } from "./node.ts";
import { drawProfile } from "./profile-figure.ts";
import { drawScene } from "./scene-figure.ts";
import { drawStacked } from "./stacked-figure.ts";
import { drawTable } from "./table-figure.ts";
import { drawText } from "./text-figure.ts";
import { painter, type Theme } from "./theme.ts";
import { drawTree } from "./tree-figure.ts";

export interface DrawOptions {
  /** Width of the picture [px]; text keeps its size, so a narrow picture is laid out anew, not shrunk. */
  readonly width: number;
  /** Height wished for the plotting area [px]. */
  readonly plotHeight?: number;
  /** @defaultValue "css-variables" */
  readonly theme?: Theme;
  /** @defaultValue "si" */
  readonly system?: UnitSystem;
  /** Where the reader stands along x [SI]. */
  readonly cursor?: number;
  /** Coarse results are drawn thin. @defaultValue "exact" */
  readonly grade?: "coarse" | "exact";
  /** True for the picture of an earlier state: everything goes grey. @defaultValue false */
  readonly stale?: boolean;
}

/** Narrowest picture that is laid out [px]; below it, words would stand on each other. */
const narrowest = 240;

/** Draws any figure. The same figure with the same options gives the same picture, in a page and in a file. */
export function drawFigure(figure: Figure, options: DrawOptions): SvgNode {
  return draw(figure, {
    width: Math.max(narrowest, options.width),
    paint: painter(options.theme ?? "css-variables"),
    system: options.system ?? "si",
    coarse: options.grade === "coarse",
    stale: options.stale ?? false,
    ...(options.plotHeight === undefined ? {} : { plotHeight: options.plotHeight }),
    ...(options.cursor === undefined ? {} : { cursor: options.cursor }),
  });
}

function draw(figure: Figure, context: DrawContext): SvgNode {
  switch (figure.kind) {
    case "lines":
      return drawLines(figure, context);
    case "stacked":
      return drawStacked(figure, context);
    case "table":
      return drawTable(figure, context);
    case "grid":
      return drawGrid(figure, context);
    case "map":
      return drawMap(figure, context);
    case "profile":
      return drawProfile(figure, context);
    case "scene":
      return drawScene(figure, context);
    case "tree":
      return drawTree(figure, context);
    case "text":
      return drawText(figure, context);
  }
}
