import type { Trimmed } from "../equilibrium/index.ts";
import { border } from "../numerics/index.ts";
import { bestSpeed, type SpeedOptimum } from "./best-speeds.ts";
import { type PoweredMode, poweredModes } from "./cheapest-flight.ts";
import { type CheaperStretches, cheaperStretches } from "./crossings.ts";
import type { Flown, Flyer } from "./flyer.ts";
import type { LinePoint } from "./speed-line.ts";

/** Borders and optima of level flight. Speeds [m/s], powers [W]. */
export interface SpeedSummary<F extends Flown = Trimmed> {
  readonly leastPower?: SpeedOptimum<F>;
  readonly bestRange?: SpeedOptimum<F>;
  /** Lowest speed of level flight with the rotor turning free, with what stops it below; a speed of the list when that is its lowest. */
  readonly lowestAutorotating?: { readonly airspeed: number; readonly limit: string | undefined };
  /** Highest speed of level flight in either mode. */
  readonly highest?: { readonly airspeed: number; readonly mode: PoweredMode; readonly limit: string };
  readonly clutchOpenCheaper: CheaperStretches;
}

const speedTolerance = 0.01;
/** No speed above this is looked at [m/s]. */
const fastestLookedAt = 90;

export type ModeLines<F extends Flown = Trimmed> = Readonly<Record<PoweredMode, readonly LinePoint<F>[]>>;

/** What the two lines say together, borders and minima refined by exact trims. */
export function speedSummary<F extends Flown>(flyer: Flyer<F>, lines: ModeLines<F>): SpeedSummary<F> {
  const leastPower = bestSpeed(flyer, lines, ({ flown }) => flown.electricPower);
  const moving = Object.fromEntries(
    poweredModes.map((mode) => [mode, lines[mode].filter((point) => point.airspeed > 1)]),
  ) as unknown as ModeLines<F>;
  const bestRange = bestSpeed(flyer, moving, ({ flown }) => flown.electricPower / flown.airspeed);
  const lowestAutorotating = lowest(flyer, lines["clutch-open"]);
  const highest = highestOf(flyer, lines);
  return {
    ...(leastPower ? { leastPower } : {}),
    ...(bestRange ? { bestRange } : {}),
    ...(lowestAutorotating ? { lowestAutorotating } : {}),
    ...(highest ? { highest } : {}),
    clutchOpenCheaper: cheaperStretches(lines["clutch-closed"], lines["clutch-open"]),
  };
}

function lowest<F extends Flown>(flyer: Flyer<F>, line: readonly LinePoint<F>[]): SpeedSummary["lowestAutorotating"] {
  const first = line.findIndex((point) => point.outcome.kind === "trimmed");
  const point = line[first];
  if (point?.outcome.kind !== "trimmed") return undefined;
  const below = line[first - 1];
  if (below === undefined) return { airspeed: point.airspeed, limit: undefined };
  const start = follower(flyer, "clutch-open", point.outcome);
  const airspeed = border(start.reaches, point.airspeed, below.airspeed, speedTolerance);
  return { airspeed, limit: start.blockedBy() ?? (below.outcome.kind !== "trimmed" ? below.outcome.limit : undefined) };
}

function highestOf<F extends Flown>(flyer: Flyer<F>, lines: ModeLines<F>): SpeedSummary["highest"] {
  let best: SpeedSummary["highest"];
  for (const mode of poweredModes) {
    const line = lines[mode];
    const last = line.findLastIndex((point) => point.outcome.kind === "trimmed");
    const point = line[last];
    if (point?.outcome.kind !== "trimmed") continue;
    const start = follower(flyer, mode, point.outcome);
    let inside = point.airspeed;
    let outside = line[last + 1]?.airspeed ?? inside + 1;
    while (outside < fastestLookedAt && start.reaches(outside)) {
      inside = outside;
      outside += 1;
    }
    const airspeed = border(start.reaches, inside, outside, speedTolerance);
    if (best === undefined || airspeed > best.airspeed) best = { airspeed, mode, limit: start.blockedBy() ?? "speed range looked at" };
  }
  return best;
}

/** Walks a mode from a known trim; remembers the last good start and what stopped the last refusal. */
function follower<F extends Flown>(flyer: Flyer<F>, mode: PoweredMode, from: F) {
  let near = from;
  let limit: string | undefined;
  return {
    reaches: (airspeed: number): boolean => {
      const outcome = flyer.trimFrom({ mode, forwardSpeed: airspeed, climbRate: 0 }, near, true);
      if (outcome.kind === "trimmed") near = outcome;
      else limit = outcome.limit;
      return outcome.kind === "trimmed";
    },
    blockedBy: () => limit,
  };
}
