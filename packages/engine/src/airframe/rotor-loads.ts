import type { Vector } from "./axes.ts";

/** How a rotor is set and what its own state is; angles in radians, signs of the aircraft whatever the sense of rotation. */
export interface RotorSetting {
  readonly collective: number;
  /** Tilts the disc back. */
  readonly longitudinalCyclic: number;
  /** Tilts the disc right. */
  readonly lateralCyclic: number;
  /** Of the shaft beyond its built-in tilt. */
  readonly tiltBack: number;
  readonly tiltRight: number;
  /** Ω R [m/s]. */
  readonly tipSpeed: number;
  /** λ_i [1]. */
  readonly inducedInflow: number;
  /** a₁ and b₁: disc back, disc down on the right, relative to the shaft. */
  readonly flapBack: number;
  readonly flapRight: number;
  /** β₀; the precone where blades do not cone by themselves. */
  readonly coning: number;
}

/** Loads of a rotor on the airframe and what is left of its own balance. */
export interface RotorLoads {
  /** At the hub, body axes [N]. */
  readonly force: Vector;
  /** On the hub from stiff or offset hinges, without the shaft's torque [N m]. */
  readonly hubMoment: Vector;
  /** Shaft direction, thrust positive. */
  readonly shaft: Vector;
  /** Normal of the disc, thrust positive. */
  readonly disc: Vector;
  /** +1 turned about the thrust direction (counter-clockwise from above), −1 against it. */
  readonly sense: 1 | -1;
  /** Along the disc's normal [N]. */
  readonly thrust: number;
  /** In the disc, along the flow and across it towards the advancing side [N]. */
  readonly hForce: number;
  readonly sideForce: number;
  /** That the shaft must give [N m]. */
  readonly torque: number;
  readonly ct: number;
  readonly cq: number;
  /** In and through the disc, over tip speed. */
  readonly advanceRatio: number;
  readonly axialInflow: number;
  /** Mean induced velocity [m/s]. */
  readonly inducedVelocity: number;
  /** Induced flow missing from momentum, as an inflow [1]. */
  readonly inflowResidual: number;
  /** Flap moments left over, as angles [1]. */
  readonly flapResidualCosine: number;
  readonly flapResidualSine: number;
  readonly coningResidual: number;
}
