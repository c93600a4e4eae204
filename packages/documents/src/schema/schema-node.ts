import { z } from "zod";

/** The part of JSON Schema 2020-12 that our definitions come out as, with the meanings that the engine adds. */
export interface SchemaNode {
  readonly type?: "object" | "array" | "string" | "number" | "integer" | "boolean" | "null";
  readonly const?: unknown;
  readonly enum?: readonly unknown[];
  readonly default?: unknown;
  readonly title?: string;
  readonly description?: string;
  readonly examples?: readonly unknown[];
  readonly properties?: Readonly<Record<string, SchemaNode>>;
  readonly required?: readonly string[];
  readonly additionalProperties?: boolean | SchemaNode;
  readonly propertyNames?: SchemaNode;
  readonly items?: boolean | SchemaNode;
  readonly prefixItems?: readonly SchemaNode[];
  readonly anyOf?: readonly SchemaNode[];
  readonly oneOf?: readonly SchemaNode[];
  readonly allOf?: readonly SchemaNode[];
  readonly minimum?: number;
  readonly maximum?: number;
  readonly exclusiveMinimum?: number;
  readonly exclusiveMaximum?: number;
  readonly minItems?: number;
  readonly maxItems?: number;
  readonly minLength?: number;
  readonly maxLength?: number;
  readonly pattern?: string;
  readonly $ref?: string;
  readonly $defs?: Readonly<Record<string, SchemaNode>>;
  /** Quantity kind of a number. */
  readonly quantity?: string;
  /** Kind of project file that a text names by its path. */
  readonly reference?: string;
  /** Further names that the trade has for a property. */
  readonly columnNames?: readonly string[];
}

const generated = new WeakMap<z.ZodType, SchemaNode>();

/** The JSON Schema of what may be written for a definition, made once. */
export function schemaNode(definition: z.ZodType): SchemaNode {
  let node = generated.get(definition);
  if (node === undefined) {
    node = z.toJSONSchema(definition, { io: "input", unrepresentable: "any" }) as SchemaNode;
    generated.set(definition, node);
  }
  return node;
}

/** Follows references and folds `allOf` into the node itself. */
export function resolved(node: SchemaNode, root: SchemaNode): SchemaNode {
  let current = node;
  for (let step = 0; current.$ref !== undefined && step < 32; step++) {
    const { $ref, ...beside } = current;
    current = { ...referenced($ref, root), ...beside };
  }
  return current.allOf === undefined ? current : folded(current, root);
}

function referenced(reference: string, root: SchemaNode): SchemaNode {
  if (reference === "#") return root;
  const name = /^#\/\$defs\/(.*)$/u.exec(reference)?.[1];
  return (name === undefined ? undefined : root.$defs?.[name]) ?? {};
}

function folded({ allOf = [], ...own }: SchemaNode, root: SchemaNode): SchemaNode {
  let whole: SchemaNode = own;
  for (const member of allOf) {
    const part = resolved(member, root);
    whole = {
      ...part,
      ...whole,
      properties: { ...part.properties, ...whole.properties },
      required: [...(part.required ?? []), ...(whole.required ?? [])],
    };
  }
  return whole;
}
