// One flight trimmed by the program and searched by other means: is there a flight where it saw none, or one cheaper by half a percent?
import { fullProblem } from "../../packages/engine/src/equilibrium/full/full-problem.ts";
import { type FullOutcome, FullTrimmer, fullObjective } from "../../packages/engine/src/equilibrium/full/index.ts";
import { stallLimits } from "../../packages/engine/src/equilibrium/full/stall-limits.ts";
import type { AuditedFlight } from "./audited-flights.ts";
import { type Asked, anywhere, evenNumbers, leastViolation } from "./least-violation.ts";

export interface Searched {
  readonly words: string;
  /** What the program said. */
  readonly outcome: FullOutcome["kind"];
  readonly limit?: string;
  /** Power [W], or sink [m/s] in a glide. */
  readonly cost?: number;
  /** A flight that the program had missed: its cost. */
  readonly missed?: number;
  /** Starts of the search, and of them those that came to what was asked, by the table of margins. */
  readonly starts: number;
  readonly arrived: number;
  /** Whether the search finds the program's own flight by itself, to 5 % of its cost: what it is worth. */
  readonly refound?: boolean;
  readonly seconds: number;
}

/** A flight cheaper by less than this share is none. */
const share = 0.005;
/** What counts as arrived before the program's own solver has a last look. */
const arrival = 1e-5;

export function searchedFlight(flight: AuditedFlight, starts: number, seed: number): Searched {
  const trimmer = new FullTrimmer(flight.conditions);
  const outcome = trimmer.trim(flight.point);
  const cost = outcome.kind === "trimmed" ? fullObjective(outcome) : undefined;
  const floors = trimmer.airframe.rotors.map(({ part }, i) =>
    // On schedule the program flies below the floor where it must, and says so.
    outcome.kind === "trimmed" && (outcome.stallMargins[i] as number) < part.stallMarginFloor - 5e-3 ? 1 : part.stallMarginFloor,
  );
  const { program } = fullProblem(flight.conditions, flight.point, trimmer.airframe, stallLimits(trimmer.airframe), floors);
  const values = new Float64Array(1 + program.equalities + program.inequalities);
  if (outcome.kind === "trimmed") program.evaluate(outcome.start.x, values);
  const asked = outcome.kind === "trimmed" ? { program, costBelow: (values[0] as number) * (1 - share) } : { program };
  const next = evenNumbers(seed);
  let arrived = 0;
  let missed: number | undefined;
  for (let i = 0; i < starts && missed === undefined; i++) {
    const { x, largest } = leastViolation(asked, anywhere(program, next, i));
    if (!(largest < arrival)) continue;
    arrived += 1;
    // Judged by the margin searched anew: the table that both read may flatter.
    const again = trimmer.trimFrom(flight.point, [{ x }]);
    if (again.kind !== "trimmed") continue;
    const found = fullObjective(again);
    if (cost === undefined || found < cost * (1 - share)) missed = found;
  }
  const known = values[0] as number;
  const refound = outcome.kind === "trimmed" ? refinds({ program, costBelow: known + 0.05 * Math.abs(known) }, seed) : undefined;
  return {
    words: flight.words,
    outcome: outcome.kind,
    ...(outcome.kind === "no-equilibrium" ? { limit: outcome.limit } : {}),
    ...(cost === undefined ? {} : { cost }),
    ...(missed === undefined ? {} : { missed }),
    ...(refound === undefined ? {} : { refound }),
    starts,
    arrived,
    seconds: 0,
  };
}

/** Starts that are spent on finding what is known. */
const trials = 40;

function refinds(asked: Asked, seed: number): boolean {
  const next = evenNumbers(seed + 1_000_003);
  for (let i = 0; i < trials; i++) if (leastViolation(asked, anywhere(asked.program, next, i)).largest < arrival) return true;
  return false;
}
