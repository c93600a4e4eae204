import { takeoffMass } from "../../aircraft/index.ts";
import { createTrimRotor, type FlightConditions } from "../../equilibrium/index.ts";
import type { Flown } from "../../performance/index.ts";
import { fullFlyer, fullVerticalAutorotation, type LineFlight, reducedFlyer, verticalAutorotation } from "../../performance/index.ts";
import type { Analysis, Context, Outcome, ProjectView, Warning } from "../contract.ts";
import { aircraftNeeds, chosenAircraft, chosenLoading, givenAir, isProblem, massProblem } from "../inputs/flight-conditions.ts";
import { fullFlight, fullTrimWarnings, unknownLine } from "../inputs/full-flight.ts";
import { trimMethod, trimWarnings } from "../inputs/trim-method.ts";
import { type SpeedCraft, speedComputation } from "./computation.ts";
import { speedAnswer, speedLimits } from "./faces.ts";
import { speedFigures } from "./figures.ts";
import { fullLevelColumns, reducedColumns } from "./rows.ts";
import { type SpeedInputs, type SpeedOutputs, speedInputs, speedOutputs } from "./schema.ts";

const coarseStep = 5;

function run(project: ProjectView, inputs: SpeedInputs, context: Context<SpeedOutputs>): Outcome<SpeedOutputs> {
  return inputs.trimLevel === "full" ? runFull(project, inputs, context) : runReduced(project, inputs, context);
}

function runReduced(project: ProjectView, inputs: SpeedInputs, context: Context<SpeedOutputs>): Outcome<SpeedOutputs> {
  if (inputs.sideslip !== 0 || inputs.stopped.length > 0) {
    return {
      problem: {
        kind: "trim-level",
        message: "sideslip and stopped drive lines are known to the trim level full only; give trimLevel full with them.",
        inputs: ["trimLevel", "sideslip", "stopped"],
      },
    };
  }
  const chosen = chosenAircraft(project, inputs.aircraft);
  if (isProblem(chosen)) return { problem: chosen };
  const loaded = chosenLoading(chosen.aircraft, inputs.loading);
  if (isProblem(loaded)) return { problem: loaded };
  const air = givenAir(inputs);
  if (isProblem(air)) return { problem: air };
  const mass = takeoffMass(chosen.aircraft, loaded.loading);
  const tooHeavy = massProblem(chosen.aircraft, mass);
  if (tooHeavy) return { problem: tooHeavy };
  const conditions: FlightConditions = {
    aircraft: chosen.aircraft,
    loading: loaded.loading,
    air,
    controls: inputs.controls,
    losses: inputs.losses,
    lightsOn: inputs.lightsOn,
  };
  const rotor = createTrimRotor(conditions.aircraft, conditions.air);
  const craft = {
    flyer: reducedFlyer(conditions, rotor),
    columns: reducedColumns,
    takeoffMass: mass,
    verticalAutorotation: () => verticalAutorotation(conditions, rotor),
  };
  return { outputs: overSpeeds(craft, inputs, context), assumed: [...chosen.assumed, ...loaded.assumed], warnings: trimWarnings };
}

function runFull(project: ProjectView, inputs: SpeedInputs, context: Context<SpeedOutputs>): Outcome<SpeedOutputs> {
  const flight = fullFlight(project, inputs);
  if (isProblem(flight)) return { problem: flight };
  const wrong = unknownLine(flight, inputs.stopped);
  if (wrong) return { problem: wrong };
  const steady: LineFlight = {
    climbRate: 0,
    ...(inputs.sideslip === "free" ? {} : { sideslip: inputs.sideslip }),
    stopped: inputs.stopped,
  };
  const trimmer = flight.trimmer(inputs.controls);
  const craft = {
    flyer: fullFlyer(trimmer, steady),
    ...(inputs.controls === "optimum" ? { onSchedule: fullFlyer(trimmer.with({ controls: "schedule" }), steady) } : {}),
    columns: fullLevelColumns(trimmer),
    takeoffMass: flight.takeoffMass,
    verticalAutorotation: () => fullVerticalAutorotation(trimmer),
  };
  const warnings: readonly Warning[] = fullTrimWarnings;
  return { outputs: overSpeeds(craft, inputs, context), assumed: flight.assumed, warnings };
}

function overSpeeds<F extends Flown>(craft: SpeedCraft<F>, inputs: SpeedInputs, context: Context<SpeedOutputs>): SpeedOutputs {
  const speeds = [...new Set(inputs.speeds)].sort((a, b) => a - b);
  if (speeds.length > 20) {
    const coarse = speeds.filter((_, i) => i % coarseStep === 0);
    context.partial(
      speedComputation(craft, coarse, quiet(context), false),
      `speeds in steps of ${coarseStep}, second optima not looked for`,
    );
  }
  return speedComputation(craft, speeds, context, true);
}

function quiet(context: Context<SpeedOutputs>): Pick<Context<SpeedOutputs>, "progress" | "cancelled"> {
  return { progress: () => {}, cancelled: () => context.cancelled() };
}

/** Electric power of level flight over airspeed, in both rotor modes, and what follows from it. */
export const speed: Analysis<SpeedInputs, SpeedOutputs> = {
  name: "speed",
  question: "What does each speed cost?",
  inputs: speedInputs,
  outputs: speedOutputs,
  method: trimMethod,
  example: {},
  needs: aircraftNeeds,
  run,
  figures: speedFigures,
  answer: speedAnswer,
  limits: speedLimits,
};
