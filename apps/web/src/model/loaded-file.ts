import type { AnalysisEntry } from "./catalogue.ts";
import type { Drafts } from "./inputs.ts";
import { type Field, fieldsOf, type RowsField } from "./schema.ts";
import { type ColumnHead, isTableText, knownColumns, matchedRows, readTableText } from "./table-text.ts";
import { fileName, wholeSign } from "./written-base.ts";

export type Loaded = { readonly drafts: Drafts; readonly refused?: never } | { readonly refused: string; readonly drafts?: never };

/** Longest text that an address may hold [characters]. */
export const longestText = 400_000;

/**
 * What a file asks of an analysis: inputs as JSON (one set, a list, `{ "inputs": … }` or a result), or a table whose columns
 * are those of one of its lists, which then takes the place of that list beside what was typed before.
 */
export function loadedFile(name: string, text: string, analysis: AnalysisEntry, before: Drafts): Loaded {
  if (text.length > longestText)
    return { refused: `${name} is too long for a form. Put it into the project folder and give its path where a file is taken.` };
  return /^\s*[[{]/.test(text) && !isTableText(text) ? loadedInputs(name, text) : loadedTable(name, text, analysis, before);
}

function loadedInputs(name: string, text: string): Loaded {
  let content: unknown;
  try {
    content = JSON.parse(text);
  } catch (error) {
    return { refused: `${name} is no JSON: ${error instanceof Error ? error.message : String(error)}.` };
  }
  const cases = casesIn(content);
  if (cases.length === 0 || cases.some((one) => typeof one !== "object" || one === null || Array.isArray(one)))
    return { refused: `${name} must hold inputs as an object, or a list of objects.` };
  return { drafts: { [wholeSign]: JSON.stringify(cases.length === 1 ? cases[0] : cases), [fileName]: name } };
}

function casesIn(content: unknown): readonly unknown[] {
  if (Array.isArray(content)) return content;
  if (typeof content !== "object" || content === null) return [];
  const { cases, inputs } = content as { readonly cases?: unknown; readonly inputs?: unknown };
  if (Array.isArray(cases)) return cases.map((one: { readonly inputs?: unknown } | null) => one?.inputs ?? one);
  return [typeof inputs === "object" && inputs !== null ? inputs : content];
}

/** A list of rows and the choices by which it comes into the form. */
interface RowsPlace {
  readonly field: RowsField;
  readonly choices: Drafts;
}

function loadedTable(name: string, text: string, analysis: AnalysisEntry, before: Drafts): Loaded {
  const table = readTableText(text);
  if (table.slip !== undefined) return { refused: `${name}: ${table.slip}` };
  if (table.head === undefined) return { refused: `${name}: the first line must name the columns, as in "angle [deg], …".` };
  const places = fieldsOf(analysis.inputs).flatMap((field) => rowsPlaces(field, {}));
  for (const { field, choices } of places) {
    const matched = matchedRows(field, table.head, table.rows);
    if (matched.slip === undefined) return { drafts: { ...before, ...rowsDrafts(field, matched.rows, before), ...choices } };
  }
  const nearest = nearestPlace(places, table.head);
  if (nearest) return { refused: `${name} was taken for ${nearest.field.label.toLowerCase()}: ${nearest.slip}.` };
  const kept = places.map(({ field }) => `${field.label} (${field.columns.map((column) => column.path).join(", ")})`);
  if (kept.length === 0) return { refused: `${name}: nothing here takes a table.` };
  return { refused: `${name} has the columns ${table.head.map((one) => one.name).join(", ")}; taken are: ${kept.join("; ")}.` };
}

/** The list that knows most of the columns, at least half of them, and why it does not take the table. */
function nearestPlace(places: readonly RowsPlace[], head: readonly ColumnHead[]): { field: RowsField; slip: string } | undefined {
  const ranked = places.map(({ field }) => ({ field, known: knownColumns(field, head) })).toSorted((a, b) => b.known - a.known);
  const [best, next] = ranked;
  if (!best || best.known * 2 < head.length || best.known === next?.known) return undefined;
  const { slip } = matchedRows(best.field, head, []);
  return slip === undefined ? undefined : { field: best.field, slip };
}

function rowsPlaces(field: Field, choices: Drafts): readonly RowsPlace[] {
  if (field.kind === "rows") return [{ field, choices }];
  if (field.kind === "group") return field.fields.flatMap((child) => rowsPlaces(child, choices));
  if (field.kind !== "variants") return [];
  return field.variants.flatMap((variant) => rowsPlaces(variant.field, { ...choices, [`${field.path}~`]: variant.name }));
}

/** A list written anew: its rows as a whole, and nothing of what was typed into single cells. */
export function rowsDrafts(field: RowsField, rows: readonly unknown[], before: Drafts): Record<string, string | undefined> & Drafts {
  const cells = Object.keys(before).filter((key) => key.startsWith(`${field.path}.`) || key === `${field.path}#`);
  const removed = Object.fromEntries(cells.map((key) => [key, undefined]));
  return { ...removed, [`${field.path}${wholeSign}`]: JSON.stringify(rows) } as Record<string, string | undefined> & Drafts;
}
