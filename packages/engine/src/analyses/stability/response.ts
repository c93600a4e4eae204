import { type LinearMotion, linearResponse } from "../../motion/index.ts";
import type { StabilityOutputs } from "./output-schema.ts";
import type { StabilityInputs } from "./schema.ts";

const steps = 120;

/**
 * Linear response to a sharp gust: from below the aircraft moves down through the air, from the right it moves to the right. Undefined when
 * there are no numbers.
 */
export function responsesTo(
  motions: readonly { readonly group: string; readonly motion: LinearMotion }[],
  { disturbance }: Pick<StabilityInputs, "disturbance">,
): StabilityOutputs["response"] | undefined {
  const found: StabilityOutputs["response"] = [];
  for (const { group, motion } of motions) {
    const start = motion.states.map(({ id }) => (id === "w" ? disturbance.vertical : id === "v" ? disturbance.side : 0));
    const { times, states } = linearResponse(motion, start, disturbance.duration, steps);
    // What grows beyond all numbers is shown as far as it has some.
    const end = times.findIndex((_, k) => states.some((values) => !Number.isFinite(values[k])));
    const kept = end < 0 ? times.length : end;
    if (kept < 2) return undefined;
    found.push({
      group,
      times: times.slice(0, kept),
      states: motion.states.map(({ id }, i) => ({ state: id, values: (states[i] ?? []).slice(0, kept) })),
    });
  }
  return found;
}
