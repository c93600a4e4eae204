import { createHash } from "node:crypto";
import type { AnalysisResult } from "@wingseed/engine";
import type { FigureOrigin } from "./blocks.ts";

/** Where a figure of one case comes from and the command that makes it again. */
export function figureOrigin(result: AnalysisResult, caseIndex: number, figure: string): FigureOrigin {
  const inputs = result.cases[caseIndex]?.inputs;
  const given = givenInputs(inputs, result);
  // Numbers as JSON, where a plain one is SI; as a setting each would need a unit.
  const numbers = given.filter(([, value]) => typeof value !== "string");
  const words = given.filter(([, value]) => typeof value === "string");
  const asked = [
    ...(numbers.length === 0 ? [] : [`--input ${shellWord(JSON.stringify(nested(numbers)))}`]),
    ...words.map(([path, value]) => `--set ${shellWord(`inputs.${path}=${value}`)}`),
  ];
  return {
    analysis: result.analysis,
    figure,
    inputs: given.length === 0 ? "all inputs as defaulted" : given.map(([path, value]) => `${path} ${inWords(value)}`).join(", "),
    hash: caseHash(result, inputs),
    command: ["wingseed run", result.analysis, ...asked, "--format svg --figure", figure].join(" "),
  };
}

/** Twelve hexadecimal digits over the analysis, its code, its inputs and its documents. */
export function caseHash(result: AnalysisResult, inputs: unknown): string {
  const { registryHash, documents } = result.provenance;
  const text = canonical({ analysis: result.analysis, registryHash, inputs, documents });
  return createHash("sha256").update(text).digest("hex").slice(0, 12);
}

/** Inputs as dotted paths, those that were filled in by the program left out. */
function givenInputs(inputs: unknown, result: AnalysisResult): readonly (readonly [string, unknown])[] {
  const filled = result.provenance.defaults.map((each) => each.path.replace(/^\//, "").replaceAll("/", "."));
  return leaves(inputs, "").filter(([path]) => !filled.some((known) => path === known || path.startsWith(`${known}.`)));
}

function leaves(value: unknown, path: string): readonly (readonly [string, unknown])[] {
  if (value === undefined) return [];
  if (value === null || typeof value !== "object" || Array.isArray(value)) return [[path, value]];
  return Object.entries(value).flatMap(([name, inner]) => leaves(inner, path === "" ? name : `${path}.${name}`));
}

function inWords(value: unknown): string {
  return typeof value === "string" ? value : JSON.stringify(value);
}

/** The inputs again as they were nested. */
function nested(given: readonly (readonly [string, unknown])[]): unknown {
  const whole: Record<string, unknown> = {};
  for (const [path, value] of given) {
    const names = path.split(".");
    const last = names.pop() ?? "";
    const inner = names.reduce<Record<string, unknown>>((node, name) => {
      node[name] ??= {};
      return node[name] as Record<string, unknown>;
    }, whole);
    inner[last] = value;
  }
  return whole;
}

function shellWord(text: string): string {
  return /^[\w./:=,+-]+$/.test(text) ? text : `'${text.replaceAll("'", "'\\''")}'`;
}

function canonical(value: unknown): string {
  return JSON.stringify(value, (_, inner: unknown) =>
    inner !== null && typeof inner === "object" && !Array.isArray(inner)
      ? Object.fromEntries(Object.entries(inner).toSorted(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0)))
      : inner,
  );
}
