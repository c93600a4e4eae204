import { bladeAt, largestSteadyThrust } from "../../aerodynamics/rotor/index.ts";
import { airspeedBand } from "./airspeed-band.ts";
import { bladeCentrifugalForce } from "./blade-masses.ts";
import { rotorDistributions } from "./loading.ts";
import type { RotorMeasures, RotorPointOutputs } from "./output-schema.ts";
import type { RotorPointInputs } from "./solution.ts";
import { RotorBench, type RotorState } from "./state.ts";
import { torqueRoots } from "./torque-roots.ts";

/** Torque coefficient below which a rotor turns by itself [1]: far below what can be measured, far above solver noise. */
const freeTorqueCoefficient = 1e-9;
/** Below this airspeed the stream has no dynamic pressure worth dividing by [m/s]. */
const stillAir = 1e-3;
/** Thrust coefficient below which there is no induced velocity in hover to compare with [1]. */
const leastThrust = 1e-9;
/** The ring state by rates over hover induced velocity. Leishman, read; the borders are soft. */
const ringDescent = { from: 0.4, to: 1.6, forwardBelow: 1 } as const;

/** A found state in numbers. */
export function rotorMeasures(bench: RotorBench, state: RotorState, inputs: RotorPointInputs): RotorMeasures {
  const { rotor, point, shaftAngle, shaft, cyclic } = state;
  const { model, mesh } = bench.ws;
  const { tipSpeed, airspeed, air } = point;
  const area = Math.PI * model.radius * model.radius;
  const force = air.density * area * tipSpeed * tipSpeed;
  const lift = (shaft.ct * Math.cos(shaftAngle) - shaft.ch * Math.sin(shaftAngle)) * force;
  const drag = (shaft.ct * Math.sin(shaftAngle) + shaft.ch * Math.cos(shaftAngle)) * force;
  const pressureArea = 0.5 * air.density * airspeed * airspeed * area;
  // Where no torque was asked for there is none: what the search leaves is noise, unless rings jump from root to root.
  const turnsAlone = inputs.shaftTorque === 0 || inputs.power === 0;
  const cq = turnsAlone && Math.abs(rotor.cq) < freeTorqueCoefficient ? 0 : rotor.cq;
  const profile = rotor.cq + rotor.mu * rotor.ch - rotor.lambdaC * rotor.ct - rotor.cpInduced;
  const hover = Math.abs(rotor.ct) > leastThrust ? Math.sqrt(Math.abs(rotor.ct) / 2) : null;
  // A teeter hands no moment on; what is left in the solution is where its search ended.
  const held = model.articulation.kind !== "teetering";
  const largest = largestThrust(bench.ws, state, force);
  const measures = {
    thrust: shaft.ct * force,
    hForce: shaft.ch * force,
    sideForce: shaft.cy * force,
    torque: cq * force * model.radius,
    power: cq * force * tipSpeed,
    inducedPower: rotor.cpInduced * force * tipSpeed,
    profilePower: profile * force * tipSpeed,
    lift,
    drag,
    ct: shaft.ct,
    ch: shaft.ch,
    cq,
    cl: airspeed > stillAir ? lift / pressureArea : null,
    cd: airspeed > stillAir ? drag / pressureArea : null,
    liftToDrag: airspeed > stillAir && drag !== 0 ? lift / drag : null,
    solidity: mesh.solidity,
    bladeLoading: shaft.ct / mesh.solidity,
    torqueLoading: cq / mesh.solidity,
    advanceRatio: (airspeed * Math.cos(shaftAngle)) / tipSpeed,
    axialRatio: hover === null ? null : rotor.lambdaC / hover,
    inducedRatio: hover === null ? null : rotor.lambdaI / hover,
    figureOfMerit: airspeed <= stillAir && shaft.ct > 0 && rotor.cq > 0 ? shaft.ct ** 1.5 / Math.SQRT2 / rotor.cq : null,
    inducedVelocity: rotor.lambdaI * tipSpeed,
    heightAboveGround: inputs.heightAboveGround ?? null,
    airspeed,
    climbRate: -airspeed * Math.sin(shaftAngle),
    rotationRate: tipSpeed / model.radius,
    tipSpeed,
    collective: point.collective,
    cyclicCosine: cyclic.cosine,
    cyclicSine: cyclic.sine,
    shaftAngle,
    discAngle: rotor.discAngle,
    coning: rotor.coning,
    flapLongitudinal: shaft.flapLongitudinal,
    flapLateral: shaft.flapLateral,
    hubPitchMoment: held ? rotor.hubPitchMoment * force * model.radius : 0,
    hubRollMoment: held ? rotor.hubRollMoment * force * model.radius : 0,
    state: turnsAlone ? "autorotating" : flowState(rotor),
    advancingTipMach: (tipSpeed + airspeed * Math.abs(Math.cos(rotor.discAngle))) / air.speedOfSound,
    tipMach: tipSpeed / air.speedOfSound,
    reynoldsNumber: (0.75 * tipSpeed * bladeAt(model, 0.75).chord * air.density) / air.dynamicViscosity,
    centrifugalForce: bladeCentrifugalForce(inputs.blade, model, tipSpeed / model.radius),
    ...largest,
  } as const;
  const band = airspeedBand(measures, inputs);
  return { ...measures, airspeedBandLow: band?.low ?? null, airspeedBandHigh: band?.high ?? null };
}

/** Everything about one point. */
export function rotorPointOf(
  bench: RotorBench,
  state: RotorState,
  inputs: RotorPointInputs,
  measures: RotorMeasures,
): Omit<RotorPointOutputs, "domain"> {
  return {
    ...measures,
    ...rotorDistributions(bench.ws, state),
    airspeedBandChecks: [...(airspeedBand(measures, inputs)?.errors ?? [])],
    torqueRoots: torqueRoots(new RotorBench(bench.ws, bench.air, bench.setting), state, inputs),
  };
}

function flowState(rotor: RotorState["rotor"]): RotorPointOutputs["state"] {
  if (Math.abs(rotor.cq) < freeTorqueCoefficient) return "autorotating";
  const hover = Math.sqrt(Math.abs(rotor.ct) / 2);
  const descent = -rotor.lambdaC / hover;
  const ring = descent > ringDescent.from && descent < ringDescent.to && rotor.mu / hover < ringDescent.forwardBelow;
  if (rotor.ct > 0 && ring) return "vortex ring";
  return rotor.cq < 0 ? "windmill" : "normal";
}

/** At this rotor speed, disc angle and airspeed; along the shaft in the proportion of the thrusts along the disc's normal. */
function largestThrust(ws: RotorBench["ws"], { point, rotor, shaft }: RotorState, force: number) {
  const none = { largestThrust: null, largestThrustCollective: null };
  if (rotor.ct <= 0) return none;
  const largest = largestSteadyThrust(ws, { ...point, angle: { kind: "disc", value: rotor.discAngle } });
  if (largest.kind === "not-found") return none;
  return { largestThrust: (shaft.ct * force * largest.ct) / rotor.ct, largestThrustCollective: largest.collective };
}
