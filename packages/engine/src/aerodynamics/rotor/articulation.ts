/**
 * How the blades are held. Pitch–flap coupling tan δ₃ takes that share of a blade's cyclic flapping off its pitch; collective stays the
 * mean pitch that the blades really have. Lock number: ρ a c R⁴/I with a the section's lift slope at Mach 0, c the mean chord weighted
 * by x², I of one blade [1].
 */
export type Articulation =
  /** One rigid beam on a teeter (or a gimbal): coning is the built-in precone. */
  | { readonly kind: "teetering"; readonly pitchFlapCoupling?: number }
  /** Flapping hinges: coning follows from mean flap moment, centrifugal force and spring. */
  | {
      readonly kind: "hinged";
      readonly lockNumber: number;
      /** Distance of the hinge from the shaft over R. @defaultValue 0, on the axis */
      readonly hingeOffset?: number;
      /** √(K/I), flap frequency of a blade on the hinge's spring when the rotor stands; the spring rests at the precone [rad/s]. @defaultValue 0 */
      readonly restFrequency?: number;
      readonly pitchFlapCoupling?: number;
    }
  /** Blades on a flexure, taken as a hinge at `hingeOffset` with as much spring as the flap frequency asks for. */
  | {
      readonly kind: "hingeless";
      readonly lockNumber: number;
      /** ν, rotating flap frequency over Ω, at least that of the hinge without spring [1]. */
      readonly flapFrequency: number;
      /** @defaultValue 0 */
      readonly hingeOffset?: number;
      readonly pitchFlapCoupling?: number;
    }
  /** Blades that do not flap: coning is the precone. */
  | { readonly kind: "rigid" };

/** What the flap balance needs of an articulation. */
export interface FlapStiffness {
  /** Blades cone by themselves. */
  readonly cones: boolean;
  readonly rigid: boolean;
  /** γ, 0 where the inertia of the blades plays no part [1]. */
  readonly lockNumber: number;
  /** e [1]. */
  readonly hingeOffset: number;
  /** ν² − 1 [1]. */
  readonly surplus: number;
  /** The part of ν² that is a spring's [1]. */
  readonly spring: number;
  /** tan δ₃ [1]. */
  readonly coupling: number;
}

const unarticulated = { cones: false, lockNumber: 0, hingeOffset: 0, surplus: 0, spring: 0, coupling: 0 } as const;

/**
 * The flap balance of an articulation.
 *
 *     ν² = 1 + (3/2) e/(1 − e) + K/(I Ω²)
 *
 * for blades of even mass from the hinge outwards. A flap frequency below that of the hinge alone is taken as that.
 *
 * @param rotationRate Ω, not 0 [rad/s]
 * @source johnson-1980, ch. 5, flapping with hinge offset and spring, unchecked
 */
export function flapStiffness(articulation: Articulation, rotationRate: number): FlapStiffness {
  if (articulation.kind === "rigid") return { ...unarticulated, rigid: true };
  const coupling = articulation.pitchFlapCoupling ?? 0;
  if (articulation.kind === "teetering") return { ...unarticulated, rigid: false, coupling };
  const { lockNumber, hingeOffset = 0 } = articulation;
  const centrifugal = (1.5 * hingeOffset) / (1 - hingeOffset);
  const spring =
    articulation.kind === "hinged"
      ? ((articulation.restFrequency ?? 0) / rotationRate) ** 2
      : Math.max(articulation.flapFrequency ** 2 - 1 - centrifugal, 0);
  return { cones: true, rigid: false, lockNumber, hingeOffset, surplus: centrifugal + spring, spring, coupling };
}

/** Flapping relative to the plane normal to the shaft. */
export interface FlapAngles {
  /** a₁: tip-path plane behind that plane [rad]. */
  readonly longitudinal: number;
  /** b₁: tip-path plane down on the advancing side [rad]. */
  readonly lateral: number;
}

/**
 * Flapping from pitch relative to the tip-path plane and cyclic pitch at the swashplate.
 *
 *     θ_1s = θ_1s,cyclic + b₁ tan δ₃ − a₁      θ_1c = θ_1c,cyclic + a₁ tan δ₃ + b₁
 *
 * @derivation equivalence of flapping and feathering, with the pitch that coupling takes off
 */
export function flapAngles(
  pitch: { readonly theta1c: number; readonly theta1s: number },
  cyclic: { readonly cosine: number; readonly sine: number },
  coupling: number,
): FlapAngles {
  const back = cyclic.sine - pitch.theta1s;
  const side = pitch.theta1c - cyclic.cosine;
  const share = 1 + coupling * coupling;
  return { longitudinal: (back + coupling * side) / share, lateral: (side - coupling * back) / share };
}
