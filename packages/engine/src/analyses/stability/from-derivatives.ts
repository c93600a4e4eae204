import {
  type LateralDerivatives,
  type LinearMotion,
  type LongitudinalDerivatives,
  lateralMotion,
  lateralOf,
  longitudinalMotion,
  longitudinalOf,
} from "../../motion/index.ts";
import type { Problem } from "../contract.ts";
import type { DerivativesInput } from "./derivatives-schema.ts";

/** A steady flight with its linear motions, ready for modes. */
export interface LinearisedFlight {
  readonly at: number;
  readonly airspeed: number;
  readonly longitudinal: { readonly motion: LinearMotion; readonly derivatives: LongitudinalDerivatives } | undefined;
  readonly lateral: { readonly motion: LinearMotion } | undefined;
  /** I_y over mass [m²]; undefined where neither is known. */
  readonly pitchRadiusSquared: number | undefined;
}

/** The flights of a question with derivatives: one, or one for each factor. */
export function flightsOfDerivatives(derivatives: DerivativesInput): readonly LinearisedFlight[] | Problem {
  const { vary } = derivatives;
  if (!vary) return [flightOf(derivatives, 1)];
  const known = [...Object.keys(derivatives.longitudinal ?? {}), ...Object.keys(derivatives.lateral ?? {})];
  if (!known.includes(vary.derivative)) {
    return {
      kind: "derivative-missing",
      message: `The derivative ${vary.derivative} cannot be varied, it is not given; there are ${known.join(", ")}.`,
    };
  }
  return vary.factors.map((factor) => flightOf(varied(derivatives, vary.derivative, factor), factor));
}

function varied(given: DerivativesInput, name: string, factor: number): DerivativesInput {
  const scaled = <T extends Record<string, number>>(group: T | undefined): T | undefined =>
    group && name in group ? { ...group, [name]: (group[name] ?? 0) * factor } : group;
  return { ...given, longitudinal: scaled(given.longitudinal), lateral: scaled(given.lateral) } as DerivativesInput;
}

function flightOf(given: DerivativesInput, at: number): LinearisedFlight {
  const { longitudinal, lateral } = perUnit(given);
  return {
    at,
    airspeed: given.airspeed,
    longitudinal: longitudinal && { motion: longitudinalMotion(longitudinal, given), derivatives: longitudinal },
    lateral: lateral && { motion: lateralMotion(lateral, given) },
    pitchRadiusSquared: given.kind === "coefficients" ? given.iy / given.mass : undefined,
  };
}

function perUnit(given: DerivativesInput): {
  readonly longitudinal: LongitudinalDerivatives | undefined;
  readonly lateral: LateralDerivatives | undefined;
} {
  if (given.kind === "dimensional") return { longitudinal: given.longitudinal, lateral: given.lateral };
  return {
    longitudinal: given.longitudinal && longitudinalOf(given.longitudinal, given),
    lateral: given.lateral && lateralOf(given.lateral, given),
  };
}
