import { type SectionLaw, sectionCoefficients } from "./section-law.ts";

/** What one asks of a section at one Reynolds and Mach number; null where the section has no such point. */
export interface SectionCharacteristics {
  /** Angle without lift nearest to zero [rad]. */
  readonly zeroLiftAngle: number | null;
  /** Largest lift before the first stall upward, and its angle [1], [rad]. */
  readonly largestLift: number | null;
  readonly stallAngle: number | null;
  /** Least drag between the angle without lift and stall [1]. */
  readonly leastDrag: number | null;
  /** Largest lift over drag there, and its angle [1], [rad]. */
  readonly bestLiftToDrag: number | null;
  readonly bestLiftToDragAngle: number | null;
  /** Slope of lift at the angle without lift [1/rad]. */
  readonly liftSlope: number | null;
}

const degree = Math.PI / 180;
const step = 0.1 * degree;
/** Where the angle without lift is looked for, and how far above it stall. */
const zeroLiftRange = 20 * degree;
const stallRange = 40 * degree;
/** Lift has fallen by this much, or this share of the largest, where it has stalled: less is unevenness of a table. */
const fallen = { by: 0.01, share: 0.01 };

/** A drag below this is none. */
const countedDrag = 1e-9;

const none: SectionCharacteristics = {
  zeroLiftAngle: null,
  largestLift: null,
  stallAngle: null,
  leastDrag: null,
  bestLiftToDrag: null,
  bestLiftToDragAngle: null,
  liftSlope: null,
};

/**
 * Angle without lift, stall, least drag and best lift over drag of a section, found by a march in tenths of a degree: upward
 * from the angle without lift to the first place where lift falls.
 *
 * @derivation plain search
 */
export function sectionCharacteristics(law: SectionLaw, at: { readonly mach: number; readonly reynolds: number }): SectionCharacteristics {
  const read = (angleOfAttack: number) => sectionCoefficients(law, { ...at, angleOfAttack });
  const zero = zeroLiftAngle((alpha) => read(alpha).lift);
  if (zero === undefined) return none;
  const slope = (read(zero + step).lift - read(zero - step).lift) / (2 * step);
  let largest = { lift: 0, angle: zero };
  let best = { ratio: 0, angle: zero };
  let leastDrag = read(zero).drag;
  let stalled = false;
  for (let count = 1; count * step <= stallRange && !stalled; count++) {
    const angle = zero + count * step;
    const { lift, drag } = read(angle);
    if (lift > largest.lift) largest = { lift, angle };
    if (drag > countedDrag && lift / drag > best.ratio) best = { ratio: lift / drag, angle };
    leastDrag = Math.min(leastDrag, drag);
    stalled = lift < largest.lift - Math.max(fallen.by, fallen.share * largest.lift);
  }
  const found = largest.lift > 0;
  return {
    zeroLiftAngle: zero,
    largestLift: found ? largest.lift : null,
    stallAngle: found && stalled ? largest.angle : null,
    leastDrag,
    bestLiftToDrag: best.ratio > 0 ? best.ratio : null,
    bestLiftToDragAngle: best.ratio > 0 ? best.angle : null,
    liftSlope: slope,
  };
}

/** The upward crossing of zero lift that lies nearest to zero angle. */
function zeroLiftAngle(lift: (alpha: number) => number): number | undefined {
  let nearest: number | undefined;
  const count = Math.round(zeroLiftRange / step);
  for (let i = -count; i < count; i++) {
    const [low, high] = [lift(i * step), lift((i + 1) * step)];
    if (low > 0 || high <= 0) continue;
    const angle = i * step + (low === 0 ? 0 : (step * low) / (low - high));
    if (nearest === undefined || Math.abs(angle) < Math.abs(nearest)) nearest = angle;
  }
  return nearest;
}
