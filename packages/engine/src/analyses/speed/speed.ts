import { takeoffMass } from "../../aircraft/index.ts";
import { createTrimRotor, type FlightConditions, type TrimRotor } from "../../equilibrium/index.ts";
import {
  coarseSpeedLine,
  glidePolar,
  type LineHooks,
  type poweredModes,
  speedLine,
  speedSummary,
  verticalAutorotation,
} from "../../performance/index.ts";
import { type Analysis, Cancelled, type Context, type Outcome, type ProjectView } from "../contract.ts";
import { aircraftNeeds, chosenAircraft, chosenLoading, givenAir, isProblem, massProblem } from "../inputs/flight-conditions.ts";
import { trimMethod, trimWarnings } from "../inputs/trim-method.ts";
import { speedAnswer, speedLimits } from "./faces.ts";
import { speedFigures } from "./figures.ts";
import { lineRows, speedLimitShares, summaryOutputs } from "./rows.ts";
import { type SpeedInputs, type SpeedOutputs, speedInputs, speedOutputs } from "./schema.ts";

/** Glides are looked for from this airspeed up [m/s]. */
const slowestGlide = 8;
const coarseStep = 5;

function run(project: ProjectView, inputs: SpeedInputs, context: Context<SpeedOutputs>): Outcome<SpeedOutputs> {
  const chosen = chosenAircraft(project, inputs.aircraft);
  if (isProblem(chosen)) return { problem: chosen };
  const loaded = chosenLoading(chosen.aircraft, inputs.loading);
  if (isProblem(loaded)) return { problem: loaded };
  const air = givenAir(inputs);
  if (isProblem(air)) return { problem: air };
  const tooHeavy = massProblem(chosen.aircraft, takeoffMass(chosen.aircraft, loaded.loading));
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
  const speeds = [...new Set(inputs.speeds)].sort((a, b) => a - b);
  if (speeds.length > 20) {
    const coarse = speeds.filter((_, i) => i % coarseStep === 0);
    context.partial(
      speedComputation(conditions, coarse, rotor, quiet(context), false),
      `speeds in steps of ${coarseStep}, second optima not looked for`,
    );
  }
  const outputs = speedComputation(conditions, speeds, rotor, context, true);
  return { outputs, assumed: [...chosen.assumed, ...loaded.assumed], warnings: trimWarnings };
}

function quiet(context: Context<SpeedOutputs>): Pick<Context<SpeedOutputs>, "progress" | "cancelled"> {
  return { progress: () => {}, cancelled: () => context.cancelled() };
}

/** The answer over given speeds, ascending [m/s]; without the power-off part when it is not `complete`. */
function speedComputation(
  conditions: FlightConditions,
  speeds: readonly number[],
  rotor: TrimRotor,
  context: Pick<Context<SpeedOutputs>, "progress" | "cancelled">,
  complete: boolean,
): SpeedOutputs {
  const total = 6 * speeds.length;
  let before = 0;
  const hooks: LineHooks = {
    progress: (done) => context.progress(before + done, total, "speeds"),
    cancelled: () => {
      if (context.cancelled()) throw new Cancelled();
    },
  };
  const line = (mode: (typeof poweredModes)[number]) => {
    const found = (complete ? speedLine : coarseSpeedLine)(conditions, mode, speeds, rotor, hooks);
    before += 2 * speeds.length;
    return found;
  };
  const lines = { "clutch-closed": line("clutch-closed"), "clutch-open": line("clutch-open") };
  const glide = glidePolar(conditions, complete ? speeds.filter((airspeed) => airspeed >= slowestGlide) : [], rotor, hooks);
  const summary = speedSummary(conditions, lines, rotor);
  const vertical = complete ? verticalAutorotation(conditions, rotor) : ({ kind: "no-equilibrium", reason: "not computed yet" } as const);
  return {
    rows: lineRows(lines),
    summary: summaryOutputs(conditions, lines, summary, glide, vertical),
    glide: glide.line.map((point) => ({
      airspeed: point.airspeed,
      sinkRate: point.outcome.kind === "trimmed" ? -point.outcome.evaluation.climbRate : null,
      limit: point.outcome.kind === "trimmed" ? null : point.outcome.limit,
    })),
    limits: speedLimitShares(lines),
  };
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
