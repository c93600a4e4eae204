import type { SceneDimension, SceneFigure } from "@wingseed/engine";
import { formatReading } from "../format/index.ts";
import type { DrawContext } from "./context.ts";
import { type Box, label, textBlock, textSize } from "./label.ts";
import type { Surroundings } from "./label-placement.ts";
import { element, group, pathThrough, type SvgNode } from "./node.ts";
import type { PixelPoint } from "./polyline.ts";
import type { Projection } from "./scene-projection.ts";
import { wrapText } from "./text-width.ts";

/** Distance between dimension lines, and from the drawing to the first one [px]. */
const pitch = 24;
const first = 14;
const widestName = 72;

interface Measured {
  readonly dimension: SceneDimension;
  readonly lines: readonly string[];
  readonly level: boolean;
}

/** Lengths of a view: those that run more across than down stand under it, the others right of it. */
function measured(figure: SceneFigure, look: Projection, context: DrawContext): readonly Measured[] {
  return (figure.dimensions ?? [])
    .filter((each) => each.view === look.view)
    .map((dimension) => {
      const [from, to] = [look.place(dimension.from), look.place(dimension.to)];
      const length = Math.hypot(...dimension.from.map((value, axis) => value - (dimension.to[axis] as number)));
      const level = Math.abs(to[0] - from[0]) >= Math.abs(to[1] - from[1]);
      const text = `${dimension.name} ${formatReading(length, "length", { system: context.system }).text}`;
      return { dimension, level, lines: level ? [text] : wrapText(text, textSize.small, widestName) };
    });
}

/** Room that the lengths of a view need beside and under it [px]. */
export function dimensionRoom(
  figure: SceneFigure,
  look: Projection,
  context: DrawContext,
): { readonly right: number; readonly below: number } {
  const all = measured(figure, look, context);
  const upright = all.filter((each) => !each.level);
  const widest = Math.max(0, ...upright.map((each) => textBlock(each.lines, textSize.small).width));
  const count = all.length - upright.length;
  return {
    right: upright.length === 0 ? 0 : first + (upright.length - 1) * pitch + widest + 10,
    below: count === 0 ? 0 : first + count * pitch + 4,
  };
}

/** Dimension lines with their names and lengths, thin lines leading to what is measured. */
export function drawDimensions(
  figure: SceneFigure,
  look: Projection,
  view: { readonly box: Box; toPaper(point: PixelPoint): PixelPoint },
  around: Surroundings,
  context: DrawContext,
): readonly SvgNode[] {
  let [below, beside] = [view.box.y + view.box.height + first, view.box.x + view.box.width + first];
  return measured(figure, look, context).map(({ dimension, level, lines }) => {
    const [from, to] = [view.toPaper(look.place(dimension.from)), view.toPaper(look.place(dimension.to))];
    const at = level ? below : beside;
    if (level) below += pitch;
    else beside += pitch;
    const ends: readonly [PixelPoint, PixelPoint] = level
      ? [
          [from[0], at],
          [to[0], at],
        ]
      : [
          [at, from[1]],
          [at, to[1]],
        ];
    const block = textBlock(lines, textSize.small);
    const middle: PixelPoint = [(ends[0][0] + ends[1][0]) / 2, (ends[0][1] + ends[1][1]) / 2];
    const fits = level && Math.abs(ends[1][0] - ends[0][0]) > block.width + 24;
    const x = fits ? middle[0] - block.width / 2 : level ? Math.max(ends[0][0], ends[1][0]) + 6 : at + 6;
    const kept = Math.max(0, Math.min(x, context.width - block.width));
    const box = { x: kept, y: (level ? at : middle[1]) - block.height / 2, ...block };
    around.taken.push(box);
    const thin = { stroke: context.paint("control-edge"), "stroke-width": 1, fill: "none" };
    const parts = [
      element("path", {
        d: pathThrough([past(from, ends[0]), ends[0]]) + pathThrough([past(to, ends[1]), ends[1]]),
        ...thin,
        opacity: 0.6,
      }),
      element("path", {
        d: lineBeside(ends, fits ? block.width : 0) + ends.map((end) => slash(end)).join(""),
        ...thin,
        stroke: context.paint("ink-2"),
      }),
      label(lines, box, level && fits ? "middle" : "start", {
        size: textSize.small,
        fill: context.paint("ink"),
        rim: context.paint("ground"),
      }),
    ];
    return group("dimension", parts, { "data-dimension": dimension.name });
  });
}

/** The line, parted where words stand in it. */
function lineBeside([from, to]: readonly [PixelPoint, PixelPoint], words: number): string {
  if (words === 0) return pathThrough([from, to]);
  const [left, right] = [Math.min(from[0], to[0]), Math.max(from[0], to[0])];
  const [y, middle, half] = [from[1], (left + right) / 2, words / 2 + 3];
  return `M${left} ${y}H${middle - half}M${middle + half} ${y}H${right}`;
}

/** A little away from the thing that is measured, so that its edge stays readable. */
function past(from: PixelPoint, to: PixelPoint): PixelPoint {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const share = length > 8 ? 5 / length : 0;
  return [from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])];
}

function slash([x, y]: PixelPoint): string {
  return `M${x - 4} ${y + 4}L${x + 4} ${y - 4}`;
}
