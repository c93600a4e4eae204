import type { MotorDefinition, MotorThermal } from "../../drivetrain/motor/index.ts";
import type { Problem, ProjectView } from "../contract.ts";
import { type Assumed, chosenAircraft, isProblem } from "../inputs/flight-conditions.ts";

/** A motor ready to be asked. */
export interface MotorPart {
  readonly definition: MotorDefinition;
  /** [A]; undefined where none is stated. */
  readonly currentMaximum: number | undefined;
  readonly thermal: MotorThermal | undefined;
  /** Rates that the table of the no-load current covers [rad/s]; undefined without a table. */
  readonly noLoadRange: readonly [number, number] | undefined;
  /** Electric power that an aircraft file allows without end [W]. */
  readonly continuousElectricPower: number | undefined;
  readonly assumed: Assumed;
}

/** The standard temperature coefficient of copper at 20 °C [1/K]. */
const copper = 0.00393;
/** Temperature at which an aircraft file states resistance [K]. Common practice: the file does not say. */
const roomTemperature = 298.15;

/** A motor of an aircraft file with its controller, the rotor's with its gear. */
export function motorFromAircraft(view: ProjectView, path: string, part: "rotor-drive" | "propellers"): MotorPart | Problem {
  const chosen = chosenAircraft(view, path);
  if (isProblem(chosen)) return chosen;
  const { rotorDrive, propellers } = chosen.aircraft;
  const own = part === "rotor-drive" ? rotorDrive.motor : propellers.motor;
  const gear =
    part === "rotor-drive"
      ? [{ ratio: rotorDrive.gearRatio, constantLoss: rotorDrive.gearConstantLoss, proportionalLoss: rotorDrive.gearProportionalLoss }]
      : [];
  const definition: MotorDefinition = {
    speedConstant: own.speedConstant,
    resistance: own.resistance,
    resistanceTemperature: roomTemperature,
    temperatureCoefficient: copper,
    noLoadCurrent: { kind: "coefficients", constant: own.noLoadCurrent, perRate: 0, perRateSquared: 0 },
    poleCount: 2 * own.polePairs,
    controller: {
      constantLoss: own.controllerConstantLoss,
      proportionalLoss: own.controllerProportionalLoss,
      dutyMaximum: own.controllerDutyMaximum,
    },
    gear,
  };
  return {
    definition,
    currentMaximum: own.currentMaximum,
    thermal: { heatCapacity: own.heatCapacity, thermalResistance: own.thermalResistance, temperatureMaximum: own.temperatureMaximum },
    noLoadRange: undefined,
    continuousElectricPower: own.continuousPower,
    assumed: [
      {
        path: "/motor/resistanceTemperature",
        value: roomTemperature,
        because: "the aircraft file does not say at which temperature resistance holds",
      },
    ],
  };
}
