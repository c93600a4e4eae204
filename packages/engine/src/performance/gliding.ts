import { type FlightConditions, type Trimmed, type TrimRotor, trimFrom } from "../equilibrium/index.ts";
import { lineMinimum } from "../numerics/index.ts";
import { type LineHooks, type LinePoint, speedLine } from "./speed-line.ts";

/** A steady descent without power, rotor turning free and propellers stopped. */
export interface Glide {
  readonly airspeed: number;
  readonly sinkRate: number;
  /** Horizontal over vertical distance in still air [1]. */
  readonly glideRatio: number;
  readonly trimmed: Trimmed;
}

/** Least sink over speed, best glide and least sink. */
export interface GlidePolar {
  readonly line: readonly LinePoint[];
  readonly best?: Glide;
  readonly leastSink?: Glide;
}

const speedTolerance = 0.02;

function glideOf(trimmed: Trimmed): Glide {
  const { evaluation } = trimmed;
  const sinkRate = -evaluation.climbRate;
  return { airspeed: evaluation.airspeed, sinkRate, glideRatio: evaluation.forwardSpeed / sinkRate, trimmed };
}

/** The power-off polar over airspeeds along the path [m/s], each point at the least sink that the free controls allow. */
export function glidePolar(conditions: FlightConditions, speeds: readonly number[], rotor: TrimRotor, hooks: LineHooks): GlidePolar {
  const line = speedLine(conditions, "glide", speeds, rotor, hooks);
  const best = bestGlide(conditions, line, rotor, (glide) => -glide.glideRatio);
  const leastSink = bestGlide(conditions, line, rotor, (glide) => glide.sinkRate);
  return { line, ...(best ? { best } : {}), ...(leastSink ? { leastSink } : {}) };
}

function bestGlide(
  conditions: FlightConditions,
  line: readonly LinePoint[],
  rotor: TrimRotor,
  cost: (glide: Glide) => number,
): Glide | undefined {
  const trimmedPoints = line.flatMap((point) =>
    point.outcome.kind === "trimmed" ? [{ airspeed: point.airspeed, glide: glideOf(point.outcome) }] : [],
  );
  if (trimmedPoints.length === 0) return undefined;
  const costs = trimmedPoints.map((entry) => cost(entry.glide));
  const index = costs.indexOf(Math.min(...costs));
  const centre = trimmedPoints[index] as (typeof trimmedPoints)[number];
  let found = centre.glide;
  lineMinimum(
    (airspeed) => {
      const outcome = trimFrom(
        conditions,
        { mode: "glide", forwardSpeed: airspeed, climbRate: 0 },
        rotor,
        [centre.glide.trimmed.start],
        "table",
      );
      if (outcome.kind !== "trimmed") return Number.POSITIVE_INFINITY;
      const glide = glideOf(outcome);
      if (cost(glide) < cost(found)) found = glide;
      return cost(glide);
    },
    trimmedPoints[index - 1]?.airspeed ?? centre.airspeed,
    trimmedPoints[index + 1]?.airspeed ?? centre.airspeed,
    speedTolerance,
  );
  return found;
}
