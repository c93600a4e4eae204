/** What a blade section is: one of the house's tables, or a law from five numbers. */
export type SectionDefinition = BuiltInSection | GenericSection;

/** A table over the full circle, by Reynolds number; Mach number by Prandtl and Glauert's factor. */
export interface BuiltInSection {
  readonly kind: "built-in";
  readonly name: BuiltInSectionName;
  /** Added to the drag coefficient at every angle: roughness, fabric, joints [1]. */
  readonly dragIncrement: number;
}

export const builtInSectionNames = ["naca-0012", "naca-0015"] as const;
export type BuiltInSectionName = (typeof builtInSectionNames)[number];

/**
 * A symmetric section from five numbers; Mach number by Prandtl and Glauert's factor, no Reynolds number.
 *
 * Attached: c_l = a α/√(1 − M²), c_d = c_d0 + c_d1 α + c_d2 α², with α signed as written, so c_d1 ≠ 0 puts the lowest drag
 * to one side (as camber does) while the lift stays symmetric.
 */
export interface GenericSection {
  readonly kind: "generic";
  /** a [1/rad]. */
  readonly liftSlope: number;
  /** Drag coefficient at zero angle [1]. */
  readonly cd0: number;
  /** [1/rad]. */
  readonly cd1: number;
  /** [1/rad²]. */
  readonly cd2: number;
  /** Angle at which the flow is half separated, both signs [rad]. */
  readonly stallAngle: number;
}
