// A propeller by momentum written out plainly: thrust in, torque and shaft power out.
import type { AircraftDefinition } from "../../packages/engine/src/aircraft/definition.ts";
import { momentumThrust } from "./plain-momentum.ts";
import { cross, dot, less, scaled, sum, type Vector } from "./plain-vectors.ts";

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
  readonly axis: Vector;
}

/** Within this thrust of zero [N] both ways of running are joined. */
const joinedThrust = 0.5;

/** Direction of the thrust, turned up and then right [rad]. */
export function thrustAxis({ axis }: Pick<PropellerPart, "axis">, back = 0, right = 0): Vector {
  const up = axis.up + back;
  const turned = axis.right + right;
  return [Math.cos(up) * Math.cos(turned), Math.cos(up) * Math.sin(turned), -Math.sin(up)];
}

/** Induced velocity [m/s] of a thrust in a stream with parts along and across the axis: momentum of the flow with it. */
export function inducedBy(thrust: number, density: number, area: number, along: number, across: number): number {
  const disc = { radius: Math.sqrt(area / Math.PI), inducedPowerFactor: 1 };
  let [low, high] = [0, 2 * Math.sqrt(thrust / (2 * density * area)) + Math.abs(along)];
  for (let step = 0; step < 200; step++) {
    const v = (low + high) / 2;
    if (momentumThrust(disc, density, { mu: across, axial: along, induced: v, tipSpeed: 1 }, thrust) > thrust) high = v;
    else low = v;
  }
  return (low + high) / 2;
}

interface Shaft {
  readonly power: number;
  readonly rate: number;
}

/** Shaft of a propeller in a stream along its axis: pulling, or run backwards. */
function shaftOf(propeller: PropellerPart, density: number, thrust: number, along: number): Shaft {
  const { diameter } = propeller;
  const area = (Math.PI * diameter ** 2) / 4;
  if (thrust < 0) {
    const paid = Math.max(0, -thrust - 0.25 * density * along ** 2 * area);
    return {
      power: paid ** 1.5 / (propeller.reverseFigureOfMerit * Math.sqrt(2 * density * area)),
      rate: 2 * Math.PI * Math.sqrt(-thrust / (propeller.reverseThrustCoefficient * density * diameter ** 4)),
    };
  }
  // The positive root n of c ρ D⁴ n² − (c ρ D³ V/J₀) n − T = 0.
  const square = propeller.thrustCoefficient * density * diameter ** 4;
  const linear = (square * along) / (diameter * propeller.zeroThrustAdvanceRatio);
  return {
    power: (thrust * (along + propeller.inducedFactor * inducedBy(thrust, density, area, along, 0))) / propeller.profileEfficiency,
    rate: (Math.PI * (linear + Math.sqrt(linear ** 2 + 4 * square * thrust))) / square,
  };
}

/** The thrust law alone: the positive root for the turns in a stream along the axis of either sign [rad/s]. */
function lawRate(
  { thrustCoefficient, zeroThrustAdvanceRatio, diameter }: PropellerPart,
  density: number,
  thrust: number,
  along: number,
): number {
  const square = thrustCoefficient * density * diameter ** 4;
  const linear = (square * along) / (diameter * zeroThrustAdvanceRatio);
  return (Math.PI * (linear + Math.sqrt(linear ** 2 + 4 * square * thrust))) / square;
}

/** The same with both ways of running joined about zero thrust by a cubic. */
function joinedShaft(propeller: PropellerPart, density: number, thrust: number, along: number): Shaft {
  if (Math.abs(thrust) >= joinedThrust) return shaftOf(propeller, density, thrust, along);
  const at = (force: number) => shaftOf(propeller, density, force, along);
  const h = 1e-4;
  const [low, lower, high, higher] = [at(-joinedThrust), at(-joinedThrust - h), at(joinedThrust), at(joinedThrust + h)];
  const t = (thrust + joinedThrust) / (2 * joinedThrust);
  const join = (key: keyof Shaft) =>
    low[key] * (1 + 2 * t) * (1 - t) ** 2 +
    ((low[key] - lower[key]) / h) * t * (1 - t) ** 2 * (2 * joinedThrust) +
    high[key] * t ** 2 * (3 - 2 * t) +
    ((higher[key] - high[key]) / h) * t ** 2 * (t - 1) * (2 * joinedThrust);
  return { power: Math.max(0, join("power")), rate: Math.max(0, join("rate")) };
}

/** A propeller that gives `thrust` [N], moving through the air at `velocity` [m/s]. */
export function plainPropeller(
  propeller: PropellerPart,
  density: number,
  thrust: number,
  velocity: Vector,
  bodyRate: Vector,
  turned: { readonly back: number; readonly right: number },
): PlainPropeller {
  const axis = thrustAxis(propeller, turned.back, turned.right);
  const along = dot(velocity, axis);
  const inDisc = less(velocity, scaled(along, axis));
  const across = Math.hypot(...inDisc);
  const area = (Math.PI * propeller.diameter ** 2) / 4;
  const ahead = Math.max(along, 0);
  const straight = joinedShaft(propeller, density, thrust, ahead);
  let shaftPower = straight.power;
  let { rate } = straight;
  let inducedVelocity = 0;
  let drag = 0;
  if (thrust > 0) {
    inducedVelocity = inducedBy(thrust, density, area, along, across);
    // Momentum in the stream as it is instead of along the axis; blade drag grows with the flow across and becomes a force in the disc.
    const axial = thrust * (ahead + propeller.inducedFactor * inducedBy(thrust, density, area, ahead, 0));
    const bladeDrag = axial * (1 / propeller.profileEfficiency - 1);
    // The axial speed with the same flow through the disc, by which the thrust law is read.
    const hoverSquared = thrust / (2 * density * area);
    const through = Math.max(along + inducedVelocity, 0.3 * Math.sqrt(hoverSquared));
    rate *= lawRate(propeller, density, thrust, through - hoverSquared / through) / lawRate(propeller, density, thrust, ahead);
    const tipSpeed = (rate * propeller.diameter) / 2;
    const mu = across / tipSpeed;
    const oblique = thrust * (along + propeller.inducedFactor * inducedVelocity) + bladeDrag * 2.65 * mu ** 2;
    // Lift of rigid blades leans with the inflow: more of it on the side that advances. The body pays that work, the shaft does not.
    const lambda = (along + inducedVelocity) / tipSpeed;
    const solidityTerm = 0.375 * (propeller.solidity ?? 0) * 5.7 * lambda * density * area * tipSpeed ** 2;
    const leaning = lambda * mu * (1.5 * thrust + solidityTerm);
    shaftPower = Math.max(0, shaftPower + oblique - axial - leaning * across);
    drag = (2 * bladeDrag * mu) / tipSpeed + leaning;
  }
  // Run backwards the shaft turns the other way; it goes over with the thrust.
  const sense = (propeller.turns === "clockwise" ? 1 : -1) * Math.min(1, Math.max(-1, thrust / joinedThrust));
  const torque = rate > 0 ? shaftPower / rate : 0;
  const spin = scaled(sense * propeller.inertia * rate, axis);
  return {
    force: sum(scaled(thrust, axis), scaled(across > 0 ? -drag / across : 0, inDisc)),
    moment: sum(scaled(-sense * torque, axis), scaled(-1, cross(bodyRate, spin))),
    axis,
    shaftPower,
    rotationRate: rate,
    inducedVelocity,
  };
}

/** A propeller that stands still: drag along its path. */
export function stoppedPropeller(propeller: PropellerPart, density: number, velocity: Vector): PlainPropeller {
  return {
    force: scaled(-0.5 * density * Math.hypot(...velocity) * propeller.stoppedDragArea, velocity),
    moment: [0, 0, 0],
    shaftPower: 0,
    rotationRate: 0,
    inducedVelocity: 0,
    axis: thrustAxis(propeller),
  };
}
