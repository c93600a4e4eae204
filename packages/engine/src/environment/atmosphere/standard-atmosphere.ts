/** Constants of the standard atmosphere, all exact by definition. @source iso-2533-1975, primary constants, unchecked */
const seaLevelTemperature = 288.15;
const seaLevelPressure = 101_325;
const gravity = 9.80665;
const gasConstant = 287.05287;
const lapseRate = -0.0065;
const tropopause = 11_000;
const tropopauseTemperature = seaLevelTemperature + lapseRate * tropopause;
const pressureExponent = -gravity / (lapseRate * gasConstant);
const tropopausePressure = seaLevelPressure * (tropopauseTemperature / seaLevelTemperature) ** pressureExponent;

/** Range of geopotential altitude that the two layers cover [m]. */
export const standardAltitudeRange = { lowest: -2_000, highest: 20_000 } as const;

/**
 * Temperature of the standard atmosphere [K].
 *
 *     T = 288.15 − 0.0065 H   for H ≤ 11 000 m,   216.65 above, to 20 000 m
 *
 * @param altitude H, geopotential, above mean sea level [m]
 * @source iso-2533-1975, table of layers, unchecked
 */
export function standardTemperature(altitude: number): number {
  return altitude < tropopause ? seaLevelTemperature + lapseRate * altitude : tropopauseTemperature;
}

/**
 * Pressure of the standard atmosphere [Pa].
 *
 *     p = p₀ (T/T₀)^(−g/(L R))   and   p = p₁₁ exp(−g (H − 11 000)/(R T₁₁)) above 11 000 m
 *
 * @param altitude H, geopotential, above mean sea level [m]
 * @source iso-2533-1975, barometric equations, unchecked
 */
export function standardPressure(altitude: number): number {
  if (altitude < tropopause) {
    return seaLevelPressure * (standardTemperature(altitude) / seaLevelTemperature) ** pressureExponent;
  }
  return tropopausePressure * Math.exp((-gravity * (altitude - tropopause)) / (gasConstant * tropopauseTemperature));
}

/**
 * Geopotential altitude at which the dry standard atmosphere has this density [m].
 *
 * The density law of each layer solved for H; below 2 000 m under sea level the troposphere's law simply goes on.
 *
 * @param density ρ, greater than 0 [kg/m³]
 * @derivation ρ = ρ₀ (T/T₀)^(n−1) in the troposphere, ρ = ρ₁₁ exp(−g (H − 11 000)/(R T₁₁)) above, both inverted
 */
export function densityAltitude(density: number): number {
  const atSeaLevel = seaLevelPressure / (gasConstant * seaLevelTemperature);
  const atTropopause = tropopausePressure / (gasConstant * tropopauseTemperature);
  if (density > atTropopause) {
    const temperatureRatio = (density / atSeaLevel) ** (1 / (pressureExponent - 1));
    return (seaLevelTemperature * (temperatureRatio - 1)) / lapseRate;
  }
  return tropopause + ((gasConstant * tropopauseTemperature) / gravity) * Math.log(atTropopause / density);
}
