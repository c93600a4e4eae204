import { type Alias, type Document, isAlias, isMap, isPair, isScalar, isSeq, LineCounter, type Node, parseDocument } from "yaml";
import { type DocumentProblem, fileProblem, type TextPosition } from "../document-problem.ts";
import { type PathStep, pointer } from "../schema/index.ts";
import { deepest, tooDeepAt } from "./nesting.ts";

/** Where keys and values of a document stand. */
export interface Positions {
  /** Position of a value, or of the nearest place above it that exists. */
  value(path: readonly PathStep[]): TextPosition;
  /** Position of the key that leads to a value. */
  key(path: readonly PathStep[]): TextPosition;
}

export interface YamlSource {
  readonly value: unknown;
  readonly positions: Positions;
  readonly problems: readonly DocumentProblem[];
}

const mostNodes = 100_000;
/** One slip of syntax often brings a row of others behind it. */
const mostSlips = 20;

/** Reads YAML 1.2 text into plain values with the position of each; never throws. */
export function readYaml(file: string, text: string): YamlSource {
  const lines = new LineCounter();
  const problems: DocumentProblem[] = [];
  const at = (offset: number): TextPosition => {
    const { line, col } = lines.linePos(offset);
    return { line: Math.max(line, 1), column: Math.max(col, 1) };
  };
  const places = new Map<string, { value: number; key?: number }>();
  const positions = positionsOf(places, at);
  try {
    const deep = tooDeepAt(text);
    if (deep !== undefined) return { value: undefined, positions, problems: [tooDeep(file, text, deep)] };
    const document = parseDocument(text, { lineCounter: lines, prettyErrors: false, version: "1.2", strict: true, stringKeys: false });
    const slips = [...document.errors, ...document.warnings];
    for (const slip of slips.slice(0, mostSlips)) problems.push(syntaxProblem(file, at(slip.pos[0]), slip));
    const next = slips[mostSlips];
    if (next !== undefined) problems.push(furtherSlips(file, at(next.pos[0]), slips.length - mostSlips));
    const walk: Walk = { file, at, places, problems, nodes: 0, document };
    const value = document.contents === null ? undefined : plain(walk, document.contents, []);
    return { value, positions, problems };
  } catch (error) {
    problems.push(unreadable(file, error));
    return { value: undefined, positions, problems };
  }
}

function syntaxProblem(file: string, position: TextPosition, slip: { readonly code: string; readonly message: string }): DocumentProblem {
  const duplicate = slip.code === "DUPLICATE_KEY";
  const message = duplicate ? "this key stands twice in the same mapping" : `YAML: ${slip.message.split("\n")[0]}`;
  return fileProblem(file, {
    ...position,
    kind: duplicate ? "duplicate-key" : "syntax",
    read: duplicate ? "a key for the second time" : "text that is no YAML",
    allowed: duplicate ? "each key once" : "YAML 1.2",
    message,
  });
}

function tooDeep(file: string, text: string, offset: number): DocumentProblem {
  const before = text.slice(0, offset).split("\n");
  return fileProblem(file, {
    line: before.length,
    column: (before.at(-1)?.length ?? 0) + 1,
    kind: "too-large",
    read: "deeper nesting",
    allowed: `${deepest} levels`,
    message: `this document cannot be read: here it is nested deeper than ${deepest} levels`,
  });
}

function furtherSlips(file: string, position: TextPosition, count: number): DocumentProblem {
  const message = `YAML: ${count} more from here on; they may vanish with the first`;
  return fileProblem(file, { ...position, kind: "syntax", read: "text that is no YAML", allowed: "YAML 1.2", message });
}

function unreadable(file: string, error: unknown): DocumentProblem {
  const reason = error instanceof Error ? error.message : String(error);
  return fileProblem(file, {
    kind: error instanceof TooBig ? "too-large" : "syntax",
    read: error instanceof TooBig ? reason : "text that is no YAML",
    allowed: error instanceof TooBig ? `${mostNodes} values, ${deepest} levels` : "YAML 1.2",
    message: `this document cannot be read: ${reason}`,
  });
}

interface Walk {
  readonly file: string;
  readonly at: (offset: number) => TextPosition;
  readonly places: Map<string, { value: number; key?: number }>;
  readonly problems: DocumentProblem[];
  nodes: number;
  readonly document: Document.Parsed;
}

class TooBig extends Error {}

function plain(walk: Walk, node: Node | null | undefined, path: readonly PathStep[], key?: number): unknown {
  walk.nodes += 1;
  if (walk.nodes > mostNodes) throw new TooBig(`it has more than ${mostNodes} values`);
  if (path.length > deepest) throw new TooBig(`it is nested deeper than ${deepest} levels`);
  const offset = node?.range?.[0];
  const place = { ...(key === undefined ? {} : { key }), value: offset ?? key ?? 0 };
  walk.places.set(pointer(path), place);
  if (node === null || node === undefined) return null;
  if (isAlias(node)) return aliased(walk, node, path, key);
  if (isScalar(node)) return typeof node.value === "bigint" ? Number(node.value) : node.value;
  if (isSeq(node)) return node.items.map((item, index) => plain(walk, item as Node, [...path, index]));
  if (isMap(node)) return mapping(walk, node.items, path);
  return null;
}

function aliased(walk: Walk, node: Alias, path: readonly PathStep[], key?: number): unknown {
  const target = node.resolve(walk.document);
  if (target !== undefined) return plain(walk, target, path, key);
  walk.problems.push(
    fileProblem(walk.file, {
      ...walk.at(node.range?.[0] ?? 0),
      kind: "syntax",
      read: `*${node.source}`,
      allowed: "an anchor that stands above",
      message: `there is no anchor &${node.source} above; put a text that begins with * in quotes`,
    }),
  );
  return null;
}

function mapping(walk: Walk, items: readonly unknown[], path: readonly PathStep[]): Record<string, unknown> {
  const value: Record<string, unknown> = {};
  for (const item of items) {
    if (!isPair(item)) continue;
    const keyNode = item.key as Node | null;
    const offset = keyNode?.range?.[0] ?? 0;
    const name = isScalar(keyNode) ? keyNode.value : undefined;
    const usable = (typeof name === "string" && name !== "__proto__") || typeof name === "number" || typeof name === "boolean";
    if (!usable) {
      walk.problems.push(
        fileProblem(walk.file, {
          ...walk.at(offset),
          kind: "syntax",
          read: "a key that is no plain word",
          allowed: "a word",
          message: "a key is a plain word",
        }),
      );
      continue;
    }
    value[String(name)] = plain(walk, item.value as Node | null, [...path, String(name)], offset);
  }
  return value;
}

function positionsOf(places: ReadonlyMap<string, { value: number; key?: number }>, at: (offset: number) => TextPosition): Positions {
  const nearest = (path: readonly PathStep[]) => {
    for (let length = path.length; length >= 0; length--) {
      const place = places.get(pointer(path.slice(0, length)));
      if (place !== undefined) return place;
    }
    return { value: 0 };
  };
  return {
    value: (path) => at(nearest(path).value),
    key: (path) => {
      const place = nearest(path);
      return at(place.key ?? place.value);
    },
  };
}
