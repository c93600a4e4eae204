import { controlledFlight, controlStep } from "../../motion/index.ts";
import type { Analysis, Context, Outcome, ProjectView, Warning } from "../contract.ts";
import { aircraftNeeds, isProblem } from "../inputs/flight-conditions.ts";
import { fullFlight, fullTrimWarnings } from "../inputs/full-flight.ts";
import { transientAnswer, transientLimits } from "./answer.ts";
import { transientFigures } from "./figures.ts";
import { type TransientOutputs, transientOutputs } from "./output-schema.ts";
import { transientOutputsOf } from "./outputs.ts";
import { type TransientInputs, transientInputs } from "./schema.ts";
import { preparedStep } from "./steps.ts";

/** Does it get through a step? */
export const transient: Analysis<TransientInputs, TransientOutputs> = {
  name: "transient",
  question: "Does it get through a step?",
  inputs: transientInputs,
  outputs: transientOutputs,
  method: {
    summary:
      "From a trimmed level flight: six degrees of freedom, rotor speed, inflow that lags, flapping that follows at once, controls with their rates and stops, a rotor governor within the motor's power, " +
      "and a stated reference controller for attitude; Adams-Bashforth of third order at 200 Hz, energy booked beside.",
    sources: ["etkin-reid-1996", "pitt-peters-1981", "carpenter-fridovich-1953", "hairer-norsett-wanner-1993", "cs-25-341"],
    checks: ["light-aeroplane-modes", "large-transport-modes"],
  },
  example: {},
  needs: (inputs, available) => aircraftNeeds(inputs, available),
  run: (project, inputs, context) => run(project, inputs, context),
  figures: (outputs) => transientFigures(outputs),
  answer: (outputs) => transientAnswer(outputs),
  limits: (outputs) => transientLimits(outputs),
};

function run(project: ProjectView, inputs: TransientInputs, context: Context<TransientOutputs>): Outcome<TransientOutputs> {
  const flight = fullFlight(project, inputs);
  if (isProblem(flight)) return { problem: flight };
  context.progress(0, 2, "flight before the step");
  const { mode, airspeed } = inputs;
  const trimmer = flight.trimmer(inputs.controls);
  const trimmed = trimmer.trim({ mode, airspeed, climbRate: 0, sideslip: 0 });
  if (trimmed.kind !== "trimmed") {
    const why = trimmed.kind === "no-equilibrium" ? `it is stopped by: ${trimmed.limit}` : "the trim was not found, nor why there is none";
    return {
      problem: { kind: "no-steady-flight", message: `There is no level flight at ${airspeed} m/s, ${mode}, to begin from; ${why}.` },
    };
  }
  const controlled = controlledFlight(trimmer.airframe, trimmed, inputs.controller);
  const step = preparedStep(flight, trimmer, controlled, trimmed, inputs);
  if (isProblem(step)) return { problem: step };
  context.progress(1, 2, "flight through the step");
  const trace = controlled.simulation.run({
    duration: inputs.duration,
    step: controlStep,
    substeps: controlled.substeps,
    events: step.events,
    ...(step.wanted ? { wanted: step.wanted } : {}),
    recordEvery: 4,
  });
  return { outputs: transientOutputsOf(trimmer.airframe, controlled, step, trace), assumed: flight.assumed, warnings };
}

const warnings: readonly Warning[] = [
  ...fullTrimWarnings,
  {
    grade: "care",
    kind: "reference-controller",
    message:
      "Flown by a reference controller that holds the attitude, neither height nor airspeed, without delay (gains common practice): what the aircraft's own autopilot makes of it is not shown.",
  },
  {
    grade: "care",
    kind: "no-dynamic-stall",
    message:
      "Blades and wings stall at once and as if each moment lasted: beyond stall the flight is lost here sooner and more suddenly than it would be.",
  },
  {
    grade: "note",
    kind: "quasi-steady",
    message:
      "Flapping follows at once, inflow lags by the apparent mass of the disc (from memory), wakes reach wing and tail without delay; in the ring state of a descending rotor power is good to about a quarter.",
  },
];
