import type { MotorDefinition, MotorThermal } from "../../drivetrain/motor/index.ts";
import type { Problem, ProjectView } from "../contract.ts";
import { chosenPart } from "../inputs/chosen-part.ts";
import { type Assumed, isProblem } from "../inputs/flight-conditions.ts";

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

/** The motor of a drive line of an aircraft file with its controller and gear: the rotor's when none is named. */
export function motorFromAircraft(view: ProjectView, path: string, part: string | undefined): MotorPart | Problem {
  const chosen = chosenPart(
    view,
    path,
    "driveLines",
    part,
    ({ driveLines }, roles) => driveLines.find(({ drives }) => drives === roles?.rotor)?.id,
  );
  if (isProblem(chosen)) return chosen;
  const { id, motors, gearStages: gear } = chosen.part;
  const own = motors[0]?.motor;
  if (own === undefined) return { kind: "part-unknown", message: `The drive line ${id} of ${path} has no motor.` };
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
      ...(motors.length > 1
        ? [
            {
              path: "/motor/part",
              value: motors[0]?.id,
              because: `one of ${motors.length} motors that share the shaft, as if it were alone`,
            },
          ]
        : []),
    ],
  };
}
