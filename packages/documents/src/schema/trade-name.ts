import type { SchemaNode } from "./schema-node.ts";

/** "Lift coefficient", "lift_coefficient" and "liftCoefficient" are one name. */
function plain(name: string): string {
  return name.replaceAll(/[\s_-]/gu, "").toLowerCase();
}

/**
 * The property that a key means by another name of the trade, as "kv" does a speed constant. The names stand in the schema
 * beside the property, as they do for the columns of a table. Undefined where no property, or more than one, has that name.
 */
export function propertyByTradeName(node: SchemaNode, key: string): string | undefined {
  const asked = plain(key);
  const named = Object.entries(node.properties ?? {}).filter(([, { columnNames = [] }]) => columnNames.some((one) => plain(one) === asked));
  const [only, ...others] = named;
  return others.length === 0 ? only?.[0] : undefined;
}

/** The listed word that a text means whatever its capitals, spaces and hyphens; undefined where it means none or several. */
export function listedByTradeName(listed: readonly unknown[], raw: unknown): string | undefined {
  if (typeof raw !== "string" || raw.length > 200) return undefined;
  const meant = listed.filter((one) => typeof one === "string").filter((one) => plain(one) === plain(raw));
  return meant.length === 1 ? meant[0] : undefined;
}
