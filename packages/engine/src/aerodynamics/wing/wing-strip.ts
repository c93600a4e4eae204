import { type SectionLaw, sectionCoefficients } from "../airfoil-section/index.ts";
import type { FlapEffect } from "./flap.ts";

/** Share of a flap's lift that is left at stall; the rest goes into an earlier stall. From memory, plain flaps. */
export const keptAtStall = 0.6;
const degree = Math.PI / 180;
/** Angles between which flap and chordwise curvature of the stream lose their effect in separated flow. Our own choice. */
const fading = { from: 18 * degree, to: 45 * degree };

/** A piece of the wing along the stream. */
export interface WingStrip {
  readonly section: SectionLaw;
  readonly flap: FlapEffect;
  /** Of the quarter chord [rad]. */
  readonly sweep: number;
  /** Angle without lift of the section [rad]. */
  readonly zeroLiftAngle: number;
  /** Share of its angle that a section on a short wing works at; 1 on a long one. */
  readonly shortWing: number;
}

export interface StripCondition {
  readonly reynolds: number;
  readonly mach: number;
}

export interface StripCoefficients {
  readonly lift: number;
  readonly drag: number;
  readonly moment: number;
}

/**
 * Share of the angle of attack that is left for the sections of a short wing, whose wake bends the stream along the chord too.
 *
 *     1/√(1 + (a₀/π A)²)
 *
 * With it the slope of an elliptic lifting line is Helmbold's.
 *
 * @source helmbold-1942, unchecked
 */
export function shortWingShare(sectionSlope: number, aspectRatio: number): number {
  return 1 / Math.hypot(1, sectionSlope / (Math.PI * aspectRatio));
}

/** Angle at which the section of a strip is read, for an angle of attack of the strip [rad]. */
export function sectionAngle({ flap, sweep, zeroLiftAngle, shortWing }: Omit<WingStrip, "section">, angle: number): number {
  const above = angle / Math.cos(sweep) - zeroLiftAngle + flap.angle;
  return zeroLiftAngle + above - (1 - shortWing) * above * attachment(above) - keptAtStall * flap.angle;
}

/**
 * Coefficients of a strip at an angle of attack [rad].
 *
 * Sweep: only the stream across the quarter chord lifts, c_l = cos²Λ c_l(α/cos Λ). A flap adds its angle: part of it as lift
 * on top, which raises the largest lift, the rest as angle, which brings stall earlier.
 *
 * @derivation sweep by the normal component of the stream; drag is kept, since friction does not ask for direction
 */
export function stripCoefficients(strip: WingStrip, angle: number, at: StripCondition): StripCoefficients {
  const { section, flap, sweep } = strip;
  const square = Math.cos(sweep) ** 2;
  const read = sectionAngle(strip, angle);
  const mach = at.mach * Math.cos(sweep);
  const own = sectionCoefficients(section, { angleOfAttack: read, mach, reynolds: at.reynolds });
  const effect = attachment(read);
  return {
    lift: (own.lift + flapLift(strip, mach) * effect) * square,
    drag: own.drag + flap.drag * effect,
    moment: (own.moment + flap.moment * effect) * square,
  };
}

/** Lift that a flap adds on top of its angle, in attached flow [1]. */
export function flapLift({ section, flap }: Pick<WingStrip, "section" | "flap">, mach: number): number {
  return (keptAtStall * flap.angle * section.liftSlope) / Math.sqrt(1 - Math.min(mach * mach, 0.81));
}

/** 1 in attached flow, 0 where it has left [1]. */
export function attachment(angle: number): number {
  const folded = Math.abs(Math.atan2(Math.sin(angle), Math.cos(angle)));
  if (folded <= fading.from) return 1;
  if (folded >= fading.to) return 0;
  return 0.5 + 0.5 * Math.cos((Math.PI * (folded - fading.from)) / (fading.to - fading.from));
}
