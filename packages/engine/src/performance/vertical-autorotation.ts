import { controlRange } from "../aircraft/index.ts";
import { airframeBalance, type FlightConditions, type TrimRotor, tipSpeedRange } from "../equilibrium/index.ts";
import { lineMinimum } from "../numerics/index.ts";

/** Steady vertical descent with the rotor turning free. */
export interface VerticalAutorotation {
  /** [m/s] */
  readonly descentRate: number;
  readonly tipSpeed: number;
  /** At 0.75 R [rad]. */
  readonly collective: number;
  readonly stallMargin: number;
}

export type VerticalAutorotationOutcome =
  | { readonly kind: "descends"; readonly autorotation: VerticalAutorotation }
  | { readonly kind: "no-equilibrium"; readonly reason: string };

const collectiveStep = (1 * Math.PI) / 180;
const collectiveTolerance = (0.02 * Math.PI) / 180;
/** Mach number enters through tip speed: one pass while collectives are compared, more at the answer. */
const roughPasses = 1;
const finePasses = 6;
const fastestInflow = 0.4;
const inflowStep = 0.012;

/**
 * The slowest steady vertical descent over the collectives that the controls allow: shaft torque zero, forces balanced,
 * tip speed within its limits, stall margin kept. Axial flow, so no flapping.
 *
 * Every aerodynamic force grows with the square of tip speed at fixed flow ratios, so the balance gives the tip speed
 * directly once the free-turning inflow is known; the small effect of Mach number is taken in by repeating.
 */
export function verticalAutorotation(conditions: FlightConditions, rotor: TrimRotor): VerticalAutorotationOutcome {
  const point = { mode: "glide", forwardSpeed: 0, climbRate: 0 } as const;
  const allowed = tipSpeedRange(conditions, point);
  const collective = controlRange(conditions.aircraft.rotorControls.clutchOpen.collective, 0, conditions.controls);
  const floor = conditions.aircraft.rotor.stallMarginFloor;
  let reason = "the rotor does not autorotate at any collective";
  const permitted = (theta: number, passes: number): VerticalAutorotation | undefined => {
    const found = descentAt(conditions, rotor, theta, (allowed.minimum + allowed.maximum) / 2, passes);
    if (found === undefined) return undefined;
    if (found.tipSpeed < allowed.minimum) reason = "rotor speed below its lowest permitted";
    else if (found.tipSpeed > allowed.maximum) reason = "rotor speed above its highest permitted";
    else if (found.stallMargin < floor) reason = "stall margin";
    else return found;
    return undefined;
  };
  const count = Math.max(1, Math.round((collective.maximum - collective.minimum) / collectiveStep) + 1);
  const at = (i: number) =>
    count === 1 ? collective.minimum : collective.minimum + (i * (collective.maximum - collective.minimum)) / (count - 1);
  let best: VerticalAutorotation | undefined;
  for (let i = 0; i < count; i++) {
    const found = permitted(at(i), roughPasses);
    if (found && (best === undefined || found.descentRate < best.descentRate)) best = found;
  }
  if (best === undefined) return { kind: "no-equilibrium", reason };
  const coarse = best;
  if (count > 1) {
    lineMinimum(
      (theta) => {
        const found = permitted(theta, roughPasses);
        if (found === undefined) return Number.POSITIVE_INFINITY;
        if (found.descentRate < (best as VerticalAutorotation).descentRate) best = found;
        return found.descentRate;
      },
      Math.max(collective.minimum, coarse.collective - collectiveStep),
      Math.min(collective.maximum, coarse.collective + collectiveStep),
      collectiveTolerance,
    );
  }
  const settled = permitted(best.collective, finePasses);
  return settled ? { kind: "descends", autorotation: settled } : { kind: "no-equilibrium", reason };
}

function descentAt(
  conditions: FlightConditions,
  rotor: TrimRotor,
  collective: number,
  firstTipSpeed: number,
  passes: number,
): VerticalAutorotation | undefined {
  let tipSpeed = firstTipSpeed;
  for (let pass = 1; pass <= passes; pass++) {
    const inflow = freeTurningInflow(rotor, collective, tipSpeed);
    if (inflow === undefined) return undefined;
    const loads = rotor.loads(tipSpeed);
    const state = restingState(conditions, collective, tipSpeed);
    const balance = airframeBalance(conditions, { forward: 0, climb: inflow * tipSpeed }, state, loads, true);
    const lift = balance.up + balance.weight;
    if (!(lift > 0)) return undefined;
    const next = tipSpeed * Math.sqrt(balance.weight / lift);
    const settled = pass === passes || Math.abs(next - tipSpeed) < 1e-6 * tipSpeed;
    tipSpeed = next;
    if (settled) {
      const largest = rotor.searchedStallLimit(0, inflow, tipSpeed);
      return { descentRate: -inflow * tipSpeed, tipSpeed, collective, stallMargin: largest.thrust / loads.ct };
    }
  }
  return undefined;
}

function restingState(conditions: FlightConditions, collective: number, tipSpeed: number) {
  const incidence = controlRange(conditions.aircraft.wing.incidence, 0, "schedule");
  return {
    discAngle: 0,
    tipSpeed,
    collective,
    wingAngle: incidence.minimum,
    thrustSum: 0,
    thrustDifference: 0,
    finLiftCoefficient: 0,
    inducedInflow: 0,
    pitchCosine: 0,
    pitchSine: 0,
    pathAngle: -Math.PI / 2,
  };
}

/** Axial flow λ_c < 0 at which the shaft torque first turns from taking to giving, from hover downwards; leaves that sweep held. */
function freeTurningInflow(rotor: TrimRotor, collective: number, tipSpeed: number): number | undefined {
  const torque = (lambdaC: number): number | undefined => {
    const state = { ...blankState, collective, tipSpeed };
    const settled = rotor.settle(state, 0, lambdaC);
    if (settled === undefined) return undefined;
    rotor.sweep({ ...state, ...settled }, 0, lambdaC);
    return rotor.loads(tipSpeed).torque;
  };
  let before = torque(0);
  for (let lambdaC = -inflowStep; lambdaC > -fastestInflow; lambdaC -= inflowStep) {
    const here = torque(lambdaC);
    if (before !== undefined && here !== undefined && before > 0 && here <= 0) return refine(torque, lambdaC + inflowStep, lambdaC);
    before = here;
  }
  return undefined;
}

function refine(torque: (lambdaC: number) => number | undefined, driven: number, driving: number): number | undefined {
  let high = driven;
  let low = driving;
  let atHigh = torque(high);
  let atLow = torque(low);
  for (let step = 0; step < 60 && high - low > 1e-9; step++) {
    if (atHigh === undefined || atLow === undefined) return undefined;
    // False position, every third step halving, so that a flat side cannot hold it up.
    const middle = step % 3 === 2 ? (high + low) / 2 : low + ((high - low) * atLow) / (atLow - atHigh);
    const here = torque(middle);
    if (here === undefined) return undefined;
    if (Math.abs(here) < 1e-9) return middle;
    if (here > 0) {
      high = middle;
      atHigh = here;
    } else {
      low = middle;
      atLow = here;
    }
  }
  return torque(low) === undefined ? undefined : low;
}

const blankState = {
  discAngle: 0,
  wingAngle: 0,
  thrustSum: 0,
  thrustDifference: 0,
  finLiftCoefficient: 0,
  inducedInflow: 0,
  pitchCosine: 0,
  pitchSine: 0,
  pathAngle: 0,
};
