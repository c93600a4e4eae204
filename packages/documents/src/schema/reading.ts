import type { Uncertainty } from "../units/index.ts";
import type { SchemaNode } from "./schema-node.ts";
import { dotted, type PathStep, type ProblemKind, pointer, type ValueProblem } from "./value-problem.ts";

/**
 * `document`: a number with a dimension must be text with its unit, a listed word is written as listed. `text`: the same of
 * numbers, words may differ in capitals and hyphens. `input`: a plain number is SI, text carries its unit, words as in `text`.
 */
export type ReadingMode = "document" | "text" | "input";

/** A number as it was written, before its line is known. */
export interface WrittenNumber {
  readonly path: readonly PathStep[];
  readonly text: string;
  readonly value: number;
  readonly uncertainty?: Uncertainty;
  readonly source?: string;
}

/** What one walk over a value has gathered. */
export interface Reading {
  readonly root: SchemaNode;
  readonly mode: ReadingMode;
  readonly problems: ValueProblem[];
  readonly written: Map<string, WrittenNumber>;
  readonly references: FileReference[];
}

/** A text that names another file of the project. */
export interface FileReference {
  readonly path: readonly PathStep[];
  /** Kind of file it must be: the kind of a document, or `raster`. */
  readonly kind: string;
  readonly target: string;
}

export function newReading(root: SchemaNode, mode: ReadingMode): Reading {
  return { root, mode, problems: [], written: new Map(), references: [] };
}

export interface Complaint {
  readonly kind: ProblemKind;
  readonly place?: "key";
  readonly read: string;
  readonly allowed: string;
  /** The sentence without the name of the place, which is put before it. */
  readonly sentence: string;
}

export function complain(reading: Reading, path: readonly PathStep[], complaint: Complaint): void {
  const name = dotted(path);
  reading.problems.push({
    kind: complaint.kind,
    path,
    place: complaint.place ?? "value",
    read: complaint.read,
    allowed: complaint.allowed,
    message: name === "" ? complaint.sentence : `${name}: ${complaint.sentence}`,
    severity: "error",
  });
}

export function remember(reading: Reading, written: WrittenNumber): void {
  reading.written.set(pointer(written.path), written);
}
