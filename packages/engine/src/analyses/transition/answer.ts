import type { Answer, Limit } from "../contract.ts";
import { reading, type Token, words } from "../tokens.ts";
import type { LimitUse, TransitionOutputs, WayOutputs } from "./output-schema.ts";

/** How long and at what power both ways go, where the clutch opens, and what is used most. */
export function transitionAnswer(outputs: TransitionOutputs): Answer {
  const failed = outputs.ways.findIndex(({ flown }) => !flown);
  if (failed >= 0) return refusal(outputs.ways, failed);
  const [out, back] = outputs.ways;
  if (!out?.summary || !back?.summary) return { sentence: [words("Neither way was flown.")], brief: "not flown", met: false };
  const sentence: Token[] = [
    words("It gets from hover to "),
    reading(outputs.cruiseSpeed ?? 0, "speed", "/cruiseSpeed"),
    words(" in "),
    reading(out.summary.duration, "time", "/ways/0/summary/duration", { unit: "s" }),
    words(" over "),
    reading(out.summary.distance, "length", "/ways/0/summary/distance", { unit: "m" }),
    words(", the clutch opening at "),
    reading(out.summary.clutchAirspeed, "speed", "/ways/0/summary/clutchAirspeed"),
    words(", and back in "),
    reading(back.summary.duration, "time", "/ways/1/summary/duration", { unit: "s" }),
    words("; at most it draws "),
    ...peakTokens(out, back),
    words(", and it leaves its height by no more than "),
    ...heightTokens(out, back),
    words("."),
  ];
  const broken = brokenLimit(outputs.ways);
  if (broken) sentence.push(words(` ${capital(broken.use.name)} is passed on the way ${broken.way}.`));
  const gaps = outputs.holdable.gaps.length;
  if (outputs.corridor.length > 0)
    sentence.push(
      words(
        outputs.holdable.everySpeed
          ? " Every speed in between can be held."
          : ` ${gaps} ${gaps === 1 ? "speed" : "speeds"} of the corridor in between cannot be held.`,
      ),
    );
  const peak = Math.max(out.summary.peakPower, back.summary.peakPower);
  const brief = `${out.summary.duration.toFixed(0)} s out, ${back.summary.duration.toFixed(0)} s back, ${(peak / 1000).toFixed(2)} kW`;
  return { sentence, brief: brief.slice(0, 40), met: broken === undefined };
}

function peakTokens(out: WayOutputs, back: WayOutputs): readonly Token[] {
  const first = (out.summary?.peakPower ?? 0) >= (back.summary?.peakPower ?? 0);
  const { summary } = first ? out : back;
  const path = `/ways/${first ? 0 : 1}/summary`;
  return [
    reading(summary?.peakPower ?? 0, "power", `${path}/peakPower`),
    words(" at "),
    reading(summary?.peakAirspeed ?? 0, "speed", `${path}/peakAirspeed`),
    words(`, on the way ${first ? "out" : "back"}`),
  ];
}

function heightTokens(out: WayOutputs, back: WayOutputs): readonly Token[] {
  const all = [out, back].flatMap(({ summary }, i) =>
    summary
      ? [
          { value: summary.heightGained, path: `/ways/${i}/summary/heightGained` },
          { value: summary.heightLost, path: `/ways/${i}/summary/heightLost` },
        ]
      : [],
  );
  const most = all.reduce((a, b) => (b.value > a.value ? b : a), { value: 0, path: "/ways/0/summary/heightGained" });
  return [reading(most.value, "length", most.path, { unit: "m" })];
}

function refusal(ways: readonly WayOutputs[], index: number): Answer {
  const { way, refusal: reason } = ways[index] as WayOutputs;
  return {
    sentence: [words(`It does not get from ${way}: ${reason ?? "the reason is not known"}.`)],
    brief: `no way from ${way}`.slice(0, 40),
    met: false,
  };
}

function brokenLimit(ways: readonly WayOutputs[]): { readonly use: LimitUse; readonly way: string } | undefined {
  for (const { way, limits } of ways) {
    const use = limits.find(({ kept }) => !kept);
    if (use) return { use, way: way === "hover to cruise" ? "out" : "back" };
  }
  return undefined;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** What is used of each limit on the way that uses more of it, most first. */
export function transitionLimits({ ways }: TransitionOutputs): readonly Limit[] {
  const most = new Map<string, Limit>();
  for (const { way, limits } of ways)
    for (const { name, family, share, side, at } of limits) {
      const before = most.get(name);
      if (before && before.share >= share) continue;
      most.set(name, { name, family, share, side, where: `${way}, after ${at.toFixed(1)} s`, binding: false });
    }
  const sorted = [...most.values()].sort((a, b) => b.share - a.share);
  return sorted.map((limit, i) => ({ ...limit, binding: i === 0 && limit.share > 0.9995 }));
}
