import type { BatteryDefinition } from "./battery-part.ts";
import type { Control } from "./control.ts";
import type { ControlPart } from "./control-part.ts";
import type { ElectricalNetwork } from "./electrical-network.ts";
import type { LimitsPart, PayloadRecord } from "./loading-records.ts";
import type { MotorDefinition } from "./motor-part.ts";
import type { Place } from "./placement.ts";
import type { PropellerPart } from "./propeller-part.ts";
import type { RotorPart } from "./rotor-part.ts";
import type { SurfaceStall } from "./surface-part.ts";

/** Controls of the one rotor, by the state of its clutch. */
export interface RotorControls {
  readonly clutchClosed: {
    readonly tipSpeed: Control;
    readonly tipSpeedReference?: Extract<ControlPart, { readonly what: "tip-speed" }>["reference"];
    readonly collective: Control;
  };
  readonly clutchOpen: { readonly collective: Control; readonly tipSpeedMinimum: number; readonly tipSpeedMaximum: number };
}

/** What drives the rotor: one motor, all gear stages as one. */
export interface RotorDrive {
  readonly motor: MotorDefinition;
  readonly gearRatio: number;
  readonly gearConstantLoss: number;
  readonly gearProportionalLoss: number;
  /** Electric to shaft efficiency where losses are taken as constant. */
  readonly constantEfficiency: number;
}

/** Two propellers that mirror each other. */
export interface PropellersDefinition extends Omit<PropellerPart, "id" | "place" | "axis" | "turns" | "stoppedDragArea"> {
  /** The right one. */
  readonly place: Place;
  readonly motor: MotorDefinition;
  readonly constantEfficiency: number;
}

/** A lifting wing whose incidence is set. */
export interface WingDefinition {
  readonly area: number;
  readonly span: number;
  /** Chord to the plane normal to the rotor shaft. */
  readonly incidence: Control;
  readonly liftSlope: number;
  readonly maximumLiftCoefficient: number;
  readonly trimLiftFraction: number;
  readonly cd0: number;
  readonly spanEfficiency: number;
  readonly stallAngle: number;
  readonly stallSharpness: number;
  readonly flatPlateCoefficient: number;
  /** Induced velocity of the rotor at the wing over that at the disc. */
  readonly rotorDownwashFactor: number;
}

/** Tailplane by what the benches ask of it: it carries nothing in a trim of three equations. */
export interface TailplaneDefinition {
  readonly area: number;
  readonly span: number;
  readonly liftSlope: number;
  readonly maximumLiftCoefficient: number;
  readonly cd0: number;
  readonly spanEfficiency: number;
  readonly stall?: SurfaceStall | undefined;
}

/** Fin: its lift is free within its largest lift coefficient. */
export interface FinDefinition {
  readonly place: Place;
  readonly area: number;
  readonly liftSlope: number;
  readonly aspectRatio: number;
  readonly spanEfficiency: number;
  readonly maximumLiftCoefficient: number;
  readonly cd0: number;
  readonly stall?: SurfaceStall | undefined;
}

/** Everything that has drag and is nothing else. */
export interface BodyDrag {
  readonly dragArea: number;
  readonly verticalDragArea: number;
  /** Induced velocity of the rotor at the body over that at the disc. */
  readonly rotorDownwashFactor: number;
  /** Of all stopped propellers together. */
  readonly stoppedPropellersDragArea: number;
}

/**
 * An aircraft as the trim level `reduced` knows it: one rotor that teeters, two propellers beside each other, one wing, one
 * tailplane, one fin, one body; forces in the vertical plane and yaw. Made by {@link reducedAircraft}. SI.
 */
export interface ReducedAircraft {
  readonly name: string;
  readonly emptyMass: number;
  readonly rotor: RotorPart;
  readonly rotorControls: RotorControls;
  readonly rotorDrive: RotorDrive;
  readonly propellers: PropellersDefinition;
  readonly wing: WingDefinition;
  readonly tailplane: TailplaneDefinition;
  readonly fin: FinDefinition;
  readonly body: BodyDrag;
  readonly battery: BatteryDefinition;
  readonly electrical: ElectricalNetwork;
  readonly payloads: readonly PayloadRecord[];
  readonly limits: LimitsPart;
}
