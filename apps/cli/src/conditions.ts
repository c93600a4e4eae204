import type { AnalysisResult, QuantityKind } from "@wingseed/engine";
import { formatReading } from "@wingseed/reports";
import type { JsonSchema } from "@wingseed/runner";

/** What was held fixed, in words: every input that stands for a condition and is the same in all cases. */
export function conditionsInWords(schema: JsonSchema, result: AnalysisResult): string {
  const answered = result.cases.filter(({ problem }) => problem?.kind !== "invalid-inputs").map(({ inputs }) => inputs);
  const [first, ...others] = answered.map((inputs) => conditionsOf(schema, inputs));
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

function conditionsOf(schema: JsonSchema, inputs: unknown): readonly string[] {
  const properties = propertiesOf(schema as Node);
  const given = (typeof inputs === "object" && inputs !== null ? inputs : {}) as Readonly<Record<string, unknown>>;
  return Object.entries(properties).flatMap(([name, node]) => {
    const value = given[name];
    if (value === undefined || value === null) return [];
    const text = node.role?.startsWith("condition.") ? valueInWords(node, value) : "";
    return text === "" ? [] : [`${node.label ?? wordsOf(name)} ${text}`];
  });
}

function propertiesOf(node: Node): Readonly<Record<string, Node>> {
  const parts = [...(node.anyOf ?? []), ...(node.oneOf ?? [])].map(propertiesOf);
  return Object.assign({}, ...parts, node.properties ?? {}) as Readonly<Record<string, Node>>;
}

function valueInWords(node: Node, value: unknown): string {
  if (typeof value === "number") return node.quantity ? formatReading(value, node.quantity as QuantityKind).text : String(value);
  if (typeof value === "string") return value;
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (Array.isArray(value) || typeof value !== "object" || value === null) return "";
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
