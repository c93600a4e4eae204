// Flights spread evenly over what the demo is asked for: both aircraft, all modes and packs, speed, height, warmth, climb, wind from any side, turns.
import type { AircraftDefinition } from "../../packages/engine/src/aircraft/definition.ts";
import { atmosphereAt } from "../../packages/engine/src/environment/atmosphere/index.ts";
import type { FullConditions, FullPoint } from "../../packages/engine/src/equilibrium/full/index.ts";

export interface AuditedFlight {
  readonly aircraft: string;
  readonly conditions: FullConditions;
  readonly point: FullPoint;
  readonly words: string;
}

/** The digits of a number in a base, mirrored at the point: even coverage of an interval. */
function mirroredDigits(index: number, base: number): number {
  let [value, share, rest] = [0, 1, index];
  while (rest > 0) {
    share /= base;
    value += share * (rest % base);
    rest = Math.floor(rest / base);
  }
  return value;
}

const bases = [2, 3, 5, 7, 11, 13, 17, 19, 23, 29, 31] as const;

const chosen = <Entry>(entries: readonly Entry[], share: number): Entry => entries[Math.floor(share * entries.length)] as Entry;

/** One of the flights, by its number from 0. */
export function auditedFlight(aircraft: Readonly<Record<string, AircraftDefinition>>, index: number): AuditedFlight {
  const [a, b, c, d, e, f, g, h, i, k, m] = bases.map((base) => mirroredDigits(index + 20, base)) as unknown as readonly number[] as [
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  const name = chosen(Object.keys(aircraft), b);
  const definition = aircraft[name] as AircraftDefinition;
  const mode = chosen(["clutch-closed", "clutch-closed", "clutch-open", "clutch-open", "glide"] as const, c);
  const airspeed = mode === "clutch-closed" ? 38 * a : 8 + 32 * a;
  const blocks = chosen(definition.battery.packs, d);
  const altitude = 2500 * e;
  const temperatureOffset = -20 + 40 * f;
  const climbRate = mode === "glide" ? 0 : k < 0.5 ? 0 : -2 + 5 * g;
  const sideslip = h < 0.6 ? 0 : mode === "clutch-closed" && airspeed < 12 ? (2 * i - 1) * Math.PI : (2 * i - 1) * 0.25;
  const turnRate = m < 0.75 ? 0 : (m - 0.875) * 3;
  const payloadMass = 2.5 * ((d * 7) % 1);
  const controls = g < 0.6 ? "optimum" : "schedule";
  return {
    aircraft: name,
    conditions: {
      aircraft: definition,
      loading: { blocks, payloadMass, payloadPower: 0, payloadDragArea: 0 },
      air: atmosphereAt({ altitude, temperatureOffset, relativeHumidity: 0 }),
      controls,
      losses: "component",
      lightsOn: false,
    },
    point: { mode, airspeed, climbRate, sideslip, turnRate },
    words:
      `${name}, ${mode}, ${controls}, ${airspeed.toFixed(1)} m/s, climb ${climbRate.toFixed(1)} m/s, wind from ${((sideslip * 180) / Math.PI).toFixed(0)}°, ` +
      `turn ${turnRate.toFixed(2)} rad/s, ${altitude.toFixed(0)} m, ${temperatureOffset.toFixed(0)} K off, ${blocks} blocks, ${payloadMass.toFixed(2)} kg`,
  };
}
