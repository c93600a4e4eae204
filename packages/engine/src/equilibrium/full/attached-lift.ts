import { type AircraftDefinition, standardGravity, takeoffMass } from "../../aircraft/index.ts";
import type { SurfaceReading } from "../../airframe/index.ts";
import type { FullConditions, FullPoint } from "./full-conditions.ts";

/** From this many times the induced velocity of hover on wings can be flown unstalled (own choice) [1]. */
const flyingWing = 2.2;
/** The same in a glide, which is steep at lower speeds [1]. */
const glidingWing = 3;
/** Climb and descent over airspeed beyond which they need not be [1]. */
const steep = 0.3;
/** Air from farther aside than the angle of this cosine leaves surfaces as they may be [1]. */
const fromAhead = 0.8;
const upright = Math.PI / 4;

/**
 * Whether wings have to be flown on this side of their stall in a flight. In hover a wing lies in the downwash like a plate, and so in steep
 * descent; but fast and nearly level, lift falls with incidence beyond the stall, nothing damps a roll, and the flight that balances there is not flown.
 *
 * @derivation not a formula
 */
export function fliesUnstalled({ aircraft, loading, air }: FullConditions, point: FullPoint): boolean {
  const area = aircraft.rotors.reduce((sum, { radius }) => sum + Math.PI * radius ** 2, 0);
  const weight = takeoffMass(aircraft, loading) * standardGravity;
  const hover = area > 0 ? Math.sqrt(weight / (2 * air.density * area)) : 0;
  const glide = point.mode === "glide";
  const level = glide || Math.abs(point.climbRate) < steep * point.airspeed;
  return point.airspeed > (glide ? glidingWing : flyingWing) * hover && level && Math.cos(point.sideslip ?? 0) > fromAhead;
}

/**
 * Lift coefficients of a surface to be held against its largest: what its strips have, and where it has to be flown unstalled also what their angle asks
 * for. A wing is a surface that reaches farther to the side than it stands from the centre of gravity.
 *
 * @param centre of gravity, forward of the datum [m]
 */
export function heldLift(
  part: AircraftDefinition["surfaces"][number],
  reading: SurfaceReading,
  unstalled: boolean,
  centre: number,
): { readonly highest: number; readonly lowest: number } {
  const { highestLift, lowestLift, highestAngle, lowestAngle } = reading;
  // A tail may stall: a gyroplane's does at its slowest, and the rotor holds the nose.
  const isWing = Math.abs(part.dihedral) < upright && Math.abs(part.place.x - centre) < part.span / 2;
  if (!unstalled || !isWing) return { highest: highestLift, lowest: lowestLift };
  return {
    highest: Math.max(highestLift, part.liftSlope * highestAngle),
    lowest: Math.min(lowestLift, part.liftSlope * lowestAngle),
  };
}
