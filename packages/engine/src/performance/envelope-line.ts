import type { FullConditions, FullOutcome, FullPoint, FullStart, FullTrimmed, FullTrimmer, TrimLimit } from "../equilibrium/index.ts";
import { fullObjective } from "../equilibrium/index.ts";
import type { PoweredMode } from "./cheapest-flight.ts";
import { type EnvelopeRules, furtherLimits, type LimitShare } from "./envelope-limits.ts";

/** One speed of a line: flown within every limit, or what forbids it. */
export interface EnvelopePoint {
  readonly airspeed: number;
  readonly verdict: Verdict;
}

export type Verdict =
  | {
      readonly kind: "flies";
      readonly trimmed: FullTrimmed;
      /** Every limit with the share used. */
      readonly shares: readonly LimitShare[];
    }
  | {
      readonly kind: "forbidden";
      readonly limit: string;
      readonly family: TrimLimit["family"];
      /** In balance all the same, with a limit beyond the trim's own exceeded. */
      readonly balanced?: { readonly trimmed: FullTrimmed; readonly shares: readonly LimitShare[] };
    }
  /** The solver gave up: nothing is known. */
  | { readonly kind: "unknown" };

/** A speed at which level flight begins or ends. */
export interface EnvelopeEdge {
  readonly side: "slowest" | "fastest";
  readonly airspeed: number;
  readonly limit: string;
  readonly family: TrimLimit["family"];
}

export interface EnvelopeLine {
  readonly points: readonly EnvelopePoint[];
  readonly edges: readonly EnvelopeEdge[];
}

/** A trimmed flight may use this much of a limit: what the solver's tolerance leaves open [1]. */
const fullShare = 1.001;
/** Speeds beyond a border at which a flight is looked for again: every so many. */
const sentinelStep = 6;
const distinct = 0.005;
/** A border is halved so often between two speeds. */
const halvings = 4;

/** Trims flights of one loading in one air and holds them against every limit. @derivation not a formula */
export class EnvelopeTrimmer {
  readonly trimmer: FullTrimmer;
  readonly #rules: EnvelopeRules;
  readonly #checked: () => void;

  /** @param checked called before every trim; may throw to end the work */
  constructor(trimmer: FullTrimmer, rules: EnvelopeRules, checked: () => void) {
    this.trimmer = trimmer;
    this.#rules = rules;
    this.#checked = checked;
  }

  get conditions(): FullConditions {
    return this.trimmer.conditions;
  }

  cold(point: FullPoint): FullOutcome {
    this.#checked();
    return this.trimmer.trim(point, "table");
  }

  warm(point: FullPoint, start: FullStart): FullOutcome {
    this.#checked();
    return this.trimmer.trimFrom(point, [start], "table");
  }

  verdict(outcome: FullOutcome): Verdict {
    if (outcome.kind === "not-resolved") return { kind: "unknown" };
    if (outcome.kind === "no-equilibrium") return { kind: "forbidden", limit: outcome.limit, family: outcome.family };
    const own = outcome.limits.map(({ limit, share }): LimitShare => ({ ...limit, share }));
    const shares = [...own, ...furtherLimits(outcome, this.conditions, this.#rules)].sort((a, b) => b.share - a.share);
    const [worst] = shares;
    if (worst === undefined || worst.share <= fullShare) return { kind: "flies", trimmed: outcome, shares };
    return { kind: "forbidden", limit: worst.name, family: worst.family, balanced: { trimmed: outcome, shares } };
  }
}

/**
 * Level flight over speeds in one rotor mode. From a speed that flies the line is followed both ways, each speed from its neighbour, from
 * every way of flying where that fails. Beyond a border speeds carry its limit; every sixth of them and the last is looked at again.
 *
 * @param speeds ascending [m/s]
 * @derivation not a formula
 */
export function envelopeLine(trimmer: EnvelopeTrimmer, mode: PoweredMode, speeds: readonly number[]): EnvelopeLine {
  const outcomes = followed(trimmer, mode, speeds);
  const points = speeds.map((airspeed, i): EnvelopePoint => ({ airspeed, verdict: trimmer.verdict(outcomes[i] as FullOutcome) }));
  return { points, edges: edgesOf(trimmer, mode, points) };
}

const levelAt = (mode: PoweredMode, airspeed: number): FullPoint => ({ mode, airspeed, climbRate: 0, sideslip: 0 });

function followed(trimmer: EnvelopeTrimmer, mode: PoweredMode, speeds: readonly number[]): readonly FullOutcome[] {
  const found: (FullOutcome | undefined)[] = new Array(speeds.length).fill(undefined);
  const at = (i: number) => levelAt(mode, speeds[i] as number);
  const follow = (from: number, step: 1 | -1): void => {
    for (let i = from + step; i >= 0 && i < speeds.length; i += step) {
      const before = found[i - step] as FullOutcome;
      if (before.kind !== "trimmed") {
        // Beyond the border: looked at again from the last that flew, at some distance and at the end, and only carried between.
        const isSentinel = Math.abs(i - from) % sentinelStep === 0 || i === 0 || i === speeds.length - 1;
        const again = isSentinel ? trimmer.cold(at(i)) : undefined;
        found[i] = again?.kind === "trimmed" ? again : { ...before, point: at(i) };
        if (again?.kind === "trimmed") follow(i, step === 1 ? -1 : 1, );
        continue;
      }
      const warm = trimmer.warm(at(i), before.start);
      found[i] = warm.kind === "trimmed" ? warm : trimmer.cold(at(i));
    }
  };
  for (const seed of seeds(mode, speeds.length)) {
    found[seed] = trimmer.cold(at(seed));
    if (found[seed]?.kind === "trimmed") {
      follow(seed, 1);
      follow(seed, -1);
      break;
    }
  }
  return found as FullOutcome[];
}
