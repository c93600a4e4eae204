import type { SceneFigure, SceneView } from "@wingseed/engine";
import { roundNumberText, roundStepBelow } from "../format/index.ts";
import type { DrawContext } from "./context.ts";
import { type Box, label, textBlock, textSize } from "./label.ts";
import { element, group, type SvgNode } from "./node.ts";
import { wordsUnder } from "./panel.ts";
import { picture } from "./picture.ts";
import type { ViewPlace } from "./scene-canvas.ts";
import { dimensionRoom } from "./scene-dimensions.ts";
import { forceScale, type Projection, projection, viewExtent } from "./scene-projection.ts";
import { drawView, viewTitleRoom } from "./scene-view.ts";

const usualViews: readonly SceneView[] = ["left", "ahead", "above"];
const gap = 28;
/** Narrower than this, views stand under each other [px]. */
const narrow = 560;
/** Height of a scale bar with its words [px]. */
const barRoom = 40;

/** A view with the paper that it needs [m] and the room for lengths beside and under it [px]. */
interface Wanted {
  readonly look: Projection;
  readonly extent: Box;
  readonly room: { readonly right: number; readonly below: number };
}

/**
 * Views of a body at one scale: two beside each other, further ones under the first, a larger detail beside those; on a
 * narrow page in one column.
 */
export function drawScene(figure: SceneFigure, context: DrawContext): SvgNode {
  const wanted = (figure.views ?? usualViews).map((view): Wanted => {
    const look = projection(view, figure.attitude);
    return { look, extent: viewExtent(figure, look), room: dimensionRoom(figure, look, context) };
  });
  const inColumn = context.width < narrow || wanted.length === 1;
  const scale = Math.max(
    8,
    inColumn ? columnScale(wanted, context.width) : Math.min(rowScale(wanted, context.width), heightScale(wanted, context)),
  );
  const views = placed(wanted, scale, inColumn);
  const detail = figure.detail ? detailPlace(figure, views, inColumn, context) : undefined;
  // The detail names what it shows; the views name the rest.
  const inOrder = detail ? [detail, ...views] : views;
  const named = new Set<string>();
  const drawn = inOrder.map((place) => drawView(figure, place, { named, places: inOrder }, context));
  const viewsBottom = Math.max(0, ...drawn.slice(detail ? 1 : 0).map((each) => each.bottom));
  const perNewton = forceScale(figure);
  const bars = [{ per: scale, unit: "m" }, ...(perNewton > 0 ? [{ per: perNewton * scale, unit: "N" }] : [])];
  const foot = detail && inColumn ? detail.y - barRoom : viewsBottom + 14;
  const own = detail ? scaleBars([{ per: detail.scale, unit: "m" }], detail.x, (drawn[0]?.bottom ?? 0) + 14, context) : [];
  const bottom = Math.max(foot, detail ? (drawn[0]?.bottom ?? 0) + 14 : 0) + barRoom;
  const unplaced = [...new Set(drawn.flatMap((each) => each.unplaced))];
  const lost = unplaced.length === 0 ? [] : [`Not named in the drawing for want of room: ${unplaced.join(", ")}.`];
  const words = wordsUnder([...lost, ...drawn.flatMap((each) => each.told)], bottom, context);
  const parts = [...drawn.map((each) => each.node), ...scaleBars(bars, gap, foot, context), ...own, words.node];
  return picture(figure, bottom + 4 + words.height, parts, context);
}

/** Beside the views under the first row, or under all of them. */
function detailPlace(figure: SceneFigure, views: readonly ViewPlace[], inColumn: boolean, context: DrawContext): ViewPlace | undefined {
  const { detail } = figure;
  if (!detail) return undefined;
  const look = projection(detail.view, figure.attitude);
  const [from, to] = [look.place(detail.from), look.place(detail.to)];
  const extent = {
    x: Math.min(from[0], to[0]),
    y: Math.min(from[1], to[1]),
    width: Math.abs(to[0] - from[0]),
    height: Math.abs(to[1] - from[1]),
  };
  const right = (place: ViewPlace) => place.x + place.extent.width * place.scale + place.room.right;
  const bottom = (place: ViewPlace) => place.y + viewTitleRoom + place.extent.height * place.scale + place.room.below;
  const beside = inColumn ? undefined : views[2];
  const x = beside ? Math.max(right(beside), views[1]?.x ?? 0) + (beside ? gap : 0) : gap;
  const y = beside ? beside.y : Math.max(...views.map(bottom)) + gap + (inColumn ? barRoom : 0);
  const room = { width: context.width - x - gap, height: beside ? Math.max(160, bottom(beside) - y - viewTitleRoom - barRoom) : 320 };
  const scale = Math.min(room.width / extent.width, room.height / extent.height);
  return { look, extent, scale, room: { right: 0, below: 0 }, x, y, title: detail.name };
}

function columnScale(wanted: readonly Wanted[], width: number): number {
  return Math.min(...wanted.map(({ extent, room }) => (width - 2 * gap - room.right) / extent.width));
}

function rowScale(wanted: readonly Wanted[], width: number): number {
  const [first, second] = wanted as [Wanted, Wanted];
  const beside = (width - 3 * gap - first.room.right - second.room.right) / (first.extent.width + second.extent.width);
  return Math.min(beside, ...wanted.slice(2).map(({ extent, room }) => (width - 2 * gap - room.right) / extent.width));
}

/** A drawing in rows is at most this much higher than plots of the height that is wished. */
const overPlots = 1.9;

function heightScale(wanted: readonly Wanted[], { plotHeight }: DrawContext): number {
  if (plotHeight === undefined) return Number.POSITIVE_INFINITY;
  const first = wanted.slice(0, 2);
  const rows = [Math.max(...first.map((each) => each.extent.height)), ...wanted.slice(2).map((each) => each.extent.height)];
  return (overPlots * plotHeight) / rows.reduce((sum, height) => sum + height, 0);
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
  bars: readonly { readonly per: number; readonly unit: string }[],
  left: number,
  top: number,
  context: DrawContext,
): readonly SvgNode[] {
  let x = left;
  return bars.map(({ per, unit }) => {
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
}
