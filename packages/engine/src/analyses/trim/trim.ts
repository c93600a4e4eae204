import { type AircraftDefinition, isNotReducible, massProperties, reducedAircraft } from "../../aircraft/index.ts";
import {
  createTrimRotor,
  type FullConditions,
  type FullOutcome,
  type FullPoint,
  type FullTrimmer,
  trim as reducedTrim,
} from "../../equilibrium/index.ts";
import type { Analysis, Context, Outcome, Problem, ProjectView } from "../contract.ts";
import { aircraftNeeds, isProblem } from "../inputs/flight-conditions.ts";
import { type FullFlight, fullFlight, fullTrimMethod, fullTrimWarnings, unknownLine } from "../inputs/full-flight.ts";
import { trimAnswer, trimLimits } from "./answer.ts";
import { trimFigures } from "./figures.ts";
import { flownStateOf } from "./flown-state.ts";
import { type TrimInputs, type TrimOutputs, trimInputs, trimOutputs } from "./schema.ts";

function run(project: ProjectView, inputs: TrimInputs, context: Context<TrimOutputs>): Outcome<TrimOutputs> {
  const flight = fullFlight(project, { ...inputs, controls: "optimum" });
  if (isProblem(flight)) return { problem: flight };
  const wrong = unknownParts(flight, inputs);
  if (wrong) return { problem: wrong };
  const low = tooLow(flight, inputs);
  if (low) return { problem: low };
  const point = pointOf(inputs);
  const unmixed = inputs.steering === "mixed" && flight.definition.mixing === undefined;
  if (unmixed) {
    return {
      problem: {
        kind: "mixing-missing",
        message: "steering is mixed, but the aircraft file has no mixing matrix; leave steering out, or write one under mixing.",
      },
    };
  }
  const conditions: FullConditions = {
    ...flight.conditions,
    steering: inputs.steering,
    ...(inputs.groundHeight === undefined ? {} : { groundHeight: inputs.groundHeight }),
  };
  context.progress(0, 3, "least power");
  const trimmer = flight.trimmer("optimum", inputs.groundHeight).with({ steering: inputs.steering });
  const best = flown(conditions, trimmer, point);
  const optimum = answered(best);
  context.progress(1, 3, "on schedule");
  const schedule = answered(flown({ ...conditions, controls: "schedule" }, trimmer.with({ controls: "schedule" }), point));
  context.progress(2, 3, "interference");
  const { centre } = massProperties(flight.definition, conditions.loading);
  const powered = inputs.mode !== "glide" && optimum.state && schedule.state;
  return {
    outputs: {
      takeoffMass: flight.takeoffMass,
      centre: { x: centre.x, y: centre.y, z: centre.z },
      optimum,
      schedule,
      scheduleCost: powered ? (schedule.state?.electricPower ?? 0) / (optimum.state?.electricPower ?? 1) - 1 : null,
      reduced: reducedAnswer(flight, inputs, optimum.state?.electricPower),
      interference: interferenceEffects(flight.definition, best, inputs.mode !== "glide"),
      aircraft: flight.definition,
    },
    assumed: flight.assumed,
    warnings: fullTrimWarnings,
  };
}

function pointOf(inputs: TrimInputs): FullPoint {
  return {
    mode: inputs.mode,
    airspeed: inputs.airspeed,
    climbRate: inputs.climbRate,
    ...(inputs.sideslip === "free" ? {} : { sideslip: inputs.sideslip }),
    turnRate: inputs.turnRate,
    stopped: inputs.stopped,
    stuck: Object.fromEntries(inputs.stuck.map(({ control, at }) => [control, at])),
  };
}

/** Half a radius: below it the formula of the ground's effect says nothing. */
function tooLow({ definition }: FullFlight, { groundHeight }: TrimInputs): Problem | undefined {
  const least = 0.5 * Math.max(0, ...definition.rotors.map(({ radius }) => radius));
  if (groundHeight === undefined || groundHeight >= least) return undefined;
  return {
    kind: "too-near-the-ground",
    message: `groundHeight is ${groundHeight} m; nothing is known of a rotor nearer to the ground than half its radius, ${least} m.`,
  };
}

function unknownParts(flight: FullFlight, inputs: TrimInputs): Problem | undefined {
  const wrongLine = unknownLine(flight, inputs.stopped);
  if (wrongLine) return wrongLine;
  const { definition } = flight;
  const angular = definition.controls.filter(({ what }) => what !== "thrust" && what !== "tip-speed");
  const control = inputs.stuck.find((stuck) => !angular.some(({ id }) => id === stuck.control))?.control;
  if (control === undefined) return undefined;
  return {
    kind: "part-unknown",
    message: `No control that moves by an angle is called "${control}"; the aircraft file has ${angular.map(({ id }) => id).join(", ") || "none"}.`,
  };
}

/** A flight as it was trimmed, with what trimmed it. */
interface Attempt {
  readonly conditions: FullConditions;
  readonly trimmer: FullTrimmer;
  readonly outcome: FullOutcome;
}

function flown(conditions: FullConditions, trimmer: FullTrimmer, point: FullPoint): Attempt {
  return { conditions, trimmer, outcome: trimmer.trim(point) };
}

function answered({ conditions, trimmer, outcome }: Attempt): TrimOutputs["optimum"] {
  if (outcome.kind === "trimmed") return { state: flownStateOf(conditions, trimmer.airframe, outcome), refusal: null };
  return { state: null, refusal: refusalOf(outcome) };
}

/** Every interference of the file switched off in turn, from the flight with all of them. */
function interferenceEffects(definition: AircraftDefinition, { trimmer, outcome }: Attempt, powered: boolean): TrimOutputs["interference"] {
  return definition.interference.map((entry) => {
    const { from, on, kind, factor, source } = entry;
    const named = { from, on, kind, factor, source: source ?? null };
    const idle = !powered || outcome.kind !== "trimmed" || !entry.active || factor * entry.share === 0;
    if (idle) return { ...named, without: null, effect: null };
    const interference = definition.interference.map((other) => (other === entry ? { ...other, active: false } : other));
    const without = trimmer.with({ aircraft: { ...definition, interference } }).trimFrom(outcome.point, [outcome.start]);
    if (without.kind !== "trimmed") return { ...named, without: null, effect: null };
    const power = without.flown.electricPower;
    return { ...named, without: power, effect: outcome.flown.electricPower / power - 1 };
  });
}

function refusalOf(outcome: Exclude<FullOutcome, { kind: "trimmed" }>): NonNullable<TrimOutputs["optimum"]["refusal"]> {
  const missing = Number.isFinite(outcome.violation) ? outcome.violation : null;
  if (outcome.kind === "not-resolved")
    return {
      kind: outcome.kind,
      limit: null,
      family: null,
      missing,
      needed: null,
      reason: "the solver gave up: nothing is known of this flight",
    };
  const { limit, family, needed } = outcome;
  const amount = needed ? `, ${told(needed.allowed, needed.quantity)} is allowed and ${told(needed.needed, needed.quantity)} needed` : "";
  return {
    kind: outcome.kind,
    limit,
    family,
    missing,
    needed: needed ? { ...needed } : null,
    reason: `${limit} stands in the way${amount}`,
  };
}

const usualUnits: Readonly<Record<string, { readonly unit: string; readonly factor: number }>> = {
  angle: { unit: "°", factor: 180 / Math.PI },
  speed: { unit: " m/s", factor: 1 },
  force: { unit: " N", factor: 1 },
  torque: { unit: " N m", factor: 1 },
  power: { unit: " W", factor: 1 },
  current: { unit: " A", factor: 1 },
  voltage: { unit: " V", factor: 1 },
};

/** An amount in the usual unit of its kind, for a sentence. */
function told(value: number, quantity: string): string {
  const { unit, factor } = usualUnits[quantity] ?? { unit: "", factor: 1 };
  return `${Number((value * factor).toPrecision(3))}${unit}`.replace("-", "−");
}

/** What the reduced trim says of the same flight, where it knows it. */
function reducedAnswer(flight: FullFlight, inputs: TrimInputs, full: number | undefined): TrimOutputs["reduced"] {
  const plain = inputs.sideslip === 0 && inputs.turnRate === 0 && inputs.stopped.length + inputs.stuck.length === 0;
  if (!plain || inputs.groundHeight !== undefined || inputs.mode === "glide") return null;
  const aircraft = reducedAircraft(flight.definition);
  if (isNotReducible(aircraft)) return null;
  const conditions = { ...flight.conditions, aircraft, controls: "optimum" as const };
  const outcome = reducedTrim(
    conditions,
    { mode: inputs.mode, forwardSpeed: inputs.airspeed, climbRate: inputs.climbRate },
    createTrimRotor(aircraft, conditions.air),
  );
  if (outcome.kind !== "trimmed") return { electricPower: null, difference: null };
  const { electric } = outcome.evaluation.power;
  return { electricPower: electric, difference: full === undefined ? null : full / electric - 1 };
}

/** One steady flight of the whole aircraft: attitude, controls, loads of every part, power by consumer, limits. */
export const trim: Analysis<TrimInputs, TrimOutputs> = {
  name: "trim",
  question: "What does one point look like?",
  inputs: trimInputs,
  outputs: trimOutputs,
  method: fullTrimMethod,
  example: {},
  quick: true,
  needs: aircraftNeeds,
  run,
  figures: trimFigures,
  answer: trimAnswer,
  limits: trimLimits,
};
