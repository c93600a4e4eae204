import type { FullConditions, FullOutcome, FullPoint, FullStart, FullTrimmed, FullTrimmer, TrimLimit } from "../equilibrium/index.ts";
import type { PoweredMode } from "./cheapest-flight.ts";
import { type EnvelopeRules, furtherLimits, type LimitShare } from "./envelope-limits.ts";

/** What is known of a flight: within every limit, forbidden by one, or nothing. */
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

/** A trimmed flight may use this much of a limit: what the solver's tolerance leaves open [1]. */
const fullShare = 1.001;

/** @derivation not a formula */
export const levelAt = (mode: PoweredMode, airspeed: number): FullPoint => ({ mode, airspeed, climbRate: 0, sideslip: 0 });

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

/** What stops a flight, by name. */
export interface Stop {
  readonly limit: string;
  readonly family: TrimLimit["family"];
}

const nearlyBinding = 0.9;

/**
 * What stops a flight beside one that is known. Where the solver gave up, the known flight's most used limit is named, and that it was
 * not resolved.
 *
 * @derivation not a formula
 */
export function stopOf(refused: Verdict, beside: Verdict): Stop {
  if (refused.kind === "forbidden") return { limit: refused.limit, family: refused.family };
  const [worst] = beside.kind === "flies" ? beside.shares : [];
  if (worst === undefined || worst.share < nearlyBinding) return { limit: "not resolved", family: "air" };
  return { limit: `${worst.name}, not resolved beyond`, family: worst.family };
}
