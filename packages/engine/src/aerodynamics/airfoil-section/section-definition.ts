/** What a section is: one of the house's tables, a law from a few numbers, or a table given by the user. */
export type SectionDefinition = BuiltInSection | GenericSection | CamberedSection | TableSection;

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

/**
 * A section from its thickness and camber, with drag and largest lift by Reynolds number. What is not given follows from the
 * camber.
 */
export interface CamberedSection {
  readonly kind: "cambered";
  /** Largest thickness over chord, 0.01 to 0.25 [1]. */
  readonly thickness: number;
  /** Largest height of the mean line over chord, 0 to 0.12 [1]. */
  readonly camber: number;
  /** [rad]. */
  readonly zeroLiftAngle?: number | undefined;
  /** Lift coefficient of least drag [1]. */
  readonly designLift?: number | undefined;
  /** Of attached flow about the quarter chord, nose up positive [1]. */
  readonly momentCoefficient?: number | undefined;
  /** Largest lift coefficient at a Reynolds number of 100 000 [1]. */
  readonly largestLift?: number | undefined;
  /** Added to the drag coefficient at every angle [1]. */
  readonly dragIncrement: number;
}

/** A section by measured or computed polars, completed over the full circle where they end. */
export interface TableSection {
  readonly kind: "table";
  /** Where it comes from, for messages. */
  readonly name: string;
  /** At least one, by rising Reynolds, then Mach number. */
  readonly polars: readonly SectionPolar[];
  /** Added to the drag coefficient at every angle [1]. */
  readonly dragIncrement: number;
}

/** Coefficients over angle at one Reynolds and Mach number. */
export interface SectionPolar {
  /** 0 where the table does not depend on it. */
  readonly reynoldsNumber: number;
  /** 0 where the table does not depend on it. */
  readonly machNumber: number;
  /** Rising, from −π to π; at least three [rad]. */
  readonly angles: readonly number[];
  readonly lift: readonly number[];
  readonly drag: readonly number[];
  /** Nose up about the quarter chord; absent where the table has none. */
  readonly moment?: readonly number[] | undefined;
}
