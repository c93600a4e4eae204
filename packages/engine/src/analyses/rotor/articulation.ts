import { type Articulation, createRotorWorkspace, type RotorModel } from "../../aerodynamics/rotor/index.ts";
import type { Outcome } from "../contract.ts";
import type { WrittenRotor } from "./blade-schema.ts";

type Assumed = NonNullable<Outcome<unknown>["assumed"]>;

/** Lock number of a blade when neither it nor an inertia is given. Common practice, 5 to 15. */
const usualLockNumber = 8;

/** How the blades of a rotor are held, with what was assumed for it. Density of the air [kg/m³]. */
export function rotorArticulation(
  rotor: WrittenRotor,
  model: RotorModel,
  density: number,
): { readonly articulation: Articulation; readonly assumed: Assumed } {
  if (rotor.articulation === "rigid") return { articulation: { kind: "rigid" }, assumed: [] };
  const coupling = rotor.pitchFlapCoupling === 0 ? {} : { pitchFlapCoupling: Math.tan(rotor.pitchFlapCoupling) };
  if (rotor.articulation === "teetering") return { articulation: { kind: "teetering", ...coupling }, assumed: [] };
  const perInertia = lockNumberTimesInertia(model, density);
  const lockNumber = rotor.lockNumber ?? (rotor.flapInertia === undefined ? usualLockNumber : perInertia / rotor.flapInertia);
  const { hingeOffset, flapFrequencyRatio, flapSpring } = rotor;
  const shared = { lockNumber, ...(hingeOffset > 0 && { hingeOffset }), ...coupling };
  const unmoved = rotor.articulation === "hinged" && hingeOffset === 0 && flapSpring === undefined;
  const assumed =
    rotor.lockNumber === undefined && rotor.flapInertia === undefined
      ? [
          {
            path: "inputs.rotor.lockNumber",
            value: lockNumber,
            because: unmoved
              ? "not given: usual value, only coning and lateral flap depend on it"
              : "not given: usual value, flapping and hub moments depend on it",
          },
        ]
      : [];
  if (flapFrequencyRatio !== undefined)
    return { articulation: { kind: "hingeless", flapFrequency: flapFrequencyRatio, ...shared }, assumed };
  const restFrequency = flapSpring === undefined ? {} : { restFrequency: Math.sqrt((flapSpring * lockNumber) / perInertia) };
  return { articulation: { kind: "hinged", ...restFrequency, ...shared }, assumed };
}

/** ρ a c R⁴ with the chord weighted by x²: Lock number times the inertia of a blade [kg m²]. */
function lockNumberTimesInertia(model: RotorModel, density: number): number {
  const { mesh, law } = createRotorWorkspace(model);
  const chord = (mesh.solidity * Math.PI * model.radius) / model.bladeCount;
  return density * law.liftSlope * chord * model.radius ** 4;
}
