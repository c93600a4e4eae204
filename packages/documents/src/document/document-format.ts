import { type OldPlace, oldPlaces } from "../migration/index.ts";
import type { PathStep, ValueProblem } from "../schema/index.ts";
import { currentFormat, type DocumentKind } from "./document-kinds.ts";

export type FormatReading =
  | {
      readonly kind: "current";
      readonly value: Readonly<Record<string, unknown>>;
      /** Where what stands at a place of `value` was written; absent where the document was in this format already. */
      readonly oldPlace?: OldPlace;
      /** Says that it was brought up, and what was taken that is not written. */
      readonly remark?: ValueProblem;
    }
  | { readonly kind: "problem"; readonly problem: ValueProblem };

/** Brings a document to the current format, or says why it cannot be read. */
export function inCurrentFormat(kind: DocumentKind, value: Readonly<Record<string, unknown>>): FormatReading {
  const newest = currentFormat(kind);
  const { format } = value;
  if (format === undefined) return refused([], "nothing", newest, `"format: ${newest}" is missing; it says how to read this document`);
  if (typeof format !== "number" || !Number.isInteger(format) || format < 1) {
    return refused(
      ["format"],
      JSON.stringify(format) ?? "nothing",
      newest,
      `format: ${newest} is expected; read ${JSON.stringify(format)}`,
    );
  }
  if (format > newest) {
    const sentence = `format: this document is in format ${format}; this program reads formats up to ${newest}, a newer one is needed`;
    return refused(["format"], String(format), newest, sentence);
  }
  if (format === newest) return { kind: "current", value };
  const migrate = (document: Readonly<Record<string, unknown>>) =>
    kind.migrations.slice(format - 1).reduce((sofar, migration) => migration(sofar), document);
  const remark = broughtUp(format, newest, kind.added?.slice(format - 1) ?? []);
  return { kind: "current", value: { ...migrate(value), format: newest }, oldPlace: oldPlaces(value, migrate), remark };
}

function refused(path: readonly PathStep[], read: string, newest: number, message: string): FormatReading {
  const allowed = newest === 1 ? "1" : `1 to ${newest}`;
  return { kind: "problem", problem: { kind: "format", path, place: "value", read, allowed, message, severity: "error" } };
}

function broughtUp(format: number, newest: number, added: readonly string[]): ValueProblem {
  const message = `format: this document is in format ${format} and read as format ${newest}.`;
  return {
    kind: "format",
    path: ["format"],
    place: "value",
    read: String(format),
    allowed: String(newest),
    message: [message, ...added].join(" "),
    severity: "warning",
  };
}
