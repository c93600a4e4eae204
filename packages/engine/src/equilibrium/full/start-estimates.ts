import { inducedInflow } from "../../aerodynamics/rotor/index.ts";
import { type SurfacePart, standardGravity } from "../../aircraft/index.ts";
import type { Airframe } from "../../airframe/index.ts";
import type { FullConditions, FullPoint } from "./full-conditions.ts";
import type { WayOfFlying } from "./ways-of-flying.ts";

const degree = Math.PI / 180;
const level = Math.PI / 4;
/** Least share of weight that a lifting rotor is started with: without load it finds no pitch. */
const leastCarried = 0.15;
/** The wing's downwash before anything is known: rotors that carry all of the weight give it. */
const steepestNose = { down: -8 * degree, up: 14 * degree };
const highestCollective = 14 * degree;

/** Attitude and loads that a start is made from. */
export interface RoughFlight {
  /** Below the horizontal negative, of a glide; 0 otherwise [rad]. */
  readonly path: number;
  readonly pitch: number;
  /** Lift coefficient of the main wing [1]. */
  readonly wingLift: number;
  /** Carried by rotors, all together [N]. */
  readonly rotorThrust: number;
}

/** The largest surface that lies flat. */
export function mainWing({ aircraft }: FullConditions): SurfacePart | undefined {
  return aircraft.surfaces
    .filter(({ dihedral }) => Math.abs(dihedral) < level)
    .reduce<SurfacePart | undefined>((best, part) => (best && best.area >= part.area ? best : part), undefined);
}

/** Whether a rotor's shaft stands up. */
export function liftsUp(part: Airframe["rotors"][number]["part"]): boolean {
  return Math.hypot(part.shaftTilt.back, part.shaftTilt.right) < level;
}

/** Induced velocity of rotors that carry the weight; 0 without any [m/s]. @derivation momentum theory */
export function hoverVelocity({ air }: FullConditions, airframe: Airframe): number {
  const area = airframe.rotors.reduce((sum, rotor) => sum + (liftsUp(rotor.part) ? rotor.area : 0), 0);
  return area > 0 ? Math.sqrt((airframe.mass * standardGravity) / (2 * air.density * area)) : 0;
}

/**
 * Shares the weight between wing and rotors for a way of flying.
 *
 * @derivation lift of the wing at its angle in the rotors' downwash; the rest is carried by the rotors
 */
export function roughFlight(conditions: FullConditions, point: FullPoint, airframe: Airframe, way: WayOfFlying): RoughFlight {
  const path = point.mode === "glide" ? way.descent * degree : 0;
  const weight = airframe.mass * standardGravity;
  const wing = mainWing(conditions);
  const lifting = airframe.rotors.filter(({ part }) => liftsUp(part));
  const pressure = 0.5 * conditions.air.density * point.airspeed ** 2;
  if (way.nose.kind === "pitch" || wing === undefined || point.airspeed === 0) {
    const above = way.nose.kind === "pitch" ? way.nose.above * degree : 0;
    return { path, pitch: above + path, wingLift: 0, rotorThrust: lifting.length > 0 ? weight : 0 };
  }
  const largest = wing.maximumLiftCoefficient * wing.trimLiftFraction;
  const alone = lifting.length === 0 && !airframe.propellers.some(({ axis }) => Math.abs(axis.up) > level);
  const wingLift = alone ? Math.min(weight / (pressure * wing.area), 0.95 * largest) : way.nose.lift * largest;
  const rotorThrust = lifting.length > 0 ? Math.max(weight - pressure * wing.area * wingLift, leastCarried * weight) : 0;
  const area = lifting.reduce((sum, rotor) => sum + rotor.area, 0);
  const hover = area > 0 ? Math.sqrt(rotorThrust / (2 * conditions.air.density * area)) : 0;
  const down = hover > 0 ? hover ** 2 / Math.hypot(point.airspeed, hover) : 0;
  const above =
    wingLift / wing.liftSlope + wing.zeroLiftAngle - wing.incidence - setting(airframe, wing.id) + Math.atan2(down, point.airspeed);
  return { path, pitch: Math.min(steepestNose.up, Math.max(steepestNose.down, above)) + path, wingLift, rotorThrust };
}

/** Middle of the range of the control that turns a surface [rad]. */
function setting(airframe: Airframe, surface: string): number {
  const control = airframe.controls.find(({ part, what }) => part === surface && what === "deflection");
  if (control === undefined) return 0;
  const { setting: set } = control.definition;
  return set.kind === "ground-set" || set.kind === "fixed" ? set.value : Math.min(control.maximum, Math.max(control.minimum, 0));
}

/**
 * Collective of a rotor that gives a thrust.
 *
 *     θ_0.75 = (6 C_T/(σ a) + 1.5 (λ_c + λ_i))/(1 + 1.5 μ²)
 *
 * @param discAngle of the shaft to the path, back positive [rad]
 * @param thrust [N]
 * @source leishman-2006, mean lift of an untwisted blade, unchecked
 */
export function collectiveFor(
  { air }: FullConditions,
  rotor: Airframe["rotors"][number],
  speed: number,
  state: { readonly tipSpeed: number; readonly discAngle: number; readonly thrust: number },
): number {
  const { tipSpeed, discAngle, thrust } = state;
  const ct = thrust / (air.density * rotor.area * tipSpeed ** 2);
  const mu = (speed * Math.cos(discAngle)) / tipSpeed;
  const lambdaC = (-speed * Math.sin(discAngle)) / tipSpeed;
  const kappa = rotor.part.inducedPowerFactor;
  const through = lambdaC + Math.sign(ct) * inducedInflow({ ct: Math.abs(ct), mu, lambdaC: Math.sign(ct) * lambdaC, kappa });
  const mean = (6 * ct) / (rotor.solidity * rotor.workspace.law.liftSlope) + 1.5 * through;
  return Math.min(highestCollective, mean / (1 + 1.5 * mu * mu));
}

/**
 * Torque that lifting rotors hand to the airframe about the vertical, nose right positive [N m].
 *
 * @derivation induced power of hover and a quarter more for the blades' drag
 */
export function reactionTorque({ air }: FullConditions, airframe: Airframe, running: readonly boolean[], thrust: number): number {
  const lifting = airframe.rotors.filter(({ part }) => liftsUp(part));
  const area = lifting.reduce((sum, rotor) => sum + rotor.area, 0);
  if (area === 0) return 0;
  const power = 1.5 * thrust * Math.sqrt(thrust / (2 * air.density * area));
  return airframe.rotors.reduce((sum, rotor, index) => {
    if (!liftsUp(rotor.part) || !airframe.isDriven(index, running)) return sum;
    const rate = (0.4 * rotor.part.tipSpeedMinimum + 0.6 * rotor.part.tipSpeedMaximum) / rotor.part.radius;
    const sense = rotor.part.turns === "counter-clockwise" ? 1 : -1;
    return sum + (sense * power * (rotor.area / area)) / rate;
  }, 0);
}
