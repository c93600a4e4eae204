import type { SceneFigure, ScenePoint } from "@wingseed/engine";
import { formatReading } from "../format/index.ts";
import type { DrawContext } from "./context.ts";
import { element, group, pathThrough, type SvgNode } from "./node.ts";
import { type PixelPoint, pointsAlong } from "./polyline.ts";
import { arrowHead } from "./scene-arrows.ts";
import type { ViewCanvas } from "./scene-canvas.ts";
import { nameBeside } from "./scene-names.ts";

/** Slower air is not drawn [m/s]. */
const slowest = 0.3;
const airLength = 56;

/** The horizon, the axis of the body against it with its angle in words, and the air that meets it. */
export function drawAttitude(figure: SceneFigure, canvas: ViewCanvas, context: DrawContext): readonly SvgNode[] {
  const { attitude } = figure;
  if (!attitude || canvas.look.view === "above") return [];
  const sideways = canvas.look.view === "left";
  const angle = sideways ? attitude.pitch : attitude.roll;
  const words = sideways ? (angle < 0 ? "nose down" : "nose up") : angle < 0 ? "left side down" : "right side down";
  const centre = canvas.toPaper(canvas.look.place(attitude.about));
  const along = canvas.look.direction(sideways ? [1, 0, 0] : [0, 1, 0]);
  const half = 0.5 * canvas.box.width;
  const level: readonly PixelPoint[] = [
    [canvas.box.x, centre[1]],
    [canvas.box.x + canvas.box.width, centre[1]],
  ];
  const axis: readonly PixelPoint[] = [
    [centre[0] - half * along[0], centre[1] - half * along[1]],
    [centre[0] + half * along[0], centre[1] + half * along[1]],
  ];
  const thin = { fill: "none", "stroke-width": 1 };
  const horizon = element("path", { d: pathThrough(level), ...thin, stroke: context.paint("control-edge") });
  const body = element("path", { d: pathThrough(axis), ...thin, stroke: context.paint("ink-2"), "stroke-dasharray": "10 3 2 3" });
  const reading = formatReading(Math.abs(angle), "angle", { system: context.system }).text;
  const covered = {
    ...canvas,
    around: { ...canvas.around, lines: [...canvas.around.lines, ...pointsAlong(axis, 6).map((each) => each.at)] },
  };
  const name = nameBeside(`${words} ${reading}`, [axis[1] as PixelPoint, axis[0] as PixelPoint], covered, context);
  return [group("attitude", [horizon, body, ...name], { "data-angle": angle }), ...airArrow(attitude.velocity, canvas, context)];
}

/** The air as it comes: an arrow of fixed length in its direction, its speed in this view beside it. */
function airArrow(velocity: ScenePoint | undefined, canvas: ViewCanvas, context: DrawContext): readonly SvgNode[] {
  if (!velocity) return [];
  const [x, y] = canvas.look.direction([-velocity[0], -velocity[1], -velocity[2]]);
  const speed = Math.hypot(x, y);
  if (speed < slowest) return [];
  const { box } = canvas;
  const out: PixelPoint = [x / speed, y / speed];
  const start: PixelPoint = [
    out[0] >= 0 ? box.x - 8 : box.x + box.width + 8,
    Math.abs(out[1]) > 0.7 ? (out[1] > 0 ? box.y + 4 : box.y + box.height - 4) : box.y + box.height * 0.22,
  ];
  const head: PixelPoint = [start[0] + airLength * out[0], start[1] + airLength * out[1]];
  const stroke = context.paint("note");
  const parts = [
    element("path", { d: pathThrough([start, head]), stroke, "stroke-width": 1.25, fill: "none" }),
    element("path", { d: arrowHead(start, head, 8), fill: stroke }),
  ];
  const name = `air ${formatReading(speed, "speed", { system: context.system }).text}`;
  return [group("air", [...parts, ...nameBeside(name, [[(start[0] + head[0]) / 2, (start[1] + head[1]) / 2]], canvas, context)])];
}
