import { propellerState } from "../aerodynamics/propeller/index.ts";
import { inducedInflow } from "../aerodynamics/rotor/index.ts";
import type { PropellerPart } from "../aircraft/index.ts";
import { dot, type Vector } from "./axes.ts";

/** A propeller at work: loads at its place, body axes, and what its shaft asks for. */
export interface PropellerLoads {
  /** Thrust and, in a flow across the axis, the force in the disc [N]. */
  readonly force: Vector;
  /** Reaction of the shaft's torque on the airframe [N m]. */
  readonly reaction: Vector;
  readonly axis: Vector;
  readonly thrust: number;
  /** Never negative [W]. */
  readonly shaftPower: number;
  /** Without its sign [rad/s]. */
  readonly rotationRate: number;
  /** About the thrust axis, right-handed [rad/s]. */
  readonly spin: number;
  readonly torque: number;
  /** At the disc, along the thrust backwards [m/s]. */
  readonly inducedVelocity: number;
  /** Velocity of the disc through the air in its plane [m/s]. */
  readonly inPlane: Vector;
  /** Flow through the disc, induced included, backwards positive [m/s]. */
  readonly through: number;
}

/** Growth of profile power of the shaft, and of the force in the disc, with the flow across the axis. @source johnson-1980, profile power in forward flight, from memory */
const profileGrowth = 2.65;
const discForce = 2;
/** Thrust within which a propeller changes its way, as in `propellerState` [N]. */
const reversal = 0.5;

/** Flow through a disc below this share of hover's is the ring state, of which the thrust law says nothing: it is read there [1]. */
const leastThrough = 0.3;

/** Turns per second that the thrust law asks for, in a flow along the axis of either sign. */
function turnsFor(part: PropellerPart, density: number, thrust: number, axialSpeed: number): number {
  const half = axialSpeed / (2 * part.zeroThrustAdvanceRatio * part.diameter);
  return half + Math.sqrt(half * half + thrust / (part.thrustCoefficient * density * part.diameter ** 4));
}

/** Lift slope of blades of small propellers per radian (common practice). */
const bladeLiftSlope = 5.7;

/** Force in the disc from lift that leans with the inflow; without a solidity its smaller part is left out [N]. */
function liftForce({ solidity = 0 }: PropellerPart, scale: number, thrust: number, lambda: number, mu: number): number {
  return lambda * mu * (1.5 * thrust + 0.375 * solidity * bladeLiftSlope * lambda * scale);
}

/** Direction of the thrust in body axes, with a tilt beyond the built-in direction (back is up for one that pulls). */
export function thrustAxis(part: PropellerPart, tiltBack: number, tiltRight: number): Vector {
  const up = part.axis.up + tiltBack;
  const right = part.axis.right + tiltRight;
  return [Math.cos(up) * Math.cos(right), Math.cos(up) * Math.sin(right), -Math.sin(up)];
}

/**
 * A propeller that gives a thrust, by momentum theory with loss factors, in a flow from any direction.
 *
 *     along the axis      as `propellerState`: T = 2ρA(V+v)v, P = T(V + f v)/η
 *     across it too       v from T = 2ρA v √(V_t² + (V_n + v)²), P = T(V_n + f v) + P₀(1 + 2.65 μ²) − H_i V_t
 *                         H = 2 P₀ μ/U + H_i, H_i = T λ μ (3/2 + 3/8 σ a λ/C_T)
 *
 * with P₀ the blade-drag part in axial flow. The rate follows from the thrust law at the axial speed whose flow through the disc is the same,
 * V_e = V_n + v − v_h²/(V_n + v): flow across the disc makes room for more thrust at the same rate, or for less rate. Backwards as
 * `propellerState`, with the flow along the axis alone.
 *
 * @param velocity of the disc through the air [m/s]
 * @param wash velocity backwards along the axis of the air that other propellers move [m/s]
 * @source leishman-2006, momentum theory in forward flight, unchecked
 * @derivation continuous with the axial formulas where nothing flows across; H_i is the tilt of the lift of rigid untwisted blades, whose work the shaft does not
 *   give a second time
 */
export function propellerLoads(
  part: PropellerPart,
  density: number,
  axis: Vector,
  velocity: Vector,
  thrust: number,
  wash = 0,
): PropellerLoads {
  const along = dot(velocity, axis);
  const axial = along + wash;
  const inPlane: Vector = [velocity[0] - along * axis[0], velocity[1] - along * axis[1], velocity[2] - along * axis[2]];
  const across = Math.sqrt(inPlane[0] ** 2 + inPlane[1] ** 2 + inPlane[2] ** 2);
  const area = (Math.PI * part.diameter ** 2) / 4;
  const state = propellerState(part, { density, airspeed: Math.max(axial, 0) }, thrust);
  // Run backwards the shaft turns the other way; within the joint of both it passes through rest.
  const way = Math.min(1, Math.max(-1, thrust / reversal));
  const sense = (part.turns === "clockwise" ? -1 : 1) * way;
  let shaftPower = state.shaftPower;
  let { rotationRate } = state;
  let drag = 0;
  let induced = 0;
  if (thrust > 0) {
    const hover = Math.sqrt(thrust / (2 * density * area));
    const reference = Math.max(hover, 1e-6);
    const ct = thrust / (density * area * reference * reference);
    induced = inducedInflow({ ct, mu: across / reference, lambdaC: axial / reference, kappa: 1 }) * reference;
    if (across > 0 || axial < 0) {
      const inAxialFlow = thrust / (2 * density * area) / (Math.max(axial, 0) / 2 + Math.sqrt(Math.max(axial, 0) ** 2 / 4 + hover * hover));
      const blade = thrust * (Math.max(axial, 0) + part.inducedFactor * inAxialFlow) * (1 / part.profileEfficiency - 1);
      const through = Math.max(axial + induced, leastThrough * hover);
      rotationRate *= turnsFor(part, density, thrust, through - hover ** 2 / through) / turnsFor(part, density, thrust, Math.max(axial, 0));
      const tip = rotationRate * (part.diameter / 2);
      const mu = tip > 0 ? across / tip : 0;
      const oblique = thrust * (axial + part.inducedFactor * induced) + blade * (1 + profileGrowth * mu * mu);
      const alongAxis = thrust * (Math.max(axial, 0) + part.inducedFactor * inAxialFlow) + blade;
      // What obliqueness changes, on top of the law that is continuous through zero thrust.
      const lifting = tip > 0 ? liftForce(part, density * area * tip * tip, thrust, (axial + induced) / tip, mu) : 0;
      shaftPower = Math.max(0, state.shaftPower + oblique - alongAxis - lifting * across);
      drag = tip > 0 ? (discForce * blade * mu) / tip + lifting : 0;
    }
  }
  const pull = across > 0 ? -drag / across : 0;
  const torque = rotationRate > 1e-9 ? shaftPower / rotationRate : 0;
  return {
    force: [thrust * axis[0] + pull * inPlane[0], thrust * axis[1] + pull * inPlane[1], thrust * axis[2] + pull * inPlane[2]],
    // Seen along the thrust a clockwise propeller turns about the axis: the airframe is turned against it.
    reaction: [sense * torque * axis[0], sense * torque * axis[1], sense * torque * axis[2]],
    axis,
    thrust,
    shaftPower,
    rotationRate,
    spin: -sense * rotationRate,
    torque,
    inducedVelocity: induced,
    inPlane,
    through: axial + induced,
  };
}
