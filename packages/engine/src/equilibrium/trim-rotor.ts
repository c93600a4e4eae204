import {
  bladeAt,
  createRotorWorkspace,
  inducedInflow,
  type RotorModel,
  type RotorWorkspace,
  solveRotorInflowAndFlap,
  sweepRotor,
} from "../aerodynamics/rotor/index.ts";
import type { ReducedAircraft } from "../aircraft/index.ts";
import type { AirState } from "../environment/atmosphere/index.ts";
import type { RotorLoads } from "./airframe-loads.ts";
import { thrustMarch } from "./rotor-march.ts";
import { StallTable } from "./stall-table.ts";
import { type ThrustLimit, thrustLimit } from "./thrust-limit.ts";
import type { TrimState } from "./trim-variables.ts";

/** Azimuths and radial elements of the trim's rotor mesh. */
const trimMesh = { azimuths: 24, radialElements: 16 } as const;

/** The search for the largest thrust starts this far below the pitch of no lift in the mean flow [rad]. */
const belowZeroLift = (2 * Math.PI) / 180;

/** No stall is looked for below this much pitch above the start of a search. */
const lowestKneeFromZeroLift = (7 * Math.PI) / 180;
/** Where the table knows the knee, a search starts this far below it: the steepest slope is still in reach. */
const belowKnownKnee = (5 * Math.PI) / 180;
const lowestKneeFromKnown = (1.5 * Math.PI) / 180;

/** Hovering, stall is not looked for below this blade loading C_T/σ; the bound fades out by this in-plane flow (own choice). */
const hoverKnee = 0.08;
const axialFade = 0.3;

/** The rotor of an aircraft as the aerodynamic model wants it. */
export function aircraftRotorModel(aircraft: ReducedAircraft): RotorModel {
  const { rotor } = aircraft;
  return {
    radius: rotor.radius,
    bladeCount: rotor.blades,
    rootCutout: rotor.rootCutout,
    stations: rotor.stations,
    precone: rotor.precone,
    articulation: { kind: "teetering" },
    section: rotor.section,
    tipLoss: rotor.tipLoss,
    inducedPowerFactor: rotor.inducedPowerFactor,
    inflow: rotor.inflow,
    radialFlow: rotor.radialFlow,
    ...trimMesh,
  };
}

/** The rotor while it is being trimmed: one sweep is held, and everything else reads it. */
export interface TrimRotor {
  /** Runs the blade element sweep for a state in the flow (in-plane, axial) over tip speed. */
  sweep(state: TrimState, mu: number, lambdaC: number): void;
  /** Loads of the held sweep at a tip speed [m/s]. */
  loads(tipSpeed: number): RotorLoads & { readonly ct: number };
  /** λ_i of the state less the one that the thrust of the held sweep asks for [1]. */
  inflowResidual(inducedInflow: number, mu: number, lambdaC: number): number;
  momentCosine(): number;
  momentSine(): number;
  /** Table reading of the largest steady C_T and its collective. */
  stallLimit(mu: number, lambdaC: number, tipSpeed: number): ThrustLimit;
  /** The same found by a fresh search. */
  searchedStallLimit(mu: number, lambdaC: number, tipSpeed: number): ThrustLimit;
  /** Inflow and pitch harmonics that balance at a collective, for a start; undefined when none is found. */
  settle(state: TrimState, mu: number, lambdaC: number): Pick<TrimState, "inducedInflow" | "pitchCosine" | "pitchSine"> | undefined;
}

/** A rotor ready to be trimmed in still air of one state. */
export function createTrimRotor(aircraft: ReducedAircraft, air: AirState): TrimRotor {
  const model = aircraftRotorModel(aircraft);
  const workspace: RotorWorkspace = createRotorWorkspace(model);
  // Searches have a workspace of their own: they may not disturb the sweep that is held.
  const searching: RotorWorkspace = createRotorWorkspace(model);
  const kinematicViscosity = air.dynamicViscosity / air.density;
  const point = {
    mu: 0,
    lambdaC: 0,
    lambdaI: 0,
    theta0: 0,
    theta1c: 0,
    theta1s: 0,
    coning: model.precone,
    tipSpeed: 0,
    speedOfSound: air.speedOfSound,
    kinematicViscosity,
  };
  const area = Math.PI * model.radius * model.radius;
  const flow = (mu: number, lambdaC: number, tipSpeed: number) => ({
    airspeed: tipSpeed * Math.hypot(mu, lambdaC),
    angle: { kind: "disc", value: Math.atan2(-lambdaC, mu) } as const,
    tipSpeed,
    air,
  });
  const solidity = (model.bladeCount * bladeAt(model, 0.75).chord) / (Math.PI * model.radius);
  const limitFrom = (mu: number, lambdaC: number, tipSpeed: number, from: number, lowestKnee: number) => {
    const { airspeed, angle } = flow(mu, lambdaC, tipSpeed);
    const march = thrustMarch(searching, { ...point, mu, lambdaC, tipSpeed }, { airspeed, discAngle: angle.value }, air);
    const lowestThrust = hoverKnee * solidity * Math.max(0, 1 - Math.abs(mu) / axialFade);
    return thrustLimit(march, { from, lowestKnee, lowestThrust });
  };
  const search = (mu: number, lambdaC: number, tipSpeed: number) =>
    limitFrom(mu, lambdaC, tipSpeed, lambdaC / 0.75 - belowZeroLift, lowestKneeFromZeroLift);
  const { tipSpeedMinimum, tipSpeedMaximum } = aircraft.rotorControls.clutchOpen;
  const middle = (tipSpeedMinimum + tipSpeedMaximum) / 2;
  const table =
    aircraft.rotor.section.kind === "generic"
      ? new StallTable(search, middle, middle)
      : new StallTable(search, tipSpeedMinimum, tipSpeedMaximum);
  let heldInflow = 0;
  return {
    sweep(state, mu, lambdaC) {
      point.mu = mu;
      point.lambdaC = lambdaC;
      point.lambdaI = state.inducedInflow;
      point.theta0 = state.collective;
      point.theta1c = state.pitchCosine;
      point.theta1s = state.pitchSine;
      point.tipSpeed = state.tipSpeed;
      sweepRotor(workspace, point);
      heldInflow = state.inducedInflow;
    },
    loads(tipSpeed) {
      const { ct, ch, cq } = workspace.out;
      const force = air.density * area * tipSpeed * tipSpeed;
      return {
        ct,
        thrust: ct * force,
        hForce: ch * force,
        torque: cq * force * model.radius,
        inducedVelocity: heldInflow * tipSpeed,
      };
    },
    inflowResidual(inflow, mu, lambdaC) {
      return inflow - inducedInflow({ ct: workspace.out.ct, mu, lambdaC, kappa: model.inducedPowerFactor });
    },
    momentCosine: () => workspace.out.momentCos,
    momentSine: () => workspace.out.momentSin,
    stallLimit: (mu, lambdaC, tipSpeed) => table.read(mu, lambdaC, tipSpeed),
    searchedStallLimit: (mu, lambdaC, tipSpeed) =>
      limitFrom(mu, lambdaC, tipSpeed, table.read(mu, lambdaC, tipSpeed).collective - belowKnownKnee, lowestKneeFromKnown),
    settle(state, mu, lambdaC) {
      const solved = solveRotorInflowAndFlap(searching, { ...flow(mu, lambdaC, state.tipSpeed), collective: state.collective });
      if (solved.kind !== "solved") return undefined;
      return { inducedInflow: solved.lambdaI, pitchCosine: solved.theta1c, pitchSine: solved.theta1s };
    },
  };
}
