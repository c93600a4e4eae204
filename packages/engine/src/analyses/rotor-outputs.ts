import {
  bladeAt,
  type ElementLoad,
  largestSteadyThrust,
  type OperatingPoint,
  type RotorWorkspace,
  rotorLoading,
  shaftCoefficients,
} from "../aerodynamics/rotor/index.ts";
import type { RotorInputs, RotorOutputs } from "./rotor-schema.ts";

/** Torque coefficient below which a rotor turns by itself [1]: far below what can be measured, far above solver noise. */
const freeTorqueCoefficient = 1e-9;
/** Below this airspeed the stream has no dynamic pressure worth dividing by [m/s]. */
const stillAir = 1e-3;
/** The ring state by rates over hover induced velocity. Leishman, read; the borders are soft. */
const ringDescent = { from: 0.4, to: 1.6, forwardBelow: 1 } as const;

/** A found operating point as the analysis reports it. */
export function rotorOutputsOf(inputs: RotorInputs, workspace: RotorWorkspace, found: OperatingPoint): RotorOutputs {
  const { rotor, point, shaftAngle } = found;
  const { radius } = workspace.model;
  const { tipSpeed, airspeed, air } = point;
  const area = Math.PI * radius * radius;
  const force = air.density * area * tipSpeed * tipSpeed;
  const shaft = shaftCoefficients(rotor, { cosine: inputs.cyclicCosine, sine: inputs.cyclicSine });
  const lift = (shaft.ct * Math.cos(shaftAngle) - shaft.ch * Math.sin(shaftAngle)) * force;
  const drag = (shaft.ct * Math.sin(shaftAngle) + shaft.ch * Math.cos(shaftAngle)) * force;
  const pressureArea = 0.5 * air.density * airspeed * airspeed * area;
  // Where no torque was asked for there is none: what the search leaves is noise.
  const cq = inputs.shaftTorque === 0 ? 0 : rotor.cq;
  const profile = rotor.cq + rotor.mu * rotor.ch - rotor.lambdaC * rotor.ct - rotor.cpInduced;
  return {
    thrust: shaft.ct * force,
    hForce: shaft.ch * force,
    sideForce: shaft.cy * force,
    torque: cq * force * radius,
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
    advanceRatio: (airspeed * Math.cos(shaftAngle)) / tipSpeed,
    figureOfMerit: airspeed <= stillAir && shaft.ct > 0 && rotor.cq > 0 ? shaft.ct ** 1.5 / Math.SQRT2 / rotor.cq : null,
    inducedVelocity: rotor.lambdaI * tipSpeed,
    airspeed,
    rotationRate: tipSpeed / radius,
    collective: point.collective,
    shaftAngle,
    discAngle: rotor.discAngle,
    coning: rotor.coning,
    flapLongitudinal: shaft.flapLongitudinal,
    flapLateral: shaft.flapLateral,
    state: rotorState(rotor, workspace.model.inducedPowerFactor),
    ...largestThrust(workspace, found, shaft.ct * force),
    advancingTipMach: (tipSpeed + airspeed * Math.abs(Math.cos(rotor.discAngle))) / air.speedOfSound,
    reynoldsNumber: (0.75 * tipSpeed * bladeAt(workspace.model, 0.75).chord * air.density) / air.dynamicViscosity,
    spanwise: spanwise(workspace, found),
  };
}

function rotorState(rotor: OperatingPoint["rotor"], kappa: number): RotorOutputs["state"] {
  if (Math.abs(rotor.cq) < freeTorqueCoefficient) return "autorotating";
  const hover = Math.sqrt((kappa * Math.abs(rotor.ct)) / 2);
  const descent = -rotor.lambdaC / hover;
  const ring = descent > ringDescent.from && descent < ringDescent.to && rotor.mu / hover < ringDescent.forwardBelow;
  if (rotor.ct > 0 && ring) return "vortex ring";
  return rotor.cq < 0 ? "windmill" : "normal";
}

/** At this rotor speed, disc angle and airspeed; along the shaft in the proportion of the thrusts along the disc's normal. */
function largestThrust(
  workspace: RotorWorkspace,
  { point, rotor }: OperatingPoint,
  thrust: number,
): Pick<RotorOutputs, "largestThrust" | "largestThrustCollective"> {
  if (rotor.ct <= 0) return { largestThrust: null, largestThrustCollective: null };
  const largest = largestSteadyThrust(workspace, { ...point, angle: { kind: "disc", value: rotor.discAngle } });
  if (largest.kind === "not-found") return { largestThrust: null, largestThrustCollective: null };
  return { largestThrust: (thrust * largest.ct) / rotor.ct, largestThrustCollective: largest.collective };
}

function spanwise(workspace: RotorWorkspace, { rotor, point }: OperatingPoint): RotorOutputs["spanwise"] {
  const loads = rotorLoading(workspace, {
    ...rotor,
    theta0: point.collective,
    tipSpeed: point.tipSpeed,
    speedOfSound: point.air.speedOfSound,
    kinematicViscosity: point.air.dynamicViscosity / point.air.density,
  });
  const elements = workspace.mesh.radiusFraction.length;
  const azimuths = workspace.mesh.sine.length;
  const rows = Array.from({ length: elements }, (_, element) => loads.filter((_, index) => index % elements === element));
  const sum = (row: readonly ElementLoad[], of: (load: ElementLoad) => number): number => row.reduce((total, load) => total + of(load), 0);
  const width = (element: number): number => {
    const chord = workspace.mesh.chord[element] ?? 1;
    return ((workspace.mesh.weight[element] ?? 0) * 2 * Math.PI * workspace.model.radius * azimuths) / (workspace.model.bladeCount * chord);
  };
  const nearest = (row: readonly ElementLoad[], sine: number): number =>
    row.reduce((best, load) => (Math.abs(Math.sin(load.azimuth) - sine) < Math.abs(Math.sin(best.azimuth) - sine) ? load : best))
      .angleOfAttack;
  return {
    radiusFraction: Array.from(workspace.mesh.radiusFraction),
    thrust: rows.map((row, element) => sum(row, (load) => load.thrust) / width(element)),
    torque: rows.map((row, element) => sum(row, (load) => load.torque) / width(element)),
    advancingAngle: rows.map((row) => nearest(row, 1)),
    retreatingAngle: rows.map((row) => nearest(row, -1)),
  };
}
