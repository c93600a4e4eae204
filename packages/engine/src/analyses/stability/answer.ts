import type { Answer } from "../contract.ts";
import { reading, type Token, words } from "../tokens.ts";
import type { ModeOutput, StabilityCondition, StabilityOutputs } from "./output-schema.ts";

/** What grows and where, or what dies away last. */
export function stabilityAnswer(outputs: StabilityOutputs): Answer {
  const { conditions, chosen } = outputs;
  const here = conditions[chosen];
  const modes = here?.modes ?? [];
  if (!here || modes.length === 0) {
    return {
      sentence: [words(`There is no steady flight to stay in: ${here?.problem ?? "none was asked for"}.`)],
      brief: "no steady flight",
    };
  }
  const place = (mode: ModeOutput): string => `/conditions/${chosen}/modes/${modes.indexOf(mode)}`;
  const [slowest] = [...modes].sort((a, b) => b.real - a.real);
  if (slowest && slowest.timeToDouble !== null) return growing(outputs, here, slowest, place(slowest));
  if (!slowest || slowest.timeToHalf === null) {
    return { sentence: [words("Nothing grows, but the slowest disturbance stays as it is.")], brief: "neutral" };
  }
  return {
    sentence: [
      words(`Every disturbance dies away by itself; slowest is the ${slowest.name}${whereWords(here)}, which halves in `),
      reading(slowest.timeToHalf, "time", `${place(slowest)}/timeToHalf`),
      ...periodWords(slowest, place(slowest)),
      words("."),
      ...manoeuvreWords(outputs),
    ],
    brief: `stable, ${slowest.name} halves in ${slowest.timeToHalf.toPrecision(3)} s`,
  };
}

function growing(outputs: StabilityOutputs, here: StabilityCondition, mode: ModeOutput, place: string): Answer {
  const count = here.modes.filter(({ timeToDouble }) => timeToDouble !== null).length;
  const others = count === 1 ? "everything else dies away or stays" : `${count - 1} more ${count === 2 ? "mode grows" : "modes grow"} too`;
  return {
    sentence: [
      words(`Left alone it does not stay there: the ${mode.name} doubles in `),
      reading(mode.timeToDouble ?? 0, "time", `${place}/timeToDouble`),
      ...periodWords(mode, place),
      words(`${whereWords(here)}; ${others}.`),
      ...manoeuvreWords(outputs),
    ],
    brief: `${mode.name} doubles in ${(mode.timeToDouble ?? 0).toPrecision(3)} s`,
  };
}

function whereWords({ mode, airspeed }: StabilityCondition): string {
  return mode === null ? "" : ` at ${airspeed.toFixed(0)} m/s, ${mode}`;
}

function periodWords({ period }: ModeOutput, place: string): readonly Token[] {
  return period === null ? [] : [words(", with a period of "), reading(period, "time", `${place}/period`)];
}

/** The manoeuvre that unloads the free rotor, else the first. */
function manoeuvreWords({ manoeuvres }: StabilityOutputs): readonly Token[] {
  const index = manoeuvres.findIndex(({ name, mode }) => name === "push-over" && mode === "clutch-open");
  const found = manoeuvres[index];
  if (!found) return [];
  return [
    words(" A push-over with the rotor free goes down to a load factor of "),
    reading(found.lowestLoadFactor, "dimensionless", `/manoeuvres/${index}/lowestLoadFactor`),
    ...(found.lowestRotorShare === null
      ? []
      : [
          words(" and the rotor to "),
          reading(found.lowestRotorShare, "dimensionless", `/manoeuvres/${index}/lowestRotorShare`, { unit: "%" }),
          words(" of its speed"),
        ]),
    words("."),
  ];
}
