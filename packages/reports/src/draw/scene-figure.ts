import type { SceneFigure, SceneView } from "@wingseed/engine";
import { roundNumberText, roundStepBelow } from "../format/index.ts";
import type { DrawContext } from "./context.ts";
import { type Box, label, textBlock, textSize } from "./label.ts";
import { element, group, type SvgNode } from "./node.ts";
import { wordsUnder } from "./panel.ts";
import { picture } from "./picture.ts";
import { dimensionRoom } from "./scene-dimensions.ts";
import { forceScale, type Projection, projection, viewExtent } from "./scene-projection.ts";
import { drawView, type ViewPlace, viewTitleRoom } from "./scene-view.ts";

const usualViews: readonly SceneView[] = ["left", "ahead", "above"];
const gap = 28;
/** Narrower than this, views stand under each other [px]. */
const narrow = 560;

/** A view with the paper that it needs [m] and the room for lengths beside and under it [px]. */
interface Wanted {
  readonly look: Projection;
  readonly extent: Box;
  readonly room: { readonly right: number; readonly below: number };
}

/** Views of a body at one scale: two beside each other, further ones under the first; on a narrow page in one column. */
export function drawScene(figure: SceneFigure, context: DrawContext): SvgNode {
  const wanted = (figure.views ?? usualViews).map((view): Wanted => {
    const look = projection(view, figure.attitude);
    return { look, extent: viewExtent(figure, look), room: dimensionRoom(figure, look, context) };
  });
  const inColumn = context.width < narrow || wanted.length === 1;
  const scale = Math.max(8, inColumn ? columnScale(wanted, context.width) : rowScale(wanted, context.width));
  const named = new Set<string>();
  const drawn = placed(wanted, scale, inColumn).map((place) =>
    drawView(figure, place, { named, looks: wanted.map(({ look }) => look) }, context),
  );
  const bottom = Math.max(0, ...drawn.map((each) => each.bottom));
  const bars = scaleBars(figure, scale, bottom + 14, context);
  const words = wordsUnder([...new Set(drawn.flatMap((each) => each.unplaced))], bars.bottom + 4, context);
  return picture(figure, bars.bottom + 8 + words.height, [...drawn.map((each) => each.node), ...bars.nodes, words.node], context);
}

function columnScale(wanted: readonly Wanted[], width: number): number {
  return Math.min(...wanted.map(({ extent, room }) => (width - 2 * gap - room.right) / extent.width));
}

function rowScale(wanted: readonly Wanted[], width: number): number {
  const [first, second] = wanted as [Wanted, Wanted];
  const beside = (width - 3 * gap - first.room.right - second.room.right) / (first.extent.width + second.extent.width);
  return Math.min(beside, ...wanted.slice(2).map(({ extent, room }) => (width - 2 * gap - room.right) / extent.width));
}

/** Where each view lies. Under each other, views of one direction keep their lengths in line. */
function placed(wanted: readonly Wanted[], scale: number, inColumn: boolean): readonly ViewPlace[] {
  const height = ({ extent, room }: Wanted) => viewTitleRoom + extent.height * scale + room.below + gap;
  const first = wanted[0];
  let top = 0;
  return wanted.map((each, index): ViewPlace => {
    const { look, extent, room } = each;
    if (inColumn) {
      const place = { look, extent, scale, room, x: gap, y: top };
      top += height(each);
      return place;
    }
    const besideFirst = index === 1 && first !== undefined;
    if (index === 2) top = Math.max(...wanted.slice(0, 2).map(height));
    if (index > 2) top += height(wanted[index - 1] as Wanted);
    const aligned = index > 1 && first && look.view === "above" && first.look.view === "left" ? (extent.x - first.extent.x) * scale : 0;
    const x = besideFirst ? 2 * gap + first.extent.width * scale + first.room.right : gap + Math.max(0, aligned);
    return { look, extent, scale, room, x, y: index < 2 ? 0 : top };
  });
}

/** Bars that say how long a metre and how long a force is drawn. */
function scaleBars(
  figure: SceneFigure,
  scale: number,
  top: number,
  context: DrawContext,
): { readonly nodes: readonly SvgNode[]; readonly bottom: number } {
  const perNewton = forceScale(figure);
  const bars = [{ per: scale, unit: "m" }, ...(perNewton > 0 ? [{ per: perNewton * scale, unit: "N" }] : [])];
  let x = gap;
  const nodes = bars.map(({ per, unit }) => {
    const length = roundStepBelow(140 / per);
    const text = `${roundNumberText(length, 3)}\u00a0${unit}`;
    const block = textBlock([text], textSize.small);
    const style = { fill: "none", stroke: context.paint("ink"), "stroke-width": 1.5 };
    const bar = element("path", { d: `M${x} ${top}V${top + 5}H${x + length * per}V${top}`, ...style });
    const node = group("scale-bar", [
      bar,
      label([text], { x, y: top + 9, ...block }, "start", { size: textSize.small, fill: context.paint("ink") }),
    ]);
    x += Math.max(length * per, block.width) + 40;
    return node;
  });
  return { nodes, bottom: top + 9 + textSize.small * 1.2 };
}
