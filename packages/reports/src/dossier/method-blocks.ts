import type { Block } from "./blocks.ts";
import type { DossierChapter, DossierRequest } from "./dossier-request.ts";
import { takenBlocks } from "./taken-blocks.ts";
import { validationBlocks } from "./validation-blocks.ts";

/** The second page: how it is computed, the values that nobody gave, and the sources of the whole document. */
export function methodBlocks(request: DossierRequest, shared: ReadonlySet<string>): readonly Block[] {
  const { chapters } = request;
  const { markOf, sources } = sourceMarks(request);
  return [
    { kind: "heading", level: 1, text: "How it is computed" },
    ...methodParagraphs(chapters, markOf),
    ...sharedCautionBlocks(chapters, shared),
    ...takenBlocks(chapters),
    ...(sources.length === 0
      ? []
      : ([
          { kind: "heading", level: 2, text: "Sources" },
          { kind: "references", items: sources },
        ] as const)),
  ];
}

/** The pages after it: how well that agrees with published data, source by source. */
export function publishedBlocks(request: DossierRequest): readonly Block[] {
  return [
    { kind: "heading", level: 1, text: "How well that agrees with published data" },
    ...validationBlocks(request.validation, sourceMarks(request).markOf),
  ];
}

/** Every source of the document with the mark by which it is cited. */
function sourceMarks({ chapters, validation, references = {} }: DossierRequest) {
  const keys = [...new Set([...chapters.flatMap(({ meta }) => meta.method.sources), ...validation.map((row) => row.source)])];
  const markOf = (key: string) => `[${keys.indexOf(key) + 1}]`;
  return { markOf, sources: keys.map((key) => ({ mark: markOf(key), text: references[key] ?? key })) };
}

/** What several methods have in common is said once, with the analyses it is about before it. */
function methodParagraphs(chapters: readonly DossierChapter[], markOf: (key: string) => string): readonly Block[] {
  const bearers = new Map<string, string[]>();
  const said = (text: string, name: string) => {
    const names = bearers.get(text) ?? [];
    bearers.set(text, names.includes(name) ? names : [...names, name]);
  };
  for (const { meta } of chapters) {
    for (const each of sentences(meta.method.summary)) said(each, meta.name);
    said(checkWords(meta.method.checks), meta.name);
  }
  const groups = new Map<string, string[]>();
  for (const [text, names] of bearers) {
    const lead = names.join(", ");
    groups.set(lead, [...(groups.get(lead) ?? []), text]);
  }
  return [...groups].map(([lead, texts]): Block => {
    const marks = sourcesOf(lead, chapters).map(markOf);
    return { kind: "paragraph", look: "text", lead, text: [...texts, ...(marks.length === 0 ? [] : [marks.join(" ")])].join(" ") };
  });
}

/** The sources that exactly these analyses share. */
function sourcesOf(lead: string, chapters: readonly DossierChapter[]): readonly string[] {
  const keys = [...new Set(chapters.flatMap(({ meta }) => meta.method.sources))];
  const namesOf = (key: string) => chapters.filter(({ meta }) => meta.method.sources.includes(key)).map(({ meta }) => meta.name);
  return keys.filter((key) => [...new Set(namesOf(key))].join(", ") === lead);
}

function sentences(text: string): readonly string[] {
  return text.split(/(?<=[.!?]) (?=\p{Lu})/u);
}

function checkWords(checks: readonly string[]): string {
  return checks.length === 0 ? "No published check covers it yet." : `Held against ${checks.join(", ")}.`;
}

/** Cautions that several answers bear, with the answers they are about. */
function sharedCautionBlocks(chapters: readonly DossierChapter[], shared: ReadonlySet<string>): readonly Block[] {
  const found = new Map<string, { readonly grade: "care" | "note"; readonly names: string[] }>();
  for (const { meta, result } of chapters)
    for (const { grade, message } of result.warnings) {
      if (!shared.has(message)) continue;
      const entry = found.get(message) ?? { grade, names: [] };
      if (!entry.names.includes(meta.name)) entry.names.push(meta.name);
      found.set(message, entry);
    }
  if (found.size === 0) return [];
  const blocks = [...found].map(
    ([message, { grade, names }]): Block => ({ kind: "caution", grade, text: `${message} (${names.join(", ")})` }),
  );
  return [{ kind: "heading", level: 2, text: "Cautions about several answers" }, ...blocks];
}
