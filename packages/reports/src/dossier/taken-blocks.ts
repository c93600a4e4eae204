import type { Block } from "./blocks.ts";
import type { DossierChapter } from "./dossier-request.ts";

interface Taken {
  /** "altitude 0" */
  readonly text: string;
  readonly because: string;
  readonly names: readonly string[];
}

/** Reasons with fewer values than this stand together in one paragraph. */
const fewValues = 4;

/** What was taken without being asked for: by reason, and within it by the analyses that took it. */
export function takenBlocks(chapters: readonly DossierChapter[]): readonly Block[] {
  const taken = takenValues(chapters);
  if (taken.length === 0) return [];
  const byReason = grouped(taken, ({ because }) => because);
  const large = [...byReason].filter(([, values]) => values.length >= fewValues);
  const small = [...byReason].filter(([, values]) => values.length < fewValues).flatMap(([, values]) => values);
  return [
    { kind: "heading", level: 2, text: "Taken because nobody gave it, in SI" },
    ...large.map(
      ([because, values]): Block => ({ kind: "paragraph", look: "compact", lead: capital(because), text: `${byAnalyses(values)}.` }),
    ),
    ...(small.length === 0 ? [] : [{ kind: "paragraph", look: "compact", lead: "Chosen", text: `${withReasons(small)}.` } as const]),
  ];
}

function takenValues(chapters: readonly DossierChapter[]): readonly Taken[] {
  const found = new Map<string, { readonly text: string; readonly because: string; readonly names: string[] }>();
  for (const { meta, result } of chapters)
    for (const { path, value, because } of result.provenance.defaults)
      for (const [name, leaf] of leaves(inputName(path), value)) {
        const text = `${name} ${shortValue(leaf)}`;
        const entry = found.get(`${text}|${because}`) ?? { text, because, names: [] };
        if (!entry.names.includes(meta.name)) entry.names.push(meta.name);
        found.set(`${text}|${because}`, entry);
      }
  return [...found.values()];
}

function grouped<Value>(values: readonly Value[], keyOf: (value: Value) => string): ReadonlyMap<string, readonly Value[]> {
  const groups = new Map<string, Value[]>();
  for (const value of values) groups.set(keyOf(value), [...(groups.get(keyOf(value)) ?? []), value]);
  return groups;
}

function byAnalyses(values: readonly Taken[]): string {
  const groups = grouped(values, ({ names }) => names.join(", "));
  return [...groups].map(([names, each]) => `${names}: ${each.map(({ text }) => text).join(", ")}`).join("; ");
}

function withReasons(values: readonly Taken[]): string {
  return values.map(({ text, because, names }) => `${text}, ${because} (${names.join(", ")})`).join("; ");
}

/** "/loading/blocks" → "loading.blocks"; a place in a document keeps the document's name. */
function inputName(path: string): string {
  const [first = "", pointer] = path.split("#");
  const dotted = (text: string) => text.replace(/^\//, "").replaceAll("/", ".");
  return pointer === undefined ? dotted(first) : `${first} ${dotted(pointer)}`;
}

/** The values inside an object, each under its own name; an empty object says nothing. */
function leaves(name: string, value: unknown): readonly (readonly [string, unknown])[] {
  if (value === null || typeof value !== "object" || Array.isArray(value)) return [[name, value]];
  return Object.entries(value).flatMap(([inner, each]) => leaves(`${name}.${inner}`, each));
}

/** A value in words; of a long list its ends and its length. */
function shortValue(value: unknown): string {
  if (Array.isArray(value) && value.length > 8) return `${value[0]}, ${value[1]} … ${value.at(-1)} (${value.length} values)`;
  if (Array.isArray(value)) return `[${value.map(shortValue).join(", ")}]`;
  if (typeof value === "boolean") return value ? "yes" : "no";
  return typeof value === "string" ? value : JSON.stringify(value);
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
