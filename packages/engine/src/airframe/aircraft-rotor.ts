import { createRotorWorkspace, type RotorModel } from "../aerodynamics/rotor/index.ts";
import type { RotorPart } from "../aircraft/index.ts";
import type { AirState } from "../environment/atmosphere/index.ts";

/** The rotor of an aircraft file as the aerodynamic model wants it, in this air. */
export function aircraftRotor(
  part: RotorPart,
  air: Pick<AirState, "density">,
  mesh: { readonly azimuths: number; readonly radialElements: number },
): RotorModel {
  const base = {
    radius: part.radius,
    bladeCount: part.blades,
    rootCutout: part.rootCutout,
    stations: part.stations,
    precone: part.precone,
    section: part.section,
    tipLoss: part.tipLoss,
    inducedPowerFactor: part.inducedPowerFactor,
    inflow: part.inflow,
    radialFlow: part.radialFlow,
    azimuths: mesh.azimuths,
    radialElements: mesh.radialElements,
  };
  const { articulation } = part;
  if (articulation.kind === "rigid") return { ...base, articulation };
  const pitchFlapCoupling = Math.tan(articulation.pitchFlapCoupling);
  if (articulation.kind === "teetering") return { ...base, articulation: { kind: "teetering", pitchFlapCoupling } };
  // γ = (ρ π R⁵/J) a σ, with the lift slope and solidity that the mesh of this rotor has.
  const { law, mesh: cut } = createRotorWorkspace({ ...base, articulation: { kind: "teetering" } });
  const lockNumber = ((air.density * Math.PI * part.radius ** 5) / part.polarInertia) * law.liftSlope * cut.solidity;
  return { ...base, articulation: { ...articulation, lockNumber, pitchFlapCoupling } };
}
