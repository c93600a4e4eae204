import type { LoadCurve, NoLoadCurrent } from "../../drivetrain/motor/index.ts";
import type { Need, Problem, ProjectView } from "../contract.ts";
import { isProblem } from "../inputs/flight-conditions.ts";
import { type TableInput, tableNeeds, tableRows } from "../inputs/table-input.ts";
import { type MotorPart, motorFromAircraft } from "./from-aircraft.ts";
import { noLoadRow, type WrittenMotor } from "./part-schema.ts";
import { loadRow, type MotorInputs } from "./schema.ts";

export interface MotorReading extends MotorPart {
  readonly load: LoadCurve | undefined;
}

export function motorNeeds({ motor, load }: MotorInputs): readonly Need[] {
  const own: readonly Need[] = "aircraft" in motor ? [{ kind: "document", path: motor.aircraft }] : tableNeeds(motor.noLoadCurrent);
  return [...own, ...(load && "rows" in load ? tableNeeds(load.rows) : [])];
}

/** The motor and the load that the inputs mean, or why there is none. */
export function motorReading(view: ProjectView, inputs: MotorInputs): MotorReading | Problem {
  const { motor } = inputs;
  const part = "aircraft" in motor ? motorFromAircraft(view, motor.aircraft, motor.part) : writtenPart(view, motor);
  if (isProblem(part)) return part;
  const load = loadOf(view, inputs);
  return load !== undefined && isLoadProblem(load) ? load : { ...part, load };
}

function writtenPart(view: ProjectView, motor: WrittenMotor): MotorPart | Problem {
  const idle = noLoadOf(view, motor.noLoadCurrent);
  if ("problem" in idle) return idle.problem;
  const { speedConstant, resistance, resistanceTemperature, temperatureCoefficient, poleCount, controller, gear } = motor;
  return {
    definition: {
      speedConstant,
      resistance,
      resistanceTemperature,
      temperatureCoefficient,
      poleCount,
      controller,
      gear,
      noLoadCurrent: idle.law,
    },
    currentMaximum: motor.currentMaximum,
    thermal: motor.thermal,
    noLoadRange: idle.range,
    continuousElectricPower: undefined,
    assumed: [],
  };
}

type NoLoadReading = { readonly law: NoLoadCurrent; readonly range: readonly [number, number] | undefined } | { readonly problem: Problem };

function noLoadOf(view: ProjectView, given: WrittenMotor["noLoadCurrent"]): NoLoadReading {
  if (typeof given === "number") return { law: { kind: "coefficients", constant: given, perRate: 0, perRateSquared: 0 }, range: undefined };
  if ("constant" in given) return { law: { kind: "coefficients", ...given }, range: undefined };
  const table = risingRows(view, given, noLoadRow, "no-load current");
  if ("problem" in table) return table;
  const rotationRates = table.rows.map((row) => row.rotationRate);
  return {
    law: { kind: "table", rotationRates, currents: table.rows.map((row) => row.noLoadCurrent) },
    range: [rotationRates[0] ?? 0, rotationRates[rotationRates.length - 1] ?? 0],
  };
}

function isLoadProblem(load: LoadCurve | Problem): load is Problem {
  return "message" in load;
}

function loadOf(view: ProjectView, { load }: MotorInputs): LoadCurve | Problem | undefined {
  if (!load) return undefined;
  if (!("rows" in load)) return { kind: "power-law", ...load };
  const table = risingRows(view, load.rows, loadRow, "load");
  if ("problem" in table) return table.problem;
  return { kind: "table", rotationRates: table.rows.map((row) => row.rotationRate), torques: table.rows.map((row) => row.torque) };
}

type RateRow = { readonly rotationRate: number };

/** Rows by rising rate; a rate that stands there twice is named with its place. */
function risingRows<Row extends RateRow>(
  view: ProjectView,
  given: TableInput<Row>,
  schema: Parameters<typeof tableRows<Row>>[2],
  what: string,
): { readonly rows: readonly Row[] } | { readonly problem: Problem } {
  const table = tableRows(view, given, schema);
  if (table.problem) return { problem: table.problem };
  if (table.rows.length < 2)
    return { problem: { kind: "table-short", message: `${table.name}: a table of the ${what} needs at least two rows.` } };
  const placed = table.rows.map((row, index) => ({ row, index })).toSorted((a, b) => a.row.rotationRate - b.row.rotationRate);
  for (const [at, { row, index }] of placed.entries()) {
    const before = placed[at - 1];
    if (before?.row.rotationRate === row.rotationRate) {
      const message = `${table.place(index)}: the rate ${row.rotationRate} rad/s stands there already at ${table.place(before.index)}.`;
      return { problem: { kind: "table-duplicate", message } };
    }
  }
  return { rows: placed.map(({ row }) => row) };
}
