import { standardTemperature } from "../../environment/atmosphere/index.ts";
import type { EnvelopeOutputs } from "./schema.ts";
import type { EnvelopeSetting } from "./setting.ts";

type AirBorder = EnvelopeOutputs["airBorders"][number];

/** Looked for up to here [m]. */
const highest = 11_000;

/** Altitudes above the lowest looked at beyond which the file's limits of altitude and temperature forbid any flight. */
export function airBorders(setting: EnvelopeSetting, days: readonly number[], lowest: number): AirBorder[] {
  const { limits, battery } = setting.aircraft;
  const rise = battery.bayTemperatureRise;
  const coldest = [
    { limit: "coldest permitted air", family: "rule" as const, temperature: limits.airTemperatureMinimum },
    { limit: "coldest permitted cell", family: "power" as const, temperature: battery.cell.temperatureMinimum - rise },
    { limit: "coldest air for the payload", family: "rule" as const, temperature: setting.rules.payloadTemperatureMinimum },
  ];
  const hottest = [
    { limit: "hottest permitted air", family: "rule" as const, temperature: limits.airTemperatureMaximum },
    { limit: "hottest permitted cell", family: "power" as const, temperature: battery.cell.temperatureMaximum - rise },
    { limit: "hottest air for the payload", family: "rule" as const, temperature: setting.rules.payloadTemperatureMaximum },
  ];
  return days.flatMap((temperatureOffset) => {
    const crossing = (temperature: number | undefined) =>
      temperature === undefined ? undefined : altitudeOf(temperature - temperatureOffset, lowest, highest);
    const of = (forbidden: AirBorder["forbidden"]) => (entry: (typeof coldest)[number]) => {
      const altitude = crossing(entry.temperature);
      return altitude === undefined ? [] : [{ temperatureOffset, altitude, forbidden, limit: entry.limit, family: entry.family }];
    };
    const rule: AirBorder[] =
      limits.altitudeMaximum >= lowest && limits.altitudeMaximum <= highest
        ? [{ temperatureOffset, altitude: limits.altitudeMaximum, forbidden: "above", limit: "altitude limit", family: "rule" }]
        : [];
    return [...rule, ...coldest.flatMap(of("above")), ...hottest.flatMap(of("below"))];
  });
}

/** Where the standard atmosphere has a temperature, between two altitudes; it falls all the way. */
function altitudeOf(temperature: number, lowest: number, highest: number): number | undefined {
  if (temperature > standardTemperature(lowest) || temperature < standardTemperature(highest)) return undefined;
  let low = lowest;
  let high = highest;
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (standardTemperature(middle) > temperature) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
