import type { Axis, Gap } from "@wingseed/engine";
import { extentOf } from "./axis-scale.ts";

/** What a plot would show, as far as it matters for whether it shows anything. */
export interface PlotData {
  readonly x: Axis;
  readonly y: Axis;
  readonly xs: readonly number[];
  readonly ys: readonly (number | null)[];
  readonly gaps?: readonly Gap[];
}

/**
 * The gaps of a plot. One without a single value is a gap from end to end, with the reason its figure gives or else with
 * what was looked for: empty axes alone would look like a fault.
 */
export function gapsOf(data: PlotData): readonly Gap[] {
  const gaps = data.gaps ?? [];
  if (extentOf(data.ys) !== undefined) return gaps;
  const reasons = [...new Set(gaps.map((gap) => gap.reason))];
  const [from, to] = extentOf([...data.xs, ...gaps.flatMap((gap) => [gap.from, gap.to])]) ?? [0, 1];
  return [{ from, to, reason: reasons.length > 0 ? reasons.join("; ") : `no ${data.y.label} at any ${data.x.label}` }];
}
