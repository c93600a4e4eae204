import type { QuantityKind } from "@wingseed/engine";
import { joined, splitText } from "./units.ts";

export type Pace = "fine" | "usual" | "coarse";

/** Usual step of a condition in the units shown [1, 2 or 5 times a power of ten near a twentieth of the value]. */
export function stepOf(value: number): number {
  const size = Math.abs(value) / 20;
  if (!(size > 0)) return 1;
  const power = 10 ** Math.floor(Math.log10(size));
  const lead = size / power;
  return (lead < 1.5 ? 1 : lead < 3.5 ? 2 : lead < 7.5 ? 5 : 10) * power;
}

/** A text one step further, its unit kept; undefined when it is not a number in a unit that we know. */
export function stepped(text: string, direction: 1 | -1, pace: Pace, quantity: QuantityKind): string | undefined {
  const split = splitText(text, quantity);
  if (!split) return undefined;
  const value = Number(split.number);
  const step = stepOf(value) * (pace === "coarse" ? 10 : pace === "fine" ? 0.1 : 1);
  const places = direction > 0 ? Math.floor(value / step + 1e-9) + 1 : Math.ceil(value / step - 1e-9) - 1;
  return joined(String(Number((places * step).toPrecision(10))), split.unit);
}
