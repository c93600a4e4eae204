import { mapCoefficients, type PropellerMap } from "./propeller-map.ts";
import { axialOnly, type PropellerCondition, type PropellerSource } from "./propeller-source.ts";

/** A propeller by its measurements. */
export interface MeasuredPropeller {
  readonly diameter: number;
  readonly map: PropellerMap;
  /** What the levels of the map are. */
  readonly levels: "rotationRate" | "reynoldsNumber" | "none";
  /** Needed where the levels are Reynolds numbers [m]. */
  readonly referenceChord: number | undefined;
}

/** Stream across the shaft below which it counts as along it [rad]. */
const alongShaft = 1e-6;

/**
 * A propeller by measured coefficients: thrust and torque in axial flow, turning forwards.
 *
 *     T = C_T ρ n² D⁴      Q = C_P ρ n² D⁵/(2π)
 *
 * @derivation definitions
 */
export function measuredPropeller(propeller: MeasuredPropeller): PropellerSource {
  const { diameter, map, referenceChord } = propeller;
  return {
    kind: "measured",
    diameter,
    referenceChord,
    loadsAt: (condition) => {
      const { rotationRate, airspeed, inflowAngle, air } = condition;
      if (rotationRate <= 0) return { kind: "none", reason: "the table holds a propeller that turns forwards" };
      if (airspeed > 0 && Math.abs(inflowAngle) > alongShaft) return { kind: "none", reason: "the table holds flow along the shaft only" };
      const n = rotationRate / (2 * Math.PI);
      const found = mapCoefficients(map, airspeed / (n * diameter), levelOf(propeller, condition));
      if (found.kind === "outside") return { kind: "none", reason: found.reason };
      const pressure = air.density * n ** 2 * diameter ** 4;
      return {
        kind: "solved",
        ...axialOnly,
        thrust: found.ct * pressure,
        torque: (found.cp * pressure * diameter) / (2 * Math.PI),
        extrapolated: found.extrapolated,
      };
    },
  };
}

function levelOf({ levels, diameter, referenceChord }: MeasuredPropeller, { rotationRate, airspeed, air }: PropellerCondition): number {
  if (levels === "rotationRate") return rotationRate;
  if (levels === "none") return 1;
  const speed = Math.hypot(0.375 * diameter * rotationRate, airspeed);
  return (air.density * speed * (referenceChord ?? 0)) / air.dynamicViscosity;
}
