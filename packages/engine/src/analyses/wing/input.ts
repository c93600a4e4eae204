import {
  type SectionDefinition,
  type SectionLaw,
  sectionCharacteristics,
  sectionCoefficients,
  sectionLaw,
} from "../../aerodynamics/airfoil-section/index.ts";
import {
  attachedPolarPoint,
  finiteLiftSlope,
  flapEffect,
  LiftingLineWing,
  largestLiftOf,
  liftingLine,
  meanAerodynamicChord,
  type PolarWing,
  polarWingPoint,
  type WingCondition,
  type WingPlanform,
  type WingPoint,
  wingWithLargestLift,
} from "../../aerodynamics/wing/index.ts";
import type { Need, Problem, ProjectView, Warning } from "../contract.ts";
import { isProblem } from "../inputs/flight-conditions.ts";
import { sectionDefinitionOf, sectionNeeds } from "../inputs/section-input.ts";
import { wingFromAircraft } from "./from-aircraft.ts";
import type { WingMethod, WrittenWing } from "./part-schema.ts";
import type { WingInputs } from "./schema.ts";

/** A wing ready to be asked. */
export interface WingReading {
  readonly area: number;
  readonly span: number;
  readonly meanAerodynamicChord: number;
  readonly incidence: number;
  /** Of the planform; undefined where only a polar is known. */
  readonly planform: WingPlanform | undefined;
  /** Undefined where only a polar is known. */
  readonly section: SectionDefinition | undefined;
  /** A parabolic polar as if it never stalled, by which the best glides are found; undefined otherwise. */
  readonly attached: { readonly at: (angle: number) => WingPoint; readonly liftSlope: number; readonly largestLift: number } | undefined;
  /** Lift that may be used though the curve goes higher [1]. */
  readonly largestLift: number | undefined;
  /** Whether Reynolds and Mach number change anything. */
  readonly scaled: boolean;
  /** Lift coefficient at an angle of the root chord as if nothing stalled; good enough to begin with [1]. */
  readonly attachedLift: (angle: number) => number;
  /** At an angle of the root chord. */
  readonly at: (condition: WingCondition) => WingPoint;
  readonly warnings: readonly Warning[];
}

export function wingNeeds({ wing }: WingInputs): readonly Need[] {
  return "aircraft" in wing ? [{ kind: "document", path: wing.aircraft }] : sectionNeeds(wing.section);
}

/** Reynolds and Mach number at which a parabolic polar asks its section. */
export type PolarCondition = Pick<WingCondition, "reynolds" | "mach">;

/** The wing that the inputs mean, or why there is none. */
export function wingReading(view: ProjectView, { wing, method }: WingInputs, at: PolarCondition): WingReading | Problem {
  if ("aircraft" in wing) {
    const surface = wingFromAircraft(view, wing.aircraft, wing.part);
    if (isProblem(surface)) return surface;
    const { area, span } = surface.wing;
    const polar = { wing: surface.wing, zeroLiftAngle: 0, moment: 0 };
    return {
      area,
      span,
      meanAerodynamicChord: area / span,
      incidence: 0,
      planform: undefined,
      section: undefined,
      largestLift: surface.largestLift,
      attached: undefined,
      scaled: false,
      attachedLift: (angle) => surface.wing.liftSlope * angle,
      at: ({ angle }) => polarWingPoint(polar, angle),
      warnings: surface.chosen === undefined ? [] : [{ grade: "note", kind: "chosen", message: surface.chosen }],
    };
  }
  const read = sectionDefinitionOf(wing.section, view);
  if (read.problem) return read.problem;
  return writtenReading(wing, method ?? { kind: "lifting-line", stations: 31, shortWing: true }, read.definition, read.warnings, at);
}

function writtenReading(
  wing: WrittenWing,
  method: WingMethod,
  section: SectionDefinition,
  warnings: readonly Warning[],
  at: PolarCondition,
): WingReading {
  const { planform: kind, area, span, taper, sweep, twist, incidence, flaps } = wing;
  const planform: WingPlanform = { kind, area, span, taper, sweep, twist };
  const law = sectionLaw(section, { mach: at.mach });
  const common = {
    area,
    span,
    meanAerodynamicChord: meanAerodynamicChord(planform).chord,
    incidence,
    planform,
    section,
    warnings,
    largestLift: undefined,
  };
  if (method.kind === "lifting-line") {
    const solver = new LiftingLineWing(liftingLine(planform, law, flaps, { count: method.stations, shortWing: method.shortWing, ...at }));
    return {
      ...common,
      attached: undefined,
      scaled: true,
      attachedLift: (angle) => solver.attachedLift(angle),
      at: (condition) => solver.at(condition),
    };
  }
  const least = sectionCharacteristics(law, { reynolds: at.reynolds, mach: at.mach }).leastDrag ?? usualSectionDrag;
  const stated = { ...method, efficiency: method.efficiency ?? usualOswald, zeroLiftDrag: method.zeroLiftDrag ?? least };
  return {
    ...common,
    ...polarReading(polarOf(wing, planform, stated, law, at), method),
    warnings: [...warnings, ...notStated(method, least)],
  };
}

/** What of a parabolic polar was not given and is taken instead. */
function notStated({ efficiency, zeroLiftDrag }: ParabolicPolar, least: number): readonly Warning[] {
  const taken = [
    ...(efficiency === undefined ? [`Oswald efficiency ${usualOswald}, common practice for a straight wing`] : []),
    ...(zeroLiftDrag === undefined ? [`drag without lift ${least.toFixed(4)}, the least of the section`] : []),
  ];
  return taken.length === 0 ? [] : [{ grade: "note", kind: "polar", message: `Of the polar not given and taken: ${taken.join("; ")}.` }];
}

type ParabolicPolar = WingMethod & { readonly kind: "oswald" };
type StatedPolar = ParabolicPolar & { readonly efficiency: number; readonly zeroLiftDrag: number };

function polarReading(polar: PolarWing, method: ParabolicPolar) {
  const attached = {
    at: (angle: number) => attachedPolarPoint(polar, angle),
    liftSlope: polar.wing.liftSlope,
    largestLift: method.maximumLiftCoefficient === undefined ? boundlessLift : largestLiftOf(polar.wing).lift,
  };
  return {
    attached,
    scaled: false,
    attachedLift: (angle: number) => attached.at(angle).lift,
    at: ({ angle }: WingCondition) => polarWingPoint(polar, angle),
  };
}

/** Where a polar has no stall of its own, the best of it is looked for up to here [1]. */
const boundlessLift = 8;

/** Of a wing beside its section: three-dimensional flow and a tip. Common practice. */
const shareOfSectionLift = 0.9;
/** Largest lift of a section that has none. Common practice. */
const usualLargestLift = 1.2;
/** Oswald efficiency of a straight wing where none is given. Common practice. */
const usualOswald = 0.8;
/** Least drag of a section that has no angle without lift. Common practice. */
const usualSectionDrag = 0.01;
const plate = { stallSharpness: 60, flatPlateCoefficient: 1.2 };
/** Share of a flap's lift that is left at stall. From memory, plain flaps. */
const keptAtStall = 0.6;

function polarOf(
  { flaps }: WrittenWing,
  planform: WingPlanform,
  method: StatedPolar,
  law: SectionLaw,
  { reynolds, mach }: PolarCondition,
): PolarWing {
  const own = sectionCharacteristics(law, { reynolds, mach });
  const slope = method.liftSlope ?? finiteLiftSlope(planform, own.liftSlope ?? law.liftSlope, mach);
  let [angle, drag] = [0, 0];
  for (const flap of flaps) {
    if (flap.side === "opposite") continue;
    const covered = coveredArea(planform, flap.from, flap.to) * (flap.side === "both" ? 1 : 0.5);
    const effect = flapEffect(flap.chordFraction, flap.deflection);
    angle += covered * effect.angle;
    drag += covered * effect.drag;
  }
  const clean = method.maximumLiftCoefficient ?? shareOfSectionLift * (own.largestLift ?? usualLargestLift) * Math.cos(planform.sweep);
  const largestLift = Math.max(0.1, clean + keptAtStall * slope * angle);
  const wing = wingWithLargestLift(
    {
      area: planform.area,
      span: planform.span,
      liftSlope: slope,
      cd0: method.zeroLiftDrag + drag,
      spanEfficiency: method.efficiency,
      ...plate,
    },
    largestLift,
  );
  const basic = method.zeroLiftAngle ?? (own.zeroLiftAngle ?? 0) - planform.twist * twistShare(planform);
  const moment = sectionCoefficients(law, { angleOfAttack: own.zeroLiftAngle ?? 0, reynolds, mach }).moment;
  return { wing, zeroLiftAngle: basic - angle, moment };
}

/** Share of the area between two shares of the half span. */
function coveredArea(planform: WingPlanform, from: number, to: number): number {
  if (planform.kind === "elliptic") {
    const primitive = (x: number): number => (2 / Math.PI) * (x * Math.sqrt(Math.max(0, 1 - x * x)) + Math.asin(x));
    return primitive(to) - primitive(from);
  }
  const { taper } = planform;
  const primitive = (x: number): number => (2 * (x - ((1 - taper) * x * x) / 2)) / (1 + taper);
  return primitive(to) - primitive(from);
}

/** Mean over the area of a twist that is 1 at the tip. */
function twistShare(planform: WingPlanform): number {
  return meanAerodynamicChord(planform).share;
}
