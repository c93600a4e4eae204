import type { AnalysisResult, QuantityKind, TableColumn } from "@wingseed/engine";
import { displayUnitNames, formatReading, type UnitSystem } from "@wingseed/reports/format";
import { flatInputs, inputDescriber } from "./input-words.ts";
import type { Slot } from "./question.ts";

/** What is asked about one number. */
export interface Questioned {
  readonly value: number;
  readonly quantity: QuantityKind;
  readonly unit?: string;
  readonly datum?: string;
  /** What the number is called: a column head, or the last word of its path. */
  readonly name: string;
  /** What stands before it in its row: "airspeed 31.0 m/s". */
  readonly row?: readonly string[];
}

export interface Line {
  readonly name: string;
  readonly text: string;
  readonly because?: string;
}

export interface SlipContent {
  readonly title: string;
  /** To be read aloud or copied. */
  readonly says: string;
  readonly otherUnits: readonly string[];
  /** Stated error of a coarse picture. */
  readonly coarse?: string;
  readonly at: readonly Line[];
  readonly assumed: readonly Line[];
  readonly method: string;
  readonly checks: readonly string[];
  readonly sources: readonly string[];
  readonly documents: readonly { readonly path: string; readonly hash: string }[];
  readonly again: string;
  readonly program: string;
}

/** What a result needs beside itself to be questioned. */
export interface Origin {
  readonly slot: Slot;
  /** As they were sent. */
  readonly inputs: Record<string, unknown>;
  readonly result: AnalysisResult;
  readonly system: UnitSystem;
  readonly coarse?: string;
}

/** Where one number comes from, in words: everything that the result tells about it. */
export function slipOf(asked: Questioned, origin: Origin): SlipContent {
  const { provenance } = origin.result;
  const { slot, inputs, coarse, system } = origin;
  const choice = {
    ...(asked.unit === undefined ? {} : { unit: asked.unit }),
    ...(asked.datum === undefined ? {} : { datum: asked.datum }),
  };
  const { text } = formatReading(asked.value, asked.quantity, { ...choice, system });
  const describe = inputDescriber(slot.fields, system);
  return {
    title: asked.name,
    says: [`${asked.name} ${coarse === undefined ? "" : "≈ "}${text}`, ...(asked.row ?? [])].join(" · "),
    otherUnits: otherUnits(asked, text),
    ...(coarse === undefined ? {} : { coarse }),
    at: flatInputs(inputs, "").flatMap(([path, value]) => (path === "" ? [] : [describe(path, value)])),
    assumed: provenance.defaults.map(({ path, value, because }) => ({ ...describe(path, value), because })),
    method: provenance.method.summary,
    checks: provenance.method.checks,
    sources: provenance.method.sources,
    documents: provenance.documents,
    again: command(slot.analysis.name, inputs),
    program: `${provenance.program.name} ${provenance.program.version}, registry ${provenance.registryHash.slice(0, 12)}, seed ${provenance.seed ?? "none"}`,
  };
}

/** A column as what is asked about one of its numbers. */
export function askedOf({ label, quantity = "dimensionless", unit, datum }: TableColumn): Omit<Questioned, "value" | "row"> {
  return { name: label, quantity, ...(unit === undefined ? {} : { unit }), ...(datum === undefined ? {} : { datum }) };
}

/** The same value in every other unit in which its kind is shown. */
function otherUnits(asked: Questioned, text: string): readonly string[] {
  // A count in percent would say nothing.
  if (asked.quantity === "dimensionless" && asked.unit === undefined) return [];
  const choice = asked.datum === undefined ? {} : { datum: asked.datum };
  const texts = displayUnitNames(asked.quantity)
    .filter((unit) => unit !== "1")
    .map((unit) => formatReading(asked.value, asked.quantity, { ...choice, unit }).text);
  return [...new Set(texts)].filter((other) => other !== text);
}

/** The line for the shell that computes the same again. */
export function command(analysis: string, inputs: Record<string, unknown>): string {
  const flat = flatInputs(inputs, "inputs").filter(([path]) => path !== "inputs");
  // A number without a unit is SI only in JSON; as a setting it would be refused.
  if (flat.some(([, value]) => typeof value !== "string"))
    return `wingseed run ${shellWord(analysis)} --input ${shellWord(JSON.stringify(inputs))}`;
  const settings = flat.map(([path, value]) => ` --set ${shellWord(`${path}=${value}`)}`);
  return `wingseed run ${shellWord(analysis)}${settings.join("")}`;
}

function shellWord(text: string): string {
  return /^[\w./@%+=:-]+$/.test(text) ? text : `'${text.replaceAll("'", `'\\''`)}'`;
}
