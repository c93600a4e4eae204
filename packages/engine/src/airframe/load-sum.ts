import type { PartLoads } from "./airframe-loads.ts";
import { cross, type Vector } from "./axes.ts";

/** Adds up forces and moments about the centre of gravity, part by part. */
export class LoadSum {
  fx = 0;
  fy = 0;
  fz = 0;
  mx = 0;
  my = 0;
  mz = 0;
  readonly parts: PartLoads[] = [];

  add(part: PartLoads): void {
    const { force, moment } = part;
    this.fx += force[0];
    this.fy += force[1];
    this.fz += force[2];
    this.mx += moment[0];
    this.my += moment[1];
    this.mz += moment[2];
    this.parts.push(part);
  }
}

/** Loads of a part about the centre of gravity, from a force at an arm from it and a moment. @derivation M + r × F */
export function partLoads(id: string, kind: PartLoads["kind"], force: Vector, arm: Vector, moment: Vector): PartLoads {
  const turning = cross(arm, force);
  return { id, kind, force, moment: [moment[0] + turning[0], moment[1] + turning[1], moment[2] + turning[2]] };
}

/** Velocity of a place of the body through the air. @derivation V + ω × r */
export function localVelocity(velocity: Vector, rates: Vector, arm: Vector): Vector {
  return [
    velocity[0] + rates[1] * arm[2] - rates[2] * arm[1],
    velocity[1] + rates[2] * arm[0] - rates[0] * arm[2],
    velocity[2] + rates[0] * arm[1] - rates[1] * arm[0],
  ];
}
