import { propellerState } from "../aerodynamics/propeller/index.ts";
import { hotelPower } from "../aircraft/index.ts";
import { type MotorState, motorState } from "../drivetrain/motor/index.ts";
import type { FlightConditions, FlightMode } from "./conditions.ts";
import type { TrimState } from "./trim-variables.ts";

/** Where electric power goes, all at the pack's terminals [W], and how far motors are loaded. */
export interface PowerBreakdown {
  readonly rotorShaft: number;
  readonly propellerShaft: number;
  readonly rotorLosses: number;
  readonly propellerLosses: number;
  readonly avionics: number;
  readonly electric: number;
  readonly drive: MotorState;
  readonly left: MotorState;
  readonly right: MotorState;
}

const stopped: MotorState = { electricPower: 0, current: 0, voltage: 0 };

function constantEfficiency(shaftPower: number, efficiency: number): MotorState {
  return { electricPower: shaftPower / efficiency, current: 0, voltage: 0 };
}

function driveState(conditions: FlightConditions, mode: FlightMode, shaftPower: number, tipSpeed: number): MotorState {
  if (mode !== "clutch-closed") return stopped;
  const { rotorDrive, rotor } = conditions.aircraft;
  if (conditions.losses === "constant") {
    return constantEfficiency(shaftPower + rotorDrive.gearConstantLoss, rotorDrive.constantEfficiency);
  }
  return motorState(rotorDrive.motor, {
    power: shaftPower * (1 + rotorDrive.gearProportionalLoss) + rotorDrive.gearConstantLoss,
    rotationRate: (tipSpeed / rotor.radius) * rotorDrive.gearRatio,
  });
}

/** Electric power of every consumer for a trim state; `rotorTorque` is the shaft's, positive when the motor drives. */
export function powerBreakdown(
  conditions: FlightConditions,
  mode: FlightMode,
  airspeed: number,
  state: TrimState,
  rotorTorque: number,
): PowerBreakdown {
  const { aircraft, air, loading } = conditions;
  const avionics = hotelPower(aircraft, loading, conditions.lightsOn);
  const rotorShaft = mode === "clutch-closed" ? (rotorTorque * state.tipSpeed) / aircraft.rotor.radius : 0;
  const drive = driveState(conditions, mode, rotorShaft, state.tipSpeed);
  if (mode === "glide") {
    return {
      rotorShaft: 0,
      propellerShaft: 0,
      rotorLosses: 0,
      propellerLosses: 0,
      avionics,
      electric: avionics,
      drive,
      left: stopped,
      right: stopped,
    };
  }
  const flow = { density: air.density, airspeed };
  const propeller = (thrust: number) => {
    const shaft = propellerState(aircraft.propellers, flow, thrust);
    const motor =
      conditions.losses === "constant"
        ? constantEfficiency(shaft.shaftPower, aircraft.propellers.constantEfficiency)
        : motorState(aircraft.propellers.motor, { power: shaft.shaftPower, rotationRate: shaft.rotationRate });
    return { shaftPower: shaft.shaftPower, motor };
  };
  const left = propeller((state.thrustSum - state.thrustDifference) / 2);
  const right = propeller((state.thrustSum + state.thrustDifference) / 2);
  const propellerShaft = left.shaftPower + right.shaftPower;
  const propellerElectric = left.motor.electricPower + right.motor.electricPower;
  return {
    rotorShaft,
    propellerShaft,
    rotorLosses: drive.electricPower - rotorShaft,
    propellerLosses: propellerElectric - propellerShaft,
    avionics,
    electric: drive.electricPower + propellerElectric + avionics,
    drive,
    left: left.motor,
    right: right.motor,
  };
}
