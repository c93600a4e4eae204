import { type SectionLaw, sectionLaw } from "../airfoil-section/index.ts";
import { type RotorMesh, rotorMesh } from "./rotor-mesh.ts";
import type { RotorModel } from "./rotor-model.ts";
import { type SectionBlend, sectionBlends } from "./section-blend.ts";

/**
 * What a sweep is given, in axes of the tip-path plane: x aft, azimuth 0 aft and counter-clockwise seen from above, flow down
 * through the disc positive. All angles in radians, all velocities over tip speed unless said otherwise. One object is meant to be
 * reused from sweep to sweep.
 */
export interface RotorSweepState {
  /** μ = V cos α/ΩR, in the plane [1]. */
  mu: number;
  /** λ_c = −V sin α/ΩR, free stream down through the plane [1]. */
  lambdaC: number;
  /** λ_i, mean induced velocity [1]. */
  lambdaI: number;
  /** Pitch at 0.75 R [rad]. */
  theta0: number;
  /** Pitch relative to the tip-path plane, cosine part: lateral flap b₁ when no cyclic is applied [rad]. */
  theta1c: number;
  /** The sine part: −a₁ (disc forward of the plane of no feathering) when no cyclic is applied [rad]. */
  theta1s: number;
  /** β₀ [rad]. */
  coning: number;
  /** ΩR [m/s]. */
  tipSpeed: number;
  /** [m/s]. */
  speedOfSound: number;
  /** ν [m²/s]. */
  kinematicViscosity: number;
}

/** What a sweep finds: coefficients on ρ π R² (ΩR)² (and R), in axes of the tip-path plane. */
export interface RotorSweepResult {
  /** Thrust along the normal of the plane. */
  ct: number;
  /** Torque that the shaft must give. */
  cq: number;
  /** Force aft in the plane. */
  ch: number;
  /** Force in the plane towards the advancing side. */
  cy: number;
  /** Mean over the turn of flap moment times cos ψ, all blades: 0 in steady flapping. */
  momentCos: number;
  /** The same with sin ψ. */
  momentSin: number;
  /** Mean flap moment, all blades. */
  meanFlapMoment: number;
  /** Power of the induced velocity. */
  cpInduced: number;
}

/**
 * Numbers per ring in `RingBuffers.loads`, in this order: C_T, C_Q, C_H, C_Y, moment cos, moment sin, mean moment, induced power, and
 * the part of C_Q that is lift's.
 */
export const ringLoadWidth = 9;

/** What rings have of their own, innermost first. Velocities over the speed that coefficients are built on. */
export interface RingBuffers {
  readonly sections: readonly SectionBlend[];
  /** λ_i of each ring, down positive [1]. */
  readonly induced: Float64Array;
  /** w of each ring, in the sense of the rotation positive [1]. */
  readonly swirl: Float64Array;
  /** 3.1 (c/r)² of each ring, 0 without stall delay [1]. */
  readonly stallDelay: Float64Array;
  /** Slope of each ring's momentum over its λ_i as last met, from which a near answer starts. */
  readonly slopes: Float64Array;
  /** C_T of the disc as last balanced where its rings share it; 0 where they did not [1]. */
  discThrust: number;
  /** Flow through the disc that a hinge off the shaft adds to a flapping blade: plungeCosine cos ψ + plungeSine sin ψ [1]. */
  plungeCosine: number;
  plungeSine: number;
  /** `ringLoadWidth` shares of the rotor's coefficients per ring, means over the turn. */
  readonly loads: Float64Array;
}

/** Buffers and tables of one rotor. Not to be shared between threads; one sweep overwrites the last one's result. */
export interface RotorWorkspace {
  readonly model: RotorModel;
  readonly mesh: RotorMesh;
  readonly law: SectionLaw;
  /** 0 uniform, 1 Drees, 2 Pitt and Peters. */
  readonly inflowKind: number;
  /** 0 off, 1 friction, 2 resultant. */
  readonly radialKind: number;
  readonly prandtl: boolean;
  /** Momentum balanced ring by ring. */
  readonly annular: boolean;
  /** The sweep has to go ring by ring: annular inflow, hinges off the shaft, stall delay, or sections that change along the blade. */
  readonly byRings: boolean;
  readonly rings: RingBuffers;
  /**
   * Flow down through the disc, at its edge, of a disc that turns in pitch and roll: cosine and sine part over azimuth, over tip
   * speed; −q/Ω and −p/Ω with a wind from ahead. 0 unless somebody sets them [1].
   */
  readonly turning: { cosine: number; sine: number };
  readonly state: RotorSweepState;
  readonly out: RotorSweepResult;
}

/** Of the chord over radius squared: how far rotation keeps the flow of a blade from separating [1]. @source snel-1993, from memory */
const stallDelayFactor = 3.1;

/** Tables and buffers for a rotor. @derivation not a formula */
export function createRotorWorkspace(model: RotorModel): RotorWorkspace {
  // Numbers start as fractions so that the engine that runs this stores them unboxed from the beginning.
  const half = 0.5;
  const mesh = rotorMesh(model);
  const law = sectionLaw(model.section);
  const annular = model.inflowBalance === "annular";
  const hingeOffset = "hingeOffset" in model.articulation ? (model.articulation.hingeOffset ?? 0) : 0;
  const sections = sectionBlends(model, mesh, law);
  return {
    model,
    mesh,
    law,
    inflowKind: ["uniform", "drees", "pitt-peters"].indexOf(model.inflow),
    radialKind: ["off", "friction", "resultant"].indexOf(model.radialFlow),
    prandtl: model.tipLoss.kind === "prandtl",
    annular,
    byRings:
      annular || hingeOffset > 0 || model.stallDelay === true || sections.some((blend) => blend.inner !== law || blend.outerShare > 0),
    rings: {
      sections,
      induced: new Float64Array(model.radialElements),
      swirl: new Float64Array(model.radialElements),
      stallDelay: mesh.radiusFraction.map((x, i) =>
        model.stallDelay ? stallDelayFactor * ((mesh.chord[i] ?? 0) / (x * model.radius)) ** 2 : 0,
      ),
      slopes: new Float64Array(model.radialElements),
      discThrust: 0,
      plungeCosine: 0,
      plungeSine: 0,
      loads: new Float64Array(model.radialElements * ringLoadWidth),
    },
    turning: { cosine: 0, sine: 0 },
    state: emptySweepState(),
    out: {
      ct: half,
      cq: half,
      ch: half,
      cy: half,
      momentCos: half,
      momentSin: half,
      meanFlapMoment: half,
      cpInduced: half,
    },
  };
}

function emptySweepState(): RotorSweepState {
  const half = 0.5;
  return {
    mu: half,
    lambdaC: half,
    lambdaI: half,
    theta0: half,
    theta1c: half,
    theta1s: half,
    coning: half,
    tipSpeed: half,
    speedOfSound: half,
    kinematicViscosity: half,
  };
}
