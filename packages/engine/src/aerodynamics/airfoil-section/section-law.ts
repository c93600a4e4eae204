import { builtInSectionCircles } from "./built-in-section.ts";
import { camberedSectionCircles } from "./cambered-section.ts";
import { genericSectionPoint } from "./generic-section.ts";
import { tableCirclesAtMach } from "./section-at-mach.ts";
import type { SectionDefinition } from "./section-definition.ts";
import { circleSteps, circleWidth, type SectionAtReynolds, stepWidth, tabulatedCircle } from "./section-table.ts";

/** A section made ready for fast reading: tables over the circle, and the way from Reynolds number to table. */
export interface SectionLaw {
  readonly definition: SectionDefinition;
  /** For each Reynolds number a circle of `circleWidth` numbers, lowest first. */
  readonly table: Float64Array;
  /** For each Reynolds number the moments about the quarter chord over the same circle, `circleSteps + 1` numbers. */
  readonly moment: Float64Array;
  /** Reynolds numbers of the tables, rising; one entry (0) for a section that does not depend on it. */
  readonly reynolds: readonly number[];
  /** Fractional table index over √Re in steps of `rootReynoldsStep`; linear in ln Re between tables. */
  readonly reynoldsIndex: Float64Array;
  /** Slope of lift at zero angle, Mach 0, middle Reynolds number [1/rad]. */
  readonly liftSlope: number;
  /** Angle of largest lift (built-in, highest Reynolds number) or half-separated flow (generic) [rad]. */
  readonly stallAngle: number;
}

/** Step of √Re in `reynoldsIndex`, and its number of steps: Reynolds numbers to 16 million. */
export const rootReynoldsStep = 1;
export const rootReynoldsSteps = 4000;

/**
 * A section ready for fast reading.
 *
 * @param options.mach for a section whose table knows several Mach numbers: the one to take from it, the lowest when absent;
 * the others know the factor on lift alone, which readers apply [1]
 * @derivation tabulation of the section's own law; linear between 4 096 steps, which keeps c_l within 1·10⁻⁴
 */
export function sectionLaw(definition: SectionDefinition, options: { readonly mach?: number } = {}): SectionLaw {
  if (definition.kind === "generic") {
    return tabulated(definition, [
      { reynolds: 0, stallAngle: definition.stallAngle, point: (alpha) => genericSectionPoint(definition, alpha) },
    ]);
  }
  const smooth = smoothLaw(definition, options.mach);
  const table = Float64Array.from(smooth.table);
  for (let step = 0; step < table.length; step += stepWidth) {
    table[step + 2] = (table[step + 2] ?? 0) + definition.dragIncrement;
    table[step + 3] = (table[step + 3] ?? 0) + definition.dragIncrement;
  }
  return { ...smooth, definition, table };
}

type SmoothDefinition = Exclude<SectionDefinition, { readonly kind: "generic" }>;

/** Tables of smooth sections as first made: making them takes longer than most of what they are used for. */
const made = new Map<string, SectionLaw>();
/** Most numbers that the kept tables hold together: 64 MB. */
const mostNumbers = 8e6;

function smoothLaw(definition: SmoothDefinition, mach: number | undefined): SectionLaw {
  const smooth: SmoothDefinition = { ...definition, dragIncrement: 0 };
  const key = JSON.stringify([smooth, smooth.kind === "table" ? mach : undefined]);
  const known = made.get(key);
  if (known) return known;
  const law = tabulated(smooth, smoothCircles(smooth, mach));
  const held = [...made.values()].reduce((sum, { table }) => sum + table.length, law.table.length);
  if (held > mostNumbers) made.clear();
  made.set(key, law);
  return law;
}

function smoothCircles(definition: SmoothDefinition, mach: number | undefined): readonly SectionAtReynolds[] {
  switch (definition.kind) {
    case "built-in":
      return builtInSectionCircles(definition.name);
    case "cambered":
      return camberedSectionCircles(definition);
    case "table":
      return tableCirclesAtMach(definition, mach);
  }
}

function tabulated(definition: SectionDefinition, circles: readonly SectionAtReynolds[]): SectionLaw {
  const table = new Float64Array(circles.length * circleWidth);
  const moment = new Float64Array(circles.length * (circleSteps + 1));
  circles.forEach((circle, index) => {
    const { forces, moments } = tabulatedCircle(circle.point);
    table.set(forces, index * circleWidth);
    moment.set(moments, index * (circleSteps + 1));
  });
  const reynolds = circles.map((circle) => circle.reynolds);
  const middle = Math.floor(circles.length / 2) * circleWidth + (circleSteps / 2) * stepWidth;
  const rise = (table[middle + stepWidth] ?? 0) - (table[middle - stepWidth] ?? 0);
  return {
    definition,
    table,
    moment,
    reynolds,
    reynoldsIndex: reynoldsIndex(reynolds),
    liftSlope: (rise * circleSteps) / (4 * Math.PI),
    stallAngle: circles[circles.length - 1]?.stallAngle ?? 0,
  };
}

function reynoldsIndex(reynolds: readonly number[]): Float64Array {
  const index = new Float64Array(rootReynoldsSteps + 2);
  if (reynolds.length < 2) return index;
  for (let step = 0; step < index.length; step++) index[step] = indexAt(reynolds, (step * rootReynoldsStep) ** 2);
  return index;
}

function indexAt(reynolds: readonly number[], value: number): number {
  const above = reynolds.findIndex((node) => node >= value);
  if (above === 0) return 0;
  if (above < 0) return reynolds.length - 1;
  const low = reynolds[above - 1] as number;
  const high = reynolds[above] as number;
  return above - 1 + Math.log(value / low) / Math.log(high / low);
}

/** Where a section is read. */
export interface SectionCondition {
  /** α, any number of turns [rad]. */
  readonly angleOfAttack: number;
  /** Below 1 [1]. */
  readonly mach: number;
  /** On the chord [1]. Ignored by a section that does not depend on it. */
  readonly reynolds: number;
}

/**
 * Lift, drag and moment coefficients of a section [1].
 *
 *     c_l = c_l,attached/√(1 − M²) + c_l,separated
 *
 * The moment is about the quarter chord, nose up positive, and does not change with Mach number.
 *
 * The plain reading of the tables; the rotor's sweep does the same in place. Mach numbers above 0.9 are read as 0.9: the
 * factor has lost its meaning long before, and callers say so.
 *
 * @source glauert-1928, unchecked
 */
export function sectionCoefficients(
  law: SectionLaw,
  at: SectionCondition,
): { readonly lift: number; readonly drag: number; readonly viscousDrag: number; readonly moment: number } {
  const turn = (at.angleOfAttack / (2 * Math.PI) + 0.5) % 1;
  const position = (turn < 0 ? turn + 1 : turn) * circleSteps;
  const step = Math.min(Math.floor(position), circleSteps - 1);
  const level = reynoldsLevel(law, at.reynolds);
  const lower = Math.min(Math.floor(level), Math.max(law.reynolds.length - 2, 0));
  const upperShare = law.reynolds.length < 2 ? 0 : level - lower;
  const blended = (table: Float64Array, width: number, first: (circle: number) => number): number => {
    const circle = (index: number): number => {
      const low = table[first(index)] ?? 0;
      return low + ((table[first(index) + width] ?? 0) - low) * (position - step);
    };
    return upperShare === 0 ? circle(lower) : circle(lower) + (circle(lower + 1) - circle(lower)) * upperShare;
  };
  const force = (offset: number): number => blended(law.table, stepWidth, (index) => index * circleWidth + step * stepWidth + offset);
  const moment = blended(law.moment, 1, (index) => index * (circleSteps + 1) + step);
  const compression = 1 / Math.sqrt(1 - Math.min(at.mach * at.mach, 0.81));
  return { lift: force(0) * compression + force(1), drag: force(2), viscousDrag: force(3), moment };
}

function reynoldsLevel(law: SectionLaw, reynolds: number): number {
  if (Math.sqrt(reynolds) > rootReynoldsStep * rootReynoldsSteps && law.reynolds.length > 1) return indexAt(law.reynolds, reynolds);
  const position = Math.min(Math.sqrt(reynolds) / rootReynoldsStep, rootReynoldsSteps);
  const step = Math.floor(position);
  const low = law.reynoldsIndex[step] ?? 0;
  return low + ((law.reynoldsIndex[step + 1] ?? 0) - low) * (position - step);
}
