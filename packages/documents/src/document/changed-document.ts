import { createHash } from "node:crypto";
import type { ReadDocument, WrittenQuantity } from "@wingseed/engine";
import { type DocumentProblem, fileProblem, placedProblem } from "../document-problem.ts";
import { dotted, type PathStep, pointer, readChange, readValue, type ValueProblem, type WrittenNumber } from "../schema/index.ts";
import type { DocumentKind } from "./document-kinds.ts";
import { valuePlace } from "./value-place.ts";

/** Another value for one place of a document, to see what it does; the file stays as it is. */
export interface DocumentChange {
  /** `rotors.main.radius`: entries of lists by id or name. */
  readonly place: string;
  /** As one would write it, with its unit. */
  readonly text: string;
}

export type ChangedReading =
  | { readonly kind: "document"; readonly document: ReadDocument; readonly remarks: readonly DocumentProblem[] }
  | { readonly kind: "problems"; readonly problems: readonly DocumentProblem[] };

/** A read document with other values in it, checked as a whole; each change is remarked. The hash is one of its own. */
export function changedDocument(kind: DocumentKind, document: ReadDocument, changes: readonly DocumentChange[]): ChangedReading {
  const remarks: DocumentProblem[] = [];
  let { data } = document;
  const written: Record<string, WrittenQuantity> = { ...document.written };
  for (const { place, text } of changes) {
    const found = valuePlace(data, place);
    if (found.kind === "problem") return refused(document.path, [sentence(place, text, found.message)]);
    const read = readChange(kind.schema, data, found.path, text);
    if (read.kind === "problems") return refused(document.path, read.problems);
    for (const number of read.numbers) written[pointer(number.path)] = quantityOf(number, written[pointer(number.path)]);
    data = withValue(data, found.path, read.value);
    remarks.push(remark(document, place, text, found.path));
  }
  const whole = readValue(kind.schema, data, "input");
  if (whole.problems.length > 0) return refused(document.path, whole.problems);
  const hash = createHash("sha256")
    .update(JSON.stringify([document.hash, changes.map(({ place, text }) => [place, text])]))
    .digest("hex");
  return { kind: "document", document: { ...document, data: whole.value, written, hash }, remarks };
}

function refused(file: string, problems: readonly ValueProblem[]): ChangedReading {
  return { kind: "problems", problems: problems.map((problem) => placedProblem(file, { line: 1, column: 1 }, problem)) };
}

function sentence(place: string, read: string, message: string): ValueProblem {
  return { kind: "unknown-key", path: [], place: "key", read, allowed: place, message, severity: "error" };
}

function quantityOf({ path: _, ...number }: WrittenNumber, before: WrittenQuantity | undefined): WrittenQuantity {
  const { line, column } = before ?? { line: 1, column: 1 };
  return { ...number, source: number.source ?? "changed for this question", line, column };
}

function remark({ path: file, written }: ReadDocument, place: string, text: string, path: readonly PathStep[]): DocumentProblem {
  const before = written[pointer(path)];
  const inFile = before === undefined ? "" : `; the file has ${before.text}`;
  return fileProblem(file, {
    kind: "changed",
    line: before?.line ?? 1,
    column: before?.column ?? 1,
    pointer: pointer(path),
    read: text,
    allowed: dotted(path),
    message: `${place} is ${text} for this question${inFile}`,
    severity: "warning",
  });
}

function withValue(node: unknown, path: readonly PathStep[], value: unknown): unknown {
  const [step, ...rest] = path;
  if (step === undefined) return value;
  if (Array.isArray(node)) return node.map((item: unknown, index) => (index === step ? withValue(item, rest, value) : item));
  const mapping = typeof node === "object" && node !== null ? (node as Readonly<Record<string, unknown>>) : {};
  return { ...mapping, [step]: withValue(mapping[String(step)], rest, value) };
}
