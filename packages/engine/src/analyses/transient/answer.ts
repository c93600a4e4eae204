import type { Answer, Limit } from "../contract.ts";
import { reading, type Token, words } from "../tokens.ts";
import type { TransientOutputs } from "./output-schema.ts";

/** Whether it gets through, how soon and at what cost. */
export function transientAnswer(outputs: TransientOutputs): Answer {
  const { recovered, timeToRecover, stopped, step, notBack } = outputs;
  const start = words(`When ${step}, `);
  const sentence: readonly Token[] =
    recovered && timeToRecover !== null
      ? [start, words("it is back in "), reading(timeToRecover, "time", "/timeToRecover"), ...costWords(outputs), words(".")]
      : [
          start,
          words(
            stopped === null ? `it does not come back within the time that was followed (${notBack.join(", ")})` : `it is lost: ${stopped}`,
          ),
          ...costWords(outputs),
          words("."),
        ];
  const brief = recovered
    ? `back in ${(timeToRecover ?? 0).toPrecision(2)} s, ${outputs.heightLost.toFixed(0)} m lost`
    : stopped === null
      ? "does not come back"
      : "lost";
  return { sentence, brief, met: recovered };
}

function costWords({ rotors, heightLost, peakRoll, peakPitch }: TransientOutputs): readonly Token[] {
  const [rotor] = rotors;
  const roll = peakRoll > peakPitch;
  return [
    words("; it turns by up to "),
    reading(roll ? peakRoll : peakPitch, "angle", roll ? "/peakRoll" : "/peakPitch"),
    words(roll ? " in roll" : " in pitch"),
    ...(heightLost > 0.5 ? [words(", loses "), reading(heightLost, "length", "/heightLost"), words(" of height by the end")] : []),
    ...(rotor
      ? [
          words(", and its rotor goes down to "),
          reading(rotor.lowestShare, "dimensionless", "/rotors/0/lowestShare", { unit: "%" }),
          words(" of its speed"),
        ]
      : []),
  ];
}

export function transientLimits({ rotors, controls }: TransientOutputs): readonly Limit[] {
  const limits = [
    ...rotors.flatMap(({ id, lowest, highest, permittedLowest, permittedHighest, lowestAt }): Omit<Limit, "binding">[] => [
      {
        name: "lowest rotor speed",
        family: "strength",
        share: permittedLowest / lowest,
        side: "lower",
        where: `${id}, ${lowestAt.toFixed(1)} s after the start`,
      },
      { name: "highest rotor speed", family: "strength", share: highest / permittedHighest, side: "upper", where: id },
    ]),
    ...controls.map(
      ({ id, rangeUsed }): Omit<Limit, "binding"> => ({
        name: "control range",
        family: "control",
        share: rangeUsed,
        side: "upper",
        where: id,
      }),
    ),
  ];
  const most = Math.max(0, ...limits.map(({ share }) => share));
  return limits.map((limit) => ({ ...limit, binding: limit.share === most && most >= 1 - 1e-9 }));
}
