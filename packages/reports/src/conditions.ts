import type { AnalysisResult, QuantityKind } from "@wingseed/engine";
import { formatReading } from "./format/index.ts";

/**
 * What was held fixed, in words: every input that stands for a condition and is the same in all cases, whether it was
 * given or chosen in the run.
 * @param schema JSON Schema of the inputs.
 */
export function conditionsInWords(schema: unknown, result: AnalysisResult): string {
  const answered = result.cases.filter(({ problem }) => problem?.kind !== "invalid-inputs").map(({ inputs }) => inputs);
  const [first, ...others] = answered.map((inputs) => conditionsOf(schema as Node, withChosen(inputs, result)));
  if (!first) return "";
  return first.filter((condition) => others.every((list) => list.includes(condition))).join(", ");
}

interface Node {
  readonly role?: string;
  readonly label?: string;
  readonly quantity?: string;
  readonly properties?: Readonly<Record<string, Node>>;
  readonly anyOf?: readonly Node[];
  readonly oneOf?: readonly Node[];
}

/** The inputs with the values that the run chose where none was given. */
function withChosen(inputs: unknown, { provenance }: AnalysisResult): unknown {
  return provenance.defaults.reduce((whole, { path, value }) => {
    const names = path.replace(/^\//, "").split(/[/.]/);
    return path.includes("#") ? whole : filled(whole, names, value);
  }, inputs);
}

function filled(whole: unknown, [name, ...rest]: readonly string[], value: unknown): unknown {
  if (name === undefined) return whole ?? value;
  const given = (typeof whole === "object" && whole !== null ? whole : {}) as Readonly<Record<string, unknown>>;
  return { ...given, [name]: filled(given[name], rest, value) };
}

function conditionsOf(schema: Node, inputs: unknown): readonly string[] {
  const given = (typeof inputs === "object" && inputs !== null ? inputs : {}) as Readonly<Record<string, unknown>>;
  return Object.entries(propertiesOf(schema)).flatMap(([name, node]) => {
    const value = given[name];
    if (value === undefined || value === null) return [];
    // A document says by its path what it is.
    if (node.role !== undefined && documentRoles.includes(node.role)) return typeof value === "string" ? [value] : [];
    if (node.role === undefined) return typeof value === "object" && !Array.isArray(value) ? conditionsOf(node, value) : [];
    const text = node.role.startsWith("condition.") ? valueInWords(node, value) : "";
    return text === "" ? [] : [`${node.label ?? wordsOf(name)} ${text}${datumOf(name, node)}`];
  });
}

/** A height says what it is measured from; the pressure altitude says so by its name. */
function datumOf(name: string, { role }: Node): string {
  return role === "condition.altitude" && name === "altitude" ? " above sea" : "";
}

const documentRoles = ["aircraft", "mission"];

function propertiesOf(node: Node): Readonly<Record<string, Node>> {
  const parts = [...(node.anyOf ?? []), ...(node.oneOf ?? [])].map(propertiesOf);
  return Object.assign({}, ...parts, node.properties ?? {}) as Readonly<Record<string, Node>>;
}

function valueInWords(node: Node, value: unknown): string {
  if (typeof value === "number") return node.quantity ? formatReading(value, node.quantity as QuantityKind).text : String(value);
  if (typeof value === "string") return value;
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (Array.isArray(value))
    return value.every((item) => typeof item === "number") ? value.map((item) => valueInWords(node, item)).join(", ") : "";
  if (typeof value !== "object" || value === null) return "";
  const properties = propertiesOf(node);
  return Object.entries(value)
    .map(([name, item]) => {
      const text = valueInWords(properties[name] ?? {}, item);
      return text === "" ? "" : `${properties[name]?.label ?? wordsOf(name)} ${text}`;
    })
    .filter((text) => text !== "")
    .join(" ");
}

/** "temperatureOffset" → "temperature offset". */
function wordsOf(name: string): string {
  return name.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
}
