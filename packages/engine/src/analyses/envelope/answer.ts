import type { Answer, Limit } from "../contract.ts";
import { reading, type Token, words } from "../tokens.ts";
import { blockWords } from "./block-words.ts";
import { borderName } from "./border-name.ts";
import type { EnvelopeBorder, EnvelopeInputs, EnvelopeOutputs } from "./schema.ts";

/** Speeds at the lowest altitude with what ends them, the free rotor's share of them, hover ceilings and climb at the top. */
export function envelopeAnswer(outputs: EnvelopeOutputs, inputs: EnvelopeInputs): Answer {
  const { now, altitudes } = outputs;
  const own = (item: { readonly blocks: number; readonly temperatureOffset: number }) =>
    item.blocks === now.blocks && item.temperatureOffset === now.temperatureOffset;
  const flying = outputs.rows.filter((row) => own(row) && row.state === "flies");
  if (flying.length === 0) {
    const why = outputs.rows.find((row) => own(row) && row.limit !== null)?.limit ?? "no reason is known";
    return {
      sentence: [words(`With ${blockWords(now.blocks)} it flies level at none of these altitudes and speeds: ${why}.`)],
      brief: `flies nowhere: ${why}`.slice(0, 40),
      met: false,
    };
  }
  const lowest = Math.min(...flying.map(({ altitude }) => altitude));
  const fastest = outputs.borders
    .filter((border) => own(border) && border.altitude === lowest && border.side === "fastest")
    .sort((a, b) => b.airspeed - a.airspeed)[0];
  const low = flying.filter(({ altitude }) => altitude === lowest).sort((a, b) => a.airspeed - b.airspeed)[0];
  const sentence: Token[] = [
    words(`With ${blockWords(now.blocks)} it flies level at `),
    reading(lowest, "length", `/altitudes/${altitudes.indexOf(lowest)}`, { datum: "above sea" }),
    words(" from "),
    reading(low?.airspeed ?? 0, "speed", `/rows/${outputs.rows.indexOf(low as EnvelopeOutputs["rows"][number])}/airspeed`),
    ...fastestTokens(outputs, fastest),
    ...gapTokens(outputs, lowest),
    ...freeTokens(outputs, lowest),
    words("."),
    ...ceilingTokens(outputs, inputs),
    ...climbTokens(outputs),
  ];
  return { sentence, brief: briefOf(outputs, fastest) };
}

function fastestTokens(outputs: EnvelopeOutputs, fastest: EnvelopeBorder | undefined): Token[] {
  if (!fastest) return [words(" up, as fast as was looked at")];
  const place = `/borders/${outputs.borders.indexOf(fastest)}/airspeed`;
  return [words(" to "), reading(fastest.airspeed, "speed", place), words(`, where ${borderName(fastest.limit)} stops it`)];
}

/** The first stretch between two speeds that fly in which neither mode does. */
function gapTokens(outputs: EnvelopeOutputs, altitude: number): Token[] {
  const { blocks, temperatureOffset } = outputs.now;
  const here = outputs.rows.filter(
    (row) => row.blocks === blocks && row.temperatureOffset === temperatureOffset && row.altitude === altitude,
  );
  const speeds = [...new Set(here.map(({ airspeed }) => airspeed))].sort((a, b) => a - b);
  const flies = speeds.map((speed) => here.some(({ airspeed, state }) => airspeed === speed && state === "flies"));
  const before = flies.findIndex((one, i) => one && flies[i + 1] === false && flies.slice(i + 2).includes(true));
  if (before < 0) return [];
  const after = flies.indexOf(true, before + 1);
  const at = (i: number) => {
    const row = here.find(({ airspeed, state }) => airspeed === speeds[i] && state === "flies");
    return reading(speeds[i] as number, "speed", `/rows/${outputs.rows.indexOf(row as EnvelopeOutputs["rows"][number])}/airspeed`);
  };
  const why = here.find(({ airspeed }) => airspeed === speeds[before + 1])?.limit ?? "not resolved";
  return [words("; not between "), at(before), words(" and "), at(after), words(` (${borderName(why)})`)];
}

function freeTokens(outputs: EnvelopeOutputs, altitude: number): Token[] {
  const { blocks, temperatureOffset } = outputs.now;
  const open = outputs.borders.filter(
    (border) =>
      border.blocks === blocks &&
      border.temperatureOffset === temperatureOffset &&
      border.altitude === altitude &&
      border.mode === "clutch-open",
  );
  const slowest = open.find(({ side }) => side === "slowest");
  if (!slowest) return [];
  return [
    words("; with the rotor turning free from "),
    reading(slowest.airspeed, "speed", `/borders/${outputs.borders.indexOf(slowest)}/airspeed`),
    words(` (${borderName(slowest.limit)})`),
  ];
}

function ceilingTokens(outputs: EnvelopeOutputs, { stateOfCharge }: EnvelopeInputs): Token[] {
  const find = (kind: string) =>
    outputs.ceilings.findIndex(
      (row) => row.kind === kind && row.blocks === outputs.now.blocks && row.temperatureOffset === outputs.now.temperatureOffset,
    );
  const far = find("hover");
  const near = find("hover near the ground");
  const hover = outputs.ceilings[far];
  if (!hover) return [];
  if (hover.altitude === null) return [words(` It does not hover: ${hover.limit}.`)];
  const low = outputs.ceilings[near]?.altitude ?? null;
  const datum = { datum: "above sea" };
  return [
    words(hover.isSought ? " It hovers up to " : " It still hovers at "),
    reading(hover.altitude, "length", `/ceilings/${far}/altitude`, datum),
    ...(low === null ? [] : [words(", near the ground up to "), reading(low, "length", `/ceilings/${near}/altitude`, datum)]),
    words(hover.isSought ? `; ${borderName(hover.limit ?? "")}` : ""),
    ...(hover.limit === "cell voltage"
      ? [
          words(" at "),
          { kind: "handle" as const, text: `${Math.round(stateOfCharge * 100)} %`, target: "/stateOfCharge" },
          words(" charge"),
        ]
      : []),
    words(hover.isSought ? " ends it" : ""),
    ...(hover.altitude > outputs.altitudeLimit
      ? [words(", the aircraft's altitude limit is "), reading(outputs.altitudeLimit, "length", "/altitudeLimit", datum)]
      : []),
    words("."),
  ];
}

function climbTokens(outputs: EnvelopeOutputs): Token[] {
  const own = outputs.bestClimb.filter(
    (row) => row.blocks === outputs.now.blocks && row.temperatureOffset === outputs.now.temperatureOffset,
  );
  const top = own[own.length - 1];
  if (!top || top.climbRate === null) return [];
  return [
    words(" At "),
    reading(top.altitude, "length", `/bestClimb/${outputs.bestClimb.indexOf(top)}/altitude`, { datum: "above sea" }),
    words(" it climbs at "),
    reading(top.climbRate, "speed", `/bestClimb/${outputs.bestClimb.indexOf(top)}/climbRate`),
    words(` (${borderName(top.limit ?? "")}).`),
  ];
}

function briefOf(outputs: EnvelopeOutputs, fastest: EnvelopeBorder | undefined): string {
  const hover = outputs.ceilings.find(
    (row) => row.kind === "hover" && row.blocks === outputs.now.blocks && row.temperatureOffset === outputs.now.temperatureOffset,
  );
  const speed = fastest ? `to ${fastest.airspeed.toFixed(0)} m/s` : "at every speed";
  const height = hover ? (hover.altitude === null ? ", no hover" : `, hovers to ${hover.altitude.toFixed(0)} m`) : "";
  return `${speed}${height}`.slice(0, 40);
}

/** Limits by the largest share of them used anywhere it flies. */
export function envelopeLimits(outputs: EnvelopeOutputs): readonly Limit[] {
  return outputs.limits.map(({ name, family, share, where }, i) => ({
    name,
    family,
    share,
    side: name.startsWith("stall margin") || name === "cell voltage" ? "lower" : "upper",
    where,
    binding: i === 0 && share > 0.9995,
  }));
}
