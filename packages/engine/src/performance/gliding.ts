import type { Trimmed } from "../equilibrium/index.ts";
import { lineMinimum } from "../numerics/index.ts";
import type { Flown, Flyer } from "./flyer.ts";
import type { LineHooks, LinePoint } from "./speed-line.ts";

/** A steady descent without power, rotor turning free and propellers stopped. */
export interface Glide<F extends Flown = Trimmed> {
  readonly airspeed: number;
  readonly sinkRate: number;
  /** Horizontal over vertical distance in still air [1]. */
  readonly glideRatio: number;
  readonly trimmed: F;
}

/** Least sink over speed, best glide and least sink. */
export interface GlidePolar<F extends Flown = Trimmed> {
  readonly line: readonly LinePoint<F>[];
  readonly best?: Glide<F>;
  readonly leastSink?: Glide<F>;
}

const speedTolerance = 0.02;

function glideOf<F extends Flown>(trimmed: F): Glide<F> {
  const { flown } = trimmed;
  const sinkRate = -flown.climbRate;
  return { airspeed: flown.airspeed, sinkRate, glideRatio: flown.forwardSpeed / sinkRate, trimmed };
}

/** The power-off polar over airspeeds along the path [m/s], each point at the least sink that the free controls allow. */
export function glidePolar<F extends Flown>(flyer: Flyer<F>, speeds: readonly number[], hooks: LineHooks): GlidePolar<F> {
  const line = flyer.line("glide", speeds, hooks);
  const best = bestGlide(flyer, line, (glide) => -glide.glideRatio);
  const leastSink = bestGlide(flyer, line, (glide) => glide.sinkRate);
  return { line, ...(best ? { best } : {}), ...(leastSink ? { leastSink } : {}) };
}

function bestGlide<F extends Flown>(
  flyer: Flyer<F>,
  line: readonly LinePoint<F>[],
  cost: (glide: Glide<F>) => number,
): Glide<F> | undefined {
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
      const outcome = flyer.trimFrom({ mode: "glide", forwardSpeed: airspeed, climbRate: 0 }, centre.glide.trimmed, true);
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
