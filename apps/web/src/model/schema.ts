import type { QuantityKind } from "@wingseed/engine";

/** The part of JSON Schema that the forms read. */
export interface JsonSchema {
  readonly type?: string | readonly string[];
  readonly properties?: Readonly<Record<string, JsonSchema>>;
  readonly required?: readonly string[];
  readonly items?: JsonSchema;
  readonly enum?: readonly unknown[];
  readonly const?: unknown;
  readonly default?: unknown;
  readonly anyOf?: readonly JsonSchema[];
  readonly oneOf?: readonly JsonSchema[];
  readonly $ref?: string;
  readonly $defs?: Readonly<Record<string, JsonSchema>>;
  readonly title?: string;
  readonly description?: string;
  readonly label?: string;
  readonly quantity?: QuantityKind;
  readonly role?: string;
  /** Kind of document whose path this is. */
  readonly reference?: string;
  /** Other heads under which a column of a table may stand. */
  readonly columnNames?: readonly string[];
  readonly minimum?: number;
  readonly exclusiveMinimum?: number;
  readonly maximum?: number;
  readonly exclusiveMaximum?: number;
}

interface Base {
  /** Dotted path from the inputs' root. */
  readonly path: string;
  readonly label: string;
  readonly description?: string;
  readonly required: boolean;
  readonly standard?: unknown;
  readonly role?: string;
  readonly reference?: string;
  readonly otherNames?: readonly string[];
}

export interface QuantityField extends Base {
  readonly kind: "quantity";
  readonly quantity: QuantityKind;
  readonly minimum?: number;
  readonly maximum?: number;
  /** True for counts. */
  readonly whole?: boolean;
}

export interface ChoiceField extends Base {
  readonly kind: "choice";
  readonly options: readonly (string | number)[];
}

export interface ToggleField extends Base {
  readonly kind: "toggle";
}

export interface TextField extends Base {
  readonly kind: "text";
}

/** Not shown: the word by which a variant is told from the others. */
export interface ConstantField extends Base {
  readonly kind: "constant";
  readonly value: unknown;
}

/** Several values in one line of text, separated by commas. */
export interface ListField extends Base {
  readonly kind: "list";
  readonly quantity?: QuantityKind;
}

export interface GroupField extends Base {
  readonly kind: "group";
  readonly fields: readonly Field[];
}

/** A list of groups. The paths of `columns` are relative to a row. */
export interface RowsField extends Base {
  readonly kind: "rows";
  readonly columns: readonly Field[];
}

export interface VariantsField extends Base {
  readonly kind: "variants";
  readonly variants: readonly { readonly name: string; readonly field: Field }[];
}

export type Field =
  | QuantityField
  | ChoiceField
  | ToggleField
  | TextField
  | ConstantField
  | ListField
  | GroupField
  | RowsField
  | VariantsField;

/** The fields of a form, in the order of the schema. */
export function fieldsOf(schema: JsonSchema): readonly Field[] {
  const field = fieldOf(schema, "", true, schema);
  return field.kind === "group" ? field.fields : [field];
}

function fieldOf(written: JsonSchema, path: string, required: boolean, root: JsonSchema): Field {
  const schema = resolved(written, root);
  const base = baseOf(schema, path, required);
  const variants = schema.anyOf ?? schema.oneOf;
  if (variants) return variantsField(base, variants, root);
  if (schema.const !== undefined) return { ...base, kind: "constant", value: schema.const };
  if (schema.enum)
    return { ...base, kind: "choice", options: schema.enum.filter((option) => typeof option === "string" || typeof option === "number") };
  if (schema.type === "boolean") return { ...base, kind: "toggle" };
  if (schema.type === "number" || schema.type === "integer") return quantityField(base, schema);
  if (schema.type === "array") return arrayField(base, schema, root);
  if (schema.type === "object" && schema.properties) return { ...base, kind: "group", fields: properties(schema, path, root) };
  if (schema.quantity) return quantityField(base, schema);
  return { ...base, kind: "text" };
}

function properties(schema: JsonSchema, path: string, root: JsonSchema): readonly Field[] {
  return Object.entries(schema.properties ?? {}).map(([name, child]) =>
    fieldOf(child, path ? `${path}.${name}` : name, (schema.required ?? []).includes(name), root),
  );
}

function quantityField(base: Base, schema: JsonSchema): QuantityField {
  const minimum = schema.minimum ?? schema.exclusiveMinimum;
  const maximum = schema.maximum ?? schema.exclusiveMaximum;
  return {
    ...base,
    kind: "quantity",
    quantity: schema.quantity ?? "dimensionless",
    ...(schema.type === "integer" ? { whole: true } : {}),
    ...(minimum === undefined || minimum <= -Number.MAX_SAFE_INTEGER ? {} : { minimum }),
    ...(maximum === undefined || maximum >= Number.MAX_SAFE_INTEGER ? {} : { maximum }),
  };
}

function arrayField(base: Base, schema: JsonSchema, root: JsonSchema): Field {
  const item = resolved(schema.items ?? {}, root);
  if (item.type === "object") return { ...base, kind: "rows", columns: properties(item, "", root) };
  const measured =
    item.quantity ?? (item.anyOf ?? item.oneOf ?? []).map((one) => resolved(one, root).quantity).find((kind) => kind !== undefined);
  const quantity = measured ?? (item.type === "number" || item.type === "integer" ? "dimensionless" : undefined);
  return { ...base, kind: "list", ...(quantity ? { quantity } : {}) };
}

function variantsField(base: Base, written: readonly JsonSchema[], root: JsonSchema): Field {
  const schemas = alternatives(written, root);
  const measured = schemas.find((one) => one.quantity && one.type === "number");
  if (measured && schemas.every((one) => one === measured || (one.type === "string" && !one.enum && one.const === undefined))) {
    return quantityField(base, measured);
  }
  const words = schemas.flatMap((one) => (typeof one.const === "string" ? [one.const] : []));
  if (words.length === schemas.length && words.length > 0) return { ...base, kind: "choice", options: words };
  const variants = schemas.map((one) => ({ name: variantName(one), field: fieldOf(one, base.path, true, root) }));
  const only = variants.length === 1 ? variants[0] : undefined;
  return only ? { ...only.field, ...base } : { ...base, kind: "variants", variants };
}

/** The ways in which a value may be given; a way that is itself a choice of ways opens into those. */
function alternatives(written: readonly JsonSchema[], root: JsonSchema): readonly JsonSchema[] {
  return written.flatMap((one) => {
    const schema = resolved(one, root);
    const inner = schema.anyOf ?? schema.oneOf;
    if (inner && !schema.quantity) return alternatives(inner, root);
    return schema.type === "null" ? [] : [schema];
  });
}

function variantName(schema: JsonSchema): string {
  const discriminator = Object.values(schema.properties ?? {}).find((child) => typeof child.const === "string");
  if (discriminator) return words(String(discriminator.const));
  if (schema.label ?? schema.title) return schema.label ?? schema.title ?? "";
  if (typeof schema.const === "string") return words(schema.const);
  if (schema.type === "array") return "list";
  if (schema.type === "object")
    return (
      Object.keys(schema.properties ?? {})
        .slice(0, 3)
        .map(words)
        .join(", ") || "details"
    );
  return schema.type === "number" ? "one value" : "name";
}

function resolved(schema: JsonSchema, root: JsonSchema): JsonSchema {
  const name = schema.$ref?.replace(/^#\/(?:\$defs|definitions)\//, "");
  const target = name === undefined ? undefined : root.$defs?.[name];
  return target ? { ...resolved(target, root), ...without$ref(schema) } : schema;
}

function without$ref({ $ref: _ref, ...rest }: JsonSchema): JsonSchema {
  return rest;
}

function baseOf(schema: JsonSchema, path: string, required: boolean): Base {
  return {
    path,
    label: schema.label ?? sentenceCase(words(path.split(".").at(-1) ?? path)),
    required: required && schema.default === undefined,
    ...(schema.description ? { description: schema.description } : {}),
    ...(schema.default === undefined ? {} : { standard: schema.default }),
    ...(schema.role ? { role: schema.role } : {}),
    ...(schema.reference ? { reference: schema.reference } : {}),
    ...(schema.columnNames ? { otherNames: schema.columnNames } : {}),
  };
}

/** `outsideAirTemperature` and `clutch-open` as words. */
export function words(name: string): string {
  return name
    .replace(/([a-z0-9])([A-Z])/g, "$1 $2")
    .replace(/[-_]/g, " ")
    .toLowerCase();
}

export function sentenceCase(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
