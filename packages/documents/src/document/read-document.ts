import type { ReadDocument, WrittenQuantity } from "@wingseed/engine";
import { type DocumentProblem, fileProblem, inReadingOrder, placedProblem, type TextPosition } from "../document-problem.ts";
import { type FileReference, pointer, readValue, schemaNode, type ValueProblem, type WrittenNumber } from "../schema/index.ts";
import { type Positions, readYaml } from "../yaml/index.ts";
import { inCurrentFormat } from "./document-format.ts";
import type { DocumentKind } from "./document-kinds.ts";

/** A text with its place in the project and the hash of its bytes. */
export interface DocumentText {
  readonly file: string;
  readonly text: string;
  readonly hash: string;
}

export interface DocumentReading {
  /** Absent when an error keeps it from being used. */
  readonly document?: ReadDocument;
  readonly problems: readonly DocumentProblem[];
  /** Other files of the project that it names. */
  readonly references: readonly PlacedReference[];
}

export interface PlacedReference extends FileReference, TextPosition {}

/** Reads one YAML document of a known kind: every problem at once, each with its line and column. Never throws. */
export function readYamlDocument(kind: DocumentKind, { file, text, hash }: DocumentText): DocumentReading {
  const { value: raw, positions: inText, problems: slips } = readYaml(file, text);
  if (slips.some((slip) => slip.kind !== "duplicate-key")) return { problems: slips, references: [] };
  if (typeof raw !== "object" || raw === null || Array.isArray(raw))
    return { problems: [...slips, notAMapping(file, raw)], references: [] };
  const format = inCurrentFormat(kind, raw as Readonly<Record<string, unknown>>);
  if (format.kind === "problem") {
    return { problems: [...slips, placedProblem(file, position(inText, format.problem), format.problem)], references: [] };
  }
  const { oldPlace, remark } = format;
  const positions =
    oldPlace === undefined
      ? inText
      : { value: (path: Path) => inText.value(oldPlace(path)), key: (path: Path) => inText.key(oldPlace(path)) };
  const place = (problem: ValueProblem) => placedProblem(file, position(positions, problem), problem);
  const { own, provenance, problem } = withoutProvenance(kind, format.value);
  const reading = readValue(kind.schema, own, "document");
  const found = [...(remark ? [remark] : []), ...reading.problems, ...(problem ? [problem] : [])];
  const problems = inReadingOrder([...slips, ...found.map(place)]);
  const references = reading.references.map((reference) => ({ ...reference, ...positions.value(reference.path) }));
  if (problems.some(({ severity }) => severity === "error")) return { problems, references };
  const written = writtenQuantities(reading.numbers, positions, provenance);
  return { document: { path: file, kind: kind.kind, data: reading.value, written, hash }, problems, references };
}

type Path = ValueProblem["path"];

function position(positions: Positions, problem: ValueProblem) {
  return problem.place === "key" ? positions.key(problem.path) : positions.value(problem.path);
}

function notAMapping(file: string, raw: unknown): DocumentProblem {
  const empty = raw === undefined || raw === null;
  return fileProblem(file, {
    kind: "wrong-type",
    read: empty ? "an empty document" : "something else",
    allowed: "a mapping that begins with format: 1",
    message: `a mapping of keys is expected${empty ? "; the document is empty" : ""}`,
  });
}

interface Provenance {
  readonly own: Readonly<Record<string, unknown>>;
  readonly provenance?: string;
  readonly problem?: ValueProblem;
}

/** Every document may say at its top where its values come from, whether or not its definition has a place for it. */
function withoutProvenance(kind: DocumentKind, value: Readonly<Record<string, unknown>>): Provenance {
  const { provenance, ...others } = value;
  if (provenance === undefined) return { own: value };
  if (typeof provenance !== "string") {
    const message = "provenance: a word or a sentence on where the values come from is expected";
    return {
      own: others,
      problem: {
        kind: "wrong-type",
        path: ["provenance"],
        place: "value",
        read: String(provenance),
        allowed: "a text",
        message,
        severity: "error",
      },
    };
  }
  return { own: namesProvenance(kind) ? value : others, provenance };
}

function namesProvenance(kind: DocumentKind): boolean {
  return Object.hasOwn(schemaNode(kind.schema).properties ?? {}, "provenance");
}

function writtenQuantities(
  numbers: ReadonlyMap<string, WrittenNumber>,
  positions: Positions,
  provenance: string | undefined,
): Record<string, WrittenQuantity> {
  const written: Record<string, WrittenQuantity> = {};
  for (const { path, text, value, uncertainty, source = provenance } of numbers.values()) {
    written[pointer(path)] = {
      text,
      value,
      ...(uncertainty === undefined ? {} : { uncertainty }),
      ...(source === undefined ? {} : { source }),
      ...positions.value(path),
    };
  }
  return written;
}
