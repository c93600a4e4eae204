import type { SectionDefinition } from "../airfoil-section/index.ts";
import type { Articulation } from "./articulation.ts";

/** A place along the blade; pitch and chord run straight between places and stay level beyond the last ones. */
export interface BladeStation {
  /** Distance from the shaft over rotor radius, 0 to 1 [1]. */
  readonly radiusFraction: number;
  /** [m]. */
  readonly chord: number;
  /** Built-in pitch, nose up positive; only differences to 0.75 R count, since collective is the pitch there [rad]. */
  readonly twist: number;
  /** The section here, when it is not the rotor's; coefficients run straight between stations too. */
  readonly section?: SectionDefinition;
}

/** How lift is lost at the blade tip. */
export type TipLoss =
  /** No lift outboard of this fraction of the radius; drag stays. */
  | { readonly kind: "lift-cutoff"; readonly liftRadiusFraction: number }
  /**
   * Prandtl's function of the local inflow angle: with mean inflow on the lift of every element, with annular inflow on the
   * momentum of every ring.
   */
  | { readonly kind: "prandtl" };

/** How induced velocity varies over the disc. */
export type InflowDistribution = "uniform" | "drees" | "pitt-peters";

/**
 * What momentum is balanced over.
 *
 * `mean`: one induced velocity for the whole disc. `annular`: one for each ring, from the ring's own thrust.
 */
export type InflowBalance = "mean" | "annular";

/**
 * What the flow along the blade does.
 *
 * `off`: nothing. `friction`: the section's drag acts along the span too, in proportion to the spanwise velocity.
 * `resultant`: the drag of attached flow acts along the whole velocity, spanwise part included, and grows with it; the drag of
 * separated flow keeps to the flow across the blade.
 */
export type RadialFlow = "off" | "friction" | "resultant";

/** A rotor as the blade element computation sees it. Turns counter-clockwise seen from above. */
export interface RotorModel {
  /** R [m]. */
  readonly radius: number;
  readonly bladeCount: number;
  /** Inner end of the blades over radius [1]. */
  readonly rootCutout: number;
  /** At least one, rising. */
  readonly stations: readonly BladeStation[];
  /** Upward angle built into the blades, or at which a flap spring rests [rad]; without effect on hinges without spring. */
  readonly precone: number;
  readonly articulation: Articulation;
  readonly section: SectionDefinition;
  /**
   * Mach number of the tip, Ω R/a, at which section tables that know several Mach numbers are read: every element at its share of it.
   * Absent, their lowest is taken.
   */
  readonly sectionTipMach?: number;
  readonly tipLoss: TipLoss;
  /** κ of Glauert's formula, 1 for the ideal disc [1]. */
  readonly inducedPowerFactor: number;
  readonly inflow: InflowDistribution;
  /** @defaultValue "mean" */
  readonly inflowBalance?: InflowBalance;
  /** Prandtl's function at the root end too; only with annular inflow and Prandtl's tip loss. @defaultValue false */
  readonly rootLoss?: boolean;
  /** Velocity induced around the shaft, from the torque of each ring; only with annular inflow. @defaultValue false */
  readonly swirl?: boolean;
  /** Rotation keeps the flow near the root from separating: more lift beyond stall there. @defaultValue false */
  readonly stallDelay?: boolean;
  readonly radialFlow: RadialFlow;
  /** Blade positions per turn. */
  readonly azimuths: number;
  /** Elements per blade. */
  readonly radialElements: number;
}

/** Chord and twist at a fraction of the radius [m], [rad]. @derivation linear interpolation */
export function bladeAt(model: RotorModel, radiusFraction: number): { readonly chord: number; readonly twist: number } {
  const stations = model.stations;
  const above = stations.findIndex((station) => station.radiusFraction >= radiusFraction);
  const outer = above < 0 ? stations[stations.length - 1] : stations[above];
  const inner = above <= 0 ? outer : stations[above - 1];
  if (!outer || !inner) throw new Error("a rotor needs at least one blade station");
  const span = outer.radiusFraction - inner.radiusFraction;
  const share = span > 0 ? Math.min((radiusFraction - inner.radiusFraction) / span, 1) : 0;
  return {
    chord: inner.chord + (outer.chord - inner.chord) * share,
    twist: inner.twist + (outer.twist - inner.twist) * share,
  };
}
