import { totalRatio, windingResistance } from "../../drivetrain/motor/index.ts";
import type { Coordinates } from "../../published/index.ts";
import type { Warning } from "../contract.ts";
import type { MotorReading } from "./input.ts";
import type { MotorOutputs, MotorRow } from "./output-schema.ts";
import { startOf } from "./rows.ts";
import type { MotorInputs } from "./schema.ts";

/** Where a motor works, in shares that do not depend on its size: current over stall current, and no-load current likewise. */
export function motorCoordinates(reading: MotorReading, inputs: MotorInputs, current: number | null): Coordinates {
  const stall = inputs.voltage / windingResistance(reading.definition, startOf(inputs));
  const { noLoadCurrent } = reading.definition;
  const idle = noLoadCurrent.kind === "table" ? noLoadCurrent.currents[0] : noLoadCurrent.constant;
  return { currentShare: current === null ? null : current / stall, noLoadShare: idle === undefined ? null : idle / stall };
}

/** Above this share of the stall current most motors have left the straight line of torque over current. Common practice. */
const straightShare = 0.5;

type Told = Omit<MotorOutputs, "curve">;

export function motorWarnings(reading: MotorReading, inputs: MotorInputs, outputs: Told): readonly Warning[] {
  return [...rowWarnings(reading, inputs, outputs.rows), ...tableWarnings(reading, outputs.rows), ...notes(reading, outputs)];
}

function care(kind: string, message: string): Warning {
  return { grade: "care", kind, message };
}

function rowWarnings({ currentMaximum, thermal }: MotorReading, inputs: MotorInputs, rows: readonly MotorRow[]): readonly Warning[] {
  const counted = (kind: string, holds: (row: MotorRow) => boolean, message: string): readonly Warning[] => {
    const count = rows.filter(holds).length;
    return count === 0 ? [] : [care(kind, count === rows.length ? message : `In ${count} of ${rows.length} points: ${message}`)];
  };
  const stall = (row: MotorRow): number => Math.abs(row.current ?? 0) * (row.motorVoltage === null ? 0 : 1);
  return [
    ...counted("no-state", (row) => row.problem !== null, "there is no such state; each row says why."),
    ...counted(
      "current",
      (row) => currentMaximum !== undefined && stall(row) > currentMaximum,
      `the current is above the ${currentMaximum ?? 0} A that the motor may carry.`,
    ),
    ...counted(
      "temperature",
      (row) => row.timeToLimit !== null,
      `the winding passes its limit of ${celsius(thermal?.temperatureMaximum ?? 0)} after a time.`,
    ),
    ...counted(
      "gives-back",
      (row) => row.mode === "generator",
      "power goes back into the supply; whether controller and battery take it is for their makers to say.",
    ),
    ...counted(
      "saturation",
      (row) => (row.motorVoltage ?? 0) > 0 && (row.copperLoss ?? 0) > straightShare * inputs.voltage * stall(row),
      "more than half of the stall current flows: iron may saturate, and torque then lags behind current.",
    ),
  ];
}

const celsius = (temperature: number): string => `${(temperature - 273.15).toFixed(0)} °C`;

function tableWarnings(reading: MotorReading, rows: readonly MotorRow[]): readonly Warning[] {
  const warnings: Warning[] = [];
  const beyond = (range: readonly [number, number] | undefined, rates: readonly number[]): boolean =>
    range !== undefined && rates.some((rate) => rate < range[0] || rate > range[1]);
  const motorRates = rows.flatMap((row) => (row.motorRotationRate === null ? [] : [row.motorRotationRate]));
  if (beyond(reading.noLoadRange, motorRates))
    warnings.push(care("beyond-table", "The motor turns at rates beyond the table of its no-load current: the nearest row is used."));
  const { load } = reading;
  if (load?.kind === "table") {
    const range = [load.rotationRates[0] ?? 0, load.rotationRates[load.rotationRates.length - 1] ?? 0] as const;
    const ratio = totalRatio(reading.definition.gear);
    if (
      beyond(
        range,
        motorRates.map((rate) => rate / ratio),
      )
    )
      warnings.push(care("beyond-table", "The shaft turns at rates beyond the table of the load: the nearest row is used."));
  }
  return warnings;
}

function notes({ thermal }: MotorReading, { domain }: Told): readonly Warning[] {
  const warnings: Warning[] = [];
  const note = (kind: string, message: string): void => {
    warnings.push({ grade: "note", kind, message });
  };
  if (!thermal) note("no-thermal-data", "Without thermal data the winding is taken to stay at its temperature at the start.");
  if (domain.nearest !== null)
    note("no-measurement", "The model is held against worked examples and closed forms, not against a measured motor.");
  return warnings;
}
