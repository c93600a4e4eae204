import { readFile } from "node:fs/promises";
import { type ProjectChange, readInputText } from "@wingseed/documents";
import type { Analysis } from "@wingseed/engine";
import { sweep, withInput } from "@wingseed/runner";
import { Refused } from "./exit-status.ts";

export interface Given {
  /** `path=text`, in the order given. */
  readonly set: readonly string[];
  /** `path=text, text, …` */
  readonly sweep: readonly string[];
  /** File with inputs, `-` for standard input, or JSON itself. */
  readonly input?: string | undefined;
  /** Start from the example of the analysis. */
  readonly example?: boolean | undefined;
}

/** The cases of a command line: inputs of a file, then single values over it, then every combination of the swept ones. */
export async function askedCases(analysis: Analysis, given: Given): Promise<readonly unknown[]> {
  const base = given.input === undefined ? [given.example ? analysis.example : {}] : await casesOfFile(given.input);
  const complaints: string[] = [];
  const settings = given.set.map((text) => assignment(text, "--set"));
  const values = settings.map(({ path, text }) => ({ path, value: readText(analysis, path, text, complaints) }));
  const axes = given.sweep.map((text) => {
    const { path, text: list } = assignment(text, "--sweep");
    return [path, partsOf(list).map((part) => readText(analysis, path, part, complaints))] as const;
  });
  if (complaints.length > 0) throw new Refused(complaints.join("\n"));
  try {
    const set = base.map((inputs) => values.reduce((sofar, { path, value }) => withInput(sofar, path, value), inputs));
    return set.flatMap((inputs) => sweep(inputs, Object.fromEntries(axes)));
  } catch (error) {
    throw new Refused(error instanceof Error ? error.message : String(error));
  }
}

/** Settings of documents among those of inputs: `aircraft/first.yaml#rotors.main.radius=1.2 m`. */
export function sortedSettings(set: readonly string[]): { readonly inputs: readonly string[]; readonly changes: readonly ProjectChange[] } {
  const ofDocument = (text: string) => /^[^=#]+#/.test(text);
  const changes = set.filter(ofDocument).map((text) => {
    const { path, text: value } = assignment(text, "--set");
    const cut = path.indexOf("#");
    return { file: path.slice(0, cut).trim(), place: path.slice(cut + 1).trim(), text: value };
  });
  return { inputs: set.filter((text) => !ofDocument(text)), changes };
}

function assignment(text: string, option: string): { path: string; text: string } {
  const end = text.indexOf("=");
  if (end < 1) throw new Refused(`${option} wants a name and a value, as in ${option} inputs.altitude="300 m"; read "${text}".`);
  return { path: text.slice(0, end).trim(), text: text.slice(end + 1).trim() };
}

function readText(analysis: Analysis, path: string, text: string, complaints: string[]): unknown {
  const read = readInputText(analysis.inputs, path, text);
  if (read.kind === "value") return read.value;
  complaints.push(...read.problems.map(({ message }) => message));
  return undefined;
}

/** Cuts at commas that do not stand inside brackets, braces or quotes. */
export function partsOf(list: string): readonly string[] {
  const parts = [""];
  let depth = 0;
  let quote = "";
  for (const letter of list) {
    if (quote !== "") quote = letter === quote ? "" : quote;
    else if (letter === '"' || letter === "'") quote = letter;
    else if ("([{".includes(letter)) depth++;
    else if (")]}".includes(letter)) depth--;
    if (letter === "," && depth === 0 && quote === "") parts.push("");
    else parts[parts.length - 1] += letter;
  }
  return parts.map((part) => part.trim()).filter((part) => part !== "");
}

/** Inputs as JSON, from a file or as written: one set, a list of sets, `{ "inputs": … }`, or a result, whose cases are then asked again. */
async function casesOfFile(path: string): Promise<readonly unknown[]> {
  const isJson = /^\s*[{[]/.test(path);
  const text = isJson ? path : path === "-" ? await standardInput() : await readFile(path, "utf8").catch(() => null);
  if (text === null) throw new Refused(`There is no readable file ${path}.`);
  let content: unknown;
  try {
    content = JSON.parse(text);
  } catch (error) {
    throw new Refused(`${path} is not JSON: ${error instanceof Error ? error.message : String(error)}`);
  }
  if (Array.isArray(content)) return content;
  if (typeof content !== "object" || content === null) throw new Refused(`${path} must hold inputs as an object or a list of objects.`);
  const { cases, inputs } = content as { cases?: unknown; inputs?: unknown };
  if (Array.isArray(cases)) return cases.map((one: { inputs?: unknown } | null) => one?.inputs ?? one);
  return [typeof inputs === "object" && inputs !== null ? inputs : content];
}

async function standardInput(): Promise<string> {
  const parts: Buffer[] = [];
  for await (const part of process.stdin) parts.push(part as Buffer);
  return Buffer.concat(parts).toString("utf8");
}
