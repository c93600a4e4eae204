import { controlRange } from "../../aircraft/index.ts";
import type { FullTrimmed } from "../../equilibrium/index.ts";
import { type ControlledFlight, discreteGust, type FlightEvent } from "../../motion/index.ts";
import type { Problem } from "../contract.ts";
import type { FullFlight } from "../inputs/full-flight.ts";
import { packPower } from "./pack-power.ts";
import type { TransientInputs } from "./schema.ts";

/** What happens to a flight, as events. */
export interface PreparedStep {
  readonly words: string;
  readonly reaction: string | null;
  readonly events: readonly FlightEvent[];
  /** Whether the rotors are still driven afterwards. */
  readonly driven: boolean;
}

/** When it happens: what stands before shows that the flight was steady [s]. */
export const stepAt = 1;
/** Slowest stream in which a gust is flown through: in a hover it drifts past [m/s]. */
const slowestStream = 5;

/** The step of a question made ready for a flight, or why it cannot be. */
export function preparedStep(
  flight: FullFlight,
  controlled: ControlledFlight,
  trimmed: FullTrimmed,
  inputs: TransientInputs,
): PreparedStep | Problem {
  switch (inputs.step.kind) {
    case "engine-stop":
      return engineStop(flight, controlled, inputs, inputs.step);
    case "jam":
      return jam(flight, inputs.step);
    case "block-loss":
      return blockLoss(flight, controlled, trimmed, inputs.step);
    case "gust":
      return gust(controlled, inputs, inputs.step);
  }
}

type StepOf<Kind extends TransientInputs["step"]["kind"]> = Extract<TransientInputs["step"], { readonly kind: Kind }>;

function engineStop(
  { definition }: FullFlight,
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
      stopPropellers(controlled, definition, ids);
    },
  };
  const lowered = definition.rotors.flatMap(({ id }, i) => (hit[i] ? loweredCollectives(definition, id, inputs.airspeed) : []));
  const react: FlightEvent = {
    time: stepAt + step.reaction,
    apply: () => {
      for (const { control, position } of lowered) controlled.controller.setTrim(control, position);
    },
  };
  const degrees = lowered.map(({ position }) => `${((position * 180) / Math.PI).toFixed(1)}°`).join(", ");
  return {
    words: `${ids.join(", ")} ${ids.length === 1 ? "stops" : "stop"}`,
    reaction:
      lowered.length > 0 ? `collective to ${degrees}, its setting for a free rotor at this airspeed, after ${step.reaction} s` : null,
    events: lowered.length > 0 ? [stop, react] : [stop],
    driven: !hit.some(Boolean),
  };
}

/** Propellers whose drive stops give no thrust any more, whatever is asked. */
function stopPropellers(controlled: ControlledFlight, definition: FullFlight["definition"], ids: readonly string[]): void {
  definition.controls.forEach(({ what, part }, i) => {
    const line = definition.driveLines.find(({ drives }) => drives === part);
    if (what === "thrust" && line && ids.includes(line.id)) controlled.simulation.actuators.fail(i, { kind: "jammed" });
  });
}

/** Where the file puts a rotor's collective when the rotor turns free. */
function loweredCollectives(
  definition: FullFlight["definition"],
  rotor: string,
  airspeed: number,
): readonly { control: number; position: number }[] {
  return definition.controls.flatMap((control, index) => {
    if (control.what !== "collective" || control.part !== rotor || !control.clutchOpen) return [];
    const setting = control.clutchOpen;
    if (setting.kind === "free") return [];
    return [{ control: index, position: controlRange(setting, airspeed, "schedule").minimum }];
  });
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
    driven: true,
  };
}

function blockLoss(
  flight: FullFlight,
  { flight: { dynamics } }: ControlledFlight,
  trimmed: FullTrimmed,
  step: StepOf<"block-loss">,
): PreparedStep | Problem {
  const { blocks } = flight.conditions.loading;
  const left = blocks - step.blocks;
  if (left < 0) return { kind: "loading-impossible", message: `${step.blocks} blocks cannot fall out of ${blocks}.` };
  const most = packPower(flight.definition, left, step.stateOfCharge);
  const { loads } = trimmed.evaluation;
  const rotors = new Set(flight.definition.rotors.map(({ id }) => id));
  const forRotors = loads.drives.reduce((sum, { drives, electricPower }) => sum + (rotors.has(drives) ? electricPower : 0), 0);
  const others = loads.electricPower - forRotors;
  return {
    words: `${step.blocks} of ${blocks} blocks fall out; what is left gives at most ${most.toFixed(0)} W`,
    reaction: null,
    events: [
      {
        time: stepAt,
        apply: () => {
          const share = forRotors > 0 ? Math.max(0, most - others) / forRotors : 1;
          dynamics.drives = dynamics.drives.map((drive) => {
            if (drive.kind !== "governed") return drive;
            const trimmedPower = drive.torque * drive.rate;
            return { ...drive, largestPower: Math.min(drive.largestPower, trimmedPower * share) };
          });
        },
      },
    ],
    driven: true,
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
    driven: true,
  };
}
