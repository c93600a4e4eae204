import type { Airframe } from "../../airframe/index.ts";
import type { FullOutcome, FullTrimmed, FullTrimmer } from "../../equilibrium/index.ts";
import { type LinearMotion, linearise, movingFlight, splitMotion, withFollowing, withHeld } from "../../motion/index.ts";
import { modeOutputs, neutralPoints, noMotion, type PitchDerivatives, systemOf } from "./mode-rows.ts";
import type { StabilityCondition } from "./output-schema.ts";

type PoweredMode = "clutch-closed" | "clutch-open";

/** A level flight that was asked for, with what came of it. */
export interface StudiedFlight {
  readonly condition: StabilityCondition;
  readonly trimmed: FullTrimmed | undefined;
  readonly motion: LinearMotion | undefined;
}

/** Below this airspeed static margins mean nothing [m/s]. */
const slowestMargin = 5;
/** Coupling at which a motion counts as two that do not feel one another [1]. */
const uncoupled = 1e-6;
const leastFlapTolerance = 1e-9;

/** Trims level flights of one mode by rising airspeed, each from the one below where there is one, and linearises them. */
export function studiedFlights(
  trimmer: FullTrimmer,
  mode: PoweredMode,
  airspeeds: readonly number[],
  each: () => void,
): readonly StudiedFlight[] {
  let before: FullTrimmed | undefined;
  return airspeeds.map((airspeed) => {
    each();
    const point = { mode, airspeed, climbRate: 0, sideslip: 0 };
    const warm = before ? trimmer.trimFrom(point, [before.start]) : undefined;
    const outcome = warm?.kind === "trimmed" ? warm : trimmer.trim(point);
    before = outcome.kind === "trimmed" ? outcome : undefined;
    return studied(trimmer.airframe, outcome, mode, airspeed);
  });
}

function studied(airframe: Airframe, outcome: FullOutcome, mode: PoweredMode, airspeed: number): StudiedFlight {
  const base = { ...noMotion, at: airspeed, airspeed, mode };
  const without = (problem: string): StudiedFlight => ({ condition: { ...base, problem }, trimmed: undefined, motion: undefined });
  if (outcome.kind === "no-equilibrium") return without(`no steady flight: ${outcome.limit}`);
  if (outcome.kind === "not-resolved") return without("the trim was not found, nor why there is none");
  const { dynamics, state } = movingFlight(airframe, outcome, leastFlapTolerance);
  const motion = linearise(dynamics, state);
  const modes = modeOutputs(apart(motion));
  const finer = modeOutputs(apart(linearise(dynamics, state, 0.5)));
  const frozen = airframe.rotors.length > 0 ? modeOutputs(apart(withHeld(motion, ({ kind }) => kind === "rotor-speed"))) : [];
  if (!modes || !finer || !frozen) return without("the motion about this flight is too large for numbers");
  const pitching = pitchDerivatives(motion, outcome);
  const neutral =
    pitching && airspeed >= slowestMargin
      ? neutralPoints(pitching, (airframe.inertia[4] as number) / airframe.mass)
      : { incidence: null, speed: null };
  const margins = [neutral.incidence, neutral.speed].filter((margin) => margin !== null);
  const { centre } = airframe.conditions.mass;
  const [rotor] = airframe.rotors;
  return {
    trimmed: outcome,
    motion,
    condition: {
      ...base,
      problem: null,
      modes,
      frozenModes: frozen,
      stable: modes.every(({ real }) => real < 0),
      incidenceMoment: pitching?.mw ?? null,
      speedMoment: pitching?.mu ?? null,
      incidenceMargin: neutral.incidence,
      speedMargin: neutral.speed,
      rearmostCentre: margins.length > 0 ? centre.x - Math.min(...margins) : null,
      thrustLineHeight: thrustLineHeight(airframe, outcome),
      rotorRate: rotor ? (outcome.evaluation.rotorStates[0] as number) / rotor.part.radius : null,
      wingLiftShare: surfaceLift(airframe, outcome),
      coupling: splitMotion(motion).coupling,
      spread: spreadOf(modes, finer),
      systems: [systemOf(motion)],
    },
  };
}

/** Two motions where they do not feel one another, one where they do. */
function apart(motion: LinearMotion): readonly LinearMotion[] {
  const { longitudinal, lateral, coupling } = splitMotion(motion);
  return coupling < uncoupled ? [longitudinal, lateral].filter(({ states }) => states.length > 0) : [motion];
}

/** In axes along the path, with rotor speed and inflow settled. */
function pitchDerivatives(motion: LinearMotion, { evaluation }: FullTrimmed): PitchDerivatives | undefined {
  const settled = withFollowing(motion, ({ kind }) => kind === "rotor-speed" || kind === "inflow");
  if (!settled) return undefined;
  const n = settled.states.length;
  const at = (row: string, column: string): number => {
    const [i, j] = [row, column].map((id) => settled.states.findIndex((state) => state.id === id)) as [number, number];
    return settled.matrix[i * n + j] as number;
  };
  const [u, , w] = evaluation.flight.velocity;
  const speed = Math.hypot(u, w);
  if (speed < 1e-6) return undefined;
  const [cosine, sine] = [u / speed, w / speed];
  const along = (row: string) => cosine * at(row, "u") + sine * at(row, "w");
  const across = (row: string) => cosine * at(row, "w") - sine * at(row, "u");
  return {
    zu: cosine * along("w") - sine * along("u"),
    zw: cosine * across("w") - sine * across("u"),
    mu: along("q"),
    mw: across("q"),
  };
}

/** Mean height of the propellers above the centre of gravity, by their thrusts; plain where they have none. */
function thrustLineHeight(airframe: Airframe, { evaluation }: FullTrimmed): number | null {
  const parts = airframe.propellers;
  if (parts.length === 0) return null;
  const thrusts = evaluation.loads.propellers.map(({ thrust }) => Math.abs(thrust));
  const sum = thrusts.reduce((total, thrust) => total + thrust, 0);
  const { z } = airframe.conditions.mass.centre;
  return parts.reduce((total, { place }, i) => total + (z - place.z) * (sum > 0 ? (thrusts[i] ?? 0) / sum : 1 / parts.length), 0);
}

function surfaceLift(airframe: Airframe, { evaluation }: FullTrimmed): number {
  const lift = evaluation.loads.parts.reduce((sum, { kind, force }) => sum - (kind === "surface" ? force[2] : 0), 0);
  return lift / (airframe.mass * 9.80665);
}

/** Largest distance of a root from its nearest one in the other list, over its size; slow ones are measured against a tenth per second. */
function spreadOf(modes: readonly { real: number; imaginary: number }[], others: readonly { real: number; imaginary: number }[]): number {
  return Math.max(
    0,
    ...modes.map(({ real, imaginary }) => {
      const nearest = Math.min(...others.map((other) => Math.hypot(other.real - real, other.imaginary - imaginary)));
      return nearest / Math.max(0.1, Math.hypot(real, imaginary));
    }),
  );
}
