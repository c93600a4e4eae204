import type { Air } from "../../environment/atmosphere/index.ts";

/** What a propeller is exposed to. */
export interface PropellerCondition {
  /** Ω; negative turned backwards, 0 stopped [rad/s]. */
  readonly rotationRate: number;
  /** V, 0 or more [m/s]. */
  readonly airspeed: number;
  /**
   * Between the shaft and the stream: 0 from ahead along the shaft, π/2 in the plane of the disc, π from behind; its sign does
   * not count, since forces in the disc are given along the stream and across it [rad].
   */
  readonly inflowAngle: number;
  readonly air: Air;
}

/** Along the blade, root to tip. */
export interface BladeRing {
  readonly radiusFraction: number;
  readonly width: number;
  /** Of all blades on this ring [N], [N m]. */
  readonly thrust: number;
  readonly torque: number;
  /** Of the mean flow [rad], [1]. */
  readonly angleOfAttack: number;
  readonly reynolds: number;
  /** Through the disc, and around the shaft in the sense of rotation [m/s]. */
  readonly inducedVelocity: number;
  readonly swirlVelocity: number;
}

/** Forces on the shaft of a propeller. */
export interface PropellerLoads {
  readonly kind: "solved";
  /** Along the shaft, forward [N]. */
  readonly thrust: number;
  /** That the shaft must give, in the sense of positive rotation [N m]. */
  readonly torque: number;
  /** In the disc, along the part of the stream that lies in it [N]. */
  readonly normalForce: number;
  /** In the disc, towards the side where a blade turning forwards meets the stream [N]. */
  readonly sideForce: number;
  /** Turns the thrust towards where the stream in the disc flows: nose up when it comes from below [N m]. */
  readonly pitchingMoment: number;
  /** Moves forward the side on which a blade turning forwards retreats [N m]. */
  readonly yawingMoment: number;
  /** Mean over the disc; null where it is not computed [m/s]. */
  readonly inducedVelocity: number | null;
  /** Power of the induced velocities; null where it is not computed [W]. */
  readonly inducedPower: number | null;
  /** Innermost first; empty where there are no blades. */
  readonly rings: readonly BladeRing[];
  /** What was continued beyond where the numbers come from, one phrase each. */
  readonly extrapolated: readonly string[];
}

export interface NoPropellerLoads {
  readonly kind: "none";
  /** One sentence without its full stop. */
  readonly reason: string;
}

/** A propeller as something that answers what it does: by its blades, by measurements, or by momentum alone. */
export interface PropellerSource {
  readonly kind: "blades" | "measured" | "momentum";
  /** D [m]. */
  readonly diameter: number;
  /** Chord at 0.75 R for the Reynolds number; undefined where it is not known [m]. */
  readonly referenceChord: number | undefined;
  loadsAt(condition: PropellerCondition): PropellerLoads | NoPropellerLoads;
}

/** Neither across nor about: what sources without a view of the blades leave out. */
export const axialOnly = {
  normalForce: 0,
  sideForce: 0,
  pitchingMoment: 0,
  yawingMoment: 0,
  inducedVelocity: null,
  inducedPower: null,
  rings: [],
} as const;
