import type { FullTrimmer } from "../equilibrium/index.ts";
import { linearise } from "./linearisation.ts";
import { trackingGain } from "./tracking-gain.ts";
import type { PlanKnot, TransitionPlan } from "./transition-plan.ts";
import { movingFlight } from "./trimmed-flight.ts";

/** A gain of the path-following controller made for one moment of a plan. */
export interface ScheduledGain {
  readonly time: number;
  readonly open: boolean;
  /** Row-major, controls by deviations. */
  readonly gain: Float64Array;
}

const gainInterval = 2;

/** Whether the clutch is open in the trim of a knot. */
export function isOpen({ trimmed }: PlanKnot): boolean {
  return trimmed.point.mode !== "clutch-closed";
}

/**
 * Gains along a plan, one every two seconds or so and at both sides of the clutch; free controls may move, scheduled ones where they are free to
 * leave their schedule. No gain where no feedback keeps the motion bounded.
 */
export function gainsAlong(
  trimmer: FullTrimmer,
  plan: TransitionPlan,
): ScheduledGain[] | { readonly kind: "no-gain"; readonly airspeed: number } {
  const gains: ScheduledGain[] = [];
  for (const knot of plan.knots) {
    const open = isOpen(knot);
    const before = gains[gains.length - 1];
    const final = knot === plan.knots[plan.knots.length - 1];
    if (before && before.open === open && knot.time - before.time < gainInterval && !final) continue;
    const { dynamics, state } = movingFlight(trimmer.airframe, knot.trimmed, 1e-8);
    const { pitch, roll, flight } = knot.trimmed.evaluation;
    const usable = trimmer.airframe.controls.map(({ definition, what }) => {
      const setting = (open ? definition.clutchOpen : undefined) ?? definition.setting;
      const free = setting.kind === "free" || (setting.kind === "scheduled" && trimmer.conditions.controls === "optimum");
      return free && what !== "tip-speed";
    });
    const linear = linearise(dynamics, state);
    const gain = trackingGain(linear, dynamics.aircraft.controls, usable, {
      attitude: { pitch, roll, yaw: 0 },
      velocity: flight.velocity,
    });
    if (!gain) return { kind: "no-gain", airspeed: knot.trimmed.point.airspeed };
    gains.push({ time: knot.time, open, gain });
  }
  return gains;
}

/** Entries of the gain between the two designs around a time, of those made for the clutch as it is. */
export function gainAt(gains: readonly ScheduledGain[], open: boolean, time: number): (index: number) => number {
  const own = gains.filter((gain) => gain.open === open);
  let i = 0;
  while (i < own.length - 2 && (own[i + 1] as ScheduledGain).time <= time) i += 1;
  const [a, b] = [own[i] as ScheduledGain, own[i + 1] ?? (own[i] as ScheduledGain)];
  const share = b.time > a.time ? Math.min(1, Math.max(0, (time - a.time) / (b.time - a.time))) : 0;
  return (index) => (a.gain[index] as number) + share * ((b.gain[index] as number) - (a.gain[index] as number));
}
