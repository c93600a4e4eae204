import { type MomentumPropeller, propellerState } from "./momentum-propeller.ts";
import { axialOnly, type PropellerSource } from "./propeller-source.ts";

/** Thrust below which the momentum law passes from pulling to pushing and has no rate of its own [N]. */
const passage = 0.5;

/**
 * A propeller by momentum and a thrust law linear in the advance ratio: the one that flights are computed with.
 *
 * Answers in axial flow while it pulls forwards, or pushes turned backwards.
 *
 * @derivation `propellerState` at the thrust that its law gives at this rate
 */
export function momentumSource(propeller: MomentumPropeller): PropellerSource {
  const { diameter } = propeller;
  return {
    kind: "momentum",
    diameter,
    referenceChord: undefined,
    loadsAt: ({ rotationRate, airspeed, inflowAngle, air }) => {
      if (rotationRate === 0) return { kind: "none", reason: "the momentum law knows no stopped propeller" };
      if (airspeed > 0 && Math.abs(inflowAngle) > 1e-6) return { kind: "none", reason: "the momentum law holds along the shaft only" };
      const n = rotationRate / (2 * Math.PI);
      const pressure = air.density * n ** 2 * diameter ** 4;
      const thrust =
        n > 0
          ? propeller.thrustCoefficient * pressure * (1 - airspeed / (n * diameter * propeller.zeroThrustAdvanceRatio))
          : -propeller.reverseThrustCoefficient * pressure;
      if (n > 0 && thrust < 0) return { kind: "none", reason: "the momentum law ends where thrust vanishes" };
      const { shaftPower } = propellerState(propeller, { density: air.density, airspeed }, thrust);
      const torque = shaftPower / rotationRate;
      const extrapolated = Math.abs(thrust) < passage ? [`thrust below ${passage} N, where the law passes from pulling to pushing`] : [];
      return { kind: "solved", ...axialOnly, thrust, torque, extrapolated };
    },
  };
}
