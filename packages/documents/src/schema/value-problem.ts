/** Stable code of everything that can be wrong with something written. */
export type ProblemKind =
  | "syntax"
  | "duplicate-key"
  | "unknown-key"
  | "missing-key"
  | "wrong-type"
  | "wrong-quantity"
  | "not-allowed"
  | "out-of-range"
  | "rule"
  | "changed"
  | "format"
  | "unreadable"
  | "too-large"
  | "outside-project"
  | "missing-file"
  | "unlisted-file"
  | "coordinates"
  | "duplicate-name"
  | "raster"
  | "height-datum";

export type PathStep = string | number;

/** Something wrong in a value, before it is known in which file and line it stands. */
export interface ValueProblem {
  readonly kind: ProblemKind;
  readonly path: readonly PathStep[];
  /** Whether the key itself is meant (a slip in its name) or what stands behind it. */
  readonly place: "value" | "key";
  /** What was read. */
  readonly read: string;
  /** What is allowed there. */
  readonly allowed: string;
  /** The whole sentence. */
  readonly message: string;
  readonly severity: "error" | "warning";
}

/** JSON Pointer of a path. @source rfc-6901, section 3, from memory */
export function pointer(path: readonly PathStep[]): string {
  return path.map((step) => `/${String(step).replaceAll("~", "~0").replaceAll("/", "~1")}`).join("");
}

/** A path as one says it: `rotor.stations[1].chord`. */
export function dotted(path: readonly PathStep[]): string {
  return path.map((step, index) => (typeof step === "number" ? `[${step}]` : index === 0 ? step : `.${step}`)).join("");
}

/** A value as read, short enough for a sentence. */
export function shown(value: unknown): string {
  if (value === undefined) return "nothing";
  if (typeof value === "number") return String(value);
  if (Array.isArray(value)) return value.length === 1 ? "a list of 1 entry" : `a list of ${value.length} entries`;
  if (typeof value === "object" && value !== null) return "a mapping";
  const text = JSON.stringify(value) ?? String(value);
  return text.length > 62 ? `${text.slice(0, 60)}…"` : text;
}

/** Alternatives in words: `"a", "b" or "c"`. */
export function alternatives(values: readonly unknown[]): string {
  const texts = values.map((value) => (typeof value === "string" ? `"${value}"` : String(value)));
  const last = texts.pop() ?? "nothing";
  return texts.length === 0 ? last : `${texts.join(", ")} or ${last}`;
}
