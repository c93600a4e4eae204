import { controlRange } from "../aircraft/index.ts";
import type { NonlinearProgram } from "../numerics/index.ts";
import { airframeBalance, type Balance } from "./airframe-loads.ts";
import type { FlightConditions, FlightPoint } from "./conditions.ts";
import { tipSpeedRange } from "./governor.ts";
import { type PowerBreakdown, powerBreakdown } from "./power-train.ts";
import type { TrimRotor } from "./trim-rotor.ts";
import { type TrimState, trimState, variable, variableCount } from "./trim-variables.ts";

/** A named inequality of the trim: what stops the aircraft when it binds. */
export interface TrimLimit {
  readonly name: string;
  readonly family: "air" | "power" | "strength" | "control" | "rule";
}

/** In the order of the program's inequalities after the clutch torque. */
export const trimLimits: readonly TrimLimit[] = [
  { name: "stall margin", family: "air" },
  { name: "wing stall", family: "air" },
  { name: "wing stall, inverted", family: "air" },
  { name: "flapping, disc ahead of body", family: "control" },
  { name: "flapping, disc behind body", family: "control" },
  { name: "drive motor power", family: "power" },
  { name: "drive motor current", family: "power" },
  { name: "drive motor voltage", family: "power" },
  { name: "left propeller motor power", family: "power" },
  { name: "left propeller motor current", family: "power" },
  { name: "left propeller motor voltage", family: "power" },
  { name: "right propeller motor power", family: "power" },
  { name: "right propeller motor current", family: "power" },
  { name: "right propeller motor voltage", family: "power" },
  { name: "block current", family: "power" },
];

/** Follows them in the program: keeps the solution on the flown side of the largest thrust. Not a limit of its own for readers. */
export const branchLimit: TrimLimit = { name: "stall margin", family: "air" };

export const clutchLimit: TrimLimit = { name: "clutch torque", family: "control" };

/** Everything known about one vector of unknowns. */
export interface TrimEvaluation {
  readonly state: TrimState;
  readonly airspeed: number;
  readonly forwardSpeed: number;
  readonly climbRate: number;
  readonly rotor: {
    readonly thrust: number;
    readonly hForce: number;
    readonly torque: number;
    readonly inducedVelocity: number;
    readonly ct: number;
  };
  readonly advanceRatio: number;
  readonly axialInflow: number;
  readonly balance: Balance;
  readonly power: PowerBreakdown;
  /** Largest steady thrust over trimmed thrust, from the table [1]. */
  readonly stallMargin: number;
}

const degree = Math.PI / 180;
const forceScale = 20;
const momentScale = 2;
const powerScale = 500;
const finiteDifference = 1e-6;
/** Unknowns that enter the blade element sweep; the others reuse its result. */
const rotorVariables = new Set<number>([
  variable.discAngle,
  variable.tipSpeed,
  variable.collective,
  variable.inducedInflow,
  variable.pitchCosine,
  variable.pitchSine,
]);

/** Largest move of one iteration, in the order and scale of the unknowns (own choice: stays within one way of flying). */
const stepLimit = Float64Array.of(3, 0.5, 2, 6, 1, 1, 2, 0.4, 0.5, 0.5);

export interface TrimProblem {
  readonly program: NonlinearProgram;
  evaluation(x: Float64Array): TrimEvaluation;
}

/** The trim of one point as a nonlinear program: least electric power (or least sink) subject to balance and limits. */
export function trimProblem(conditions: FlightConditions, point: FlightPoint, rotor: TrimRotor, stallMarginFloor: number): TrimProblem {
  const glide = point.mode === "glide";
  const closed = point.mode === "clutch-closed";
  const equalities = 6;
  const inequalities = trimLimits.length + 1 + (closed ? 1 : 0) + (point.leftPropeller ? 1 : 0);
  const pushes = point.leftPropeller === "pushes";
  const { lower, upper } = trimBounds(conditions, point);

  function assemble(x: Float64Array): TrimEvaluation {
    const airspeed = glide ? point.forwardSpeed : Math.hypot(point.forwardSpeed, point.climbRate);
    const state = trimState(x, glide, airspeed > 0 ? Math.atan2(point.climbRate, point.forwardSpeed) : 0);
    const forwardSpeed = glide ? airspeed * Math.cos(state.pathAngle) : point.forwardSpeed;
    const climbRate = glide ? airspeed * Math.sin(state.pathAngle) : point.climbRate;
    const loads = rotor.loads(state.tipSpeed);
    const power = powerBreakdown(conditions, point.mode, airspeed, state, loads.torque);
    const { mu, lambdaC } = rotorFlow(state, forwardSpeed, climbRate);
    return {
      state,
      airspeed,
      forwardSpeed,
      climbRate,
      rotor: loads,
      advanceRatio: mu,
      axialInflow: lambdaC,
      balance: airframeBalance(conditions, { forward: forwardSpeed, climb: climbRate }, state, loads, glide),
      power,
      stallMargin: loads.ct > 0 ? rotor.stallLimit(mu, lambdaC, state.tipSpeed).thrust / loads.ct : Number.POSITIVE_INFINITY,
    };
  }

  function sweep(x: Float64Array): void {
    const airspeed = glide ? point.forwardSpeed : Math.hypot(point.forwardSpeed, point.climbRate);
    const state = trimState(x, glide, 0);
    const forwardSpeed = glide ? airspeed * Math.cos(state.pathAngle) : point.forwardSpeed;
    const climbRate = glide ? airspeed * Math.sin(state.pathAngle) : point.climbRate;
    const { mu, lambdaC } = rotorFlow(state, forwardSpeed, climbRate);
    rotor.sweep(state, mu, lambdaC);
  }

  function write(evaluated: TrimEvaluation, values: Float64Array, offset: number, stride: number): void {
    const { state, balance, power } = evaluated;
    const wing = conditions.aircraft.wing;
    const put = (row: number, value: number) => {
      values[offset + row * stride] = value;
    };
    put(0, glide ? -evaluated.climbRate / 2 : power.electric / powerScale);
    put(1, balance.forward / forceScale);
    put(2, balance.up / forceScale);
    // With the clutch open nothing yaws: the row holds the free rotor's torque instead.
    put(3, closed ? balance.yaw / momentScale : evaluated.rotor.torque / momentScale);
    put(4, rotor.inflowResidual(state.inducedInflow, evaluated.advanceRatio, evaluated.axialInflow) * 20);
    put(5, rotor.momentCosine() * 100);
    put(6, rotor.momentSine() * 100);
    let row = 7;
    if (closed) put(row++, evaluated.rotor.torque / momentScale);
    const stall = rotor.stallLimit(evaluated.advanceRatio, evaluated.axialInflow, state.tipSpeed);
    put(row++, (stall.thrust - stallMarginFloor * evaluated.rotor.ct) * 200);
    const liftLimit = wing.maximumLiftCoefficient * wing.trimLiftFraction;
    put(row++, liftLimit - balance.wingLiftCoefficient);
    put(row++, liftLimit + balance.wingLiftCoefficient);
    const tilt = state.wingAngle - state.discAngle - wingIncidence(conditions);
    put(row++, (conditions.aircraft.rotor.flapRange - tilt) / (5 * degree));
    put(row++, (conditions.aircraft.rotor.flapRange + tilt) / (5 * degree));
    for (const margin of powerMargins(conditions, power)) put(row++, margin);
    // Thrust below the largest is also found beyond it, on the stalled branch: the collective keeps to this side.
    put(row++, (stall.collective - state.collective) / (5 * degree));
    if (point.leftPropeller) put(row++, ((pushes ? -1 : 1) * (state.thrustSum - state.thrustDifference)) / forceScale);
  }

  const program: NonlinearProgram = {
    size: variableCount,
    equalities,
    inequalities,
    lower,
    upper,
    stepLimit,
    evaluate(x, values) {
      sweep(x);
      write(assemble(x), values, 0, 1);
    },
    differentiate(x, values, jacobian) {
      const rows = 1 + equalities + inequalities;
      const moved = Float64Array.from(x);
      for (let i = 0; i < variableCount; i++) {
        const touchesRotor = rotorVariables.has(i) || (glide && i === variable.thrustSum);
        if (touchesRotor) continue;
        differentiateOne(x, moved, values, jacobian, i, rows, false);
      }
      for (let i = 0; i < variableCount; i++) {
        const touchesRotor = rotorVariables.has(i) || (glide && i === variable.thrustSum);
        if (touchesRotor) differentiateOne(x, moved, values, jacobian, i, rows, true);
      }
    },
  };

  /** The rotor still holds the sweep of `x` when columns that do not touch it are differenced: they come first. */
  function differentiateOne(
    x: Float64Array,
    moved: Float64Array,
    values: Float64Array,
    jacobian: Float64Array,
    i: number,
    rows: number,
    again: boolean,
  ): void {
    const at = x[i] as number;
    // Differences stay on the side of the kink that the point asks for.
    const away = (i === variable.thrustSum && pushes) || (i === variable.thrustDifference && point.leftPropeller === "pulls");
    const step = away || at + finiteDifference > (upper[i] as number) ? -finiteDifference : finiteDifference;
    moved[i] = at + step;
    if (again) sweep(moved);
    write(assemble(moved), jacobian, i, variableCount);
    moved[i] = at;
    for (let r = 0; r < rows; r++) {
      const index = r * variableCount + i;
      jacobian[index] = ((jacobian[index] as number) - (values[r] as number)) / step;
    }
  }

  return {
    program,
    evaluation(x) {
      sweep(x);
      return assemble(x);
    },
  };
}

/** In-plane and axial flow of the disc over tip speed: down-flow positive. */
function rotorFlow(state: TrimState, forwardSpeed: number, climbRate: number): { mu: number; lambdaC: number } {
  const sine = Math.sin(state.discAngle);
  const cosine = Math.cos(state.discAngle);
  return {
    mu: (forwardSpeed * cosine + climbRate * sine) / state.tipSpeed,
    lambdaC: (climbRate * cosine - forwardSpeed * sine) / state.tipSpeed,
  };
}

/** Wing chord relative to the plane normal to the rotor shaft [rad]: never moved in flight by this trim. */
function wingIncidence(conditions: FlightConditions): number {
  const range = controlRange(conditions.aircraft.wing.incidence, 0, "schedule");
  return (range.minimum + range.maximum) / 2;
}

/** Unused shares of the power limits, at the voltage of an almost empty pack, in the order of `trimLimits`. */
function powerMargins(conditions: FlightConditions, power: PowerBreakdown): number[] {
  const { battery, rotorDrive, propellers } = conditions.aircraft;
  const packVoltage = battery.cell.cutoffVoltage * battery.seriesCells;
  const motorMargins = (state: PowerBreakdown["drive"], motor: typeof rotorDrive.motor) => [
    1 - state.electricPower / motor.continuousPower,
    1 - state.current / motor.currentMaximum,
    1 - state.voltage / (packVoltage * motor.controllerDutyMaximum),
  ];
  return [
    ...motorMargins(power.drive, rotorDrive.motor),
    ...motorMargins(power.left, propellers.motor),
    ...motorMargins(power.right, propellers.motor),
    1 - power.electric / (conditions.loading.blocks * battery.continuousCurrent * packVoltage),
  ];
}

function trimBounds(conditions: FlightConditions, point: FlightPoint): { lower: Float64Array; upper: Float64Array } {
  const lower = new Float64Array(variableCount);
  const upper = new Float64Array(variableCount);
  const bound = (index: number, low: number, high: number) => {
    lower[index] = low;
    upper[index] = high;
  };
  const glide = point.mode === "glide";
  const tipSpeed = tipSpeedRange(conditions, point);
  const controls = conditions.aircraft.rotorControls;
  const collective = controlRange(
    point.mode === "clutch-closed" ? controls.clutchClosed.collective : controls.clutchOpen.collective,
    point.forwardSpeed,
    conditions.controls,
  );
  bound(variable.discAngle, -25, glide ? 85 : 35);
  bound(variable.tipSpeed, tipSpeed.minimum / 10, tipSpeed.maximum / 10);
  bound(variable.collective, collective.minimum / degree, collective.maximum / degree);
  bound(variable.wingAngle, -40, 60);
  if (glide) bound(variable.thrustSum, -89, 0);
  else bound(variable.thrustSum, -20, 40);
  const yawed = point.mode === "clutch-closed";
  bound(variable.thrustDifference, yawed ? -10 : 0, yawed ? 10 : 0);
  const fin = conditions.aircraft.fin.maximumLiftCoefficient * 10;
  bound(variable.finLift, yawed ? -fin : 0, yawed ? fin : 0);
  bound(variable.inducedInflow, -2, 8);
  bound(variable.pitchCosine, -6, 6);
  bound(variable.pitchSine, -6, 6);
  return { lower, upper };
}
