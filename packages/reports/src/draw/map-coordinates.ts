import type { Position } from "@wingseed/engine";
import { scaleLinear } from "d3-scale";
import { fixedText } from "../format/index.ts";
import type { DrawContext } from "./context.ts";
import { label, textBlock, textSize } from "./label.ts";
import type { MapProjection } from "./map-projection.ts";
import { element, group, type SvgNode } from "./node.ts";

/** Longitudes under the map, ticks of latitude just inside its left edge, and their range in words. */
export function mapCoordinates(
  projection: MapProjection,
  context: DrawContext,
): { readonly node: SvgNode; readonly height: number; readonly latitudes: string } {
  const { frame } = projection;
  const bottom = frame.y + frame.height;
  const ticks = scaleLinear()
    .domain([projection.west, projection.east])
    .ticks(Math.max(2, Math.floor(frame.width / 190)));
  const style = { size: textSize.small, fill: context.paint("ink-2") };
  const parts = ticks.flatMap((longitude) => {
    const x = projection.place([longitude, projection.south])[0];
    const text = degreesText(longitude, ticks, ["E", "W"]);
    const block = textBlock([text], textSize.small);
    const left = Math.min(Math.max(0, x - block.width / 2), context.width - block.width);
    return [
      element("line", { x1: x, x2: x, y1: bottom, y2: bottom + 5, stroke: context.paint("control-edge") }),
      label([text], { x: left, y: bottom + 6, ...block }, "middle", style),
    ];
  });
  const middle: Position = [projection.west, (projection.south + projection.north) / 2];
  const latitudes = scaleLinear().domain([projection.south, projection.north]).ticks(3);
  const ticksLeft = latitudes.map((latitude) => {
    const y = projection.place([middle[0], latitude])[1];
    return element("line", { x1: frame.x, x2: frame.x + 6, y1: y, y2: y, stroke: context.paint("ink-2") });
  });
  const range = `Latitude ${degreesText(projection.south, latitudes, ["N", "S"])} to ${degreesText(projection.north, latitudes, ["N", "S"])}, ticks every ${fixedText(step(latitudes), decimalsOf(latitudes))}°.`;
  return { node: group("coordinates", [...parts, ...ticksLeft]), height: 24, latitudes: range };
}

function degreesText(value: number, ticks: readonly number[], [positive, negative]: readonly [string, string]): string {
  const sign = value === 0 ? "" : `\u00a0${value > 0 ? positive : negative}`;
  return `${fixedText(Math.abs(value), decimalsOf(ticks))}°${sign}`;
}

function step(ticks: readonly number[]): number {
  return Math.abs((ticks[1] ?? 1) - (ticks[0] ?? 0));
}

function decimalsOf(ticks: readonly number[]): number {
  return Math.max(0, -Math.floor(Math.log10(step(ticks) || 1) + 1e-9));
}
