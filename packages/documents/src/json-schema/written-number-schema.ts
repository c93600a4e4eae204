import type { QuantityKind } from "@wingseed/engine";
import { boundsInWords, type SchemaNode } from "../schema/index.ts";
import { isQuantityKind, unitsOfKind } from "../units/index.ts";

/** How a number of a definition may be written in a document; the form itself stands once under `$defs`. */
export function numberSchema(node: SchemaNode): SchemaNode {
  const { description, default: standard, quantity } = node;
  const shared = {
    ...(description === undefined ? {} : { description }),
    ...(standard === undefined ? {} : { default: standard }),
  };
  if (!isQuantityKind(quantity)) return { ...shared, anyOf: [plainNumber(node), { $ref: definition("number") }] };
  const { noun, usual } = unitsOfKind(quantity);
  const range = boundsInWords(node);
  const units = quantity === "dimensionless" ? "" : ` in ${usual.join(", ")}`;
  const meaning = `${description ?? ""} ${noun[0]?.toUpperCase()}${noun.slice(1)}${units}${range === "" ? "" : `; ${range}`}.`.trim();
  return { ...shared, description: meaning, $ref: definition(quantity) };
}

/** The forms that `numberSchema` refers to, for the kinds of quantity that a schema uses. */
export function numberDefinitions(kinds: Iterable<string>): Readonly<Record<string, SchemaNode>> {
  const found: [string, SchemaNode][] = [["written-number", sourced({ type: "number" })]];
  for (const kind of [...kinds].sort()) if (isQuantityKind(kind)) found.push([`written-${kind}`, writtenQuantity(kind)]);
  return Object.fromEntries(found);
}

const number = "[+\\-−]?(?:\\d+(?:\\.\\d*)?|\\.\\d+)(?:[eE][+-]?\\d+)?";
const spread = "(?:±|\\+-|\\+/-)\\s*[\\d.].*";
const distribution = "(?:uniform|triangular)\\s*\\(.*\\)";
const withUnit = `^\\s*(?:${number}\\s*[A-Za-zΩµμ°].*|${number}\\s*${spread}|\\(\\s*${number}\\s*${spread}\\).*|${distribution})\\s*$`;
const withoutUnit = `^\\s*(?:${number}\\s*%?\\s*(?:${spread})?|${distribution})\\s*$`;

function writtenQuantity(kind: QuantityKind): SchemaNode {
  const { example } = unitsOfKind(kind);
  const dimensionless = kind === "dimensionless";
  const text: SchemaNode = { type: "string", pattern: dimensionless ? withoutUnit : withUnit, examples: [example, `${example} ± 5 %`] };
  const forms: readonly SchemaNode[] = dimensionless ? [{ type: "number" }, text] : [text];
  return { anyOf: [...forms, sourced(forms.length === 1 ? text : { anyOf: forms })] };
}

function plainNumber({ type = "number", minimum, maximum, exclusiveMinimum, exclusiveMaximum }: SchemaNode): SchemaNode {
  return {
    type,
    ...(minimum === undefined || minimum === Number.MIN_SAFE_INTEGER ? {} : { minimum }),
    ...(exclusiveMinimum === undefined ? {} : { exclusiveMinimum }),
    ...(maximum === undefined || maximum === Number.MAX_SAFE_INTEGER ? {} : { maximum }),
    ...(exclusiveMaximum === undefined ? {} : { exclusiveMaximum }),
  };
}

function sourced(value: SchemaNode): SchemaNode {
  const source = { type: "string", description: "Where this value comes from." } as const;
  return { type: "object", properties: { value, source }, required: ["value"], additionalProperties: false };
}

function definition(name: string): string {
  return `#/$defs/written-${name}`;
}
