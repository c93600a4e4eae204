import { currentFormat, type DocumentKind, documentKinds } from "../document/index.ts";
import { type SchemaNode, schemaNode } from "../schema/index.ts";
import { numberDefinitions, numberSchema } from "./written-number-schema.ts";

/**
 * The JSON Schema (2020-12) of one kind of document as people write it: numbers with units are text, or a mapping of value and
 * source. Editors complete and check with it; `readDocument` knows more (units, ranges, rules between keys).
 */
export function documentSchema(kindName: string): SchemaNode {
  const kind = documentKinds.find(({ kind }) => kind === kindName);
  if (kind === undefined)
    throw new RangeError(`there is no document of kind "${kindName}"; kinds are ${documentKinds.map((each) => each.kind).join(", ")}`);
  const kinds = new Set<string>();
  const root = asWritten(schemaNode(kind.schema), kinds);
  const provenance = { type: "string", description: "A word or a sentence on where the values of this document come from." } as const;
  return {
    ...root,
    title: `Wingseed ${kind.kind} document, ${kind.place}, format ${currentFormat(kind)}`,
    properties: { ...root.properties, provenance: root.properties?.provenance ?? provenance },
    $defs: { ...root.$defs, ...numberDefinitions(kinds) },
  };
}

/** File name of the schema of a kind of document. */
export function schemaFileName({ kind }: Pick<DocumentKind, "kind">): string {
  return `${kind}.schema.json`;
}

/** Every schema as the text of its file, by file name. */
export function schemaFiles(): ReadonlyMap<string, string> {
  return new Map(documentKinds.map((kind) => [schemaFileName(kind), `${JSON.stringify(documentSchema(kind.kind), null, 2)}\n`]));
}

/** Rewrites numbers to what stands in documents, and notes the kinds of quantity met. */
function asWritten(node: SchemaNode, kinds: Set<string>): SchemaNode {
  if ((node.type === "number" || node.type === "integer") && node.const === undefined) {
    if (node.quantity !== undefined) kinds.add(node.quantity);
    return numberSchema(node);
  }
  const within = (inner: SchemaNode) => asWritten(inner, kinds);
  const each = (nodes: Readonly<Record<string, SchemaNode>>) =>
    Object.fromEntries(Object.entries(nodes).map(([name, inner]) => [name, within(inner)]));
  const open = typeof node.additionalProperties === "object" ? within(node.additionalProperties) : false;
  const { reference: _, ...known } = node;
  return {
    ...known,
    ...(node.type === "object" && { additionalProperties: open }),
    ...(node.properties && { properties: each(node.properties) }),
    ...(typeof node.items === "object" && { items: within(node.items) }),
    ...(node.prefixItems && { prefixItems: node.prefixItems.map(within) }),
    ...(node.anyOf && { anyOf: node.anyOf.map(within) }),
    ...(node.oneOf && { oneOf: node.oneOf.map(within) }),
    ...(node.allOf && { allOf: node.allOf.map(within) }),
    ...(node.$defs && { $defs: each(node.$defs) }),
  };
}
