// Six-component trims of the demo for the tests, and the plain judgement of one.
import type { AircraftDefinition } from "@wingseed/engine";
import { recordLoading } from "../../packages/engine/src/aircraft/index.ts";
import { rotorStateWidth } from "../../packages/engine/src/airframe/index.ts";
import { type FullConditions, type FullTrimmed, FullTrimmer } from "../../packages/engine/src/equilibrium/full/index.ts";
import { demoDefinition, seaLevel } from "./demo-flight.ts";
import type { PlainRotorState } from "./plain-blades.ts";
import { gravity, type PlainState, type PlainSum, plainSix } from "./plain-six.ts";
import type { Vector } from "./plain-vectors.ts";

/** An aircraft in six components with its largest pack and first payload at sea level, controls at their optimum, unless told otherwise. */
export function trimmerOf(aircraft: AircraftDefinition, change: Partial<FullConditions> = {}): FullTrimmer {
  const payload = aircraft.payloads[0];
  if (payload === undefined) throw new Error("an aircraft has a payload record");
  return new FullTrimmer({
    aircraft,
    loading: recordLoading(Math.max(...aircraft.battery.packs), payload),
    air: seaLevel,
    controls: "optimum",
    losses: "component",
    lightsOn: false,
    ...change,
  });
}

export const demoTrimmer = async (name: "baseline" | "revised", change: Partial<FullConditions> = {}): Promise<FullTrimmer> =>
  trimmerOf(await demoDefinition(name), change);

/** Everything of a trim over weight, or weight times rotor radius [1]. */
export interface Judged {
  readonly sum: PlainSum;
  readonly unbalanced: Readonly<Record<string, number>>;
}

/** How an aircraft moves, seen from its body: velocity and rates from attitude, path and turn, by rotations written out again. */
export function plainMotion(flight: {
  readonly pitch: number;
  readonly roll: number;
  readonly sideslip: number;
  readonly airspeed: number;
  readonly climbRate: number;
  readonly turnRate: number;
}): { readonly velocity: Vector; readonly rate: Vector } {
  const { pitch, roll, sideslip, airspeed, climbRate, turnRate } = flight;
  // From level axes (ahead, right, down) by columns of the transposed direction cosines.
  const [ct, st, cp, sp] = [Math.cos(pitch), Math.sin(pitch), Math.cos(roll), Math.sin(roll)];
  const rows: readonly Vector[] = [
    [ct, 0, -st],
    [sp * st, cp, sp * ct],
    [cp * st, -sp, cp * ct],
  ];
  const turned = (level: Vector): Vector =>
    rows.map((row) => row[0] * level[0] + row[1] * level[1] + row[2] * level[2]) as unknown as Vector;
  return {
    velocity: turned([airspeed * Math.cos(sideslip), airspeed * Math.sin(sideslip), -climbRate]),
    rate: turned([0, 0, turnRate]),
  };
}

/** The state of a trim as the plain sums take it. */
export function plainStateOf(trimmer: FullTrimmer, { evaluation, point }: FullTrimmed): PlainState {
  const { airframe } = trimmer;
  const { aircraft } = trimmer.conditions;
  const { controls, rotorStates, pitch, roll, sideslip, airspeed, climbRate } = evaluation;
  const rotors: Record<string, PlainRotorState> = {};
  aircraft.rotors.forEach(({ id }, i) => {
    const [tipSpeed, inducedRatio, back, right, coning] = rotorStates.subarray(i * rotorStateWidth, (i + 1) * rotorStateWidth);
    rotors[id] = {
      tipSpeed: tipSpeed as number,
      inducedRatio: inducedRatio as number,
      back: back as number,
      right: right as number,
      coning: coning as number,
    };
  });
  const resting = (drives: string) => {
    const line = aircraft.driveLines.find((one) => one.drives === drives);
    if (line === undefined) return aircraft.rotors.some(({ id }) => id === drives);
    if (point.mode === "glide" || point.stopped?.includes(line.id) === true) return true;
    return point.mode === "clutch-open" && line.clutch === "one-way" && aircraft.rotors.some(({ id }) => id === drives);
  };
  return {
    ...plainMotion({ pitch, roll, sideslip, airspeed, climbRate, turnRate: point.turnRate ?? 0 }),
    pitch,
    roll,
    controls: Object.fromEntries(airframe.controls.map(({ id }, i) => [id, controls[i] as number])),
    rotors,
    uncoupled: aircraft.rotors.map(({ id }) => id).filter(resting),
    stopped: aircraft.propellers.map(({ id }) => id).filter(resting),
  };
}

/** What does not balance in a trim, by another hand's sums. */
export function judged(trimmer: FullTrimmer, trimmed: FullTrimmed): Judged {
  const { aircraft, loading, air } = trimmer.conditions;
  const state = plainStateOf(trimmer, trimmed);
  const sum = plainSix(aircraft, loading, air, state);
  const weight = sum.mass.mass * gravity;
  const size = Math.max(...aircraft.rotors.map(({ radius }) => radius), ...aircraft.propellers.map(({ diameter }) => diameter / 2));
  const unbalanced: Record<string, number> = {};
  ["forward", "right", "down"].forEach((name, axis) => {
    unbalanced[name] = (sum.force[axis] as number) / weight;
  });
  ["roll", "pitch", "yaw"].forEach((name, axis) => {
    unbalanced[name] = (sum.moment[axis] as number) / (weight * size);
  });
  for (const rotor of aircraft.rotors) {
    const loads = sum.rotors[rotor.id];
    if (loads === undefined) throw new Error(`no loads of ${rotor.id}`);
    unbalanced[`momentum of ${rotor.id}`] = loads.momentum / weight;
    if (rotor.articulation.kind !== "rigid") {
      unbalanced[`flapping aft of ${rotor.id}`] = loads.flapAft / (weight * rotor.radius);
      unbalanced[`flapping right of ${rotor.id}`] = loads.flapRight / (weight * rotor.radius);
    }
    if (rotor.articulation.kind === "hinged" || rotor.articulation.kind === "hingeless") {
      unbalanced[`coning of ${rotor.id}`] = loads.flapMean / (weight * rotor.radius);
    }
    if (state.uncoupled?.includes(rotor.id)) unbalanced[`free torque of ${rotor.id}`] = loads.torque / (weight * rotor.radius);
  }
  return { sum, unbalanced };
}
