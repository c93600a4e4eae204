import type { FullOutcome, FullPoint, FullTrimmed, FullTrimmer } from "../equilibrium/index.ts";
import type { PoweredMode } from "./cheapest-flight.ts";
import type { FullLinePoint } from "./full-line.ts";
import type { LineHooks } from "./speed-line.ts";

/** One end of the rotor speeds at which level flight exists, and what ends them. */
export interface CorridorEnd {
  /** [m/s] */
  readonly tipSpeed: number;
  readonly limit: string;
  readonly family: "air" | "power" | "strength" | "control" | "rule";
  /** The last flight before it. */
  readonly flight: FullTrimmed;
}

/** Rotor speeds at which level flight at one airspeed exists in one mode. */
export interface CorridorRange {
  readonly slowest: CorridorEnd;
  readonly fastest: CorridorEnd;
}

/** Steps from the cheapest rotor speed to an end, over the whole range. */
const marchSteps = 8;
const halvings = 4;
/** A solver that gave up says nothing about the flight. */
const unknown = { limit: "not resolved", family: "air" } as const;

/**
 * From a trim of which the rotor speed is free, slower and faster in steps until no trim at that rotor speed exists, then halved. A gap inside the range
 * that no step meets is not seen.
 *
 * @param from level flight at this airspeed
 */
export function rotorSpeedRange(trimmer: FullTrimmer, from: FullTrimmed, hooks: Pick<LineHooks, "cancelled">): CorridorRange | undefined {
  const rotor = trimmer.airframe.rotors[0];
  if (!rotor) return undefined;
  const { tipSpeedMinimum, tipSpeedMaximum } = rotor.part;
  const step = (tipSpeedMaximum - tipSpeedMinimum) / marchSteps;
  return {
    slowest: endToward(trimmer, from, { bound: tipSpeedMinimum, step: -step }, hooks),
    fastest: endToward(trimmer, from, { bound: tipSpeedMaximum, step }, hooks),
  };
}

/**
 * Ranges of neighbouring airspeeds, in their order, each tried again from a neighbour's last flight where that one's range reaches farther: another
 * way of flying may do so too.
 */
export function widenedRanges(
  trimmer: FullTrimmer,
  ranges: readonly (CorridorRange | undefined)[],
  hooks: Pick<LineHooks, "cancelled">,
): readonly (CorridorRange | undefined)[] {
  const rotor = trimmer.airframe.rotors[0];
  if (!rotor) return ranges;
  const { tipSpeedMinimum, tipSpeedMaximum } = rotor.part;
  const step = (tipSpeedMaximum - tipSpeedMinimum) / marchSteps;
  const wide = [...ranges];
  const order = [...ranges.keys(), ...[...ranges.keys()].reverse()];
  order.forEach((i, k) => {
    const [own, other] = [wide[i], wide[k < ranges.length ? i - 1 : i + 1]];
    if (!own || !other) return;
    wide[i] = {
      slowest: widened(trimmer, own.slowest, other.slowest, { bound: tipSpeedMinimum, step: -step }, hooks),
      fastest: widened(trimmer, own.fastest, other.fastest, { bound: tipSpeedMaximum, step }, hooks),
    };
  });
  return wide;
}

/** Where to, and in what steps [m/s]. */
interface March {
  readonly bound: number;
  readonly step: number;
}

function widened(
  trimmer: FullTrimmer,
  own: CorridorEnd,
  other: CorridorEnd,
  march: March,
  hooks: Pick<LineHooks, "cancelled">,
): CorridorEnd {
  const farther = (other.tipSpeed - own.tipSpeed) * Math.sign(march.step);
  if (farther < Math.abs(march.step) / 2) return own;
  for (const tipSpeed of [other.tipSpeed, (own.tipSpeed + other.tipSpeed) / 2]) {
    hooks.cancelled();
    const found = trimmer.trimFrom({ ...own.flight.point, tipSpeed }, [other.flight.start], "table");
    if (found.kind === "trimmed") return endToward(trimmer, found, march, hooks);
  }
  return own;
}

function endToward(trimmer: FullTrimmer, from: FullTrimmed, { bound, step }: March, hooks: Pick<LineHooks, "cancelled">): CorridorEnd {
  let good: FullTrimmed = from;
  let at = from.evaluation.rotorStates[0] as number;
  while (at !== bound) {
    hooks.cancelled();
    const next = Math.abs(bound - at) <= Math.abs(step) * 1.001 ? bound : at + step;
    const found = flownAt(trimmer, from, good, next, true);
    if (found.kind !== "trimmed") return halved(trimmer, from, good, at, next, found);
    good = found;
    at = next;
  }
  return { tipSpeed: bound, limit: "rotor speed range", family: "strength", flight: good };
}

/** From beside; where that fails, from every way of flying if it is worth it or the solver gave up. */
function flownAt(trimmer: FullTrimmer, from: FullTrimmed, near: FullTrimmed, tipSpeed: number, thorough: boolean): FullOutcome {
  const point: FullPoint = { ...from.point, tipSpeed };
  const found = trimmer.trimFrom(point, [near.start], "table");
  if (found.kind === "trimmed" || !(thorough || found.kind === "not-resolved")) return found;
  const again = trimmer.trim(point, "table");
  return again.kind === "not-resolved" ? found : again;
}

function halved(
  trimmer: FullTrimmer,
  from: FullTrimmed,
  near: FullTrimmed,
  good: number,
  bad: number,
  refused: Exclude<FullOutcome, FullTrimmed>,
): CorridorEnd {
  let [inside, outside, beside, because] = [good, bad, near, refused];
  for (let i = 0; i < halvings; i++) {
    const middle = (inside + outside) / 2;
    const found = flownAt(trimmer, from, beside, middle, false);
    if (found.kind === "trimmed") {
      inside = middle;
      beside = found;
    } else {
      outside = middle;
      if (found.kind === "no-equilibrium" || because.kind === "not-resolved") because = found;
    }
  }
  return {
    tipSpeed: inside,
    flight: beside,
    ...(because.kind === "no-equilibrium" ? { limit: because.limit, family: because.family } : unknown),
  };
}

/** Level flight in both modes at one airspeed: the cheapest trim and the rotor speeds around it. */
export interface CorridorPoint {
  readonly airspeed: number;
  readonly modes: Readonly<Record<PoweredMode, CorridorFlight>>;
}

export interface CorridorFlight {
  readonly outcome: FullLinePoint["outcome"];
  /** None where it does not fly. */
  readonly range: CorridorRange | undefined;
}

/** Rotor speeds that both modes share [m/s]; undefined where there are none. */
export function sharedRange({ modes }: CorridorPoint): { readonly slowest: number; readonly fastest: number } | undefined {
  const [closed, open] = [modes["clutch-closed"].range, modes["clutch-open"].range];
  if (!closed || !open) return undefined;
  const slowest = Math.max(closed.slowest.tipSpeed, open.slowest.tipSpeed);
  const fastest = Math.min(closed.fastest.tipSpeed, open.fastest.tipSpeed);
  return fastest >= slowest ? { slowest, fastest } : undefined;
}
