/**
 * How a flight may be begun: how far the rotors carry it, how fast they turn, where the nose points. A trim of which nothing is known is
 * tried from all of them; which of them reach the least power was found by trying (see the audit of the trim).
 */
export interface WayOfFlying {
  /** Left out at other speeds: slow up to twice the induced velocity of hover, fast from 1.2 times that. */
  readonly only?: "slow" | "fast";
  /** Tip speed over its permitted range, from 0 to 1. */
  readonly tipSpeed: number;
  /** The attitude: given above the path [deg], or what the main wing needs for this share of its largest steady lift. */
  readonly nose: { readonly kind: "pitch"; readonly above: number } | { readonly kind: "wing"; readonly lift: number };
  /** Thrust along the path over weight [1]. */
  readonly forward: number;
  /** Angle of the disc to the path of a rotor that nothing drives, back positive: the air comes up through it, or down [deg]. @defaultValue as the shaft stands */
  readonly freeDisc?: number;
  /** Of a glide [deg]. */
  readonly descent: number;
  /** Tail surfaces turned into their flow rather than left in the middle. */
  readonly alignedTail: boolean;
}

/** Where the wing hangs in the rotors' downwash there are many ways to stand. */
const slowFlight = { only: "slow", tipSpeed: 0.65, forward: 0.04, descent: -14, freeDisc: 5, alignedTail: false } as const;

/** @derivation not a formula */
const waysOfFlying: readonly WayOfFlying[] = [
  { tipSpeed: 0.65, nose: { kind: "pitch", above: -4 }, forward: 0.03, descent: -14, freeDisc: 5, alignedTail: true },
  { tipSpeed: 0.65, nose: { kind: "pitch", above: 0 }, forward: 0.03, descent: -25, freeDisc: 5, alignedTail: false },
  { only: "fast", tipSpeed: 0.3, nose: { kind: "wing", lift: 0.6 }, forward: 0.1, descent: -12, freeDisc: 5, alignedTail: false },
  { only: "fast", tipSpeed: 0.05, nose: { kind: "wing", lift: 0.6 }, forward: 0.14, descent: -18, alignedTail: false },
  { tipSpeed: 1, nose: { kind: "wing", lift: 0.3 }, forward: 0.05, descent: -12, freeDisc: 5, alignedTail: true },
  { tipSpeed: 0.65, nose: { kind: "pitch", above: 5 }, forward: 0.05, descent: -17, freeDisc: -6, alignedTail: false },
  { only: "fast", tipSpeed: 0.1, nose: { kind: "pitch", above: 11 }, forward: 0.1, descent: -20, freeDisc: 5, alignedTail: true },
  { ...slowFlight, nose: { kind: "pitch", above: -4 } },
  { ...slowFlight, nose: { kind: "pitch", above: 3 } },
];

const slowest = 1.2;
const fastest = 2;

/** Those that are tried at a speed [m/s], given the induced velocity of hover; 0 without lifting rotors [m/s]. @derivation not a formula */
export function waysAt(airspeed: number, hover: number): readonly WayOfFlying[] {
  return waysOfFlying.filter(
    ({ only }) => !(only === "slow" && !isSlow(airspeed, hover)) && !(only === "fast" && airspeed < slowest * hover),
  );
}

/** Whether a flight is so slow that no way of flying can be told from its first steps. @derivation not a formula */
export function isSlow(airspeed: number, hover: number): boolean {
  return airspeed <= fastest * hover;
}
