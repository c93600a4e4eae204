import { type CaseRow, column } from "../cases.ts";
import { outputsOf } from "../run-analysis.ts";

export interface BatteryOutputs {
  readonly endedBy: string;
  readonly capacityDelivered: number;
  readonly energyOut: number;
  readonly meanVoltage: number;
  readonly dip: { readonly time: number; readonly recovery: number } | null;
  readonly rows: readonly { readonly time: number; readonly voltage: number; readonly openCircuitVoltage: number }[];
}

/** A cell size of the source: nominal charge [A h], current [A], mass [kg], outer surface [m²], charges of the columns v1 to v4 [A h]. */
export interface CellSize {
  readonly name: string;
  readonly capacity: number;
  readonly current: number;
  readonly mass: number;
  readonly area: number;
  readonly charges: readonly number[];
}

/** Masses from memory; surface of a cylinder of the size's name. */
export const sizes: Readonly<Record<number, CellSize>> = {
  18650: { name: "18650", capacity: 3.4, current: 3.395, mass: 0.0475, area: 0.00418, charges: [0.5, 1, 1.5, 2] },
  21700: { name: "21700", capacity: 5, current: 4.998, mass: 0.0695, area: 0.00531, charges: [0.5, 1, 2, 3] },
};

/** Heat from the cell's surface to the air of the chamber [W/(m² K)], fitted to the 18650 rows with the two laws of the built-in cell. */
export const chamberCooling = 24.4;

/** One discharge of the source, asked of the built-in cell in that size. */
export function discharge(
  row: CaseRow,
  size: CellSize,
  contactResistance: number,
  more: { readonly startStateOfCharge?: number; readonly cell?: unknown; readonly cooling?: number } = {},
): BatteryOutputs {
  return outputsOf<BatteryOutputs>("battery", {
    cell: more.cell ?? "reference-nca",
    capacity: size.capacity * 3600,
    cellMass: size.mass,
    wiringResistance: contactResistance,
    ambientTemperature: column(row, "celsius") + 273.15,
    cooling: { thermalResistance: 1 / ((more.cooling ?? chamberCooling) * size.area) },
    startStateOfCharge: more.startStateOfCharge ?? column(row, "start_soc"),
    load: { current: size.current },
    limits: { cutoffVoltage: 2.5 },
    timeStep: 10,
  });
}

/** Contacts and leads of a cell [Ω]: what brings its mean voltage at 25 °C to the measured one. By bisection. */
export function contactResistanceOf(warm: CaseRow, size: CellSize, more: Parameters<typeof discharge>[3] = {}): number {
  let low = 0;
  let high = 0.15;
  for (let i = 0; i < 24; i++) {
    const middle = (low + high) / 2;
    if (discharge(warm, size, middle, more).meanVoltage > column(warm, "mean_v")) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Resistance that ten seconds of the discharge show [Ω]. */
export function tenSecondResistance({ rows }: BatteryOutputs, size: CellSize): number {
  const [first] = rows;
  const tenth = rows.find((row) => row.time === 10);
  if (!first || !tenth) throw new Error("the discharge ends before ten seconds");
  return (first.openCircuitVoltage - tenth.voltage) / size.current;
}

/** Voltage after so much charge [A h]; undefined when the discharge has ended before. */
export function voltageAfter({ rows }: BatteryOutputs, size: CellSize, charge: number): number | undefined {
  const time = (charge * 3600) / size.current;
  const after = rows.findIndex((row) => row.time >= time);
  const high = rows[after];
  const low = rows[after - 1];
  if (!high || !low) return undefined;
  return low.voltage + ((high.voltage - low.voltage) * (time - low.time)) / (high.time - low.time);
}
