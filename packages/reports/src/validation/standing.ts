import type { QuantityKind } from "@wingseed/engine";
import { formatReading } from "../format/index.ts";
import type { ValidationRow } from "./validation-row.ts";

/** How an answer stands to what was held against published data. */
export interface Standing {
  /** 0 inside the compared range, 1 one width of a range outside; null when nothing was compared. */
  readonly distance: number | null;
  readonly outside: readonly { readonly name: string; readonly value: number; readonly low: number; readonly high: number }[];
  /** Short name of the nearest source, its folder where it has none; absent when nothing was compared. */
  readonly title?: string;
  readonly reference?: "measured" | "computed" | "formula";
  /** What the comparison with it gave. */
  readonly comparisons: readonly ValidationRow[];
}

/** Read from the field `domain` of the outputs; undefined where an analysis says nothing about it. */
export function standingOf(outputs: unknown, validation: readonly ValidationRow[]): Standing | undefined {
  const domain = (outputs as { readonly domain?: unknown } | null | undefined)?.domain;
  if (!isDomain(domain)) return undefined;
  const comparisons = validation.filter((row) => row.check === domain.nearest);
  const [first] = comparisons;
  return {
    distance: domain.distance,
    outside: domain.outside,
    ...(domain.nearest === null ? {} : { title: first?.title ?? domain.nearest }),
    ...(first?.reference ? { reference: first.reference } : {}),
    comparisons,
  };
}

interface Domain {
  readonly distance: number | null;
  readonly nearest: string | null;
  readonly outside: Standing["outside"];
}

function isDomain(value: unknown): value is Domain {
  if (typeof value !== "object" || value === null) return false;
  const { distance, nearest, outside } = value as Partial<Record<keyof Domain, unknown>>;
  return (distance === null || typeof distance === "number") && (nearest === null || typeof nearest === "string") && Array.isArray(outside);
}

/** One or two sentences: inside or outside of what, and by how much. */
export function standingSentence({ distance, outside, title, reference }: Standing): string {
  if (distance === null || title === undefined) return "No published check covers this.";
  const compared = reference === "measured" || reference === undefined ? "compared with measurements" : "held against computed values only";
  if (outside.length === 0) return `Inside the range ${compared}: ${title}.`;
  const places = outside.map(({ name, value, low, high }) => {
    const range = low === high ? `compared at ${coordinate(name, low)}` : `compared ${coordinate(name, low)} to ${coordinate(name, high)}`;
    return `${words(name)} ${coordinate(name, value)} (${range})`;
  });
  const far = distance < 0.095 ? "just outside" : `${significant(distance)} ${distance < 1.05 ? "of its width" : "widths"} outside`;
  return `Outside the range ${compared}, ${far}: ${places.join(", ")}; nearest is ${title}.`;
}

function significant(value: number): string {
  return value < 10 ? value.toFixed(1) : String(Math.round(value));
}

const kinds: Readonly<Record<string, QuantityKind>> = { angle: "angle", temperature: "temperature", altitude: "length" };

/** Without the zeros at the end that a reading keeps: the digits of a range say nothing about its accuracy. */
function coordinate(name: string, value: number): string {
  return formatReading(value, kinds[name] ?? "dimensionless").text.replace(/\.0+(?!\d)|(\.\d*?[1-9])0+(?!\d)/u, "$1");
}

/** `advanceRatio` as words; names of people keep their capital. */
function words(name: string): string {
  const plain = name.replace(/([a-z0-9])([A-Z])/g, "$1 $2").toLowerCase();
  return plain.replace(/\b(reynolds|mach)\b/g, (person) => person.charAt(0).toUpperCase() + person.slice(1));
}
