import { takeoffMass } from "../../aircraft/index.ts";
import type { FlightConditions, Trimmed } from "../../equilibrium/index.ts";
import type { GlidePolar, LinePoint, PoweredMode, SpeedSummary, VerticalAutorotationOutcome } from "../../performance/index.ts";
import { poweredModes } from "../../performance/index.ts";
import type { SpeedOutputs, SpeedRow } from "./schema.ts";

type Lines = Readonly<Record<PoweredMode, readonly LinePoint[]>>;

/** A limit used to more than this share counts as binding. */
const bindingShare = 0.9995;
/** Below this airspeed [m/s] nothing is covered that energy could be spread over. */
const slowestTravel = 1e-3;

/** Below this airspeed the rotor's downwash makes the wing a flat plate and its angle has next to no effect [m/s]. */
const slowestWing = 6;

/** Rows of both modes, clutch closed first, each over ascending airspeed. */
export function lineRows(lines: Lines): SpeedRow[] {
  return poweredModes.flatMap((mode) => lines[mode].map((point) => row(mode, point)));
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
  otherOptimum: null,
} as const;

function row(mode: PoweredMode, { airspeed, outcome, other }: LinePoint): SpeedRow {
  if (outcome.kind === "no-equilibrium") return { airspeed, mode, feasible: false, limit: outcome.limit, ...blank };
  const { power, state, balance, advanceRatio } = outcome.evaluation;
  return {
    airspeed,
    mode,
    feasible: true,
    limit: bindingLimit(outcome) ?? null,
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
    wingAngle: airspeed < slowestWing ? null : state.wingAngle,
    flapLongitudinal: -state.pitchSine,
    flapLateral: state.pitchCosine,
    rotorLiftShare: balance.rotorLift / balance.weight,
    wingLiftShare: balance.wingLift / balance.weight,
    stallMargin: outcome.stallMargin,
    energyPerDistance: airspeed > slowestTravel ? power.electric / airspeed : null,
    advanceRatio,
    otherOptimum: other ? other.evaluation.power.electric : null,
  };
}

/** The limit that binds hardest in a trimmed point, by the share used. */
function bindingLimit(trimmed: Trimmed): string | undefined {
  let found: { name: string; share: number } | undefined;
  for (const { limit, share } of trimmed.limits) {
    if (share > bindingShare && (found === undefined || share > found.share)) found = { name: limit.name, share };
  }
  return found?.name;
}

/** Largest share of every limit over the points where the mode is the cheaper one. */
export function speedLimitShares(lines: Lines): SpeedOutputs["limits"] {
  const largest = new Map<string, SpeedOutputs["limits"][number]>();
  const closed = lines["clutch-closed"];
  closed.forEach((point, i) => {
    const flown = poweredModes
      .map((mode) => ({ mode, outcome: lines[mode][i]?.outcome }))
      .filter((entry): entry is { mode: PoweredMode; outcome: Trimmed } => entry.outcome?.kind === "trimmed")
      .sort((a, b) => a.outcome.evaluation.power.electric - b.outcome.evaluation.power.electric)[0];
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
export function summaryOutputs(
  conditions: FlightConditions,
  lines: Lines,
  summary: SpeedSummary,
  glide: GlidePolar,
  vertical: VerticalAutorotationOutcome,
): SpeedOutputs["summary"] {
  const hover = lines["clutch-closed"].find((point) => point.airspeed === 0)?.outcome;
  const { leastPower, bestRange, lowestAutorotating, highest, clutchOpenCheaper } = summary;
  return {
    takeoffMass: takeoffMass(conditions.aircraft, conditions.loading),
    hoverPower: hover?.kind === "trimmed" ? hover.evaluation.power.electric : null,
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
