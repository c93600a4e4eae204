import type { Answer, Limit } from "../contract.ts";
import { reading, type Token, words } from "../tokens.ts";
import type { SpeedInputs, SpeedOutputs } from "./schema.ts";

/** "Cheapest to stay up …; cheapest per distance …" and the two things that autorotating speed can mean. */
export function speedAnswer(outputs: SpeedOutputs): Answer {
  const s = outputs.summary;
  if (s.minimumPower === null || s.minimumPowerSpeed === null || s.bestRangeSpeed === null || s.bestRangeEnergy === null) {
    const reason = outputs.rows[0]?.limit ?? "no speed was asked for";
    return { sentence: [words(`No speed of these can be flown level: ${reason}.`)], brief: "no level flight", met: false };
  }
  const sentence: Token[] = [
    words("Cheapest to stay up at "),
    reading(s.minimumPowerSpeed, "speed", "/summary/minimumPowerSpeed"),
    words(" ("),
    reading(s.minimumPower, "power", "/summary/minimumPower"),
    words("); cheapest per distance at "),
    reading(s.bestRangeSpeed, "speed", "/summary/bestRangeSpeed"),
    words(" ("),
    reading(s.bestRangeEnergy, "energyPerDistance", "/summary/bestRangeEnergy"),
    words("). "),
    ...autorotationTokens(s),
  ];
  return { sentence, brief: `${s.minimumPowerSpeed.toFixed(0)} m/s cheapest, ${s.bestRangeSpeed.toFixed(0)} m/s farthest` };
}

function autorotationTokens(s: SpeedOutputs["summary"]): Token[] {
  if (s.lowestAutorotatingSpeed === null)
    return [words("Level flight with the rotor turning free is not possible at any of these speeds.")];
  const lowest: Token[] = [
    words("It can autorotate from "),
    reading(s.lowestAutorotatingSpeed, "speed", "/summary/lowestAutorotatingSpeed"),
  ];
  const first = s.clutchOpenCheaper[0];
  if (first === undefined) return [...lowest, words(`; that never pays: ${s.clutchOpenCheaperReason}.`)];
  return [
    ...lowest,
    words("; that pays from "),
    reading(first.from, "speed", "/summary/clutchOpenCheaper/0/from"),
    words(" to "),
    reading(first.to, "speed", "/summary/clutchOpenCheaper/0/to"),
    words("."),
  ];
}

/** Limits as the ladder shows them, longest first. */
export function speedLimits(outputs: SpeedOutputs, _inputs?: SpeedInputs): readonly Limit[] {
  return outputs.limits.map((limit, i) => ({
    name: limit.name,
    family: limit.family,
    share: limit.share,
    side: limit.name === "stall margin" ? "lower" : "upper",
    where: `at ${limit.airspeed} m/s, ${limit.mode === "clutch-closed" ? "clutch closed" : "clutch open"}`,
    // Several are used up somewhere along the speeds; the one used most is said to bind.
    binding: i === 0 && limit.share > 0.9995,
  }));
}
