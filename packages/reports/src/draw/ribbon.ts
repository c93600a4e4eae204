import type { RotorRibbon } from "@wingseed/engine";
import type { AxisScale } from "./axis-scale.ts";
import type { DrawContext } from "./context.ts";
import { label, textBlock, textSize } from "./label.ts";
import { element, group, pathThrough, type SvgNode, textElement } from "./node.ts";
import { type PixelPoint, unbroken } from "./polyline.ts";
import { ring } from "./series-marks.ts";

const stripHeight = 14;
/** Room a ribbon takes under a plot [px]. */
export const ribbonRoom = stripHeight + 12;

const meaning = "Rotor shaft power as a share of hover’s; rings where the rotor turns free.";

/** Where a ribbon lies [px]. */
export interface RibbonPlace {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly x: AxisScale;
}

/**
 * The strip that shows how hard the rotor is driven: its filled height is rotor shaft power over hover's; it tapers to
 * nothing and becomes rings where the rotor turns free.
 */
export function rotorRibbon(ribbon: RotorRibbon, place: RibbonPlace, context: DrawContext): SvgNode {
  const base = place.top + stripHeight;
  const largest = Math.max(1, ...ribbon.share.map((share) => share ?? 0));
  const height = (share: number) => (share / largest) * stripHeight;
  const points = ribbon.x.map((x, index): PixelPoint | null => {
    const share = ribbon.share[index];
    return share === null || share === undefined || ribbon.free[index] ? null : [place.x.place(x), base - height(Math.max(0, share))];
  });
  const fill = context.paint(context.stale ? "ink-3" : "rotor");
  const parts: SvgNode[] = [textElement("title", {}, meaning)];
  const hover = base - height(1);
  parts.push(line(place, hover, context.paint("hairline")), line(place, base, context.paint("control-edge")));
  for (const part of unbroken(points)) parts.push(element("path", { d: area(part, base), fill }));
  for (const at of freeCentres(ribbon, place)) parts.push(ring([at, base - stripHeight / 2], fill, context, 4));
  const block = textBlock(["rotor"], textSize.small);
  const box = { x: Math.max(0, place.left - 6 - block.width), y: place.top - 1, ...block };
  parts.push(label(["rotor"], box, "end", { size: textSize.small, fill: context.paint("ink-2") }));
  return group("rotor-ribbon", parts);
}

function line(place: RibbonPlace, y: number, stroke: string): SvgNode {
  return element("line", { x1: place.left, x2: place.right, y1: y, y2: y, stroke, "stroke-width": 1 });
}

function area(part: readonly PixelPoint[], base: number): string {
  const [first, last] = [part[0] as PixelPoint, part.at(-1) as PixelPoint];
  if (part.length === 1)
    return pathThrough(
      [
        [first[0] - 1, base],
        [first[0] - 1, first[1]],
        [first[0] + 1, first[1]],
        [first[0] + 1, base],
      ],
      true,
    );
  return pathThrough([[first[0], base], ...part, [last[0], base]], true);
}

/** Centres of the rings: one every 16 px over each free stretch. */
function freeCentres(ribbon: RotorRibbon, place: RibbonPlace): readonly number[] {
  const centres: number[] = [];
  let start: number | undefined;
  for (let index = 0; index <= ribbon.x.length; index++) {
    const free = index < ribbon.x.length && ribbon.free[index] === true;
    if (free && start === undefined) start = index;
    if (free || start === undefined) continue;
    const [from, to] = [place.x.place(ribbon.x[start] as number), place.x.place(ribbon.x[index - 1] as number)];
    const count = Math.max(1, Math.floor((to - from) / 16));
    for (let ringIndex = 0; ringIndex < count; ringIndex++) centres.push(from + ((ringIndex + 0.5) / count) * (to - from));
    start = undefined;
  }
  return centres;
}
