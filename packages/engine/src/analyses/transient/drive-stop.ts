import { controlRange } from "../../aircraft/index.ts";
import type { FullTrimmed, FullTrimmer } from "../../equilibrium/index.ts";
import { bodyState, type ControlledFlight, type EulerAngles, eulerAngles, type FlightEvent } from "../../motion/index.ts";
import type { Problem } from "../contract.ts";
import type { FullFlight } from "../inputs/full-flight.ts";
import { type PreparedStep, type StepOf, stepAt } from "./prepared-step.ts";
import type { TransientInputs } from "./schema.ts";

/** How fast the wanted attitude goes over to that of the flight afterwards [rad/s]. */
const attitudeRate = 0.35;

/** Drive lines that stop, and what is done about it after the time of reaction. */
export function stoppedDrives(
  { definition }: FullFlight,
  trimmer: FullTrimmer,
  controlled: ControlledFlight,
  inputs: TransientInputs,
  step: StepOf<"engine-stop">,
): PreparedStep | Problem {
  const all = definition.driveLines;
  const ofRotors = all.filter(({ drives }) => definition.rotors.some(({ id }) => id === drives));
  const ids = step.lines ?? (ofRotors.length > 0 ? ofRotors : all).map(({ id }) => id);
  const unknown = ids.find((id) => !all.some((line) => line.id === id));
  if (unknown !== undefined || ids.length === 0) {
    const there = all.map(({ id }) => id).join(", ") || "none";
    const message =
      unknown === undefined
        ? "There is no drive line that could stop."
        : `No drive line is called "${unknown}"; the aircraft file has ${there}.`;
    return { kind: "part-unknown", message };
  }
  const { dynamics } = controlled.flight;
  const hit = definition.rotors.map(({ id }) => all.some((line) => line.drives === id && ids.includes(line.id)));
  const stop: FlightEvent = {
    time: stepAt,
    apply: () => {
      dynamics.running = dynamics.running.map((runs, i) => runs && !ids.includes(all[i]?.id ?? ""));
      dynamics.drives = dynamics.drives.map((drive, i) => (hit[i] ? { kind: "torque", torque: 0 } : drive));
    },
  };
  const after = flightAfter(trimmer, dynamics.running, ids, inputs.airspeed, hit);
  const reaction = after
    ? towardFlight(controlled, after, step.reaction)
    : towardCollective(controlled, definition, hit, inputs.airspeed, step.reaction);
  return { ...reaction, words: `${ids.join(", ")} ${ids.length === 1 ? "stops" : "stop"}`, events: [stop, ...reaction.events] };
}

/** The flight that is left: level on the propellers, or a glide; undefined where there is none at this airspeed. */
function flightAfter(
  trimmer: FullTrimmer,
  running: readonly boolean[],
  stopped: readonly string[],
  airspeed: number,
  hit: readonly boolean[],
): FullTrimmed | undefined {
  const { airframe } = trimmer;
  const pulls = airframe.propellers.some((_, i) => {
    const line = airframe.propellerLine(i);
    return line < 0 || (running[line] === true && !stopped.includes(airframe.lines[line]?.id ?? ""));
  });
  const mode = !pulls ? "glide" : hit.some(Boolean) ? "clutch-open" : "clutch-closed";
  const outcome = trimmer.trim({ mode, airspeed, climbRate: 0, sideslip: 0, stopped });
  return outcome.kind === "trimmed" ? outcome : undefined;
}

type Reaction = Omit<PreparedStep, "words">;

/** Controls and attitude go to those of the flight that is left. */
function towardFlight(controlled: ControlledFlight, { point, evaluation }: FullTrimmed, delay: number): Reaction {
  const { flight, controller, simulation } = controlled;
  const start = eulerAngles(flight.state, bodyState.quaternion);
  const from = stepAt + delay;
  const toward = (now: number, goal: number, since: number): number => {
    const change = Math.min(Math.abs(goal - now), attitudeRate * Math.max(0, since));
    return now + Math.sign(goal - now) * change;
  };
  const wanted = (time: number): EulerAngles => ({
    roll: toward(start.roll, evaluation.roll, time - from),
    pitch: toward(start.pitch, evaluation.pitch, time - from),
    yaw: start.yaw,
  });
  const react: FlightEvent = {
    time: from,
    apply: () => {
      simulation.flight.dynamics.aircraft.controls.forEach((_, i) => {
        controller.setTrim(i, evaluation.controls[i] as number);
      });
    },
  };
  const { rotors } = simulation.flight.dynamics.aircraft;
  const words =
    point.mode === "glide" ? "a glide" : point.mode === "clutch-open" ? "level flight with the rotor free" : "level flight without it";
  return {
    reaction: `controls and attitude to those of ${words} at ${point.airspeed} m/s, after ${delay} s, attitude at 20°/s`,
    events: [react],
    wanted,
    goal: {
      roll: evaluation.roll,
      pitch: evaluation.pitch,
      loadFactor: -evaluation.loads.force[2] / (simulation.flight.dynamics.body.mass * simulation.flight.dynamics.gravity),
      rates: [0, 0, 0],
      rotorRates: rotors.map(({ part }, i) => (evaluation.rotorStates[i * 5] as number) / part.radius),
    },
  };
}

/** Where no steady flight is left: collectives to their settings for a free rotor, attitude as it was. */
function towardCollective(
  controlled: ControlledFlight,
  definition: FullFlight["definition"],
  hit: readonly boolean[],
  airspeed: number,
  delay: number,
): Reaction {
  const { flight, controller } = controlled;
  const lowered = definition.controls.flatMap((control, index) => {
    const rotor = definition.rotors.findIndex(({ id }) => id === control.part);
    if (control.what !== "collective" || hit[rotor] !== true || !control.clutchOpen || control.clutchOpen.kind === "free") return [];
    return [{ control: index, position: controlRange(control.clutchOpen, airspeed, "schedule").minimum }];
  });
  const start = eulerAngles(flight.state, bodyState.quaternion);
  const goal = {
    roll: start.roll,
    pitch: start.pitch,
    loadFactor: Math.cos(start.pitch) * Math.cos(start.roll),
    rates: [0, 0, 0] as const,
    rotorRates: [],
  };
  if (lowered.length === 0) return { reaction: null, events: [], goal };
  const react: FlightEvent = {
    time: stepAt + delay,
    apply: () => {
      for (const { control, position } of lowered) controller.setTrim(control, position);
    },
  };
  const degrees = lowered.map(({ position }) => `${((position * 180) / Math.PI).toFixed(1)}°`).join(", ");
  return {
    reaction: `no steady flight is left at this airspeed: collective to ${degrees}, its setting for a free rotor, after ${delay} s, attitude held`,
    events: [react],
    goal,
  };
}
