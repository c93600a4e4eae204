import type { QuantityKind } from "@wingseed/engine";
import { parseQuantity } from "../units/index.ts";
import { scaledText } from "./scaled-text.ts";

export type Mapping = Readonly<Record<string, unknown>>;

/** A mapping, or an empty one where something else was written: the reader says what is missing. */
export function mapping(value: unknown): Mapping {
  return typeof value === "object" && value !== null && !Array.isArray(value) ? (value as Mapping) : {};
}

/** Free between a limit and its opposite. */
export function freeBothWays(limit: unknown): Mapping {
  return { kind: "free", minimum: scaledText(limit, -1), maximum: limit };
}

function inSi(written: unknown, kind: QuantityKind): number | undefined {
  const text = typeof written === "object" && written !== null && "value" in written ? written.value : written;
  if (typeof text === "number") return kind === "dimensionless" ? text : undefined;
  if (typeof text !== "string") return undefined;
  const read = parseQuantity(text, kind);
  return read.kind === "quantity" ? read.value : undefined;
}

/** Span of a surface of which area and aspect ratio are stated; the area itself where they cannot be read. */
export function spanOf(area: unknown, aspectRatio: unknown): unknown {
  const square = inSi(area, "area");
  const ratio = inSi(aspectRatio, "dimensionless");
  return square === undefined || ratio === undefined || !(square * ratio > 0) ? area : `${Math.sqrt(square * ratio)} m`;
}

const seaLevelDensity = 1.225;

/** More thrust than an ideal propeller gives at rest for the motor's short-time power, so that the motor is what limits it [N]. */
export function thrustBound(diameter: unknown, power: unknown): string {
  const size = inSi(diameter, "length") ?? 0;
  const most = inSi(power, "power") ?? 0;
  const thrust = Math.cbrt((seaLevelDensity * Math.PI * size * size * most * most) / 2);
  return `${Math.max(10, 10 * Math.ceil(thrust / 10))} N`;
}
