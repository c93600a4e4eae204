import type { Answer, Limit } from "../contract.ts";
import { reading, type Token, words } from "../tokens.ts";
import type { MotorOutputs, MotorRow } from "./output-schema.ts";
import type { MotorInputs } from "./schema.ts";

/** What the best point gives, and how long the motor bears what was asked. */
export function motorAnswer(outputs: MotorOutputs): Answer {
  const index = strongestRow(outputs.rows);
  const row = index === undefined ? undefined : outputs.rows[index];
  const first = row === undefined ? noState(outputs) : stateWords(row, `/rows/${index}`);
  return { sentence: [...first, ...ratingWords(outputs)], brief: briefOf(outputs, row) };
}

function strongestRow(rows: readonly MotorRow[]): number | undefined {
  let best: number | undefined;
  rows.forEach((row, index) => {
    if (row.problem === null && (best === undefined || (row.shaftPower ?? 0) > (rows[best]?.shaftPower ?? 0))) best = index;
  });
  return best;
}

function noState({ rows }: MotorOutputs): readonly Token[] {
  return [
    words(rows.length === 1 ? (rows[0]?.problem ?? "There is no such state.") : "None of the points has a state; each row says why."),
  ];
}

function stateWords(row: MotorRow, path: string): readonly Token[] {
  const { shaftPower, electricPower, efficiency, timeToLimit, steadyTemperature } = row;
  const gives = (shaftPower ?? 0) >= 0;
  return [
    words(gives ? "The shaft gives " : "The shaft takes "),
    reading(Math.abs(shaftPower ?? 0), "power", `${path}/shaftPower`),
    words((electricPower ?? 0) >= 0 ? " for " : " and gives back "),
    reading(Math.abs(electricPower ?? 0), "power", `${path}/electricPower`),
    ...(efficiency === null ? [] : [words(", efficiency "), reading(efficiency, "dimensionless", `${path}/efficiency`)]),
    ...(timeToLimit !== null
      ? [words("; the winding is too hot after "), reading(timeToLimit, "time", `${path}/timeToLimit`)]
      : steadyTemperature !== null
        ? [words("; the winding stays at "), reading(steadyTemperature, "temperature", `${path}/steadyTemperature`)]
        : []),
    words("."),
  ];
}

function ratingWords({ continuousPower, bestEfficiency }: MotorOutputs): readonly Token[] {
  if (continuousPower !== null)
    return [words(" At full throttle it bears "), reading(continuousPower, "power", "/continuousPower"), words(" for ever.")];
  if (!bestEfficiency || bestEfficiency.efficiency === null) return [];
  return [
    words(" At full throttle it is best at "),
    reading(bestEfficiency.current, "current", "/bestEfficiency/current"),
    words(", efficiency "),
    reading(bestEfficiency.efficiency, "dimensionless", "/bestEfficiency/efficiency"),
    words("."),
  ];
}

function briefOf({ continuousPower }: MotorOutputs, row: MotorRow | undefined): string {
  const efficiency = row?.efficiency ?? null;
  const parts = [
    ...(efficiency === null ? [] : [`efficiency ${(100 * efficiency).toFixed(0)} %`]),
    ...(continuousPower === null ? [] : [`${brieflyWatts(continuousPower)} for ever`]),
  ];
  return parts.length > 0 ? parts.join(", ") : row ? "no power passed on" : "no such state";
}

function brieflyWatts(power: number): string {
  return power >= 1000 ? `${(power / 1000).toPrecision(3)} kW` : `${power.toPrecision(3)} W`;
}

/** Limits, each of the row that comes nearest to it. */
export function motorLimits({ rows, given }: MotorOutputs, inputs: MotorInputs): readonly Limit[] {
  const over = (most: number | null, value: (row: MotorRow) => number | null) => (row: MotorRow) => {
    const used = row.problem === null ? value(row) : null;
    return most === null || used === null ? null : Math.abs(used) / most;
  };
  const limits = [
    limitOf(
      "voltage",
      rows,
      over(given.dutyMaximum, (row) => row.duty),
    ),
    limitOf(
      "motor current",
      rows,
      over(given.currentMaximum, (row) => row.current),
    ),
    limitOf(
      "continuous electric power",
      rows,
      over(given.continuousElectricPower, (row) => row.electricPower),
    ),
    limitOf("winding temperature", rows, (row) => heatShare(row, given.temperatureMaximum, inputs.ambientTemperature)),
  ].filter((limit) => limit !== undefined);
  const most = Math.max(0, ...limits.map(({ share }) => share));
  return limits.map((limit) => ({ ...limit, binding: limit.share === most && most >= 1 - 1e-9 }));
}

function limitOf(name: string, rows: readonly MotorRow[], share: (row: MotorRow) => number | null): Limit | undefined {
  let nearest: { readonly share: number; readonly index: number } | undefined;
  rows.forEach((row, index) => {
    const used = share(row);
    if (used !== null && used > (nearest?.share ?? -1)) nearest = { share: used, index };
  });
  if (!nearest) return undefined;
  const where = rows.length === 1 ? "at this point" : `at point ${nearest.index + 1}`;
  return { name, family: "power", share: nearest.share, side: "upper", where, binding: false };
}

/** Shown for a winding whose temperature runs away: there is no share. */
const runawayShare = 10;

/** Rise above the air in the long run over the permitted rise; a limit below the air's temperature is used up. */
function heatShare(row: MotorRow, limit: number | null, ambient: number): number | null {
  if (limit === null || row.heating === null) return null;
  if (row.steadyTemperature === null) return runawayShare;
  return limit > ambient ? Math.min(runawayShare, Math.max(0, row.steadyTemperature - ambient) / (limit - ambient)) : runawayShare;
}
