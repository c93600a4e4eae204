import { type FlightConditions, type TrimRotor, type TrimStart, trimFrom } from "../equilibrium/index.ts";
import { border } from "../numerics/index.ts";
import { bestSpeed, type SpeedOptimum } from "./best-speeds.ts";
import { type PoweredMode, poweredModes } from "./cheapest-flight.ts";
import { type CheaperStretches, cheaperStretches } from "./crossings.ts";
import type { LinePoint } from "./speed-line.ts";

/** Borders and optima of level flight. Speeds [m/s], powers [W]. */
export interface SpeedSummary {
  readonly leastPower?: SpeedOptimum;
  readonly bestRange?: SpeedOptimum;
  /** Lowest speed of level flight with the rotor turning free, with what stops it below; a speed of the list when that is its lowest. */
  readonly lowestAutorotating?: { readonly airspeed: number; readonly limit: string | undefined };
  /** Highest speed of level flight in either mode. */
  readonly highest?: { readonly airspeed: number; readonly mode: PoweredMode; readonly limit: string };
  readonly clutchOpenCheaper: CheaperStretches;
}

const speedTolerance = 0.01;
/** No speed above this is looked at [m/s]. */
const fastestLookedAt = 90;

export type ModeLines = Readonly<Record<PoweredMode, readonly LinePoint[]>>;

/** What the two lines say together, borders and minima refined by exact trims. */
export function speedSummary(conditions: FlightConditions, lines: ModeLines, rotor: TrimRotor): SpeedSummary {
  const leastPower = bestSpeed(conditions, lines, rotor, (trimmed) => trimmed.evaluation.power.electric);
  const moving = Object.fromEntries(
    poweredModes.map((mode) => [mode, lines[mode].filter((point) => point.airspeed > 1)]),
  ) as unknown as ModeLines;
  const bestRange = bestSpeed(conditions, moving, rotor, (trimmed) => trimmed.evaluation.power.electric / trimmed.evaluation.airspeed);
  const lowestAutorotating = lowest(conditions, lines["clutch-open"], rotor);
  const highest = highestOf(conditions, lines, rotor);
  return {
    ...(leastPower ? { leastPower } : {}),
    ...(bestRange ? { bestRange } : {}),
    ...(lowestAutorotating ? { lowestAutorotating } : {}),
    ...(highest ? { highest } : {}),
    clutchOpenCheaper: cheaperStretches(lines["clutch-closed"], lines["clutch-open"]),
  };
}

function lowest(conditions: FlightConditions, line: readonly LinePoint[], rotor: TrimRotor): SpeedSummary["lowestAutorotating"] {
  const first = line.findIndex((point) => point.outcome.kind === "trimmed");
  const point = line[first];
  if (point?.outcome.kind !== "trimmed") return undefined;
  const below = line[first - 1];
  if (below === undefined) return { airspeed: point.airspeed, limit: undefined };
  const start = follower(conditions, "clutch-open", rotor, point.outcome.start);
  const airspeed = border(start.reaches, point.airspeed, below.airspeed, speedTolerance);
  return { airspeed, limit: start.blockedBy() ?? (below.outcome.kind === "no-equilibrium" ? below.outcome.limit : undefined) };
}

function highestOf(conditions: FlightConditions, lines: ModeLines, rotor: TrimRotor): SpeedSummary["highest"] {
  let best: SpeedSummary["highest"];
  for (const mode of poweredModes) {
    const line = lines[mode];
    const last = line.findLastIndex((point) => point.outcome.kind === "trimmed");
    const point = line[last];
    if (point?.outcome.kind !== "trimmed") continue;
    const start = follower(conditions, mode, rotor, point.outcome.start);
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
function follower(conditions: FlightConditions, mode: PoweredMode, rotor: TrimRotor, from: TrimStart) {
  let start = from;
  let limit: string | undefined;
  return {
    reaches: (airspeed: number): boolean => {
      const outcome = trimFrom(conditions, { mode, forwardSpeed: airspeed, climbRate: 0 }, rotor, [start], "table");
      if (outcome.kind === "trimmed") start = outcome.start;
      else limit = outcome.limit;
      return outcome.kind === "trimmed";
    },
    blockedBy: () => limit,
  };
}
