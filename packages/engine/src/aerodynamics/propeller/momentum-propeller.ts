/** A propeller reduced to momentum theory with loss factors and a linear thrust law. SI. */
export interface MomentumPropeller {
  readonly diameter: number;
  readonly inducedFactor: number;
  readonly profileEfficiency: number;
  readonly reverseFigureOfMerit: number;
  readonly thrustCoefficient: number;
  readonly zeroThrustAdvanceRatio: number;
  readonly reverseThrustCoefficient: number;
}

export interface PropellerState {
  /** At the shaft, never negative [W]. */
  readonly shaftPower: number;
  /** Turns per second of the shaft times 2π, sign dropped [rad/s]. */
  readonly rotationRate: number;
}

/** Thrust below which running forwards passes smoothly into running backwards [N]: keeps the rate law free of a jump. */
const reversalThrust = 0.5;

/**
 * Shaft power and rotation rate of one propeller that gives `thrust` [N] at `airspeed` [m/s] in air of `density` [kg/m³].
 *
 * Forwards: T = 2ρA(V+v)v, P = T(V + f v)/η. Backwards: thrust up to the drag of a windmilling propeller ½qA costs
 * nothing at the shaft; what exceeds it costs Tₑ^1.5/√(2ρA)/FM. Rotation rate forwards from T = c ρ n² D⁴ (1 − J/J₀),
 * backwards from T = −c_r ρ n² D⁴; between 0 and −0.5 N the two rates pass into each other smoothly (own choice, so that
 * a propeller at rest and one at zero thrust are not two answers to one question).
 *
 * @source leishman-2006, ch. 2, momentum theory in axial climb, unchecked
 */
export function propellerState(
  propeller: MomentumPropeller,
  air: { readonly density: number; readonly airspeed: number },
  thrust: number,
): PropellerState {
  const { density, airspeed } = air;
  const diameter = propeller.diameter;
  const area = (Math.PI * diameter * diameter) / 4;
  const forwardAtZero = airspeed / (propeller.zeroThrustAdvanceRatio * diameter);
  if (thrust >= 0) {
    const half = airspeed / 2;
    const induced = thrust / (2 * density * area) / (half + Math.sqrt(half * half + thrust / (2 * density * area)) || 1);
    const shaftPower = (thrust * (airspeed + propeller.inducedFactor * induced)) / propeller.profileEfficiency;
    const turns =
      forwardAtZero / 2 + Math.sqrt((forwardAtZero * forwardAtZero) / 4 + thrust / (propeller.thrustCoefficient * density * diameter ** 4));
    return { shaftPower, rotationRate: 2 * Math.PI * turns };
  }
  const back = -thrust;
  const windmillDrag = 0.25 * density * airspeed * airspeed * area;
  const charged = Math.max(0, back - windmillDrag);
  const shaftPower = charged ** 1.5 / Math.sqrt(2 * density * area) / propeller.reverseFigureOfMerit;
  const reverseTurns = Math.sqrt(back / (propeller.reverseThrustCoefficient * density * diameter ** 4));
  const share = Math.min(1, back / reversalThrust);
  const smooth = share * share * (3 - 2 * share);
  return { shaftPower, rotationRate: 2 * Math.PI * (forwardAtZero * (1 - smooth) + reverseTurns * smooth) };
}
