import { standardGravity, takeoffMass } from "../aircraft/index.ts";
import type { FlightConditions, FlightPoint } from "./conditions.ts";
import { tipSpeedRange } from "./governor.ts";
import type { TrimRotor } from "./trim-rotor.ts";
import { type TrimStart, type TrimState, trimVector, variable } from "./trim-variables.ts";

const degree = Math.PI / 180;

/** Ways of flying that trim starts from: carried by the rotor, shared with the wing, rotor slowed and unloaded. */
const archetypes = [
  { tipSpeed: 84, collective: 8.5, discAngle: -1, wingAngle: 7, rotorShare: 1, thrust: 5, torque: 16 },
  { tipSpeed: 68, collective: 5, discAngle: 2, wingAngle: 8, rotorShare: 0.7, thrust: 25, torque: 4 },
  { tipSpeed: 57, collective: 1, discAngle: 3, wingAngle: 9, rotorShare: 0.4, thrust: 30, torque: 0 },
] as const;

const glideAngles = [-10, -15, -25] as const;

/** Solver vectors for a point of which nothing is known. */
export function startingStates(conditions: FlightConditions, point: FlightPoint, rotor: TrimRotor): TrimStart[] {
  const glide = point.mode === "glide";
  return archetypes.map((archetype, i) => {
    const range = tipSpeedRange(conditions, point);
    const tipSpeed = Math.min(range.maximum, Math.max(range.minimum, archetype.tipSpeed));
    const pathAngle = glide ? (glideAngles[i] as number) * degree : Math.atan2(point.climbRate, point.forwardSpeed);
    const airspeed = Math.hypot(point.forwardSpeed, glide ? 0 : point.climbRate);
    const forward = airspeed * Math.cos(pathAngle);
    const climb = airspeed * Math.sin(pathAngle);
    // Climb angles count at speed only; near hover the disc stays level and the axial flow takes the climb.
    const discAngle = archetype.discAngle * degree + (glide ? -pathAngle * 0.2 : 0);
    const state: TrimState = {
      discAngle,
      tipSpeed,
      collective: archetype.collective * degree,
      wingAngle: archetype.wingAngle * degree,
      thrustSum: archetype.thrust,
      thrustDifference: point.mode === "clutch-closed" ? archetype.torque / conditions.aircraft.propellers.place.y : 0,
      finLiftCoefficient: 0,
      inducedInflow: 0.03,
      pitchCosine: 0,
      pitchSine: 0,
      pathAngle,
    };
    const mu = (forward * Math.cos(discAngle) + climb * Math.sin(discAngle)) / tipSpeed;
    const lambdaC = (climb * Math.cos(discAngle) - forward * Math.sin(discAngle)) / tipSpeed;
    const settled = rotor.settle(state, mu, lambdaC) ?? hoverInflow(conditions, tipSpeed, archetype.rotorShare);
    return { x: trimVector({ ...state, ...settled }, glide) };
  });
}

function hoverInflow(conditions: FlightConditions, tipSpeed: number, share: number) {
  const weight = takeoffMass(conditions.aircraft, conditions.loading) * standardGravity * share;
  const area = Math.PI * conditions.aircraft.rotor.radius ** 2;
  return { inducedInflow: Math.sqrt(weight / (2 * conditions.air.density * area)) / tipSpeed / 2, pitchCosine: 0, pitchSine: 0 };
}

/** Thrust [N] that the unloaded propeller is given in a start. */
const probeThrust = 3;

/** A start with the propeller that the rotor's torque unloads pulling or pushing. */
export function withLeftPropeller(from: TrimStart, way: "pulls" | "pushes"): TrimStart {
  const start = Float64Array.from(from.x);
  const left = ((start[variable.thrustSum] as number) - (start[variable.thrustDifference] as number)) * 5;
  if (way === "pulls" ? left >= 0 : left <= 0) return from;
  start[variable.thrustSum] = (start[variable.thrustDifference] as number) + (way === "pulls" ? probeThrust : -probeThrust) / 5;
  return { x: start };
}
