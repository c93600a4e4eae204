import type { FullTrimmed, FullTrimmer } from "../../equilibrium/index.ts";
import { type ControlledFlight, discreteGust } from "../../motion/index.ts";
import type { Problem } from "../contract.ts";
import type { FullFlight } from "../inputs/full-flight.ts";
import { blockLoss } from "./block-loss.ts";
import { stoppedDrives } from "./drive-stop.ts";
import { type PreparedStep, type StepOf, stepAt } from "./prepared-step.ts";
import type { TransientInputs } from "./schema.ts";

/** Slowest stream in which a gust is flown through: in a hover it drifts past [m/s]. */
const slowestStream = 5;

/** The step of a question made ready for a flight, or why it cannot be. */
export function preparedStep(
  flight: FullFlight,
  trimmer: FullTrimmer,
  controlled: ControlledFlight,
  trimmed: FullTrimmed,
  inputs: TransientInputs,
): PreparedStep | Problem {
  switch (inputs.step.kind) {
    case "engine-stop":
      return stoppedDrives(flight, trimmer, controlled, inputs, inputs.step);
    case "jam":
      return jam(flight, inputs.step);
    case "block-loss":
      return blockLoss(flight, controlled, trimmed, inputs.step);
    case "gust":
      return gust(controlled, inputs, inputs.step);
  }
}

function jam({ definition }: FullFlight, step: StepOf<"jam">): PreparedStep | Problem {
  const movable = definition.controls.filter(({ setting, what }) => setting.kind !== "fixed" && what !== "tip-speed");
  const surfaces = movable.filter(({ what }) => what === "deflection" || what === "movable");
  const preferred = surfaces.find(({ setting }) => setting.kind === "free") ?? surfaces[0] ?? movable[0];
  const chosen = step.control === undefined ? preferred : movable.find(({ id }) => id === step.control);
  if (!chosen) {
    const there = movable.map(({ id }) => id).join(", ") || "none";
    return { kind: "part-unknown", message: `No control that moves is called "${step.control ?? ""}"; the aircraft file has ${there}.` };
  }
  const index = definition.controls.indexOf(chosen);
  const { toward } = step;
  return {
    words: toward === "held" ? `${chosen.id} stays where it is` : `${chosen.id} runs to its ${toward}`,
    reaction: null,
    events: [
      {
        time: stepAt,
        apply: ({ actuators }) => actuators.fail(index, toward === "held" ? { kind: "jammed" } : { kind: "hard-over", toward }),
      },
    ],
  };
}

const towards = {
  below: [0, 0, -1],
  above: [0, 0, 1],
  ahead: [-1, 0, 0],
  behind: [1, 0, 0],
  right: [0, -1, 0],
  left: [0, 1, 0],
} as const;

function gust({ flight: { dynamics } }: ControlledFlight, { airspeed }: TransientInputs, step: StepOf<"gust">): PreparedStep {
  const [x, y, z] = towards[step.from];
  const speed = Math.max(airspeed, slowestStream);
  dynamics.wind = discreteGust({
    peak: [x * step.speed, y * step.speed, z * step.speed],
    gradientDistance: step.gradientDistance,
    speed,
    start: stepAt,
  });
  return {
    words: `a gust of ${step.speed} m/s from ${step.from}, ${step.gradientDistance} m to its peak`,
    reaction: null,
    events: [],
  };
}
