import type { MotorDefinition } from "../aircraft/index.ts";
import type { MotorState } from "../drivetrain/motor/index.ts";
import type { AirState } from "../environment/atmosphere/index.ts";

/** Density of the air in which a motor's thermal resistance is taken to be stated [kg/m³]. */
const statedDensity = 1.225;
/** Heat passed on grows with this power of density: cylinders in a stream at Reynolds numbers of 4 000 to 40 000. */
const densityExponent = 0.618;
/** Growth of copper's resistance at 20 °C [1/K]. */
const copper = 0.00393;
const coefficientTemperature = 293.15;
/** At which a winding's resistance is taken to be stated [K]. */
const statedTemperature = 298.15;

/**
 * Temperature at which a motor's winding stays in a steady flight [K]; null where it runs away.
 *
 *     T = T_air + R_th (1.225/ρ)^0.618 (I² R(T) + U_i I₀)
 *
 * Thin air takes less heat away: the exponent is that of a cylinder in a stream (hilpert-1933, from memory). The file's thermal
 * resistance counts as measured in air of 1.225 kg/m³, its resistance at 25 °C.
 *
 * @source iec-60028, coefficient of copper at 20 °C, from memory; hilpert-1933, from memory
 * @derivation linear in T, solved for it
 */
export function windingTemperature(
  motor: Pick<MotorDefinition, "resistance" | "noLoadCurrent" | "thermalResistance">,
  { current, voltage }: MotorState,
  { density, temperature }: Pick<AirState, "density" | "temperature">,
): number | null {
  const thermal = motor.thermalResistance * (statedDensity / density) ** densityExponent;
  const growth = copper / (1 + copper * (statedTemperature - coefficientTemperature));
  const winding = current * current * motor.resistance;
  const idle = Math.abs(voltage - current * motor.resistance) * motor.noLoadCurrent;
  const perKelvin = thermal * winding * growth;
  if (perKelvin >= 1) return null;
  return (temperature + thermal * (winding * (1 - growth * statedTemperature) + idle)) / (1 - perKelvin);
}
