import type { SectionPolar, TableSection } from "./section-definition.ts";
import type { SectionAtReynolds, SectionPoint } from "./section-table.ts";
import { tableSectionCircle } from "./table-section.ts";

/**
 * Circles of a table section at one Mach number, by Reynolds number, without its drag increment.
 *
 * Between the Mach numbers of the table the coefficients run straight, below the lowest and above the highest those of the
 * nearest are scaled by Prandtl and Glauert's factor. Over the Reynolds number lift runs straight in its logarithm and drag along a
 * power of it. Without a Mach number the table's lowest is taken. The circles are such
 * that a reader who applies the factor of this Mach number finds the table's own coefficients.
 *
 * @param mach below 1, or undefined for the table's lowest [1]
 * @derivation interpolation of the given polars
 */
export function tableCirclesAtMach(definition: TableSection, mach: number | undefined): readonly SectionAtReynolds[] {
  const levels = [...new Set(definition.polars.map((polar) => polar.machNumber))].sort((a, b) => a - b);
  const at = mach ?? levels[0] ?? 0;
  const above = levels.findIndex((level) => level >= at);
  const upper = levels[above < 0 ? levels.length - 1 : above] ?? 0;
  const lower = above <= 0 ? upper : (levels[above - 1] ?? upper);
  const circles = (level: number) => withNarrowSteps(circlesOf(definition, level));
  if (lower === upper) return circles(upper);
  return blended(circles(lower), circles(upper), { share: (at - lower) / (upper - lower), lower, upper, at });
}

/** Widest factor from one Reynolds number to the next that readers may run straight across, and most steps for one gap. */
const widestFactor = 2;
const mostSteps = 4;

/** Reynolds numbers put between those far apart, with drag along a power of the Reynolds number instead of straight. */
function withNarrowSteps(circles: readonly SectionAtReynolds[]): readonly SectionAtReynolds[] {
  return circles.flatMap((circle, i) => {
    const before = circles[i - 1];
    if (!before) return [circle];
    const steps = Math.min(Math.ceil(Math.log(circle.reynolds / before.reynolds) / Math.log(widestFactor) - 1e-9), mostSteps);
    const between = Array.from({ length: steps - 1 }, (_, k) => before.reynolds * (circle.reynolds / before.reynolds) ** ((k + 1) / steps));
    return [...between.map((reynolds) => circleAt(circles, reynolds)), circle];
  });
}

function circlesOf(definition: TableSection, level: number): readonly SectionAtReynolds[] {
  const polars: readonly SectionPolar[] = definition.polars.filter((polar) => polar.machNumber === level);
  return polars.map((polar) => tableSectionCircle(polar));
}

interface Between {
  readonly share: number;
  readonly lower: number;
  readonly upper: number;
  readonly at: number;
}

/** Prandtl and Glauert's factor as readers of the tables apply it. */
function factor(mach: number): number {
  return 1 / Math.sqrt(1 - Math.min(mach * mach, 0.81));
}

/** At every Reynolds number of either; where one of them has none the nearest or what lies between. */
function blended(low: readonly SectionAtReynolds[], high: readonly SectionAtReynolds[], between: Between): readonly SectionAtReynolds[] {
  const { share } = between;
  const reynolds = [...new Set([...low, ...high].map((circle) => circle.reynolds))].sort((a, b) => a - b);
  return reynolds.map((node) => {
    const [first, second] = [circleAt(low, node), circleAt(high, node)];
    return {
      reynolds: node,
      stallAngle: first.stallAngle + (second.stallAngle - first.stallAngle) * share,
      point: (alpha) =>
        mixed(first.point(alpha), second.point(alpha), share, [
          factor(between.lower) / factor(between.at),
          factor(between.upper) / factor(between.at),
        ]),
    };
  });
}

function circleAt(circles: readonly SectionAtReynolds[], reynolds: number): SectionAtReynolds {
  const above = circles.findIndex((circle) => circle.reynolds >= reynolds);
  const upper = circles[above < 0 ? circles.length - 1 : above];
  const lower = above <= 0 ? upper : circles[above - 1];
  if (!upper || !lower) throw new Error("a section's table has no polar");
  if (lower === upper || upper.reynolds === reynolds) return { ...upper, reynolds };
  const share = Math.log(reynolds / lower.reynolds) / Math.log(upper.reynolds / lower.reynolds);
  return {
    reynolds,
    stallAngle: lower.stallAngle + (upper.stallAngle - lower.stallAngle) * share,
    point: (alpha) => mixed(lower.point(alpha), upper.point(alpha), share, [1, 1]),
  };
}

function mixed(low: SectionPoint, high: SectionPoint, share: number, scale: readonly [number, number]): SectionPoint {
  const mix = (name: "separatedLift" | "moment"): number => low[name] + (high[name] - low[name]) * share;
  const power = (name: "drag" | "viscousDrag"): number => low[name] * (high[name] / low[name]) ** share;
  return {
    attachedLift: low.attachedLift * scale[0] * (1 - share) + high.attachedLift * scale[1] * share,
    separatedLift: mix("separatedLift"),
    drag: power("drag"),
    viscousDrag: power("viscousDrag"),
    moment: mix("moment"),
  };
}
