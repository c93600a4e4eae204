import type { Place, Size } from "../../aircraft/index.ts";
import type { Meaning, SceneLine, ScenePoint, SceneView } from "../figures.ts";

/** How an outline is named and drawn. */
export interface OutlineLook {
  readonly name: string;
  readonly meaning: Meaning;
  readonly weight?: "full" | "thin";
}

type Side = readonly [across: 0 | 1 | 2, down: 0 | 1 | 2, views: readonly SceneView[]];

/** Which two axes each direction of view shows. */
const sides: readonly Side[] = [
  [0, 2, ["left"]],
  [1, 2, ["ahead", "behind"]],
  [0, 1, ["above"]],
];

/** A rectangular solid as one outline for each direction of view. */
export function boxOutlines(look: OutlineLook, centre: Place, size: Size): readonly SceneLine[] {
  return solidOutlines(look, centre, size, [
    [-1, -1],
    [1, -1],
    [1, 1],
    [-1, 1],
  ]);
}

/** Exponent of the outline of a hull: 2 is an ellipse, more is fuller. Only the looks of drawings depend on it. */
const fullness = 2.6;

/** A rounded solid as one outline for each direction of view. */
export function hullOutlines(look: OutlineLook, centre: Place, size: Size): readonly SceneLine[] {
  const round = (value: number) => Math.sign(value) * Math.abs(value) ** (2 / fullness);
  const shape = Array.from({ length: 48 }, (_, index): readonly [number, number] => {
    const angle = (index / 48) * 2 * Math.PI;
    return [round(Math.cos(angle)), round(Math.sin(angle))];
  });
  return solidOutlines(look, centre, size, shape);
}

function solidOutlines(look: OutlineLook, centre: Place, size: Size, shape: readonly (readonly [number, number])[]): readonly SceneLine[] {
  const [middle, edges] = [
    [centre.x, centre.y, centre.z],
    [size.x, size.y, size.z],
  ] as const;
  return sides.map(([across, down, views]) => ({
    ...look,
    closed: true,
    views,
    points: shape.map(([right, under]): ScenePoint => {
      const point: [number, number, number] = [middle[0], middle[1], middle[2]];
      point[across] += (right * edges[across]) / 2;
      point[down] += (under * edges[down]) / 2;
      return point;
    }),
  }));
}

/** A circle about a centre, in the plane that two unit vectors span. */
export function circlePoints(centre: ScenePoint, radius: number, first: ScenePoint, second: ScenePoint): readonly ScenePoint[] {
  return Array.from({ length: 48 }, (_, index) => {
    const angle = (index / 48) * 2 * Math.PI;
    return offset(centre, [
      [first, radius * Math.cos(angle)],
      [second, radius * Math.sin(angle)],
    ]);
  });
}

/** A point moved along vectors by lengths. */
export function offset(point: ScenePoint, steps: readonly (readonly [vector: ScenePoint, length: number])[]): ScenePoint {
  return steps.reduce<ScenePoint>(
    ([x, y, z], [vector, length]) => [x + vector[0] * length, y + vector[1] * length, z + vector[2] * length],
    point,
  );
}
