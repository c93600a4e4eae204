/** A vector in body axes: x forward, y right, z down. */
export type BodyVector = readonly [number, number, number];

/** What motion asks of a rotor, beyond its loads. */
export interface MovingRotor {
  readonly part: {
    readonly radius: number;
    /** About the shaft [kg m²]. */
    readonly polarInertia: number;
    readonly inducedPowerFactor: number;
  };
  /** Induced velocity near the ground over that far from it [1]. */
  readonly groundFactor: number;
}

/** Loads of a rotor that its own states move by. */
export interface MovingRotorLoads {
  /** That the shaft must give [N m]. */
  readonly torque: number;
  readonly thrust: number;
  readonly ct: number;
  /** In and through the disc, over tip speed; through it from above positive. */
  readonly advanceRatio: number;
  readonly axialInflow: number;
  /** Zero where the disc stands still in its wind, as angles. */
  readonly flapResidualCosine: number;
  readonly flapResidualSine: number;
  readonly coningResidual: number;
}

export interface MovingLoads {
  /** Without weight, body axes [N]. */
  readonly force: BodyVector;
  /** About the centre of gravity [N m]. */
  readonly moment: BodyVector;
  readonly rotors: readonly MovingRotorLoads[];
  /** Drawn from the pack [W]. */
  readonly electricPower: number;
}

export interface MovingControl {
  readonly id: string;
  readonly minimum: number;
  readonly maximum: number;
  /** Per second; absent: at once. */
  readonly rate?: number;
}

/**
 * An aircraft as its motion sees it: mass, inertia, controls, and loads in any state. The airframe of an aircraft file is one; anything else
 * with these few things moves by the same equations.
 */
export interface MovingAircraft {
  readonly mass: number;
  /** About the centre of gravity, row by row, body axes [kg m²]. */
  readonly inertia: Float64Array;
  readonly controls: readonly MovingControl[];
  readonly rotors: readonly MovingRotor[];
  /**
   * @param motion velocity through the air [m/s] and rates [rad/s], body axes
   * @param controls in the order of `controls`, SI
   * @param rotorStates five per rotor: tip speed [m/s], induced velocity over tip speed, disc back, disc right, coning [rad]
   * @param running per drive line: turns under its motors
   * @param driveTorques that the shafts really pass on [N m]
   */
  evaluate(
    motion: { readonly velocity: BodyVector; readonly rates: BodyVector },
    controls: Float64Array,
    rotorStates: Float64Array,
    running: readonly boolean[],
    driveTorques?: Float64Array,
  ): MovingLoads;
}

/** Numbers per rotor in `rotorStates`. */
export const rotorStateCount = 5;
