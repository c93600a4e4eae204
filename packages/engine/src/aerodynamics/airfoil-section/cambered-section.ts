import lowReynolds from "./data/low-reynolds.json" with { type: "json" };
import {
  camberDragFactor,
  laminarSeparation,
  scalingReynoldsNumbers,
  smoothZeroLiftDrag,
  symmetricLargestLift,
} from "./reynolds-scaling.ts";
import type { CamberedSection } from "./section-definition.ts";
import type { SectionAtReynolds, SectionPoint } from "./section-table.ts";
import { separatedFlow } from "./separated-flow.ts";

const { chosen, dragRise, laminar } = lowReynolds;
/** Attached flow of a thin section [1/rad]. */
const liftSlope = 2 * Math.PI;
/** Lift is straight up to this share of the largest, then bends over. */
const straightShare = 0.7;
/** The flow is half separated where straight lift would be this many times the largest. */
const stallOvershoot = 1.25;
/** Lift coefficient that is left to the side away from the camber, at least. */
const leastLargestLift = 0.3;
const fittingRounds = 6;
const limitShares = { least: 0.5, most: 2 };

/** What a section's thickness and camber come to. */
export interface CamberedShape {
  readonly zeroLiftAngle: number;
  readonly designLift: number;
  readonly momentCoefficient: number;
}

/**
 * Angle without lift, lift of least drag and moment of a section with a circular arc f high as its mean line.
 *
 *     α_0 = −2 f · 0.9      c_l,design = 4π f · 0.9      c_m = −π f · 0.75
 *
 * The factors stand for what viscosity takes and for mean lines that are no arcs, from memory of wind-tunnel tables of sections
 * with 2 and 4 % camber.
 *
 * @source glauert-1926-elements, thin sections, from memory
 */
export function camberedShape(section: CamberedSection): CamberedShape {
  const { camber } = section;
  return {
    zeroLiftAngle: section.zeroLiftAngle ?? -2 * camber * chosen.zeroLiftShare,
    designLift: section.designLift ?? 4 * Math.PI * camber * chosen.designLiftShare,
    momentCoefficient: section.momentCoefficient ?? -Math.PI * camber * chosen.momentShare,
  };
}

/**
 * A section by thickness and camber at each tabulated Reynolds number, lowest first, without its drag increment.
 *
 *     attached     c_l = 2π (α − α_0), bending over to the largest lift      c_d = c_d0 (1 + k (c_l − c_l,design)²)
 *     separated    measured after stall
 *
 * Thin sections (below 6 %) stall gently, thick ones sharply; largest lift grows with 0.9 of the design lift (from memory).
 * Where laminar flow separates (`laminarSeparation`) α_0 and c_l,design shrink by 15 % of it and k grows by 2 · 0.92 of it.
 *
 * @source sheldahl-klimas-1981, section tables
 */
export function camberedSectionCircles(section: CamberedSection): readonly SectionAtReynolds[] {
  return scalingReynoldsNumbers.map((reynolds) => circleAt(section, reynolds));
}

interface Side {
  /** Lift that the bent curve tends to [1]. */
  readonly limit: number;
  /** Half-separated flow, measured from the angle without lift [rad]. */
  readonly stall: number;
}

interface Attached {
  readonly shape: CamberedShape;
  readonly friction: number;
  readonly dragRise: number;
  readonly blendRate: number;
}

function circleAt(section: CamberedSection, reynolds: number): SectionAtReynolds {
  const { thickness } = section;
  const separation = laminarSeparation(reynolds);
  const shape = flattened(camberedShape(section), 1 - laminar.camberLoss * separation);
  const symmetric = symmetricLargestLift(reynolds, thickness);
  const attached: Attached = {
    shape,
    friction: smoothZeroLiftDrag(reynolds, thickness) * camberDragFactor(reynolds, section.camber),
    // A thin nose makes more of every step away from the design lift. Chosen.
    dragRise: dragRise.value * (Math.min(Math.max(lowReynolds.thickness / thickness, 1), 4) + laminar.dragRise * separation),
    blendRate: 15 + 45 * Math.min(Math.max((thickness - 0.05) / 0.05, 0), 1),
  };
  const largest =
    section.largestLift === undefined
      ? symmetric + chosen.largestLiftByDesignLift * shape.designLift
      : section.largestLift + symmetric - symmetricLargestLift(laminar.upperReynolds, thickness);
  const smallest = Math.max(symmetric - chosen.smallestLiftByDesignLift * shape.designLift, leastLargestLift);
  const upper = fittedSide(attached, 1, Math.max(largest, leastLargestLift));
  const lower = fittedSide(attached, -1, smallest);
  return {
    reynolds,
    stallAngle: shape.zeroLiftAngle + upper.stall,
    point: (alpha) => pointAt(attached, alpha, alpha >= shape.zeroLiftAngle ? upper : lower),
  };
}

/** What is left of a mean line's effect. */
function flattened(shape: CamberedShape, left: number): CamberedShape {
  return { ...shape, zeroLiftAngle: left * shape.zeroLiftAngle, designLift: left * shape.designLift };
}

/** The side whose largest lift, after blending with separated flow, is the one asked for. */
function fittedSide(attached: Attached, sign: 1 | -1, largest: number): Side {
  let limit = largest;
  for (let round = 0; round < fittingRounds; round++) {
    const side = { limit, stall: (stallOvershoot * limit) / liftSlope };
    let peak = 0;
    for (let angle = 0.2 * side.stall; angle < 1.6 * side.stall; angle += side.stall / 100) {
      const point = pointAt(attached, attached.shape.zeroLiftAngle + sign * angle, side);
      peak = Math.max(peak, sign * (point.attachedLift + point.separatedLift));
    }
    // Where separated flow alone lifts as much, or takes all of it away, there is nothing to fit.
    limit = Math.min(Math.max((limit * largest) / Math.max(peak, 0.1 * largest), limitShares.least * largest), limitShares.most * largest);
  }
  return { limit, stall: (stallOvershoot * limit) / liftSlope };
}

function pointAt(attached: Attached, alpha: number, side: Side): SectionPoint {
  const { shape, friction, blendRate } = attached;
  const away = alpha - shape.zeroLiftAngle;
  // Wholly attached without lift, so that both sides meet there.
  const weight = (1 + Math.exp(-blendRate * side.stall)) / (1 + Math.exp(blendRate * (Math.abs(away) - side.stall)));
  const straight = (liftSlope * Math.abs(away)) / side.limit;
  const bent =
    straight <= straightShare
      ? straight
      : straightShare + (1 - straightShare) * Math.tanh((straight - straightShare) / (1 - straightShare));
  const lift = Math.sign(away) * bent * side.limit;
  const attachedDrag = friction * (1 + attached.dragRise * (lift - shape.designLift) ** 2);
  const separated = separatedFlow(alpha);
  return {
    attachedLift: weight * lift,
    separatedLift: (1 - weight) * separated.lift,
    drag: weight * attachedDrag + (1 - weight) * Math.max(friction, separated.drag),
    viscousDrag: weight * attachedDrag + (1 - weight) * friction,
    moment: weight * shape.momentCoefficient + (1 - weight) * separated.moment,
  };
}
