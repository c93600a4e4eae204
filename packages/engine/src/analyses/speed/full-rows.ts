import { standardGravity } from "../../aircraft/index.ts";
import type { FullTrimmed, FullTrimmer } from "../../equilibrium/index.ts";
import type { SpeedRow } from "./schema.ts";

type Flown = Omit<SpeedRow, "airspeed" | "mode" | "feasible" | "limit" | "otherOptimum" | "schedulePower" | "energyPerDistance">;

/** Columns of a six-component trim; of several rotors the first one's state, loads of all of them together. */
export function fullColumns({ airframe, conditions }: FullTrimmer, { evaluation, stallMargins }: FullTrimmed): Flown {
  const { loads, pitch, roll, rotorStates, controls } = evaluation;
  const weight = airframe.mass * standardGravity;
  const rotorIds = new Set(airframe.rotors.map(({ part }) => part.id));
  const surfaces = new Set(conditions.aircraft.surfaces.map(({ id }) => id));
  const up = [Math.sin(pitch), -Math.cos(pitch) * Math.sin(roll), -Math.cos(pitch) * Math.cos(roll)] as const;
  const lift = (ids: ReadonlySet<string>) =>
    loads.parts
      .filter(({ id }) => ids.has(id))
      .reduce((sum, { force }) => sum + force[0] * up[0] + force[1] * up[1] + force[2] * up[2], 0) / weight;
  const drives = loads.drives.map((drive) => ({ ...drive, rotor: rotorIds.has(drive.drives) }));
  const sum = (rotor: boolean, value: (drive: (typeof drives)[number]) => number) =>
    drives.filter((drive) => drive.rotor === rotor).reduce((total, drive) => total + value(drive), 0);
  const tipSpeed = rotorStates[0];
  const part = airframe.rotors[0]?.part;
  const collective = part ? airframe.collectiveControl(0) : -1;
  const margin = stallMargins[0];
  return {
    electricPower: loads.electricPower,
    rotorShaftPower: sum(true, ({ shaftPower }) => shaftPower),
    propellerShaftPower: sum(false, ({ shaftPower }) => shaftPower),
    driveLosses: sum(true, ({ electricPower, shaftPower }) => electricPower - shaftPower),
    propellerLosses: sum(false, ({ electricPower, shaftPower }) => electricPower - shaftPower),
    avionicsPower: airframe.conditions.hotelPower,
    rotorRotationRate: part && tipSpeed !== undefined ? tipSpeed / part.radius : null,
    tipSpeed: tipSpeed ?? null,
    collective: collective < 0 ? null : (controls[collective] as number),
    discAngle: part ? pitch + part.shaftTilt.back + (rotorStates[2] as number) : null,
    wingAngle: null,
    flapLongitudinal: part ? (rotorStates[2] as number) : null,
    flapLateral: part ? (rotorStates[3] as number) * (part.turns === "clockwise" ? -1 : 1) : null,
    rotorLiftShare: lift(rotorIds),
    wingLiftShare: lift(surfaces),
    stallMargin: margin !== undefined && Number.isFinite(margin) ? margin : null,
    advanceRatio: loads.rotors[0]?.advanceRatio ?? null,
    pitch,
    roll,
    sideslip: evaluation.sideslip,
  };
}
