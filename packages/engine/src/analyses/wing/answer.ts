import type { Answer, Limit } from "../contract.ts";
import { reading, type Token, words } from "../tokens.ts";
import type { WingOutputs } from "./output-schema.ts";

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

/** How much of the largest lift the two best glides use. */
export function wingLimits({ largestLift, stallAngle, bestGlideLift, bestPowerFactorLift }: WingOutputs): readonly Limit[] {
  if (largestLift === null || stallAngle === null || largestLift <= 0) return [];
  const limit = (lift: number | null, where: string): readonly Limit[] => {
    if (lift === null) return [];
    const share = lift / largestLift;
    return [{ name: "stall", family: "air", share, side: "upper", where, binding: share >= 1 - 1e-6 }];
  };
  return [...limit(bestGlideLift, "at the best glide"), ...limit(bestPowerFactorLift, "at the least sink")];
}
