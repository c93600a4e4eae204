/** Coefficients with the rate in turns per second, as propellers are measured. */
export interface PropellerCoefficients {
  /** J = V/(n D); null without rotation [1]. */
  readonly advanceRatio: number | null;
  /** C_T = T/(ρ n² D⁴); null without rotation [1]. */
  readonly ct: number | null;
  /** C_P = P/(ρ n³ D⁵) = 2π C_Q; null without rotation [1]. */
  readonly cp: number | null;
  /** η = T V cos i/P, which is J C_T/C_P along the shaft; null without airspeed from ahead, thrust or power above zero [1]. */
  readonly efficiency: number | null;
  /** √(2/π) C_T^1.5/C_P; null with airspeed, or without thrust and power above zero [1]. */
  readonly figureOfMerit: number | null;
}

interface Turning {
  readonly thrust: number;
  readonly power: number;
  readonly rotationRate: number;
  readonly airspeed: number;
  /** i, shaft to stream [rad]. */
  readonly inflowAngle: number;
  readonly diameter: number;
  readonly density: number;
}

/** Airspeed below which a propeller stands still in the air [m/s]. */
const standing = 1e-9;

/**
 * Forces of a propeller as coefficients. n counts without sign, so a propeller turned backwards has positive ones for thrust and
 * power alike.
 *
 * @derivation definitions; the ideal power of a disc at rest is T^1.5/√(2 ρ A)
 */
export function propellerCoefficients(turning: Turning): PropellerCoefficients {
  const { thrust, power, rotationRate, airspeed, inflowAngle, diameter, density } = turning;
  const n = Math.abs(rotationRate) / (2 * Math.PI);
  if (n === 0) return { advanceRatio: null, ct: null, cp: null, efficiency: null, figureOfMerit: null };
  const ct = thrust / (density * n ** 2 * diameter ** 4);
  const cp = power / (density * n ** 3 * diameter ** 5);
  const advanceRatio = airspeed / (n * diameter);
  const pulls = ct > 0 && cp > 0;
  const ahead = Math.cos(inflowAngle);
  return {
    advanceRatio,
    ct,
    cp,
    efficiency: pulls && airspeed > standing && ahead > 0 ? (advanceRatio * ahead * ct) / cp : null,
    figureOfMerit: pulls && airspeed <= standing ? (Math.sqrt(2 / Math.PI) * ct ** 1.5) / cp : null,
  };
}

/** C_T,propeller = π³/4 C_T,rotor: turns per second and diameter against tip speed and disc area. */
export const propellerThrustPerRotor = Math.PI ** 3 / 4;
/** C_P,propeller = π⁴/4 C_P,rotor. */
export const propellerPowerPerRotor = Math.PI ** 4 / 4;
