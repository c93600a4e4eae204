import type { QuantityField } from "./schema.ts";
import { joined, siValue, splitText } from "./units.ts";

export type Pace = "fine" | "usual" | "coarse";

/** Usual step of a condition in the units shown [1, 2 or 5 times a power of ten near a twentieth of the value]. */
export function stepOf(value: number): number {
  const size = Math.abs(value) / 20;
  if (!(size > 0)) return 1;
  const power = 10 ** Math.floor(Math.log10(size));
  const lead = size / power;
  return (lead < 1.5 ? 1 : lead < 3.5 ? 2 : lead < 7.5 ? 5 : 10) * power;
}

type Stepping = Pick<QuantityField, "quantity" | "minimum" | "maximum" | "whole">;

/** A text one step further, its unit kept; undefined when it is not a number in a unit that we know, or at a bound. */
export function stepped(text: string, direction: 1 | -1, pace: Pace, field: Stepping): string | undefined {
  const split = splitText(text, field.quantity);
  if (!split) return undefined;
  const value = Number(split.number);
  const wished = stepOf(value) * (pace === "coarse" ? 10 : pace === "fine" ? 0.1 : 1);
  const step = field.whole ? Math.max(1, Math.round(wished)) : wished;
  const places = direction > 0 ? Math.floor(value / step + 1e-9) + 1 : Math.ceil(value / step - 1e-9) - 1;
  const next = joined(String(Number((places * step).toPrecision(10))), split.unit);
  const si = siValue(next, field.quantity) ?? Number.NaN;
  return si >= (field.minimum ?? Number.NEGATIVE_INFINITY) && si <= (field.maximum ?? Number.POSITIVE_INFINITY) ? next : undefined;
}
