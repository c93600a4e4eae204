import type { Answer, Limit } from "../contract.ts";
import { reading, type Token, words } from "../tokens.ts";
import type { TrimInputs, TrimOutputs } from "./schema.ts";

const modeWords = { "clutch-closed": "clutch closed", "clutch-open": "clutch open", glide: "gliding" } as const;

/** What it takes, how it lies in the air, what binds, and what the schedule costs. */
export function trimAnswer(outputs: TrimOutputs, inputs: TrimInputs): Answer {
  const { state, refusal } = outputs.optimum;
  if (!state) {
    const why = refusal?.reason ?? "no reason is known";
    const opening = refusal?.kind === "not-resolved" ? "Whether it can fly like this is not known" : "It cannot fly like this";
    return { sentence: [words(`${opening}, ${modeWords[inputs.mode]}: ${why}.`)], brief: refusal?.limit ?? "not resolved", met: false };
  }
  const sentence: Token[] =
    inputs.mode === "glide"
      ? [words("It glides, sinking at "), reading(-state.climbRate, "speed", "/optimum/state/climbRate")]
      : [words("It flies like this on "), reading(state.electricPower, "power", "/optimum/state/electricPower")];
  sentence.push(
    words(`, ${modeWords[inputs.mode]}, nose `),
    reading(Math.abs(state.pitch), "angle", "/optimum/state/pitch"),
    words(`${state.pitch < 0 ? " down" : " up"} and rolled `),
    reading(Math.abs(state.roll), "angle", "/optimum/state/roll"),
    words(state.roll < 0 ? " left" : " right"),
    words(state.bindingLimit ? `; ${state.bindingLimit} binds.` : "; no limit binds."),
  );
  if (outputs.scheduleCost !== null) {
    const less = outputs.scheduleCost < 0;
    sentence.push(
      words(" On schedule it costs "),
      reading(Math.abs(outputs.scheduleCost), "dimensionless", "/scheduleCost", { unit: "%" }),
      words(less ? " less, with less stall margin than the optimum keeps." : " more."),
    );
  } else if (outputs.schedule.refusal) sentence.push(words(` On schedule it does not fly: ${outputs.schedule.refusal.reason}.`));
  const brief =
    inputs.mode === "glide"
      ? `sinks at ${(-state.climbRate).toFixed(1)} m/s`
      : `${state.electricPower.toFixed(0)} W, ${state.bindingLimit ?? "free"}`;
  return { sentence, brief: brief.slice(0, 40) };
}

/** Limits as the ladder shows them, longest first. */
export function trimLimits(outputs: TrimOutputs, inputs: TrimInputs): readonly Limit[] {
  const { state } = outputs.optimum;
  if (!state) return [];
  return state.limits.map(({ name, family, share }, i) => ({
    name,
    family,
    share,
    side: name.startsWith("stall margin") ? "lower" : "upper",
    where: `at ${inputs.airspeed} m/s, ${modeWords[inputs.mode]}`,
    binding: i === 0 && share > 0.9995,
  }));
}
