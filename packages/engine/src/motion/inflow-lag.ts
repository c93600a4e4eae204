import { momentumResidual } from "../aerodynamics/rotor/index.ts";
import type { MovingRotor, MovingRotorLoads } from "./moving-aircraft.ts";

/**
 * Air that moves with a disc, over that of a sphere of its radius [1]: 0.637 of it, which is 8/(3π) of a cylinder of the radius' height.
 *
 * @source carpenter-fridovich-1953, apparent mass of a disc, from memory; pitt-peters-1981, element of the mass matrix, from memory
 */
const apparentMass = 8 / (3 * Math.PI);

/**
 * Rate of change of the mean induced velocity [m/s²]: what the blades' thrust has over that of the momentum at this induced
 * velocity speeds up the air that moves with the disc.
 *
 *     0.637 (4/3) π R³ ρ v' = T − T_momentum(v)
 *
 * In hover that is a lag of R 0.849/(4 v) by the momentum alone; at rest the law of steady inflow holds exactly.
 *
 * @param tipSpeed [m/s], above 0
 * @param inducedVelocity [m/s]
 */
export function inducedVelocityRate(rotor: MovingRotor, loads: MovingRotorLoads, tipSpeed: number, inducedVelocity: number): number {
  const kappa = rotor.part.inducedPowerFactor * rotor.groundFactor;
  const condition = { ct: loads.ct, mu: loads.advanceRatio, lambdaC: loads.axialInflow, kappa };
  const missing = momentumResidual(condition, inducedVelocity / tipSpeed);
  return (-2 / kappa) * missing * ((tipSpeed * tipSpeed) / (apparentMass * rotor.part.radius));
}
