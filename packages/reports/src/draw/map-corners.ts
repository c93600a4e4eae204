import type { MapFigure } from "@wingseed/engine";
import { displayUnit, inUnit, roundNumberText, roundStepBelow } from "../format/index.ts";
import type { DrawContext } from "./context.ts";
import { type Box, label, textBlock, textSize } from "./label.ts";
import { coveredPoints, type Surroundings } from "./label-placement.ts";
import type { MapProjection } from "./map-projection.ts";
import { element, group, pathThrough, type SvgNode } from "./node.ts";
import type { PixelPoint } from "./polyline.ts";

/** Scale bar, wind and north, each in the corner where it hides least; all keep other names away. */
export function mapCorners(figure: MapFigure, projection: MapProjection, around: Surroundings, context: DrawContext): SvgNode {
  return group("map-corners", [windAndNorth(figure.wind, projection.frame, around, context), scaleBar(projection, around, context)]);
}

/** The first of some boxes that hides the fewest drawn points and no other label. */
function leastHiding(boxes: readonly Box[], around: Surroundings): Box {
  const cost = (box: Box) =>
    coveredPoints(box, around.lines) +
    coveredPoints(
      box,
      around.taken.map((each): PixelPoint => [each.x + each.width / 2, each.y + each.height / 2]),
    ) *
      10;
  const best = boxes.reduce((least, box) => (cost(box) < cost(least) ? box : least));
  around.taken.push(best);
  return best;
}

function windAndNorth(wind: MapFigure["wind"], frame: Box, around: Surroundings, context: DrawContext): SvgNode {
  const text = wind ? windText(wind, context) : "";
  const block = textBlock([text], textSize.small);
  const arrowRoom = wind && wind.speed > 0 ? 38 : 0;
  const size = { width: 26 + arrowRoom + block.width + (wind ? 6 : 0), height: 42 };
  const y = frame.y + 6;
  const box = leastHiding(
    [
      { x: frame.x + frame.width - 6 - size.width, y, ...size },
      { x: frame.x + 8, y, ...size },
    ],
    around,
  );
  const style = { size: textSize.small, fill: context.paint("ink"), rim: context.paint("ground") };
  const north = { x: box.x + size.width - 20, y: box.y + 2, ...textBlock(["N"], textSize.small) };
  const tip: PixelPoint = [north.x + north.width / 2, north.y + north.height + 2];
  const parts = [
    label(["N"], north, "middle", style),
    element("path", { d: `M${tip[0]} ${tip[1]}l-5 16l5 -4l5 4Z`, fill: context.paint("ink") }),
  ];
  if (wind) parts.push(label([text], { x: box.x, y: box.y + 2, ...block }, "start", style));
  if (wind && wind.speed > 0) parts.push(windArrow(wind.from, [box.x + block.width + 22, box.y + 16], context));
  return group("wind-and-north", parts);
}

function windText(wind: NonNullable<MapFigure["wind"]>, context: DrawContext): string {
  if (wind.speed === 0) return "no wind";
  const degrees = ((Math.round((wind.from * 180) / Math.PI) % 360) + 360) % 360;
  const unit = displayUnit("speed", wind.speed, { system: context.system });
  return `wind ${roundNumberText(inUnit(wind.speed, unit), 2)}\u00a0${unit.symbol} from ${String(degrees).padStart(3, "0")}°`;
}

/** An arrow that flies with the wind. */
function windArrow(from: number, centre: PixelPoint, context: DrawContext): SvgNode {
  const toward: PixelPoint = [-Math.sin(from), Math.cos(from)];
  const point = (forward: number, side: number): PixelPoint => [
    centre[0] + forward * toward[0] - side * toward[1],
    centre[1] + forward * toward[1] + side * toward[0],
  ];
  const d = pathThrough([point(-13, 0), point(13, 0)]) + pathThrough([point(6, 5), point(13, 0), point(6, -5)]);
  return element("path", { d, fill: "none", stroke: context.paint("ink"), "stroke-width": 1.75, "stroke-linejoin": "round" });
}

function scaleBar(projection: MapProjection, around: Surroundings, context: DrawContext): SvgNode {
  const { frame, pixelsPerMetre } = projection;
  const length = roundStepBelow(Math.min(180, frame.width / 3) / pixelsPerMetre);
  const width = length * pixelsPerMetre;
  const inKilometres = length >= 1000;
  const text = `${roundNumberText(inKilometres ? length / 1000 : length, 3)}\u00a0${inKilometres ? "km" : "m"}`;
  const block = textBlock([text], textSize.small);
  const size = { width: Math.max(width, block.width) + 8, height: block.height + 14 };
  const [left, right] = [frame.x + 10, frame.x + frame.width - 10 - size.width];
  const [top, bottom] = [frame.y + 8, frame.y + frame.height - 8 - size.height];
  const box = leastHiding(
    [
      { x: left, y: bottom, ...size },
      { x: right, y: bottom, ...size },
      { x: left, y: top, ...size },
    ],
    around,
  );
  const [x, y] = [box.x + 2, box.y + size.height - 4];
  const bar = element("path", {
    d: `M${x} ${y - 5}V${y}H${x + width}V${y - 5}`,
    fill: "none",
    stroke: context.paint("ink"),
    "stroke-width": 1.5,
  });
  const style = { size: textSize.small, fill: context.paint("ink"), rim: context.paint("ground") };
  return group("scale-bar", [bar, label([text], { x, y: box.y + 1, ...block }, "start", style)]);
}
