import type { Answer, Limit } from "../contract.ts";
import { reading, words } from "../tokens.ts";
import type { RotorOutputs, RotorRow } from "./output-schema.ts";
import { largestTipMach } from "./problem.ts";
import type { RotorInputs } from "./schema.ts";
import { largestFlap, stalled } from "./warnings.ts";

/** Limits at the point, of a sweep where they are nearest. */
export function rotorLimits(outputs: RotorOutputs, inputs: RotorInputs): readonly Limit[] {
  const rows = outputs.rows.filter(isSolved);
  const flapRange = "radius" in inputs.rotor ? inputs.rotor.flapRange : undefined;
  const strength = inputs.blade?.strength;
  const limits = [
    nearest("rotor stall", "air", rows, stallShare),
    nearest("tip Mach number", "air", rows, (row) => row.advancingTipMach / largestTipMach),
    ...(strength === undefined
      ? []
      : [nearest("centrifugal force", "strength" as const, rows, (row) => pullShare(row, strength), rotating)]),
    ...(flapRange === undefined ? [] : [nearest("flapping", "control" as const, rows, (row) => largestFlap(row) / flapRange)]),
  ].filter((limit) => limit !== undefined);
  const largest = Math.max(...limits.map((limit) => limit.share));
  return limits.map((limit) => ({ ...limit, binding: limit.share === largest && limit.share >= 1 }));
}

/** Share by which a value may change along a sweep and still be told as one. */
const sameShare = 1e-6;

type Solved = {
  readonly [Name in keyof RotorRow]: Name extends "largestThrust" | "largestThrustCollective" | "centrifugalForce"
    ? RotorRow[Name]
    : NonNullable<RotorRow[Name]>;
};

function isSolved(row: RotorRow): row is Solved {
  return row.problem === null;
}

function stallShare(row: Solved): number | undefined {
  if (row.largestThrust === null || row.largestThrust <= 0) return undefined;
  return Math.max(row.thrust / row.largestThrust, stalled(row) ? 1 : 0);
}

function pullShare({ centrifugalForce }: Solved, strength: number): number | undefined {
  return centrifugalForce === null ? undefined : centrifugalForce / strength;
}

/** Where a limit is met that depends on the rotor speed alone. */
function rotating({ rotationRate }: Solved): string {
  return `at ${((rotationRate * 30) / Math.PI).toFixed(0)} rpm`;
}

function flying({ airspeed }: Solved): string {
  return airspeed > 0 ? `at ${airspeed.toFixed(1)} m/s` : "in hover";
}

function nearest(
  name: string,
  family: Limit["family"],
  rows: readonly Solved[],
  shareOf: (row: Solved) => number | undefined,
  where: (row: Solved) => string = flying,
): Limit | undefined {
  const found = rows.map((row) => ({ row, share: shareOf(row) ?? Number.NEGATIVE_INFINITY }));
  const worst = found.reduce<(typeof found)[number] | undefined>((best, one) => (!best || one.share > best.share ? one : best), undefined);
  if (!worst || worst.share === Number.NEGATIVE_INFINITY) return undefined;
  return { name, family, share: worst.share, side: "upper", where: where(worst.row), binding: false };
}

export function rotorAnswer(outputs: RotorOutputs): Answer {
  return outputs.swept.length > 0 ? sweepAnswer(outputs) : pointAnswer(outputs);
}

function pointAnswer(outputs: RotorOutputs): Answer {
  const thrust = [words("The rotor makes "), reading(outputs.thrust, "force", "/thrust")];
  const settings = [
    words(" at "),
    reading(outputs.rotationRate, "rotationRate", "/rotationRate"),
    words(" and "),
    reading(outputs.collective, "angle", "/collective"),
    words(" collective"),
  ];
  if (outputs.state !== "autorotating")
    return {
      sentence: [...thrust, ...settings, words(" for "), reading(outputs.power, "power", "/power"), words(" at the shaft.")],
      brief: `${outputs.thrust.toFixed(0)} N for ${outputs.power.toFixed(0)} W`,
    };
  const falling = outputs.advanceRatio < 1e-6 && outputs.climbRate < 0;
  const motion = falling
    ? [words(", turned by the air alone, sinking at "), reading(-outputs.climbRate, "speed", "/climbRate")]
    : [words(", turned by the air alone, shaft tilted back "), reading(outputs.shaftAngle, "angle", "/shaftAngle")];
  const { airspeedBandLow: low, airspeedBandHigh: high } = outputs;
  if (low === null || high === null)
    return { sentence: [...thrust, ...settings, ...motion, words(".")], brief: `${outputs.thrust.toFixed(0)} N, autorotating` };
  const band = [
    words("; published errors leave "),
    reading(low, "speed", "/airspeedBandLow"),
    words(" to "),
    reading(high, "speed", "/airspeedBandHigh"),
    words(" open."),
  ];
  const airspeed = falling ? [] : [words(", at an airspeed of "), reading(outputs.airspeed, "speed", "/airspeed")];
  const [least, most] = [low, high].map((speed) => speed.toFixed(1));
  return {
    sentence: [...thrust, ...settings, ...motion, ...airspeed, ...band],
    brief: `${falling ? "sinks at" : "turns at"} ${outputs.airspeed.toFixed(1)} (${least} to ${most}) m/s`,
  };
}

function sweepAnswer({ rows }: RotorOutputs): Answer {
  const solved = rows.map((row, index) => ({ row, index })).filter(({ row }) => row.problem === null);
  const by = (value: (row: RotorRow) => number | null) =>
    [...solved].sort((a, b) => (value(a.row) ?? 0) - (value(b.row) ?? 0)).map(({ row, index }) => ({ value: value(row) ?? 0, index }));
  const thrusts = by((row) => row.thrust);
  const powers = by((row) => row.power);
  const between = (
    list: readonly { readonly value: number; readonly index: number }[],
    name: "thrust" | "power",
    kind: "force" | "power",
  ) => {
    const [low] = list;
    const high = list.at(-1);
    if (!low || !high) return [];
    const lowest = reading(low.value, kind, `/rows/${low.index}/${name}`);
    if (high.value - low.value <= sameShare * Math.abs(high.value)) return [lowest];
    return [lowest, words(" to "), reading(high.value, kind, `/rows/${high.index}/${name}`)];
  };
  const missing = rows.length - solved.length;
  return {
    sentence: [
      words(`Over ${rows.length} points the rotor makes `),
      ...between(thrusts, "thrust", "force"),
      words(" for "),
      ...between(powers, "power", "power"),
      words(missing === 0 ? " at the shaft." : ` at the shaft; ${missing} of them ${missing === 1 ? "has" : "have"} no solution.`),
    ],
    brief: missing === 0 ? `${rows.length} points` : `${solved.length} of ${rows.length} points`,
  };
}
