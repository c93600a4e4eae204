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

/**
 * Within this thrust of zero [N] running forwards passes smoothly into running backwards (own choice): power has a kink there
 * and rate a jump, of at most a few watts, which no real propeller and no solver cares for.
 */
const reversalThrust = 0.5;
const differenceStep = 1e-4;

interface Flow {
  readonly density: number;
  readonly airspeed: number;
}

/**
 * Shaft power and rotation rate of one propeller that gives `thrust` [N] at `airspeed` [m/s] in air of `density` [kg/m³].
 *
 * Forwards: T = 2ρA(V+v)v, P = T(V + f v)/η. Backwards: thrust up to the drag of a windmilling propeller ½qA costs
 * nothing at the shaft; what exceeds it costs Tₑ^1.5/√(2ρA)/FM. Rotation rate forwards from T = c ρ n² D⁴ (1 − J/J₀),
 * backwards from T = −c_r ρ n² D⁴. Between ±0.5 N a cubic joins both.
 *
 * @source leishman-2006, ch. 2, momentum theory in axial climb, unchecked
 */
export function propellerState(propeller: MomentumPropeller, air: Flow, thrust: number): PropellerState {
  if (thrust >= reversalThrust) return pulling(propeller, air, thrust);
  if (thrust <= -reversalThrust) return pushing(propeller, air, thrust);
  const high = pulling(propeller, air, reversalThrust);
  const higher = pulling(propeller, air, reversalThrust + differenceStep);
  const low = pushing(propeller, air, -reversalThrust);
  const lower = pushing(propeller, air, -reversalThrust - differenceStep);
  const at = (thrust + reversalThrust) / (2 * reversalThrust);
  const join = (key: keyof PropellerState) =>
    Math.max(0, hermite(at, low[key], (low[key] - lower[key]) / differenceStep, high[key], (higher[key] - high[key]) / differenceStep));
  return { shaftPower: join("shaftPower"), rotationRate: join("rotationRate") };
}

/** Cubic through both ends with their slopes per newton, `at` from 0 to 1. */
function hermite(at: number, low: number, lowSlope: number, high: number, highSlope: number): number {
  const square = at * at;
  const cube = square * at;
  const span = 2 * reversalThrust;
  return (
    low * (2 * cube - 3 * square + 1) +
    lowSlope * span * (cube - 2 * square + at) +
    high * (3 * square - 2 * cube) +
    highSlope * span * (cube - square)
  );
}

function pulling(propeller: MomentumPropeller, { density, airspeed }: Flow, thrust: number): PropellerState {
  const { diameter } = propeller;
  const area = (Math.PI * diameter * diameter) / 4;
  const half = airspeed / 2;
  const induced = thrust / (2 * density * area) / (half + Math.sqrt(half * half + thrust / (2 * density * area)));
  const shaftPower = (thrust * (airspeed + propeller.inducedFactor * induced)) / propeller.profileEfficiency;
  const atZero = airspeed / (propeller.zeroThrustAdvanceRatio * diameter);
  const turns = atZero / 2 + Math.sqrt((atZero * atZero) / 4 + thrust / (propeller.thrustCoefficient * density * diameter ** 4));
  return { shaftPower, rotationRate: 2 * Math.PI * turns };
}

function pushing(propeller: MomentumPropeller, { density, airspeed }: Flow, thrust: number): PropellerState {
  const { diameter } = propeller;
  const area = (Math.PI * diameter * diameter) / 4;
  const back = -thrust;
  const windmillDrag = 0.25 * density * airspeed * airspeed * area;
  const charged = Math.max(0, back - windmillDrag);
  const shaftPower = charged ** 1.5 / Math.sqrt(2 * density * area) / propeller.reverseFigureOfMerit;
  const turns = Math.sqrt(back / (propeller.reverseThrustCoefficient * density * diameter ** 4));
  return { shaftPower, rotationRate: 2 * Math.PI * turns };
}
