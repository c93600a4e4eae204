import type { SectionDefinition } from "../airfoil-section/index.ts";
import { annularLoads, bladeAt, createRotorWorkspace, type RotorModel } from "../rotor/index.ts";
import type { PropellerSource } from "./propeller-source.ts";

/** A place along the blade; chord and pitch run straight between places. */
export interface PropellerStation {
  /** x [1]. */
  readonly radiusFraction: number;
  /** [m]. */
  readonly chord: number;
  /** β, chord to the plane of the disc [rad]. */
  readonly pitchAngle: number;
  /** The section here, when it is not the propeller's. */
  readonly section?: SectionDefinition;
}

/** A propeller by its blades. */
export interface PropellerBlades {
  readonly diameter: number;
  readonly bladeCount: number;
  /** Inner end of the blades over radius [1]. */
  readonly rootCutout: number;
  /** At least one, rising. */
  readonly stations: readonly PropellerStation[];
  readonly section: SectionDefinition;
  /** Turned about their own axis by this, all blades alike [rad]. */
  readonly pitchChange: number;
  readonly stallDelay: boolean;
  readonly swirl: boolean;
  readonly rootLoss: boolean;
  readonly radialElements: number;
  readonly azimuths: number;
}

/** The same blades as a rotor that does not flap, with momentum balanced ring by ring. @derivation names */
export function propellerRotor(blades: PropellerBlades): RotorModel {
  const radius = blades.diameter / 2;
  return {
    radius,
    bladeCount: blades.bladeCount,
    rootCutout: blades.rootCutout,
    stations: blades.stations.map(({ radiusFraction, chord, pitchAngle, section }) => ({
      radiusFraction,
      chord,
      twist: pitchAngle,
      ...(section && { section }),
    })),
    precone: 0,
    articulation: { kind: "teetering" },
    section: blades.section,
    tipLoss: { kind: "prandtl" },
    inducedPowerFactor: 1,
    inflow: "drees",
    inflowBalance: "annular",
    rootLoss: blades.rootLoss,
    swirl: blades.swirl,
    stallDelay: blades.stallDelay,
    radialFlow: "resultant",
    azimuths: blades.azimuths,
    radialElements: blades.radialElements,
  };
}

/**
 * A propeller by its blades: the elements and rings of a rotor, in the propeller's axes.
 *
 * @source leishman-2006, ch. 3, blade element momentum theory with tip loss, unchecked
 */
export function bladePropeller(blades: PropellerBlades): PropellerSource {
  const model = propellerRotor(blades);
  const workspace = createRotorWorkspace(model);
  const reference = bladeAt(model, 0.75);
  const collective = reference.twist + blades.pitchChange;
  return {
    kind: "blades",
    diameter: blades.diameter,
    referenceChord: reference.chord,
    loadsAt: ({ rotationRate, airspeed, inflowAngle, air }) => {
      const found = annularLoads(workspace, { airspeed, discAngle: Math.abs(inflowAngle) - Math.PI / 2, rotationRate, collective, air });
      if (found.kind !== "solved") return { kind: "none", reason: found.reason };
      return {
        kind: "solved",
        thrust: found.thrust,
        torque: found.torque,
        normalForce: found.aftForce,
        sideForce: found.sideForce,
        pitchingMoment: found.pitchMoment,
        yawingMoment: found.rollMoment,
        inducedVelocity: found.inducedVelocity,
        inducedPower: found.inducedPower,
        rings: found.rings,
        extrapolated: [],
      };
    },
  };
}
