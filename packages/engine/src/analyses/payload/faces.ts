import type { Answer, Limit } from "../contract.ts";
import type { Axis, Figure, Meaning, Series } from "../figures.ts";
import { reading, type Token, words } from "../tokens.ts";
import type { PayloadInputs, PayloadOutputs, PayloadRow } from "./schema.ts";

const ordered: readonly Meaning[] = ["ordered.1", "ordered.2", "ordered.3", "ordered.4"];

function packsOf(outputs: PayloadOutputs): number[] {
  return [...new Set(outputs.rows.map((row) => row.blocks))].sort((a, b) => a - b);
}

function linesOf(outputs: PayloadOutputs, value: (row: PayloadRow) => number | null): Series[] {
  const packs = packsOf(outputs);
  return packs.map((blocks, i) => {
    const rows = outputs.rows.filter((row) => row.blocks === blocks);
    const last = [...rows].reverse().find((row) => value(row) !== null);
    const beyond = rows.find((row) => value(row) === null);
    // A pack's line ends at the largest take-off mass, or earlier where hover is no longer possible.
    const limit = beyond && beyond.limit !== "largest take-off mass" ? (beyond.limit ?? "no hover") : "largest take-off mass";
    return {
      name: `${blocks} blocks`,
      meaning: ordered[Math.max(0, ordered.length - packs.length + i)] ?? "neutral",
      x: rows.map((row) => row.payload),
      y: rows.map(value),
      ...(last ? { end: { limit, family: limit === "largest take-off mass" ? ("rule" as const) : ("air" as const) } } : {}),
    };
  });
}

/** Hover, cruise endurance and range over payload, a line a pack; and the table. */
export function payloadFigures(outputs: PayloadOutputs): readonly Figure[] {
  const now = nowRow(outputs);
  const curve = (id: string, caption: string, y: Axis, value: (row: PayloadRow) => number | null): Figure => {
    const here = now ? value(now) : null;
    return {
      kind: "lines",
      id,
      caption,
      x: { label: "payload", quantity: "mass" },
      y,
      series: linesOf(outputs, value),
      notable: now && here !== null ? [{ name: "now", x: now.payload, y: here }] : [],
      zeroBased: true,
    };
  };
  return [
    curve(
      "hover",
      "Hover from full to the reserve, out of ground effect",
      { label: "hover", quantity: "time", unit: "min" },
      (row) => row.hoverEndurance,
    ),
    curve(
      "range",
      "Range in still air at the speed of best range, no climb",
      { label: "range", quantity: "length", unit: "km" },
      (row) => row.range,
    ),
    curve(
      "cruise",
      "Endurance at the speed of least power",
      { label: "endurance", quantity: "time", unit: "min" },
      (row) => row.cruiseEndurance,
    ),
    {
      kind: "table",
      id: "rows",
      caption: "Every pack and payload",
      columns: [
        { label: "pack, blocks" },
        { label: "payload", quantity: "mass" },
        { label: "take-off mass", quantity: "mass" },
        { label: "hover", quantity: "time", unit: "min" },
        { label: "endurance", quantity: "time", unit: "min" },
        { label: "range", quantity: "length", unit: "km" },
        { label: "limit" },
      ],
      rows: outputs.rows.map((row) => [
        String(row.blocks),
        row.payload,
        row.takeoffMass,
        row.hoverEndurance,
        row.cruiseEndurance,
        row.range,
        row.limit,
      ]),
    },
  ];
}

function nowRow(outputs: PayloadOutputs): PayloadRow | undefined {
  const { now } = outputs;
  return now ? outputs.rows.find((row) => row.blocks === now.blocks && row.payload === now.payload) : undefined;
}

/** "With 1.13 kg and 13 blocks it hovers … or flies …; … stops it." */
export function payloadAnswer(outputs: PayloadOutputs): Answer {
  const row = nowRow(outputs);
  if (row === undefined) return { sentence: [words("No pack and payload were asked for.")], brief: "nothing asked", met: false };
  const index = outputs.rows.indexOf(row);
  const head: Token[] = [words("With "), reading(row.payload, "mass", `/rows/${index}/payload`), words(` and ${row.blocks} blocks `)];
  if (row.hoverEndurance === null && row.range === null) {
    return { sentence: [...head, words(`it does not fly: ${row.limit}.`)], brief: `no: ${row.limit}`.slice(0, 40), met: false };
  }
  const sentence: Token[] = [...head];
  if (row.hoverEndurance === null) sentence.push(words(`there is ${row.limit}`));
  else sentence.push(words("it hovers "), reading(row.hoverEndurance, "time", `/rows/${index}/hoverEndurance`, { unit: "min" }));
  if (row.range !== null)
    sentence.push(words(" or flies "), reading(row.range, "length", `/rows/${index}/range`, { unit: "km" }), words(" in still air"));
  sentence.push(words(row.limit === "reserve" ? "; the reserve ends it." : `; ${row.limit} stops it.`));
  const exchange = outputs.exchange;
  if (exchange) {
    sentence.push(
      words(" One block ("),
      reading(exchange.blockMass, "mass", "/exchange/blockMass"),
      words(") buys "),
      reading(exchange.hoverPerBlock, "time", "/exchange/hoverPerBlock", { unit: "min" }),
      words(" of hover; as payload the same mass costs "),
      reading(exchange.hoverPerBlockAsPayload, "time", "/exchange/hoverPerBlockAsPayload", { unit: "min" }),
      words("."),
    );
  }
  const hover = row.hoverEndurance === null ? "no hover" : `${(row.hoverEndurance / 60).toFixed(0)} min`;
  const range = row.range === null ? "no range" : `${(row.range / 1000).toFixed(0)} km`;
  return { sentence, brief: `${hover} · ${range}` };
}

/** Limits of the row that the sentence is about. */
export function payloadLimits(outputs: PayloadOutputs, _inputs?: PayloadInputs): readonly Limit[] {
  const row = nowRow(outputs);
  if (row === undefined) return [];
  const heaviest = Math.max(...outputs.rows.filter((other) => other.limit !== "largest take-off mass").map((other) => other.takeoffMass));
  const limits: Limit[] = [];
  if (Number.isFinite(heaviest)) {
    limits.push({
      name: "take-off mass",
      family: "rule",
      share: row.takeoffMass / Math.max(heaviest, row.takeoffMass),
      side: "upper",
      where: `${row.blocks} blocks`,
      binding: row.takeoffMass >= heaviest,
    });
  }
  limits.push({
    name: row.limit ?? "reserve",
    family: row.limit === "reserve" ? "rule" : "power",
    share: 1,
    side: "lower",
    where: "at the end of the flight",
    binding: true,
  });
  return limits;
}
