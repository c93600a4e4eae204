import { firstCrossing } from "./first-crossing.ts";
import { type SolvedRotor, solveRotorInflowAndFlap, type UnsolvedRotor } from "./inflow-and-flap.ts";
import { InflowTrail } from "./inflow-trail.ts";
import { largestSteadyThrust, type ThrustLimitCondition, unstalledMarch } from "./largest-steady-thrust.ts";
import type { RotorWorkspace } from "./rotor-workspace.ts";

export type CollectiveForThrust =
  | { readonly kind: "found"; readonly collective: number; readonly rotor: SolvedRotor }
  /** The rotor stalls first; `largest` is in the measure asked for, exact only when that was asked for. */
  | { readonly kind: "unavailable"; readonly largest: number }
  /** Even the lowest collective gives more. */
  | { readonly kind: "below-range"; readonly smallest: number }
  | { readonly kind: "no-search"; readonly reason: string };

export interface ThrustTarget {
  /** Thrust coefficient wanted [1]. */
  readonly value: number;
  /** Accepted difference [1]. */
  readonly tolerance: number;
  /** The coefficient that is meant, of a solved rotor. */
  of(rotor: SolvedRotor): number;
  /** Close in on the largest thrust even when it is clearly too small, to be able to say how large it is. */
  readonly exactLimit: boolean;
}

const degree = Math.PI / 180;
/** Collectives from which a thrust is sought: the second when the first makes too much already. */
const collectiveStarts = [-6 * degree, -24 * degree] as const;
/** Step of the march, and the wider one when only the thrust itself matters. */
const marchStep = 1.5 * degree;
const wideMarchStep = 3 * degree;
/** Collectives at which one thrust is met, solved from two sides, differ by less [rad]. */
const closeBy = 1e-8;
/** A step of the march passes the maximum by less than this share of it. */
const marchShare = 0.8;

/**
 * The collective at which a rotor makes a thrust, on the unstalled branch.
 *
 * Approached from low collective; between two steps of the march closed in on. What lies beyond the first maximum of thrust is
 * never returned.
 *
 * @derivation search over `solveRotorInflowAndFlap`
 */
export function collectiveForThrust(ws: RotorWorkspace, condition: ThrustLimitCondition, target: ThrustTarget): CollectiveForThrust {
  const trail = new InflowTrail(ws, (collective) => ({ ...condition, collective }));
  const marchFrom = (start: number) =>
    unstalledMarch(trail, {
      from: start,
      step: target.exactLimit ? marchStep : wideMarchStep,
      enough: (rotor) => target.of(rotor) >= target.value,
    });
  const first = marchFrom(collectiveStarts[0]);
  const march = first.kind === "enough" && first.before === first.after ? marchFrom(collectiveStarts[1]) : first;
  if (march.kind === "not-found") return { kind: "no-search", reason: march.reason };
  const below = march.before.collective;
  if (march.kind === "enough") {
    if (march.before === march.after) return { kind: "below-range", smallest: target.of(march.after.rotor) };
    return within(ws, condition, target, trail, [march.after.collective, below]);
  }
  // The maximum lies between two steps of the march: it may still reach the target.
  if (!target.exactLimit && march.highest < marchShare * target.value) return { kind: "unavailable", largest: march.highest };
  const largest = largestSteadyThrust(ws, condition, below);
  if (largest.kind === "not-found") return { kind: "no-search", reason: largest.reason };
  const reached = target.of(largest.rotor);
  if (reached < target.value) return { kind: "unavailable", largest: reached };
  return within(ws, condition, target, trail, [largest.collective, below]);
}

/** Between a collective with more thrust and one with less: along the trail, from nothing where what it leads to is another state. */
function within(
  ws: RotorWorkspace,
  condition: ThrustLimitCondition,
  target: ThrustTarget,
  trail: InflowTrail,
  places: readonly [number, number],
): CollectiveForThrust {
  const fromNothing = (collective: number) => solveRotorInflowAndFlap(ws, { ...condition, collective });
  const crossingOf = (between: readonly number[], solve: (collective: number) => SolvedRotor | UnsolvedRotor) =>
    firstCrossing(
      between,
      (collective) => {
        const rotor = solve(collective);
        return rotor.kind === "solved" ? { value: target.of(rotor) - target.value, payload: rotor } : undefined;
      },
      target.tolerance,
    );
  const quick = crossingOf(places, (collective) => trail.at(collective));
  const near = quick.kind === "found" ? [quick.sample.at, quick.sample.at + closeBy, quick.sample.at - closeBy] : places;
  const close = crossingOf(near, fromNothing);
  const crossing = close.kind === "none" && near !== places ? crossingOf(places, fromNothing) : close;
  if (crossing.kind === "none") return { kind: "no-search", reason: "the collective could not be closed in on" };
  return { kind: "found", collective: crossing.sample.at, rotor: crossing.sample.payload };
}
