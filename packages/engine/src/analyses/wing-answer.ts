import type { Answer, Limit } from "./contract.ts";
import { reading, type Token, words } from "./tokens.ts";
import type { WingOutputs } from "./wing-output-schema.ts";

export function wingAnswer(outputs: WingOutputs): Answer {
  const { bestGlideRatio, largestLift } = outputs;
  if (bestGlideRatio === null) {
    return {
      sentence: [words("No angle was found at which this wing lifts more than nothing and less than its stall.")],
      brief: "no glide found",
    };
  }
  return {
    sentence: [...glideWords(outputs), ...sinkWords(outputs), words("."), ...stallWords(outputs)],
    brief: `best L/D ${bestGlideRatio.toPrecision(3)}${largestLift === null ? "" : `, largest lift ${largestLift.toFixed(2)}`}`,
  };
}

function glideWords({ bestGlideRatio, bestGlideSpeed }: WingOutputs): readonly Token[] {
  return [
    words("The best glide is "),
    reading(bestGlideRatio ?? 0, "dimensionless", "/bestGlideRatio"),
    words(" to 1"),
    ...(bestGlideSpeed === null ? [] : [words(" at "), reading(bestGlideSpeed, "speed", "/bestGlideSpeed")]),
  ];
}

function sinkWords({ minimumSink, minimumSinkSpeed }: WingOutputs): readonly Token[] {
  if (minimumSink === null || minimumSinkSpeed === null) return [];
  return [
    words(", the least sink "),
    reading(minimumSink, "speed", "/minimumSink"),
    words(" at "),
    reading(minimumSinkSpeed, "speed", "/minimumSinkSpeed"),
  ];
}

function stallWords({ stallSpeed, largestLift, stallAngle }: WingOutputs): readonly Token[] {
  if (largestLift === null || stallAngle === null) return [];
  if (stallSpeed !== null) return [words(" It stalls below "), reading(stallSpeed, "speed", "/stallSpeed"), words(".")];
  return [words(" It stalls at a lift coefficient of "), reading(largestLift, "dimensionless", "/largestLift"), words(".")];
}

/** How much of the largest lift the angles and the two best glides use. */
export function wingLimits(outputs: WingOutputs): readonly Limit[] {
  const { rows, largestLift, stallAngle, bestGlideLift, bestPowerFactorLift } = outputs;
  if (largestLift === null || stallAngle === null || largestLift <= 0) return [];
  const limit = (name: string, share: number, where: string, binding = false): Limit => ({
    name,
    family: "air",
    share,
    side: "upper",
    where,
    binding,
  });
  const highest = Math.max(...rows.map((row) => row.angle));
  const attached = rows.filter((row) => row.angle <= stallAngle).map((row) => row.liftCoefficient / largestLift);
  const beyond = highest > stallAngle;
  const degrees = `${((stallAngle * 180) / Math.PI).toFixed(1)}°`;
  return [
    limit("stall", beyond ? Math.max(1, highest / Math.max(stallAngle, 0.01)) : Math.max(0, ...attached), `from ${degrees} on`, beyond),
    ...(bestGlideLift === null ? [] : [limit("stall", bestGlideLift / largestLift, "at the best glide")]),
    ...(bestPowerFactorLift === null ? [] : [limit("stall", bestPowerFactorLift / largestLift, "at the least sink")]),
  ];
}
