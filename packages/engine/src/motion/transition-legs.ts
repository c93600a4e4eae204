import { rotorStateWidth } from "../airframe/index.ts";
import { type FullOutcome, type FullPoint, type FullTrimmed, type FullTrimmer, fullObjective } from "../equilibrium/index.ts";
import { type SpeedMoment, speedProfile } from "./speed-profile.ts";
import { calmPace, type Pace, paced, suffices } from "./transition-pace.ts";

/** Why there is no reference. */
export interface PlanRefusal {
  readonly kind: "no-plan";
  readonly reason: string;
  readonly airspeed: number;
}

/** What a leg needs to know of the whole. */
export interface LegRequest {
  readonly hover: FullTrimmed;
  /** Where it ends [m/s]. */
  readonly meetSpeed: number;
}

/** Between two trims of the reference [s], and how many there are at most on a change of speed. */
const knotInterval = 0.5;
const mostKnots = 80;
/** A way of flying is left for another one that costs less by this share. */
const cheaper = 0.002;
/** So often a change of speed is slowed down. */
const mostPaces = 3;
/** Steps of rotor speed at the meeting speed. */
export const spinSteps = 4;

/** A trim of a change of speed, at a time from its beginning. */
export interface LegKnot {
  readonly time: number;
  readonly trimmed: FullTrimmed;
}

/**
 * Trims along a change of speed that begins at a known one, slower where rotors, attitude or controls cannot follow; times from that end.
 *
 * @param sign 1 where time runs from hover to cruise
 */
export function leg(
  trimmer: FullTrimmer,
  from: FullTrimmed,
  request: LegRequest,
  acceleration: number,
  sign: number,
): readonly LegKnot[] | PlanRefusal {
  const { airspeed, mode } = from.point;
  const to = request.meetSpeed;
  const interval = Math.max(knotInterval, Math.abs(to - airspeed) / acceleration / mostKnots);
  const rotors = trimmer.airframe.rotors.map(({ part }, i) => ({
    radius: part.radius,
    polarInertia: part.polarInertia,
    hoverTorque: request.hover.evaluation.loads.rotors[i]?.torque ?? 0,
  }));
  // The open leg runs from its far end here.
  const direction = mode === "clutch-closed" ? sign : -sign;
  const planned = speedProfile(airspeed, to, acceleration, interval);
  const tipSpeeds = steadyTipSpeeds(trimmer, from, planned, sign);
  if (tipSpeeds && !Array.isArray(tipSpeeds)) return tipSpeeds as PlanRefusal;
  let pace: Pace = planned.slice(1).map(() => 1);
  let beside: readonly FullTrimmed[] = [];
  for (let pass = 0; ; pass++) {
    const moments = paced(planned, pace);
    const found = trimsAlong(trimmer, from, moments, sign, beside, tipSpeeds);
    if (!Array.isArray(found)) return found as PlanRefusal;
    const wanted = calmPace(planned, found, { rotors, controls: trimmer.airframe.controls }, direction);
    if (pass === mostPaces || suffices(pace, wanted)) return moments.map(({ time }, i) => ({ time, trimmed: found[i] as FullTrimmed }));
    // The last look gives way to both: what it finds too slow stays so.
    pace = pass === mostPaces - 1 ? wanted.map((factor, i) => Math.max(factor, pace[i] as number)) : wanted;
    beside = found;
  }
}

/**
 * Slowing down on its drive the rotor keeps at least the speed that it has in steady flight: what is cheapest then would have it slow down and
 * speed up again. Undefined on every other leg.
 */
function steadyTipSpeeds(
  trimmer: FullTrimmer,
  from: FullTrimmed,
  planned: readonly SpeedMoment[],
  sign: number,
): readonly number[] | PlanRefusal | undefined {
  if (from.point.mode !== "clutch-closed" || sign > 0) return undefined;
  const steady = trimsAlong(
    trimmer,
    from,
    planned.map((moment) => ({ ...moment, acceleration: 0 })),
    sign,
    [],
  );
  if (!Array.isArray(steady)) return steady;
  const slowing = trimsAlong(trimmer, from, planned, sign, steady);
  if (!Array.isArray(slowing)) return slowing;
  return steady.map((trimmed, i) => Math.max(tipSpeedOf(trimmed), tipSpeedOf(slowing[i] as FullTrimmed)));
}

/** One way, then back: what the way back finds cheaper is kept. */
function trimsAlong(
  trimmer: FullTrimmer,
  from: FullTrimmed,
  moments: readonly SpeedMoment[],
  sign: number,
  beside: readonly FullTrimmed[],
  tipSpeeds?: readonly number[],
): FullTrimmed[] | PlanRefusal {
  const trims: FullTrimmed[] = [from];
  for (const [i, moment] of moments.entries()) {
    if (i === 0) continue;
    const tipSpeed = tipSpeeds?.[i];
    const point: FullPoint = {
      ...from.point,
      airspeed: moment.airspeed,
      acceleration: sign * Math.abs(moment.acceleration),
      ...(tipSpeed === undefined ? {} : { tipSpeed }),
    };
    const found = near(trimmer, point, beside[i] ?? last(trims));
    if (found.kind !== "trimmed")
      return refusal(found, `${from.point.mode === "clutch-open" ? "clutch open" : "clutch closed"} at this acceleration`);
    trims.push(found);
  }
  for (let i = trims.length - 2; i > 0; i--) {
    const [here, beyond] = [trims[i] as FullTrimmed, trims[i + 1] as FullTrimmed];
    const again = trimmer.trimFrom(here.point, [beyond.start], "table");
    if (again.kind === "trimmed" && fullObjective(again) < fullObjective(here) * (1 - cheaper)) trims[i] = again;
  }
  return trims;
}

function near(trimmer: FullTrimmer, point: FullPoint, beside: FullTrimmed): FullOutcome {
  const found = trimmer.trimFrom(point, [beside.start], "table");
  return found.kind === "trimmed" ? found : trimmer.trim(point, "table");
}

function refusal(found: Exclude<FullOutcome, FullTrimmed>, doing: string): PlanRefusal {
  const { airspeed } = found.point;
  const reason = found.kind === "no-equilibrium" ? `${found.limit} stands in the way` : "the solver gave up";
  return { kind: "no-plan", reason: `${reason}, ${doing}, at ${airspeed.toFixed(1)} m/s`, airspeed };
}

export interface HandOver {
  /** Clutch closed, from the rotor speed of driven flight to the common one. */
  readonly spin: readonly FullTrimmed[];
  /** Clutch open at the common rotor speed, then at its own where that is another. */
  readonly free: readonly FullTrimmed[];
}

/** The rotor speed nearest to that of free flight at which both modes fly, and the trims on the way to it. */
export function handOver(trimmer: FullTrimmer, closed: FullTrimmed, open: FullTrimmed): HandOver | PlanRefusal {
  const [driven, free] = [tipSpeedOf(closed), tipSpeedOf(open)];
  let refused: PlanRefusal | undefined;
  for (const share of [0, 0.25, 0.5, 0.75, 1]) {
    const common = free + share * (driven - free);
    const openThere = share === 0 ? open : near(trimmer, { ...open.point, tipSpeed: common }, open);
    if (openThere.kind !== "trimmed") {
      refused ??= refusal(openThere, "clutch open");
      continue;
    }
    const spin: FullTrimmed[] = [closed];
    for (let i = 1; i <= spinSteps; i++) {
      const tipSpeed = driven + ((common - driven) * i) / spinSteps;
      const found = near(trimmer, { ...closed.point, tipSpeed }, last(spin));
      if (found.kind !== "trimmed") {
        refused ??= refusal(found, "clutch closed at the rotor speed of free flight");
        break;
      }
      spin.push(found);
    }
    if (spin.length === spinSteps + 1) return { spin, free: share === 0 ? [open] : [openThere, open] };
  }
  return refused ?? { kind: "no-plan", reason: "the modes do not meet", airspeed: closed.point.airspeed };
}

/** Tip speed of a rotor in a trim [m/s]. */
export const tipSpeedOf = ({ evaluation }: FullTrimmed, rotor = 0): number => evaluation.rotorStates[rotor * rotorStateWidth] ?? 0;

/** Of a list that is never empty. */
export function last<T>(list: readonly T[]): T {
  return list[list.length - 1] as T;
}
