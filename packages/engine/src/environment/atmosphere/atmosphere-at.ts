import { type AirState, moistAir } from "./moist-air.ts";
import { standardPressure, standardTemperature } from "./standard-atmosphere.ts";

/** A point of the standard atmosphere on a day that may be warmer, colder or damper. */
export interface AtmosphericCondition {
  /** Geopotential altitude above mean sea level, −2 000 to 20 000 [m]. */
  readonly altitude: number;
  /** Added to the standard temperature [K]. */
  readonly temperatureOffset: number;
  /** 0 to 1, over water [1]. */
  readonly relativeHumidity: number;
}

/**
 * Air at an altitude.
 *
 * Pressure is the standard atmosphere's at this altitude whatever the temperature offset, so on a day off the standard
 * the altitude is a pressure altitude (common practice: "ISA plus so many degrees").
 *
 * @source iso-2533-1975, barometric equations, unchecked
 */
export function atmosphereAt(condition: AtmosphericCondition): AirState {
  return moistAir({
    pressure: standardPressure(condition.altitude),
    temperature: standardTemperature(condition.altitude) + condition.temperatureOffset,
    relativeHumidity: condition.relativeHumidity,
  });
}
