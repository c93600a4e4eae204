import type { Answer, Limit } from "../contract.ts";
import { reading, type Token, words } from "../tokens.ts";
import type { MissionOutputs } from "./schema.ts";

const percent = { unit: "%" } as const;
const longestBrief = 40;

/** Says what the verdict rests on: an invented project shows it, marked. */
function mark(outputs: MissionOutputs): string {
  return outputs.demo ? " (demo values)" : "";
}

/** "Yes, margin 9 %, not yet weighed: it lands with 29 % left, the policy asks for 20 %." */
export function missionAnswer(outputs: MissionOutputs): Answer {
  const { summary } = outputs;
  const sentence = summary.landingStateOfCharge === null ? stoppedSentence(outputs) : landedSentence(outputs, summary.landingStateOfCharge);
  return { sentence, brief: brief(outputs), met: summary.feasible };
}

function landedSentence(outputs: MissionOutputs, landing: number): readonly Token[] {
  const { summary, conditions } = outputs;
  const margin = summary.reserveMargin ?? 0;
  const tokens: Token[] = [
    words(`${summary.feasible ? "Yes" : "No"}, margin `),
    reading(margin, "dimensionless", "/summary/reserveMargin", percent),
    words(` of the charge, not yet weighed${mark(outputs)}: it lands with `),
    reading(landing, "dimensionless", "/summary/landingStateOfCharge", percent),
    words(" left after "),
    reading(summary.duration, "time", "/summary/duration", { unit: "min" }),
    words(" and "),
    reading(summary.distance, "length", "/summary/distance", { unit: "km" }),
    words("; the policy asks for "),
    reading(conditions.minimumStateOfCharge, "dimensionless", "/conditions/minimumStateOfCharge", percent),
  ];
  if (conditions.reserveHoverTime > 0) {
    tokens.push(words(" and a hover of "), reading(conditions.reserveHoverTime, "time", "/conditions/reserveHoverTime", { unit: "min" }));
  }
  tokens.push(words("."));
  if (!summary.feasible && summary.limit !== null) tokens.push(words(` ${capital(summary.limit)} stops it.`));
  else tokens.push(...heaviestStage(outputs));
  return tokens;
}

function heaviestStage(outputs: MissionOutputs): readonly Token[] {
  const legs = outputs.stages.map((stage, index) => ({ stage, index })).filter(({ stage }) => stage.what === "leg");
  const most = legs.reduce<(typeof legs)[number] | undefined>(
    (best, entry) => (best && best.stage.energy >= entry.stage.energy ? best : entry),
    undefined,
  );
  if (most === undefined) return [];
  return [
    words(` ${capital(most.stage.name)} costs most, `),
    reading(most.stage.energy, "energy", `/stages/${most.index}/energy`, { unit: "Wh" }),
    words(" with a mean head wind of "),
    reading(most.stage.meanHeadwind, "speed", `/stages/${most.index}/meanHeadwind`),
    words("."),
  ];
}

function stoppedSentence(outputs: MissionOutputs): readonly Token[] {
  const { summary } = outputs;
  return [
    words(`No${mark(outputs)}: the flight ends after `),
    reading(summary.duration, "time", "/summary/duration", { unit: "min" }),
    words(" and "),
    reading(summary.distance, "length", "/summary/distance", { unit: "km" }),
    words(`. ${capital(summary.reason ?? "")}.`),
  ];
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

function brief(outputs: MissionOutputs): string {
  const { summary } = outputs;
  const share = (value: number) => `${(100 * value).toFixed(0)} %`;
  const text =
    summary.landingStateOfCharge === null
      ? `no: ${summary.limit}`
      : `${summary.feasible ? "yes" : "no"}, lands with ${share(summary.landingStateOfCharge)} left`;
  return text.length <= longestBrief ? text : `${text.slice(0, longestBrief - 1)}…`;
}

export function missionLimits(outputs: MissionOutputs): readonly Limit[] {
  return outputs.limits;
}
