import { type FlightStep, horizontalAirspeed } from "./flight-state.ts";
import type { PowerQuery, PowerTableAxes } from "./power-lookup.ts";

/** Distance between tabulated maneuver speeds [m/s], and how close to an exact one a tabulated one is left out. */
const speedSpacing = 5;
const tooClose = 1.5;
/** Heights closer together than this share one node [m]. */
const sameHeight = 1;
/** Heights farther apart than this get a node half way [m]. */
const twoNodes = 500;

/**
 * Nodes for a flight: commanded airspeeds exactly, hovers in steady wind exactly, both rates exactly, and few more between.
 *
 * @param rates Fastest climb and descent [m/s].
 */
export function flightAxes(
  steps: readonly FlightStep[],
  rates: { readonly climbRate: number; readonly descentRate: number },
  finalHover: PowerQuery,
): PowerTableAxes {
  const legSpeeds = new Set<number>();
  const resting = new Set<number>([finalHover.speed]);
  let slowest = finalHover.speed;
  let fastest = finalHover.speed;
  let lowest = finalHover.altitude;
  let highest = finalHover.altitude;
  const steepest = { legs: { up: 0, down: 0 }, maneuver: { up: 0, down: 0 } };
  for (const { query, start, end, phase } of steps) {
    if (query === undefined) continue;
    lowest = Math.min(lowest, start.height, end.height);
    highest = Math.max(highest, start.height, end.height);
    const part = steepest[query.part];
    part.up = Math.max(part.up, query.climb);
    part.down = Math.min(part.down, query.climb);
    if (query.part === "legs") legSpeeds.add(query.speed);
    else {
      const speeds = [query.speed, horizontalAirspeed(start), horizontalAirspeed(end)];
      slowest = Math.min(slowest, ...speeds);
      fastest = Math.max(fastest, ...speeds);
      if (phase.kind === "hover") resting.add(query.speed);
    }
  }
  // Wind that grows with height adds to the change of airspeed: the ends go as far as the flight does.
  const ends = (part: "legs" | "maneuver") => {
    const { up, down } = steepest[part];
    const beyond = 1 + 1e-6;
    return {
      up: up > rates.climbRate * beyond ? up : rates.climbRate,
      down: -down > rates.descentRate * beyond ? down : -rates.descentRate,
    };
  };
  const altitudes = altitudeNodes(lowest, highest);
  const legs = ends("legs");
  const maneuver = ends("maneuver");
  return {
    legs: { speeds: [...legSpeeds].sort((a, b) => a - b), climbs: [legs.down, legs.down / 2, 0, legs.up / 2, legs.up], altitudes },
    maneuver: { speeds: maneuverSpeeds(slowest, fastest, [...resting]), climbs: [maneuver.down, 0, maneuver.up], altitudes },
  };
}

/** Power is so nearly linear in height that two nodes err by a few parts in ten thousand over the lower span. */
function altitudeNodes(lowest: number, highest: number): readonly number[] {
  const span = highest - lowest;
  if (span < sameHeight) return [lowest];
  return span < twoNodes ? [lowest, highest] : [lowest, (lowest + highest) / 2, highest];
}

function maneuverSpeeds(slowest: number, fastest: number, resting: readonly number[]): readonly number[] {
  const exact = [...new Set([slowest, ...resting.slice(0, 4), fastest])];
  const between: number[] = [];
  for (let speed = Math.ceil(slowest / speedSpacing) * speedSpacing; speed < fastest; speed += speedSpacing) {
    if (exact.every((other) => Math.abs(other - speed) >= tooClose)) between.push(speed);
  }
  return merged([...exact, ...between].sort((a, b) => a - b));
}

/** Leaves out nodes that rounding made twins. */
function merged(sorted: readonly number[]): readonly number[] {
  return sorted.filter((speed, index) => index === 0 || speed - (sorted[index - 1] as number) > 1e-6);
}
