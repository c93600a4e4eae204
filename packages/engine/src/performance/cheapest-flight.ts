import {
  type FlightConditions,
  type FlightMode,
  type NotTrimmable,
  type Trimmed,
  type TrimRotor,
  type TrimStart,
  trim,
  trimFrom,
} from "../equilibrium/index.ts";

export type PoweredMode = Exclude<FlightMode, "glide">;

export const poweredModes: readonly PoweredMode[] = ["clutch-closed", "clutch-open"];

/** Which rotor modes a flight may use. */
export type ModeRule = "cheaper" | PoweredMode;

export type CheapestFlight =
  | { readonly kind: "flies"; readonly mode: PoweredMode; readonly trimmed: Trimmed }
  | {
      readonly kind: "no-equilibrium";
      readonly limit: string;
      readonly family: NotTrimmable["family"];
      readonly tried: readonly NotTrimmable[];
    };

/** Solver vectors by mode from a neighbouring point. */
export type WarmStarts = Partial<Record<PoweredMode, TrimStart>>;

/**
 * A rotor without shaft power in air that does not come up through it fast enough has nothing to live from: below this speed
 * the clutch-open mode is refused without a search [m/s].
 */
const slowestFreeFlight = 2;

function freeRotorCannotHover(speed: { readonly forward: number; readonly climb: number }): NotTrimmable {
  return {
    kind: "no-equilibrium",
    point: { mode: "clutch-open", forwardSpeed: speed.forward, climbRate: speed.climb },
    limit: "a free rotor cannot hover",
    family: "air",
    violation: 1,
    start: { x: new Float64Array(0) },
  };
}

/**
 * Least electric power that carries the aircraft at a horizontal and vertical speed [m/s], over the rotor modes that the
 * rule allows. Without warm starts every archetype is tried, so the answer depends on nothing but its arguments.
 */
export function cheapestFlight(
  conditions: FlightConditions,
  speed: { readonly forward: number; readonly climb: number },
  rotor: TrimRotor,
  rule: ModeRule = "cheaper",
  warm: WarmStarts = {},
): CheapestFlight {
  const failures: NotTrimmable[] = [];
  let best: Trimmed | undefined;
  for (const mode of poweredModes) {
    if (rule !== "cheaper" && rule !== mode) continue;
    if (mode === "clutch-open" && speed.forward < slowestFreeFlight && speed.climb >= 0) {
      failures.push(freeRotorCannotHover(speed));
      continue;
    }
    const point = { mode, forwardSpeed: speed.forward, climbRate: speed.climb };
    const start = warm[mode];
    const warmed = start ? trimFrom(conditions, point, rotor, [start]) : undefined;
    const outcome = warmed?.kind === "trimmed" ? warmed : trim(conditions, point, rotor);
    if (outcome.kind === "no-equilibrium") failures.push(outcome);
    else if (best === undefined || outcome.evaluation.power.electric < best.evaluation.power.electric) best = outcome;
  }
  if (best) return { kind: "flies", mode: best.point.mode as PoweredMode, trimmed: best };
  const first = failures[0] as NotTrimmable;
  return { kind: "no-equilibrium", limit: first.limit, family: first.family, tried: failures };
}
