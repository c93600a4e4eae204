/** A wing seen from above. SI. */
export interface WingPlanform {
  readonly kind: "trapezoidal" | "elliptic";
  readonly area: number;
  readonly span: number;
  /** Tip chord over root chord; an elliptic wing has none. */
  readonly taper: number;
  /** Of the quarter chord, aft positive [rad]. */
  readonly sweep: number;
  /** Angle of the tip against the root, linear over the span, nose up positive [rad]. */
  readonly twist: number;
}

export function aspectRatio({ area, span }: WingPlanform): number {
  return (span * span) / area;
}

export function meanChord({ area, span }: WingPlanform): number {
  return area / span;
}

/** Chord at a share of the half span, 0 at the root [m]. */
export function chordAt(wing: WingPlanform, share: number): number {
  const mean = meanChord(wing);
  if (wing.kind === "elliptic") return (4 / Math.PI) * mean * Math.sqrt(Math.max(0, 1 - share * share));
  return (2 * mean * (1 - (1 - wing.taper) * share)) / (1 + wing.taper);
}

/** Mean aerodynamic chord, and the share of the half span at which its quarter chord lies. */
export function meanAerodynamicChord(wing: WingPlanform): { readonly chord: number; readonly share: number } {
  const mean = meanChord(wing);
  if (wing.kind === "elliptic") return { chord: (32 / (3 * Math.PI * Math.PI)) * mean, share: 4 / (3 * Math.PI) };
  const { taper } = wing;
  return {
    chord: (4 * mean * (1 + taper + taper * taper)) / (3 * (1 + taper) ** 2),
    share: (1 + 2 * taper) / (3 * (1 + taper)),
  };
}

/** Sweep of the line at half chord, aft positive [rad]. */
export function halfChordSweep(wing: WingPlanform): number {
  if (wing.kind === "elliptic") return wing.sweep;
  return Math.atan(Math.tan(wing.sweep) - (1 - wing.taper) / (aspectRatio(wing) * (1 + wing.taper)));
}
