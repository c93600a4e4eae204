/** What the aerodynamics needs to know of the air. */
export interface Air {
  /** ρ [kg/m³]. */
  readonly density: number;
  /** a [m/s]. */
  readonly speedOfSound: number;
  /** μ [Pa s]. */
  readonly dynamicViscosity: number;
}

/** Air with its pressure and temperature. */
export interface AirState extends Air {
  /** T [K]. */
  readonly temperature: number;
  /** p [Pa]. */
  readonly pressure: number;
}

/** Gas constants of dry air (the standard atmosphere's) and of water vapour, from memory [J/(kg K)]. */
const dryGasConstant = 287.05287;
const vapourGasConstant = 461.5;
/** Heat capacities at constant pressure over the gas constant: air as a two-atom, vapour as a many-atom ideal gas [1]. */
const dryHeatCapacity = 3.5;
const vapourHeatCapacity = 4;

/**
 * Air from its pressure, temperature and relative humidity.
 *
 *     ρ = (p − e)/(R_d T) + e/(R_v T)      a = √(γ p/ρ)      μ = 1.458·10⁻⁶ T^1.5/(T + 110.4)
 *
 * γ is that of the ideal mixture. Viscosity is that of dry air: vapour lowers it by less than 1 % below 40 °C.
 * Vapour pressure is held below the air's own pressure, as it is in nature.
 *
 * @param given pressure p [Pa], temperature T [K], relativeHumidity 0 to 1 over water [1]
 * @source iso-2533-1975, speed of sound and dynamic viscosity, unchecked
 */
export function moistAir(given: { readonly pressure: number; readonly temperature: number; readonly relativeHumidity: number }): AirState {
  const { pressure, temperature, relativeHumidity } = given;
  const vapour = Math.min(relativeHumidity * saturationPressure(temperature), pressure);
  const dryDensity = (pressure - vapour) / (dryGasConstant * temperature);
  const vapourDensity = vapour / (vapourGasConstant * temperature);
  const density = dryDensity + vapourDensity;
  const dryPart = dryDensity * dryGasConstant;
  const vapourPart = vapourDensity * vapourGasConstant;
  const atConstantPressure = dryPart * dryHeatCapacity + vapourPart * vapourHeatCapacity;
  const heatCapacityRatio = atConstantPressure / (atConstantPressure - dryPart - vapourPart);
  return {
    temperature,
    pressure,
    density,
    speedOfSound: Math.sqrt((heatCapacityRatio * pressure) / density),
    dynamicViscosity: (1.458e-6 * temperature ** 1.5) / (temperature + 110.4),
  };
}

/**
 * Saturation vapour pressure over water [Pa].
 *
 *     e_s = 611.2 exp(17.62 t/(243.12 + t)),  t in degrees Celsius
 *
 * Within 0.5 % from −40 to +60 °C; goes smoothly to nothing below.
 *
 * @param temperature T [K]
 * @source wmo-8, annex on formulas for humidity, unchecked
 */
function saturationPressure(temperature: number): number {
  const celsius = Math.max(temperature - 273.15, -200);
  return 611.2 * Math.exp((17.62 * celsius) / (243.12 + celsius));
}
