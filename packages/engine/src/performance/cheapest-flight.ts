import type { FlightMode, Trimmed } from "../equilibrium/index.ts";
import type { Flown, Flyer } from "./flyer.ts";
import type { NotFlown } from "./speed-line.ts";

export type PoweredMode = Exclude<FlightMode, "glide">;

export const poweredModes: readonly PoweredMode[] = ["clutch-closed", "clutch-open"];

/** Which rotor modes a flight may use. */
export type ModeRule = "cheaper" | PoweredMode;

export type CheapestFlight<F extends Flown = Trimmed> =
  | { readonly kind: "flies"; readonly mode: PoweredMode; readonly trimmed: F }
  | {
      readonly kind: "no-equilibrium";
      readonly limit: string;
      readonly family: NotFlown["family"];
      readonly tried: readonly NotFlown[];
    };

/** Known flights by mode beside the one that is asked for. */
export type WarmStarts<F extends Flown = Trimmed> = Partial<Record<PoweredMode, F>>;

/**
 * A rotor without shaft power in air that does not come up through it fast enough has nothing to live from: below this speed
 * the clutch-open mode is refused without a search [m/s].
 */
const slowestFreeFlight = 2;

const freeRotorCannotHover: NotFlown = { kind: "no-equilibrium", limit: "a free rotor cannot hover", family: "air" };

/**
 * Least electric power that carries the aircraft at a horizontal and vertical speed [m/s], over the rotor modes that the
 * rule allows. Without warm starts every archetype is tried, so the answer depends on nothing but its arguments.
 */
export function cheapestFlight<F extends Flown>(
  flyer: Flyer<F>,
  speed: { readonly forward: number; readonly climb: number },
  rule: ModeRule = "cheaper",
  warm: WarmStarts<F> = {},
): CheapestFlight<F> {
  const failures: NotFlown[] = [];
  let best: { readonly mode: PoweredMode; readonly trimmed: F } | undefined;
  for (const mode of poweredModes) {
    if (rule !== "cheaper" && rule !== mode) continue;
    if (mode === "clutch-open" && speed.forward < slowestFreeFlight && speed.climb >= 0) {
      failures.push(freeRotorCannotHover);
      continue;
    }
    const request = { mode, forwardSpeed: speed.forward, climbRate: speed.climb };
    const near = warm[mode];
    const warmed = near ? flyer.trimFrom(request, near) : undefined;
    const outcome = warmed?.kind === "trimmed" ? warmed : flyer.trim(request);
    if (outcome.kind !== "trimmed") failures.push(outcome);
    else if (best === undefined || outcome.flown.electricPower < best.trimmed.flown.electricPower) best = { mode, trimmed: outcome };
  }
  if (best) return { kind: "flies", ...best };
  const first = failures[0] as NotFlown;
  return { kind: "no-equilibrium", limit: first.limit, family: first.family, tried: failures };
}
