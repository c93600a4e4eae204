import { type ProblemKind, pointer, type ValueProblem } from "./schema/index.ts";

/** Something wrong in a project: where, what was read, what is allowed, and all of it as one sentence. */
export interface DocumentProblem {
  readonly kind: ProblemKind;
  /** Path of the document inside the project, with forward slashes. */
  readonly file: string;
  /** Line and column, counted from 1; the beginning of the file where no place can be named. */
  readonly line: number;
  readonly column: number;
  /** JSON Pointer of the place, empty for the whole document. */
  readonly pointer: string;
  readonly read: string;
  readonly allowed: string;
  readonly message: string;
  /** An `error` keeps a document from being used; a `warning` does not. */
  readonly severity: "error" | "warning";
}

export interface TextPosition {
  readonly line: number;
  readonly column: number;
}

/** A problem of a value, placed in its file. */
export function placedProblem(file: string, position: TextPosition, problem: ValueProblem): DocumentProblem {
  const { kind, path, read, allowed, message, severity } = problem;
  return { kind, file, ...position, pointer: pointer(path), read, allowed, message, severity };
}

/** A problem of a whole file. */
export function fileProblem(
  file: string,
  problem: Pick<DocumentProblem, "kind" | "read" | "allowed" | "message"> & Partial<DocumentProblem>,
): DocumentProblem {
  return { file, line: 1, column: 1, pointer: "", severity: "error", ...problem };
}

/** One line for a terminal: `aircraft/baseline.yaml:12:9: …`. */
export function problemLine(problem: DocumentProblem): string {
  const grade = problem.severity === "warning" ? "warning: " : "";
  return `${problem.file}:${problem.line}:${problem.column}: ${grade}${problem.message}`;
}

/** By file, line and column, so that a list reads like the files do. */
export function inReadingOrder(problems: readonly DocumentProblem[]): readonly DocumentProblem[] {
  const order = (first: string, second: string) => (first < second ? -1 : first > second ? 1 : 0);
  return [...problems].sort(
    (first, second) =>
      order(first.file, second.file) || first.line - second.line || first.column - second.column || order(first.message, second.message),
  );
}
