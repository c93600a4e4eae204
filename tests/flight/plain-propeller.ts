// A propeller by momentum written out plainly: thrust in, torque and shaft power out.
import type { AircraftDefinition } from "../../packages/engine/src/aircraft/definition.ts";
import { dot, less, scaled, sum, type Vector } from "./plain-vectors.ts";

export type PropellerPart = AircraftDefinition["propellers"][number];

export interface PlainPropeller {
  readonly force: Vector;
  /** Reaction to its torque and to being turned with the body [N m]. */
  readonly moment: Vector;
  readonly shaftPower: number;
  /** [rad/s] */
  readonly rotationRate: number;
  /** Along the thrust, of the air [m/s]. */
  readonly inducedVelocity: number;
}

/** About zero thrust [N] the two ways of running are joined by a curve that is not computed again here. */
export const joinedThrust = 0.5;

/** Direction of the thrust, turned up and then right [rad]. */
export function thrustAxis({ axis }: Pick<PropellerPart, "axis">, back = 0, right = 0): Vector {
  const up = axis.up + back;
  const turned = axis.right + right;
  return [Math.cos(up) * Math.cos(turned), Math.cos(up) * Math.sin(turned), -Math.sin(up)];
}

/** Induced velocity [m/s] of a thrust in a stream with parts along and across the axis: T = 2 ρ A v |stream with v|. */
export function inducedBy(thrust: number, density: number, area: number, along: number, across: number): number {
  let [low, high] = [0, Math.sqrt(thrust / (2 * density * area)) + Math.abs(along)];
  for (let step = 0; step < 200; step++) {
    const v = (low + high) / 2;
    if (2 * density * area * v * Math.hypot(along + v, across) > thrust) high = v;
    else low = v;
  }
  return (low + high) / 2;
}

/** A propeller that gives `thrust` [N], moving through the air at `velocity` [m/s]. */
export function plainPropeller(
  propeller: PropellerPart,
  density: number,
  thrust: number,
  velocity: Vector,
  rate: Vector,
  turned: { readonly back: number; readonly right: number },
): PlainPropeller {
  const axis = thrustAxis(propeller, turned.back, turned.right);
  const along = dot(velocity, axis);
  const inDisc = less(velocity, scaled(along, axis));
  const across = Math.hypot(...inDisc);
  const { diameter } = propeller;
  const area = (Math.PI * diameter ** 2) / 4;
  const running = thrust >= 0 ? pulling() : pushing();
  const sense = propeller.turns === "clockwise" ? 1 : -1;
  const torque = running.rotationRate > 0 ? running.shaftPower / running.rotationRate : 0;
  const spin = scaled(sense * propeller.inertia * running.rotationRate * Math.sign(thrust), axis);
  const gyroscopic: Vector = [
    -(rate[1] * spin[2] - rate[2] * spin[1]),
    -(rate[2] * spin[0] - rate[0] * spin[2]),
    -(rate[0] * spin[1] - rate[1] * spin[0]),
  ];
  return {
    force: sum(scaled(thrust, axis), scaled(across > 0 ? -running.drag / across : 0, inDisc)),
    moment: sum(scaled(-sense * Math.sign(thrust) * torque, axis), gyroscopic),
    ...running,
  };

  function pulling() {
    const inducedVelocity = inducedBy(thrust, density, area, along, across);
    const ahead = Math.max(along, 0);
    const square = propeller.thrustCoefficient * density * diameter ** 4;
    const linear = (square * ahead) / (diameter * propeller.zeroThrustAdvanceRatio);
    const rotationRate = (Math.PI * (linear + Math.sqrt(linear ** 2 + 4 * square * thrust))) / square;
    // Blade drag as without the flow across, which lets it grow and turns it into a force in the disc.
    const straight = thrust * (ahead + propeller.inducedFactor * inducedBy(thrust, density, area, ahead, 0));
    const bladeDrag = straight * (1 / propeller.profileEfficiency - 1);
    const tipSpeed = (rotationRate * diameter) / 2;
    const mu = across / tipSpeed;
    const shaftPower = thrust * (along + propeller.inducedFactor * inducedVelocity) + bladeDrag * (1 + 2.65 * mu ** 2);
    return { inducedVelocity, shaftPower: Math.max(0, shaftPower), rotationRate, drag: (2 * bladeDrag * mu) / tipSpeed };
  }

  function pushing() {
    const paid = Math.max(0, -thrust - 0.25 * density * along ** 2 * area);
    return {
      inducedVelocity: 0,
      drag: 0,
      shaftPower: paid ** 1.5 / (propeller.reverseFigureOfMerit * Math.sqrt(2 * density * area)),
      rotationRate: 2 * Math.PI * Math.sqrt(-thrust / (propeller.reverseThrustCoefficient * density * diameter ** 4)),
    };
  }
}
