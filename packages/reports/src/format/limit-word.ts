import type { Answer, Limit } from "@wingseed/engine";

/**
 * What a limit does to an answer, in words; empty for one that only comes near. A rule that is kept to the end ("20 %
 * left") ends a flight as planned; only what keeps a requirement from being met stops it.
 */
export function limitWord(limit: Limit, answer: Answer): string {
  if (!limit.binding) return "";
  if (answer.met === false) return "stops it";
  return limit.family === "rule" ? "ends it" : "binds";
}
