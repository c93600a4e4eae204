import { nearName, type PathStep } from "../schema/index.ts";

export type ValuePlace =
  | { readonly kind: "place"; readonly path: readonly PathStep[] }
  | { readonly kind: "problem"; readonly message: string };

/**
 * Where `rotors.main.radius` stands in a document. Entries of a list go by their names, never by their place in it; only a
 * list whose entries have none, such as the points of a curve, is counted, from 0. The last key may be one that is not there yet.
 */
export function valuePlace(data: unknown, written: string): ValuePlace {
  const names = written
    .replace(/^\//u, "")
    .split(/[./]|\[(?=\d+\])|\]/u)
    .filter((name) => name !== undefined && name !== "");
  if (names.length === 0) return { kind: "problem", message: `"${written}" names no place in a document` };
  const path: PathStep[] = [];
  let here = data;
  for (const [index, name] of names.entries()) {
    const step = Array.isArray(here) ? entryOf(here, name) : keyOf(here, name, index === names.length - 1);
    if (typeof step === "object") return { kind: "problem", message: `${written}: ${step.message}` };
    path.push(step);
    here = Reflect.get(here as object, step);
  }
  return { kind: "place", path };
}

interface Missing {
  readonly message: string;
}

function keyOf(here: unknown, name: string, last: boolean): string | Missing {
  if (typeof here !== "object" || here === null) return { message: `there is nothing called "${name}" in a single value` };
  if (Object.hasOwn(here, name) || (last && name !== "__proto__")) return name;
  return { message: `there is no "${name}"${cure(name, Object.keys(here))}` };
}

function entryOf(list: readonly unknown[], name: string): number | Missing {
  const names = list.map(entryName);
  const found = names.indexOf(name);
  if (found >= 0) return found;
  const known = names.filter((one) => one !== undefined);
  if (known.length > 0) return { message: `there is no "${name}" in this list${cure(name, known)}` };
  const place = Number(name);
  if (/^\d+$/u.test(name) && place < list.length) return place;
  return { message: `"${name}" is no entry of this list of ${list.length}, counted from 0` };
}

/** What an entry goes by: its id or name; a wake by who makes it and who meets it, a row of a mixing matrix by its control. */
function entryName(entry: unknown): string | undefined {
  if (typeof entry !== "object" || entry === null) return undefined;
  const { id, name, from, on, control } = entry as Readonly<Record<string, unknown>>;
  const own = [id, name, typeof from === "string" && typeof on === "string" ? `${from}-on-${on}` : undefined, control];
  return own.find((one) => typeof one === "string");
}

function cure(name: string, known: readonly string[]): string {
  const near = nearName(name, known);
  return near === undefined ? `; there ${known.length === 1 ? "is" : "are"} ${known.join(", ")}` : `; did you mean "${near}"?`;
}
