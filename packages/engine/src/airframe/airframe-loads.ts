import type { AircraftDefinition, Loading } from "../aircraft/index.ts";
import type { AirState } from "../environment/atmosphere/index.ts";
import type { Vector } from "./axes.ts";
import type { DrivePower, LossModel } from "./drive-power.ts";
import type { RotorLoads } from "./rotor-loads.ts";
import type { PropellerLoads } from "./thrust-propeller.ts";

/** Mass, its centre in the axes of the file [m] and inertia about it, row by row [kg m²]. */
export interface AirframeMass {
  readonly mass: number;
  readonly centre: { readonly x: number; readonly y: number; readonly z: number };
  readonly inertia: Float64Array;
}

export interface AirframeConditions {
  readonly aircraft: AircraftDefinition;
  readonly loading: Loading;
  readonly air: AirState;
  readonly losses: LossModel;
  /** What is drawn at the pack's terminals by everything but drive lines [W]. */
  readonly hotelPower: number;
  readonly mass: AirframeMass;
  /** @defaultValue 24 azimuths, 16 radial elements */
  readonly rotorMesh?: { readonly azimuths: number; readonly radialElements: number };
}

/** Motion of the centre of gravity through the air [m/s] and rates of the body [rad/s], body axes. */
export interface AirframeMotion {
  readonly velocity: Vector;
  readonly rates: Vector;
}

/** Numbers of a rotor's own state: tip speed [m/s], λ_i [1], flapping back and right [rad], coning [rad]. */
export const rotorStateWidth = 5;

/** Force and moment of one part about the centre of gravity, body axes [N, N m]. */
export interface PartLoads {
  readonly id: string;
  readonly kind: "rotor" | "propeller" | "surface" | "body";
  readonly force: Vector;
  readonly moment: Vector;
}

/** What the aircraft's surfaces do, for limits. */
export interface SurfaceReading {
  readonly id: string;
  readonly lift: number;
  readonly lowestLift: number;
  readonly highestLift: number;
  /** Extreme angles of attack of its strips, from that without lift [rad]. */
  readonly lowestAngle: number;
  readonly highestAngle: number;
  readonly angle: number;
}

/** Everything that the air and the shafts do to the aircraft in one state; weight is not in it. */
export interface AirframeLoads {
  /** Body axes [N]. */
  readonly force: Vector;
  /** About the centre of gravity [N m]. */
  readonly moment: Vector;
  readonly parts: readonly PartLoads[];
  readonly rotors: readonly RotorLoads[];
  readonly propellers: readonly PropellerLoads[];
  readonly surfaces: readonly SurfaceReading[];
  readonly drives: readonly DrivePower[];
  /** Drawn from the pack [W]. */
  readonly electricPower: number;
}
