import { bladeAt, createRotorWorkspace } from "../../aerodynamics/rotor/index.ts";
import type { RotorPart } from "../../aircraft/index.ts";
import { type Airframe, aircraftRotor } from "../../airframe/index.ts";
import type { AirState } from "../../environment/atmosphere/index.ts";
import { thrustMarch } from "../rotor-march.ts";
import { StallTable } from "../stall-table.ts";
import { type ThrustLimit, thrustLimit } from "../thrust-limit.ts";

const degree = Math.PI / 180;
/** As the reduced trim searches: see `trim-rotor.ts`. */
const belowZeroLift = 2 * degree;
const lowestKneeFromZeroLift = 7 * degree;
const belowKnownKnee = 5 * degree;
const lowestKneeFromKnown = 1.5 * degree;
const hoverKnee = 0.08;
const axialFade = 0.3;

/** Largest steady thrust of every rotor, in flow in and through the disc over tip speed. */
export interface StallLimits {
  read(rotor: number, mu: number, lambdaC: number, tipSpeed: number): ThrustLimit;
  /** The same by a fresh search. */
  search(rotor: number, mu: number, lambdaC: number, tipSpeed: number): ThrustLimit;
}

/** @derivation not a formula */
export function stallLimits(airframe: Airframe): StallLimits {
  const each = airframe.rotors.map(({ part }) => rotorStallLimit(part, airframe.conditions.air));
  const of = (rotor: number) => each[rotor] as ReturnType<typeof rotorStallLimit>;
  return {
    read: (rotor, mu, lambdaC, tipSpeed) => of(rotor).read(mu, lambdaC, tipSpeed),
    search: (rotor, mu, lambdaC, tipSpeed) => of(rotor).search(mu, lambdaC, tipSpeed),
  };
}

function rotorStallLimit(part: RotorPart, air: AirState) {
  const teetering = { ...part, articulation: { kind: "teetering", pitchFlapCoupling: 0 } } as const;
  const workspace = createRotorWorkspace(aircraftRotor(teetering, air, { azimuths: 24, radialElements: 16 }));
  const { model } = workspace;
  const solidity = (part.blades * bladeAt(model, 0.75).chord) / (Math.PI * part.radius);
  const flow = {
    mu: 0,
    lambdaC: 0,
    lambdaI: 0,
    theta0: 0,
    theta1c: 0,
    theta1s: 0,
    coning: part.precone,
    tipSpeed: 0,
    speedOfSound: air.speedOfSound,
    kinematicViscosity: air.dynamicViscosity / air.density,
  };
  const limitFrom = (mu: number, lambdaC: number, tipSpeed: number, from: number, lowestKnee: number): ThrustLimit => {
    const airspeed = tipSpeed * Math.hypot(mu, lambdaC);
    const march = thrustMarch(workspace, { ...flow, mu, lambdaC, tipSpeed }, { airspeed, discAngle: Math.atan2(-lambdaC, mu) }, air);
    const lowestThrust = hoverKnee * solidity * Math.max(0, 1 - Math.abs(mu) / axialFade);
    return thrustLimit(march, { from, lowestKnee, lowestThrust });
  };
  const cold = (mu: number, lambdaC: number, tipSpeed: number) =>
    limitFrom(mu, lambdaC, tipSpeed, lambdaC / 0.75 - belowZeroLift, lowestKneeFromZeroLift);
  const middle = (part.tipSpeedMinimum + part.tipSpeedMaximum) / 2;
  const table =
    part.section.kind === "generic"
      ? new StallTable(cold, middle, middle)
      : new StallTable(cold, part.tipSpeedMinimum, part.tipSpeedMaximum);
  return {
    read: (mu: number, lambdaC: number, tipSpeed: number) => table.read(mu, lambdaC, tipSpeed),
    search: (mu: number, lambdaC: number, tipSpeed: number) =>
      limitFrom(mu, lambdaC, tipSpeed, table.read(mu, lambdaC, tipSpeed).collective - belowKnownKnee, lowestKneeFromKnown),
  };
}
