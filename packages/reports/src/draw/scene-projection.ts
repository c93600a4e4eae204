import type { SceneAttitude, SceneFigure, ScenePoint, SceneView } from "@wingseed/engine";
import type { Box } from "./label.ts";
import type { PixelPoint } from "./polyline.ts";

/** What is written over a view. */
export const viewTitles: Readonly<Record<SceneView, string>> = {
  left: "from the left",
  ahead: "from ahead",
  behind: "from behind",
  above: "from above",
};

/** Right and down on paper [m], from axes x forward, y right, z down. The nose points left wherever it can be seen from a side. */
const flats: Readonly<Record<SceneView, (point: ScenePoint) => PixelPoint>> = {
  left: ([x, , z]) => [-x, z],
  ahead: ([, y, z]) => [-y, z],
  behind: ([, y, z]) => [y, z],
  above: ([x, y]) => [-x, -y],
};

/** The axis of the body that a view looks along, and whether a positive turn about it runs clockwise on paper. */
export const viewAxis: Readonly<Record<SceneView, { readonly index: 0 | 1 | 2; readonly clockwise: boolean }>> = {
  left: { index: 1, clockwise: true },
  ahead: { index: 0, clockwise: false },
  behind: { index: 0, clockwise: true },
  above: { index: 2, clockwise: true },
};

/** A view of a scene: places of points and directions on paper [m]. */
export interface Projection {
  readonly view: SceneView;
  place(point: ScenePoint): PixelPoint;
  direction(vector: ScenePoint): PixelPoint;
}

export function projection(view: SceneView, attitude: SceneAttitude | undefined): Projection {
  const flat = flats[view];
  if (!attitude) return { view, place: flat, direction: flat };
  const { about } = attitude;
  const direction = (vector: ScenePoint) => flat(levelled(vector, attitude));
  const place = (point: ScenePoint) => {
    const turned = levelled([point[0] - about[0], point[1] - about[1], point[2] - about[2]], attitude);
    return flat([turned[0] + about[0], turned[1] + about[1], turned[2] + about[2]]);
  };
  return { view, place, direction };
}

/** From body axes to axes that lie level, with the same heading. */
export function levelled([x, y, z]: ScenePoint, { pitch, roll }: SceneAttitude): ScenePoint {
  const [sinPitch, cosPitch, sinRoll, cosRoll] = [Math.sin(pitch), Math.cos(pitch), Math.sin(roll), Math.cos(roll)];
  const down = sinRoll * y + cosRoll * z;
  return [cosPitch * x + sinPitch * down, cosRoll * y - sinRoll * z, -sinPitch * x + cosPitch * down];
}

/** How long a newton is drawn [m]: the largest force takes this share of the longest side of what is drawn. */
const longestForce = 0.34;

/** The scale of the forces of a scene [m/N], 0 without any. */
export function forceScale(figure: SceneFigure): number {
  const largest = Math.max(0, ...(figure.arrows ?? []).filter((each) => each.kind === "force").map((each) => Math.hypot(...each.vector)));
  if (largest === 0) return 0;
  const points = figure.lines.flatMap((line) => line.points);
  const spans = ([0, 1, 2] as const).map((axis) => {
    const values = points.map((point) => point[axis]);
    return values.length === 0 ? 0 : Math.max(...values) - Math.min(...values);
  });
  return (longestForce * (Math.max(...spans) || 1)) / largest;
}

/** The part of the paper that a view needs [m]: outlines, marks and arrows. */
export function viewExtent(figure: SceneFigure, look: Projection): Box {
  const perNewton = forceScale(figure);
  const tips = (figure.arrows ?? []).map(({ at, vector, kind }): PixelPoint => {
    const [x, y] = look.place(at);
    const [dx, dy] = kind === "force" ? look.direction(vector) : [0, 0];
    return [x + dx * perNewton, y + dy * perNewton];
  });
  const points = [
    ...figure.lines.filter((line) => isShown(line, look.view)).flatMap((line) => line.points.map(look.place)),
    ...(figure.marks ?? []).map((mark) => look.place(mark.at)),
    ...tips,
  ];
  if (points.length === 0) return { x: 0, y: 0, width: 0.1, height: 0.1 };
  const [xs, ys] = [points.map((point) => point[0]), points.map((point) => point[1])];
  const [x, y] = [Math.min(...xs), Math.min(...ys)];
  return { x, y, width: Math.max(Math.max(...xs) - x, 0.1), height: Math.max(Math.max(...ys) - y, 0.02) };
}

export function isShown(line: SceneFigure["lines"][number], view: SceneView): boolean {
  return line.views?.includes(view) ?? true;
}
