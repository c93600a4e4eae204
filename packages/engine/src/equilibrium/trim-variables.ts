/** Unknowns of the reduced trim in the order of the solver's vector, each scaled to the order of one to ten. */
export const variable = {
  /** Tip-path plane to the horizontal, positive tilted back [deg]. */
  discAngle: 0,
  /** Tip speed [10 m/s]. */
  tipSpeed: 1,
  /** Blade pitch at 0.75 R [deg]. */
  collective: 2,
  /** Wing chord to the horizontal [deg]. */
  wingAngle: 3,
  /** Sum of propeller thrusts [10 N]; in a glide the path angle [deg]. */
  thrustSum: 4,
  /** Right minus left propeller thrust [10 N]. */
  thrustDifference: 5,
  /** Fin lift coefficient [0.1]. */
  finLift: 6,
  /** Induced velocity over tip speed [0.05]. */
  inducedInflow: 7,
  /** Pitch harmonics relative to the tip-path plane [0.1 rad]. */
  pitchCosine: 8,
  pitchSine: 9,
} as const;

export const variableCount = 10;

/** The unknowns in SI and radians. */
export interface TrimState {
  readonly discAngle: number;
  readonly tipSpeed: number;
  readonly collective: number;
  readonly wingAngle: number;
  readonly thrustSum: number;
  readonly thrustDifference: number;
  readonly finLiftCoefficient: number;
  readonly inducedInflow: number;
  readonly pitchCosine: number;
  readonly pitchSine: number;
  /** Path angle to the horizontal, positive climbing. */
  readonly pathAngle: number;
}

const degree = Math.PI / 180;

/** Reads the solver's vector. In a glide the fifth entry is the path angle and the propellers give nothing. */
export function trimState(x: ArrayLike<number>, glide: boolean, pathAngle: number): TrimState {
  const at = (index: number) => x[index] as number;
  return {
    discAngle: at(variable.discAngle) * degree,
    tipSpeed: at(variable.tipSpeed) * 10,
    collective: at(variable.collective) * degree,
    wingAngle: at(variable.wingAngle) * degree,
    thrustSum: glide ? 0 : at(variable.thrustSum) * 10,
    thrustDifference: glide ? 0 : at(variable.thrustDifference) * 10,
    finLiftCoefficient: at(variable.finLift) * 0.1,
    inducedInflow: at(variable.inducedInflow) * 0.05,
    pitchCosine: at(variable.pitchCosine) * 0.1,
    pitchSine: at(variable.pitchSine) * 0.1,
    pathAngle: glide ? at(variable.thrustSum) * degree : pathAngle,
  };
}

/** Writes a state into the solver's vector. */
export function trimVector(state: TrimState, glide: boolean): Float64Array {
  const x = new Float64Array(variableCount);
  x[variable.discAngle] = state.discAngle / degree;
  x[variable.tipSpeed] = state.tipSpeed / 10;
  x[variable.collective] = state.collective / degree;
  x[variable.wingAngle] = state.wingAngle / degree;
  x[variable.thrustSum] = glide ? state.pathAngle / degree : state.thrustSum / 10;
  x[variable.thrustDifference] = state.thrustDifference / 10;
  x[variable.finLift] = state.finLiftCoefficient * 10;
  x[variable.inducedInflow] = state.inducedInflow * 20;
  x[variable.pitchCosine] = state.pitchCosine * 10;
  x[variable.pitchSine] = state.pitchSine * 10;
  return x;
}

/** Where the solver begins: a vector of unknowns, and the curvature found at a neighbouring solution of the same mode. */
export interface TrimStart {
  readonly x: Float64Array;
  readonly hessian?: Float64Array;
}
