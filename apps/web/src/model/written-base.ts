import type { Drafts } from "./inputs.ts";

/**
 * Values that came as a whole, from a file or a pasted table, stand among the drafts as JSON under their path and this sign;
 * what is typed into single fields lies over them.
 */
export const wholeSign = "=";

/** Whole inputs from a file: their name, and which of several cases stands in the form. */
export const fileName = "=name";
export const fileCase = "=case";

/** The values that stand in a form before single fields are typed into. */
export function writtenBase(example: unknown, drafts: Drafts): unknown {
  const root = loadedCases(drafts);
  const base = root ? root.cases[root.index] : example;
  return Object.entries(drafts)
    .filter(([key]) => key.endsWith(wholeSign) && key !== wholeSign)
    .sort(([a], [b]) => a.length - b.length)
    .reduce((sofar, [key, text]) => {
      const value = parsed(text);
      return value === undefined ? sofar : withValue(sofar, key.slice(0, -1).split("."), value);
    }, base);
}

export interface LoadedCases {
  readonly name: string;
  readonly cases: readonly unknown[];
  readonly index: number;
}

/** The inputs that a file brought, undefined when none did. */
export function loadedCases(drafts: Drafts): LoadedCases | undefined {
  const value = parsed(drafts[wholeSign]);
  if (value === undefined) return undefined;
  const cases = Array.isArray(value) ? value : [value];
  const asked = Number(drafts[fileCase] ?? 1) - 1;
  const index = Number.isInteger(asked) && asked >= 0 && asked < cases.length ? asked : 0;
  return { name: drafts[fileName] ?? "a file", cases, index };
}

function parsed(text: string | undefined): unknown {
  if (text === undefined) return undefined;
  try {
    return JSON.parse(text) as unknown;
  } catch {
    return undefined;
  }
}

function withValue(base: unknown, [name, ...rest]: readonly string[], value: unknown): unknown {
  if (name === undefined) return value;
  if (Array.isArray(base)) {
    const items: readonly unknown[] = base;
    return items.map((item, index) => (String(index) === name ? withValue(item, rest, value) : item));
  }
  const object = typeof base === "object" && base !== null ? (base as Record<string, unknown>) : {};
  return { ...object, [name]: withValue(object[name], rest, value) };
}
