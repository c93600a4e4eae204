import type { FullTrimmed, FullTrimmer, Trimmed } from "../../equilibrium/index.ts";
import type { Flown, GlidePolar, LinePoint, PoweredMode, SpeedSummary, VerticalAutorotationOutcome } from "../../performance/index.ts";
import { poweredModes } from "../../performance/index.ts";
import { fullColumns } from "./full-rows.ts";
import type { SpeedOutputs, SpeedRow } from "./schema.ts";

export type Lines<F extends Flown> = Readonly<Record<PoweredMode, readonly LinePoint<F>[]>>;

/** What a trim level says of one flight, for its row. */
export type Columns<F extends Flown> = (
  flown: F,
) => Omit<SpeedRow, "airspeed" | "mode" | "feasible" | "limit" | "otherOptimum" | "schedulePower" | "energyPerDistance">;

/** A limit used to more than this share counts as binding. */
const bindingShare = 0.9995;
/** Below this airspeed [m/s] nothing is covered that energy could be spread over. */
const slowestTravel = 1e-3;

/** Below this airspeed the rotor's downwash makes the wing a flat plate and its angle has next to no effect [m/s]. */
const slowestWing = 6;

/** Rows of both modes, clutch closed first, each over ascending airspeed; beside them power on schedule where it was computed. */
export function lineRows<F extends Flown>(lines: Lines<F>, columns: Columns<F>, schedule?: Lines<F>): SpeedRow[] {
  return poweredModes.flatMap((mode) =>
    lines[mode].map((point, i) => {
      const scheduled = schedule?.[mode][i]?.outcome;
      return row(mode, point, columns, scheduled?.kind === "trimmed" ? scheduled.flown.electricPower : null);
    }),
  );
}

const blank = {
  electricPower: null,
  rotorShaftPower: null,
  propellerShaftPower: null,
  driveLosses: null,
  propellerLosses: null,
  avionicsPower: null,
  rotorRotationRate: null,
  tipSpeed: null,
  collective: null,
  discAngle: null,
  wingAngle: null,
  flapLongitudinal: null,
  flapLateral: null,
  rotorLiftShare: null,
  wingLiftShare: null,
  stallMargin: null,
  energyPerDistance: null,
  advanceRatio: null,
  schedulePower: null,
  pitch: null,
  roll: null,
  sideslip: null,
  otherOptimum: null,
} as const;

function row<F extends Flown>(
  mode: PoweredMode,
  { airspeed, outcome, other }: LinePoint<F>,
  columns: Columns<F>,
  schedulePower: number | null,
): SpeedRow {
  if (outcome.kind !== "trimmed") return { airspeed, mode, feasible: false, limit: outcome.limit, ...blank, schedulePower };
  const { electricPower } = outcome.flown;
  return {
    airspeed,
    mode,
    feasible: true,
    limit: bindingLimit(outcome) ?? null,
    ...columns(outcome),
    energyPerDistance: airspeed > slowestTravel ? electricPower / airspeed : null,
    schedulePower,
    otherOptimum: other ? other.flown.electricPower : null,
  };
}

/** Columns of the trim level `reduced`. */
export function reducedColumns(outcome: Trimmed): ReturnType<Columns<Trimmed>> {
  const { power, state, balance, advanceRatio } = outcome.evaluation;
  return {
    electricPower: power.electric,
    rotorShaftPower: power.rotorShaft,
    propellerShaftPower: power.propellerShaft,
    driveLosses: power.rotorLosses,
    propellerLosses: power.propellerLosses,
    avionicsPower: power.avionics,
    rotorRotationRate: state.tipSpeed / outcome.rotorRadius,
    tipSpeed: state.tipSpeed,
    collective: state.collective,
    discAngle: state.discAngle,
    wingAngle: outcome.flown.forwardSpeed < slowestWing ? null : state.wingAngle,
    flapLongitudinal: -state.pitchSine,
    flapLateral: state.pitchCosine,
    rotorLiftShare: balance.rotorLift / balance.weight,
    wingLiftShare: balance.wingLift / balance.weight,
    stallMargin: outcome.stallMargin,
    advanceRatio,
    pitch: null,
    roll: null,
    sideslip: null,
  };
}

/** Columns of the trim level `full`. */
export function fullLevelColumns(trimmer: FullTrimmer): Columns<FullTrimmed> {
  return (outcome) => fullColumns(trimmer, outcome);
}

/** The limit that binds hardest in a trimmed point, by the share used. */
function bindingLimit(trimmed: Flown): string | undefined {
  let found: { name: string; share: number } | undefined;
  for (const { limit, share } of trimmed.limits) {
    if (share > bindingShare && (found === undefined || share > found.share)) found = { name: limit.name, share };
  }
  return found?.name;
}

/** Largest share of every limit over the points where the mode is the cheaper one. */
export function speedLimitShares<F extends Flown>(lines: Lines<F>): SpeedOutputs["limits"] {
  const largest = new Map<string, SpeedOutputs["limits"][number]>();
  const closed = lines["clutch-closed"];
  closed.forEach((point, i) => {
    const flown = poweredModes
      .map((mode) => ({ mode, outcome: lines[mode][i]?.outcome }))
      .filter((entry): entry is { mode: PoweredMode; outcome: F } => entry.outcome?.kind === "trimmed")
      .sort((a, b) => a.outcome.flown.electricPower - b.outcome.flown.electricPower)[0];
    if (flown === undefined) return;
    for (const { limit, share } of flown.outcome.limits) {
      const known = largest.get(limit.name);
      if (known === undefined || share > known.share + 1e-9) {
        largest.set(limit.name, { name: limit.name, family: limit.family, share, airspeed: point.airspeed, mode: flown.mode });
      }
    }
  });
  return [...largest.values()].sort((a, b) => b.share - a.share);
}

/** The summary with null for what does not exist. */
export function summaryOutputs<F extends Flown>(
  mass: number,
  lines: Lines<F>,
  summary: SpeedSummary<F>,
  glide: GlidePolar<F>,
  vertical: VerticalAutorotationOutcome,
): SpeedOutputs["summary"] {
  const hover = lines["clutch-closed"].find((point) => point.airspeed === 0)?.outcome;
  const { leastPower, bestRange, lowestAutorotating, highest, clutchOpenCheaper } = summary;
  return {
    takeoffMass: mass,
    hoverPower: hover?.kind === "trimmed" ? hover.flown.electricPower : null,
    minimumPower: leastPower?.electricPower ?? null,
    minimumPowerSpeed: leastPower?.airspeed ?? null,
    minimumPowerMode: leastPower?.mode ?? null,
    bestRangeSpeed: bestRange?.airspeed ?? null,
    bestRangeEnergy: bestRange ? bestRange.electricPower / bestRange.airspeed : null,
    lowestAutorotatingSpeed: lowestAutorotating?.airspeed ?? null,
    lowestAutorotatingLimit: lowestAutorotating?.limit ?? null,
    clutchOpenCheaper: clutchOpenCheaper.intervals.map(({ from, to }) => ({ from, to })),
    clutchOpenCheaperReason: clutchOpenCheaper.reason === "" ? null : clutchOpenCheaper.reason,
    maximumSpeed: highest?.airspeed ?? null,
    maximumSpeedLimit: highest?.limit ?? null,
    bestGlideRatio: glide.best?.glideRatio ?? null,
    bestGlideSpeed: glide.best?.airspeed ?? null,
    minimumSink: glide.leastSink?.sinkRate ?? null,
    minimumSinkSpeed: glide.leastSink?.airspeed ?? null,
    verticalAutorotationSpeed: vertical.kind === "descends" ? vertical.autorotation.descentRate : null,
    verticalAutorotationLimit: vertical.kind === "descends" ? null : vertical.reason,
  };
}
