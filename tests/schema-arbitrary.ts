import { z } from "@wingseed/engine";
import fc from "fast-check";

/** What is used of the JSON Schema that our definitions come out as. */
interface Node {
  readonly type?: string;
  readonly const?: unknown;
  readonly enum?: readonly unknown[];
  readonly properties?: Readonly<Record<string, Node>>;
  readonly required?: readonly string[];
  readonly items?: Node;
  readonly anyOf?: readonly Node[];
  readonly oneOf?: readonly Node[];
  readonly $ref?: string;
  readonly $defs?: Readonly<Record<string, Node>>;
  readonly minimum?: number;
  readonly maximum?: number;
  readonly exclusiveMinimum?: number;
  readonly exclusiveMaximum?: number;
  readonly minItems?: number;
  readonly maxItems?: number;
  readonly additionalProperties?: boolean | Node;
  /** Sets of properties that make a question together. */
  readonly givens?: readonly { readonly given: readonly string[] }[];
  /** Properties of which one stands for the other. */
  readonly alternatives?: readonly (readonly string[])[];
}

export interface SchemaArbitraryOptions {
  /** Generators that stand in for those of the schema, by dotted path (`rotor.blades`; list items as `stations.*`). */
  readonly overrides?: Readonly<Record<string, fc.Arbitrary<unknown>>>;
  /** Generators that are used three times out of four, the schema's own for the rest, by the same paths. */
  readonly preferred?: Readonly<Record<string, fc.Arbitrary<unknown>>>;
  /** Longest list. @defaultValue 5 */
  readonly longestList?: number;
}

/**
 * Inputs that a schema allows, extremes included: every property present or absent as it may be, numbers at their bounds, next
 * to them, at zero, and between; of a table of givens mostly one whole set, sometimes any mixture. Rules that only the
 * definition knows may still refuse what comes out, and should.
 */
export function schemaArbitrary(schema: z.ZodType, options: SchemaArbitraryOptions = {}): fc.Arbitrary<unknown> {
  const root = z.toJSONSchema(schema, { io: "input", unrepresentable: "any" }) as Node;
  return arbitraryOf(root, "", {
    root,
    overrides: options.overrides ?? {},
    preferred: options.preferred ?? {},
    longestList: options.longestList ?? 5,
  });
}

interface Making {
  readonly root: Node;
  readonly overrides: Readonly<Record<string, fc.Arbitrary<unknown>>>;
  readonly preferred: Readonly<Record<string, fc.Arbitrary<unknown>>>;
  readonly longestList: number;
}

function arbitraryOf(written: Node, path: string, making: Making): fc.Arbitrary<unknown> {
  const override = making.overrides[path];
  if (override) return override;
  const preferred = making.preferred[path];
  const own = schemaOwn(written, path, making);
  return preferred ? fc.oneof({ arbitrary: preferred, weight: 3 }, { arbitrary: own, weight: 1 }) : own;
}

function schemaOwn(written: Node, path: string, making: Making): fc.Arbitrary<unknown> {
  const node = resolved(written, making.root);
  const branches = node.anyOf ?? node.oneOf;
  if (branches) return fc.oneof(...branches.map((branch) => arbitraryOf(branch, path, making)));
  if (node.const !== undefined) return fc.constant(node.const);
  if (node.enum) return fc.constantFrom(...node.enum);
  switch (node.type) {
    case "number":
      return numberWithin(node);
    case "integer":
      return fc.integer({ min: Math.max(node.minimum ?? -20, -1e6), max: Math.min(node.maximum ?? 20, 1e6) });
    case "boolean":
      return fc.boolean();
    case "string":
      return fc.string({ minLength: 1, maxLength: 12 });
    case "null":
      return fc.constant(null);
    case "array":
      return fc.array(arbitraryOf(node.items ?? {}, path === "" ? "*" : `${path}.*`, making), {
        minLength: node.minItems ?? 0,
        maxLength: Math.max(node.minItems ?? 0, Math.min(node.maxItems ?? making.longestList, making.longestList)),
      });
    case "object":
      return objectOf(node, path, making);
    default:
      return fc.constantFrom(null, 0, "text");
  }
}

function objectOf(node: Node, path: string, making: Making): fc.Arbitrary<unknown> {
  const properties = Object.entries(node.properties ?? {}).map(([name, child]): [string, fc.Arbitrary<unknown>] => [
    name,
    arbitraryOf(child, path === "" ? name : `${path}.${name}`, making),
  ]);
  const required = (node.required ?? []).filter((name) => properties.some(([known]) => known === name));
  const loose = fc.record(Object.fromEntries(properties), { requiredKeys: required });
  const { givens: sets = [{ given: [] }], alternatives = [] } = node;
  if (!node.givens && !node.alternatives) return loose;
  const spoken = new Set(sets.flatMap(({ given }) => given));
  const dropped = fc.tuple(...alternatives.map((names) => fc.constantFrom(...names).map((kept) => names.filter((name) => name !== kept))));
  const whole = fc
    .tuple(fc.constantFrom(...sets), dropped)
    .chain(([{ given }, gone]) =>
      fc.record(
        Object.fromEntries(properties.filter(([name]) => (given.includes(name) || !spoken.has(name)) && !gone.flat().includes(name))),
        { requiredKeys: [...required, ...given] },
      ),
    );
  return fc.oneof({ arbitrary: whole, weight: 9 }, { arbitrary: loose, weight: 1 });
}

function numberWithin(node: Node): fc.Arbitrary<number> {
  const low = node.minimum ?? node.exclusiveMinimum ?? -1e6;
  const high = node.maximum ?? node.exclusiveMaximum ?? 1e6;
  const lowest = node.exclusiveMinimum === undefined ? low : above(low);
  const highest = node.exclusiveMaximum === undefined ? high : -above(-high);
  const even = fc.integer({ min: 0, max: 1000 }).map((step) => lowest + ((highest - lowest) * step) / 1000);
  const special = [lowest, highest, above(lowest), -above(-highest), 0, 5e-324, 1e-9, 1, -1].filter(
    (value) => value >= lowest && value <= highest,
  );
  return fc.oneof({ arbitrary: even, weight: 3 }, { arbitrary: fc.constantFrom(...special), weight: 1 });
}

/** A little more than a number: next to a bound, not on it. */
function above(value: number): number {
  return value + Math.max(Math.abs(value), 1) * 1e-9;
}

function resolved(node: Node, root: Node): Node {
  const name = /^#\/\$defs\/(.*)$/u.exec(node.$ref ?? "")?.[1];
  return name === undefined ? node : resolved(root.$defs?.[name] ?? {}, root);
}
