import { groundEffect } from "../../aerodynamics/rotor/index.ts";
import { brokenAirLimit, type EnvelopePoint, envelopeLine, type PoweredMode, rotorSpeedLimits } from "../../performance/index.ts";
import { airBorders } from "./air-borders.ts";
import { ceilingRows } from "./ceilings.ts";
import { bestClimbRow, climbRows } from "./climb.ts";
import type { EnvelopeBorder, EnvelopeOutputs, EnvelopeRow } from "./schema.ts";
import type { EnvelopeSetting } from "./setting.ts";

/** Told while it works. */
export interface EnvelopeHooks {
  progress(done: number, total: number, doing: string): void;
  /** May throw to end the work. */
  checked(): void;
}

/** What of it is wanted: the coarse picture does without climb, ceilings and rotor speeds. */
export interface EnvelopeExtent {
  readonly packs: readonly number[];
  readonly days: readonly number[];
  readonly altitudes: readonly number[];
  readonly speeds: readonly number[];
  /** Of a border [m/s]. */
  readonly resolution: number;
  readonly isComplete: boolean;
}

/** Climb and rotor speed are looked at for so many speeds, the least and the greatest among them. */
const fewSpeeds = 10;

type Solves = EnvelopeOutputs["solves"];

interface LineOutputs {
  readonly rows: readonly EnvelopeRow[];
  readonly borders: readonly EnvelopeBorder[];
  readonly climb: EnvelopeOutputs["climb"];
  readonly rotorSpeeds: EnvelopeOutputs["rotorSpeeds"];
  readonly limits: EnvelopeOutputs["limits"];
  readonly solves: Solves;
}

/**
 * The envelope line by line: one pack, day and altitude is a piece of work of its own, which knows nothing of the others, so that it can
 * be done anywhere in any order.
 */
export function envelopeComputation(setting: EnvelopeSetting, extent: EnvelopeExtent, hooks: EnvelopeHooks): EnvelopeOutputs {
  const places = extent.packs.flatMap((blocks) =>
    extent.days.flatMap((temperatureOffset) => extent.altitudes.map((altitude) => ({ blocks, temperatureOffset, altitude }))),
  );
  const ceilingCount = extent.isComplete ? setting.flown.length * extent.days.length + setting.ceilingDays.length : 0;
  const total = places.length + ceilingCount;
  const lines = places.map((place, i) => {
    hooks.progress(i, total, "altitudes and packs");
    return lineOutputs(setting, extent, place, hooks);
  });
  const ceilings = extent.isComplete
    ? ceilingRows(
        setting,
        lines.flatMap(({ rows }) => rows),
        {
          checked: hooks.checked,
          progress: (done) => hooks.progress(Math.min(total, places.length + done), total, "ceilings"),
        },
      )
    : { rows: [], solves: { converged: 0, limited: 0, failed: 0 } };
  hooks.progress(total, total, "ceilings");
  const climb = lines.flatMap((line) => line.climb);
  return {
    now: setting.now,
    packs: [...setting.packs],
    altitudes: [...extent.altitudes],
    altitudeLimit: setting.aircraft.limits.altitudeMaximum,
    climbLimit: setting.aircraft.limits.climbRate,
    rows: lines.flatMap(({ rows }) => rows),
    borders: lines.flatMap(({ borders }) => borders),
    airBorders: airBorders(setting, extent.isComplete ? setting.ceilingDays : extent.days, extent.altitudes[0] as number),
    climb,
    bestClimb: places.flatMap((place) => bestClimbRow(climb, place)),
    ceilings: ceilings.rows,
    rotorSpeeds: lines.flatMap(({ rotorSpeeds }) => rotorSpeeds),
    groundEffect: nearGround(setting),
    limits: largestShares(lines.flatMap(({ limits }) => limits)),
    solves: [...lines.map(({ solves }) => solves), ceilings.solves].reduce((sum, one) => ({
      converged: sum.converged + one.converged,
      limited: sum.limited + one.limited,
      failed: sum.failed + one.failed,
    })),
  };
}

function lineOutputs(
  setting: EnvelopeSetting,
  { speeds, isComplete, altitudes, resolution }: EnvelopeExtent,
  place: { readonly blocks: number; readonly temperatureOffset: number; readonly altitude: number },
  hooks: EnvelopeHooks,
): LineOutputs {
  const conditions = setting.conditions(place.blocks, place.altitude, place.temperatureOffset);
  const broken = brokenAirLimit(conditions, place.altitude, setting.rules);
  const nothing = { borders: [], climb: [], rotorSpeeds: [], limits: [], solves: { converged: 0, limited: 0, failed: 0 } };
  if (broken) {
    const row = { ...place, state: "forbidden" as const, limit: broken.name, family: broken.family, ...noFlight };
    return { ...nothing, rows: setting.modes.flatMap((mode) => speeds.map((airspeed) => ({ ...row, mode, airspeed }))) };
  }
  const trimmer = setting.trimmer({ ...place, day: place.temperatureOffset }, hooks.checked);
  const lines = setting.modes.map((mode) => ({ mode, ...envelopeLine(trimmer, mode, speeds, resolution) }));
  const [closed] = lines;
  const isNow = place.blocks === setting.now.blocks && place.temperatureOffset === setting.now.temperatureOffset;
  const few = (points: readonly EnvelopePoint[]) => points.filter((_, i) => i % Math.max(1, Math.ceil(points.length / fewSpeeds)) === 0);
  const withRotorSpeeds = isComplete && isNow && place.altitude === altitudes[0] && setting.aircraft.rotors.length === 1;
  return {
    rows: lines.flatMap(({ mode, points }) => points.map((point) => ({ ...place, ...rowOf(mode, point) }))),
    borders: lines.flatMap(({ mode, edges }) => edges.map((edge) => ({ ...place, mode, ...edge }))),
    climb: isComplete
      ? climbRows(
          trimmer,
          lines.map(({ mode, points }) => ({ mode, points: few(points) })),
          place,
        )
      : [],
    rotorSpeeds: withRotorSpeeds && closed ? few(closed.points).flatMap((point) => rotorSpeedRow(setting, trimmer, point)) : [],
    limits: isNow ? lines.flatMap(({ mode, points }) => points.flatMap((point) => sharesOf(mode, point, place.altitude))) : [],
    solves: { ...trimmer.trimmer.counter },
  };
}

const noFlight = { share: null, electricPower: null, tipSpeed: null, stallMargin: null } as const;

function rowOf(mode: PoweredMode, { airspeed, verdict }: EnvelopePoint): Omit<EnvelopeRow, "blocks" | "temperatureOffset" | "altitude"> {
  const base = { mode, airspeed };
  if (verdict.kind === "unknown") return { ...base, state: "unknown", limit: null, family: null, ...noFlight };
  const balanced = verdict.kind === "flies" ? verdict : verdict.balanced;
  if (!balanced) {
    const { limit, family } = verdict as typeof verdict & { readonly kind: "forbidden" };
    return { ...base, state: "forbidden", limit, family, ...noFlight };
  }
  const [worst] = balanced.shares;
  const { evaluation, stallMargins } = balanced.trimmed;
  const margin = stallMargins[0];
  return {
    ...base,
    state: verdict.kind,
    limit: worst?.name ?? null,
    family: worst?.family ?? null,
    share: worst?.share ?? null,
    electricPower: evaluation.loads.electricPower,
    tipSpeed: evaluation.rotorStates[0] ?? null,
    stallMargin: margin !== undefined && Number.isFinite(margin) ? margin : null,
  };
}

function sharesOf(mode: PoweredMode, { airspeed, verdict }: EnvelopePoint, altitude: number): EnvelopeOutputs["limits"] {
  if (verdict.kind !== "flies") return [];
  const where = `at ${airspeed} m/s and ${Math.round(altitude)} m above sea, ${mode === "clutch-closed" ? "clutch closed" : "clutch open"}`;
  return verdict.shares.map(({ name, family, share }) => ({ name, family, share, where }));
}

function largestShares(all: EnvelopeOutputs["limits"]): EnvelopeOutputs["limits"] {
  const largest = new Map<string, EnvelopeOutputs["limits"][number]>();
  for (const one of all) if (one.share > (largest.get(one.name)?.share ?? Number.NEGATIVE_INFINITY)) largest.set(one.name, one);
  return [...largest.values()].sort((a, b) => b.share - a.share);
}

function rotorSpeedRow(
  { aircraft }: EnvelopeSetting,
  trimmer: ReturnType<EnvelopeSetting["trimmer"]>,
  point: EnvelopePoint,
): EnvelopeOutputs["rotorSpeeds"] {
  const [rotor] = aircraft.rotors;
  if (!rotor) return [];
  const range = rotorSpeedLimits(trimmer, "clutch-closed", point, { minimum: rotor.tipSpeedMinimum, maximum: rotor.tipSpeedMaximum });
  if (!range) return [];
  const { airspeed, lowest, highest } = range;
  return [
    {
      airspeed,
      lowest: lowest.tipSpeed,
      lowestLimit: lowest.limit,
      lowestFamily: lowest.family,
      highest: highest.tipSpeed,
      highestLimit: highest.limit,
      highestFamily: highest.family,
    },
  ];
}

function nearGround({ groundHeight, aircraft }: EnvelopeSetting): EnvelopeOutputs["groundEffect"] {
  const [rotor] = aircraft.rotors;
  if (groundHeight === undefined || !rotor) return null;
  const effect = groundEffect(groundHeight / rotor.radius, 0);
  return effect.kind === "in-range" ? { height: groundHeight, thrustRatio: effect.thrustRatio } : null;
}
