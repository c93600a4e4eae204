import type { BodyPart } from "../aircraft/index.ts";
import type { Vector } from "./axes.ts";

/** What a body does: force in body axes [N] and where it acts, relative to the centre of gravity [m]. */
export interface BodyLoads {
  readonly force: Vector;
  readonly moment: Vector;
}

/**
 * Drag of a body.
 *
 *     F = −½ρ f |V| (u, v, w) − ½ρ f_s |v| (0, v, 0) − ½ρ f_v |w_d| (0, 0, w_d)
 *
 * f along the whole velocity; f_s on the flow from the side; f_v on the flow from above, other parts' downwash included.
 *
 * @param washed velocity of the body through the air that other parts move, on top [m/s]
 * @param further drag area carried elsewhere but counted here, such as a payload's [m²]
 * @derivation drag areas, each with the velocity that it was measured in
 */
export function bodyLoads(
  part: BodyPart,
  density: number,
  centre: Vector,
  velocity: Vector,
  rates: Vector,
  washed: Vector,
  further: number,
): BodyLoads {
  const half = 0.5 * density;
  const arm: Vector = [part.place.x - centre[0], part.place.y - centre[1], part.place.z - centre[2]];
  const sidePlace = part.sidePlace ?? part.place;
  const sideArm: Vector = [sidePlace.x - centre[0], sidePlace.y - centre[1], sidePlace.z - centre[2]];
  const u = velocity[0] + rates[1] * arm[2] - rates[2] * arm[1];
  const v = velocity[1] + rates[2] * arm[0] - rates[0] * arm[2];
  const w = velocity[2] + rates[0] * arm[1] - rates[1] * arm[0];
  const sideways = velocity[1] + rates[2] * sideArm[0] - rates[0] * sideArm[2];
  const through = w + washed[2];
  const alongPath = half * (part.dragArea + further) * Math.sqrt(u * u + v * v + w * w);
  const fx = -alongPath * u;
  const fy = -alongPath * v;
  const fz = -alongPath * w - half * part.verticalDragArea * Math.abs(through) * through;
  const side = -half * part.sideDragArea * Math.abs(sideways) * sideways;
  return {
    force: [fx, fy + side, fz],
    moment: [arm[1] * fz - arm[2] * fy - sideArm[2] * side, arm[2] * fx - arm[0] * fz, arm[0] * fy - arm[1] * fx + sideArm[0] * side],
  };
}
