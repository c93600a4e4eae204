import type { Answer } from "../contract.ts";
import { reading, type Token, words } from "../tokens.ts";
import type { ModeOutput, StabilityOutputs } from "./output-schema.ts";

/** What grows, or what dies away last. */
export function stabilityAnswer({ conditions, chosen }: StabilityOutputs): Answer {
  const modes = conditions[chosen]?.modes ?? [];
  const place = (mode: ModeOutput): string => `/conditions/${chosen}/modes/${modes.indexOf(mode)}`;
  const growing = modes.filter(({ timeToDouble }) => timeToDouble !== null);
  const fastest = [...growing].sort((a, b) => b.real - a.real)[0];
  if (fastest) return growingAnswer(fastest, growing.length, place(fastest));
  const slowest = [...modes].sort((a, b) => b.real - a.real)[0];
  if (!slowest || slowest.timeToHalf === null) {
    return { sentence: [words("Nothing grows, but the slowest disturbance stays as it is.")], brief: "neutral" };
  }
  return {
    sentence: [
      words(`Every disturbance dies away; the ${slowest.name} takes longest and halves in `),
      reading(slowest.timeToHalf, "time", `${place(slowest)}/timeToHalf`),
      ...periodWords(slowest, place(slowest)),
      words("."),
    ],
    brief: `stable, ${slowest.name} halves in ${slowest.timeToHalf.toPrecision(3)} s`,
  };
}

function growingAnswer(mode: ModeOutput, count: number, place: string): Answer {
  const others = count === 1 ? "everything else dies away or stays" : `${count - 1} more ${count === 2 ? "mode grows" : "modes grow"} too`;
  return {
    sentence: [
      words(`Left alone it does not stay there: the ${mode.name} doubles in `),
      reading(mode.timeToDouble ?? 0, "time", `${place}/timeToDouble`),
      ...periodWords(mode, place),
      words(`; ${others}.`),
    ],
    brief: `${mode.name} doubles in ${(mode.timeToDouble ?? 0).toPrecision(3)} s`,
  };
}

function periodWords({ period }: ModeOutput, place: string): readonly Token[] {
  return period === null ? [] : [words(", with a period of "), reading(period, "time", `${place}/period`)];
}
