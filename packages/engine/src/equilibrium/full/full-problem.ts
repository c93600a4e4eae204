import { type Airframe, type AirframeLoads, rotorStateWidth } from "../../airframe/index.ts";
import type { NonlinearProgram } from "../../numerics/index.ts";
import { fliesUnstalled, heldLift } from "./attached-lift.ts";
import { type BodyFlight, bodyFlight } from "./flight-path.ts";
import { type FullConditions, type FullPoint, runningLines } from "./full-conditions.ts";
import { type FullLimit, fullLimits } from "./full-limits.ts";
import { attitudeIndex, controlBounds, mixingAxes, type VariableLayout, variableLayout } from "./full-variables.ts";
import type { StallLimits } from "./stall-limits.ts";

/** Everything known about one vector of unknowns. */
export interface FullEvaluation {
  readonly pitch: number;
  readonly roll: number;
  readonly sideslip: number;
  readonly airspeed: number;
  readonly climbRate: number;
  readonly flight: BodyFlight;
  readonly controls: Float64Array;
  readonly rotorStates: Float64Array;
  readonly loads: AirframeLoads;
  /** Of the balance: three forces over weight, three moments over weight times size [1]. */
  readonly balance: Float64Array;
  /** Largest steady thrust over thrust, per rotor, from the table [1]. */
  readonly stallMargins: readonly number[];
  /** Wings have to be flown on this side of their stall. */
  readonly unstalled: boolean;
  /** How far each rotor may stay below its floor; 0 where controls are free [1]. */
  readonly givenMargins: readonly number[];
  /** Axes of the mixing matrix, −1 to 1; none where each control is on its own. */
  readonly axes: readonly number[];
}

export interface FullProblem {
  readonly program: NonlinearProgram;
  readonly layout: VariableLayout;
  readonly limits: readonly FullLimit[];
  readonly equalities: number;
  readonly running: readonly boolean[];
  evaluation(x: Float64Array): FullEvaluation;
}

const differenceStep = 1e-6;
const degree = Math.PI / 180;
const glideScale = 2;
/** What a hundredth of stall margin below the floor may cost on schedule: a hundredth of the power that the objective is measured in (own choice). */
const marginPrice = 1;

/**
 * The six-component trim of one flight as a nonlinear program: least electric power (or least sink) subject to the balance of forces
 * and moments, every rotor's inflow and flapping, free rotors' torque, and the limits. One sweep per rotor and a handful for its slopes serve
 * a whole gradient.
 *
 * @derivation Newton and Euler for steady flight
 */
export function fullProblem(
  conditions: FullConditions,
  point: FullPoint,
  airframe: Airframe,
  stall: StallLimits,
  floors: readonly number[],
): FullProblem {
  const running = runningLines(airframe, point);
  const layout = variableLayout(conditions, point, airframe, running);
  const limits = fullLimits(airframe, running);
  const glide = point.mode === "glide";
  const { mass, inertia, rotors } = airframe;
  const weight = mass * 9.80665;
  const size = referenceSize(conditions);
  const powerScale = referencePower(conditions, weight);
  const rotorEqualities = rotors.map((rotor, i) => 3 + (rotor.cones ? 1 : 0) + (airframe.isDriven(i, running) ? 0 : 1));
  const mixed = mixedControls(conditions, point, airframe, running);
  const equalities = 6 + rotorEqualities.reduce((sum, count) => sum + count, 0) + mixed.length;
  const { aircraft, loading } = conditions;
  const packVoltage = aircraft.battery.cell.cutoffVoltage * aircraft.battery.seriesCells;
  const blockPower = loading.blocks * aircraft.battery.continuousCurrent * packVoltage;
  const flapRange = rotors.map(({ part }) => part.flapRange);
  const liftLimits = aircraft.surfaces.map((part) => part.maximumLiftCoefficient * part.trimLiftFraction);

  const unstalled = fliesUnstalled(conditions, point);
  const liftOf = (surface: number, { surfaces }: AirframeLoads) =>
    heldLift(
      aircraft.surfaces[surface] as (typeof aircraft.surfaces)[number],
      surfaces[surface] as AirframeLoads["surfaces"][number],
      unstalled,
      airframe.conditions.mass.centre.x,
    );

  function evaluation(x: Float64Array): FullEvaluation {
    const at = (index: number) => (x[index] as number) * (layout.units[index] as number);
    const pitch = at(attitudeIndex.pitch);
    const roll = at(attitudeIndex.roll);
    const sideslip = at(attitudeIndex.sideslip);
    // In a glide the speed asked for lies along the path.
    const path = at(attitudeIndex.path);
    const airspeed = glide ? point.airspeed * Math.cos(path) : point.airspeed;
    const climbRate = glide ? point.airspeed * Math.sin(path) : point.climbRate;
    const { turnRate = 0, acceleration = 0 } = point;
    const flight = bodyFlight({ pitch, roll, sideslip, airspeed, climbRate, turnRate, acceleration });
    const controls = new Float64Array(airframe.controls.length);
    for (let i = 0; i < controls.length; i++) controls[i] = at(layout.controlAt + i);
    const rotorStates = new Float64Array(rotors.length * rotorStateWidth);
    for (let i = 0; i < rotorStates.length; i++) rotorStates[i] = at(layout.rotorAt + i);
    const loads = airframe.evaluate(flight, controls, rotorStates, running);
    const { force, moment } = loads;
    const { apparentGravity: g, rates } = flight;
    const spin = spun(inertia, rates);
    const balance = Float64Array.of(
      (force[0] + mass * g[0]) / weight,
      (force[1] + mass * g[1]) / weight,
      (force[2] + mass * g[2]) / weight,
      (moment[0] - (rates[1] * spin[2] - rates[2] * spin[1])) / (weight * size),
      (moment[1] - (rates[2] * spin[0] - rates[0] * spin[2])) / (weight * size),
      (moment[2] - (rates[0] * spin[1] - rates[1] * spin[0])) / (weight * size),
    );
    const stallMargins = loads.rotors.map(({ ct, advanceRatio, axialInflow }, i) =>
      ct > 0 ? stall.read(i, advanceRatio, axialInflow, rotorStates[i * rotorStateWidth] as number).thrust / ct : Number.POSITIVE_INFINITY,
    );
    const givenMargins = rotors.map((_, i) => at(layout.givenAt + i));
    const axes = Array.from(x.subarray(layout.axisAt));
    return {
      pitch,
      roll,
      sideslip,
      airspeed,
      climbRate,
      flight,
      controls,
      rotorStates,
      loads,
      balance,
      stallMargins,
      givenMargins,
      axes,
      unstalled,
    };
  }

  function limitValue({ of }: FullLimit, { loads, rotorStates, controls, givenMargins }: FullEvaluation): number {
    switch (of.kind) {
      case "clutch":
        return (loads.rotors[of.rotor]?.torque ?? 0) / (0.01 * weight * size);
      case "stall": {
        const rotor = loads.rotors[of.rotor] as AirframeLoads["rotors"][number];
        const { thrust } = stall.read(of.rotor, rotor.advanceRatio, rotor.axialInflow, rotorStates[of.rotor * rotorStateWidth] as number);
        const floor = (floors[of.rotor] as number) - (givenMargins[of.rotor] as number);
        return ((thrust - floor * rotor.ct) * 10) / (rotors[of.rotor]?.solidity ?? 0.05);
      }
      case "branch": {
        const rotor = loads.rotors[of.rotor] as AirframeLoads["rotors"][number];
        const { collective } = stall.read(
          of.rotor,
          rotor.advanceRatio,
          rotor.axialInflow,
          rotorStates[of.rotor * rotorStateWidth] as number,
        );
        const control = airframe.collectiveControl(of.rotor);
        return (collective - (control < 0 ? 0 : (controls[control] as number))) / (5 * degree);
      }
      case "flap": {
        const at = of.rotor * rotorStateWidth;
        const range = flapRange[of.rotor] as number;
        return (range * range - (rotorStates[at + 2] as number) ** 2 - (rotorStates[at + 3] as number) ** 2) / (range * range);
      }
      case "lift-high":
        return (liftLimits[of.surface] as number) - liftOf(of.surface, loads).highest;
      case "lift-low":
        return (liftLimits[of.surface] as number) + liftOf(of.surface, loads).lowest;
      case "block-current":
        return 1 - loads.electricPower / blockPower;
      default: {
        const line = airframe.lines[of.line] as Airframe["lines"][number];
        const { motor } = line.motors[0] as Airframe["lines"][number]["motors"][number];
        const state = loads.drives[of.line]?.motor ?? { electricPower: 0, current: 0, voltage: 0 };
        if (of.kind === "motor-power") return 1 - state.electricPower / motor.continuousPower;
        if (of.kind === "motor-current") return 1 - state.current / motor.currentMaximum;
        return 1 - state.voltage / (packVoltage * motor.controllerDutyMaximum);
      }
    }
  }

  function write(evaluated: FullEvaluation, values: Float64Array, offset: number, stride: number): void {
    const { balance, loads } = evaluated;
    let row = 0;
    const put = (value: number) => {
      values[offset + row * stride] = value;
      row += 1;
    };
    const given = evaluated.givenMargins.reduce((sum, margin) => sum + margin, 0);
    put((glide ? -evaluated.climbRate / glideScale : loads.electricPower / powerScale) + marginPrice * given);
    for (let i = 0; i < 3; i++) put((balance[i] as number) * 10);
    for (let i = 3; i < 6; i++) put((balance[i] as number) * 100);
    loads.rotors.forEach((rotor, i) => {
      put(rotor.inflowResidual * 20);
      put(rotor.flapResidualCosine * 10);
      put(rotor.flapResidualSine * 10);
      if (rotors[i]?.cones) put(rotor.coningResidual * 10);
      if (!airframe.isDriven(i, running)) put(rotor.torque / (0.01 * weight * size));
    });
    for (const { control, low, high, factors } of mixed) {
      const asked = factors.reduce((sum, factor, k) => sum + factor * (evaluated.axes[k] as number), 0);
      put(((evaluated.controls[control] as number) - (low + high) / 2) / ((high - low) / 2) - asked);
    }
    for (const limit of limits) put(limitValue(limit, evaluated));
  }

  const program: NonlinearProgram = {
    size: layout.size,
    equalities,
    inequalities: limits.length,
    lower: layout.lower,
    upper: layout.upper,
    stepLimit: layout.stepLimit,
    evaluate(x, values) {
      write(evaluation(x), values, 0, 1);
    },
    differentiate(x, values, jacobian) {
      const { flight, controls, rotorStates } = evaluation(x);
      airframe.linearise(flight, controls, rotorStates, running);
      const moved = Float64Array.from(x);
      const rows = 1 + equalities + limits.length;
      for (let i = 0; i < layout.size; i++) {
        const low = layout.lower[i] as number;
        const high = layout.upper[i] as number;
        if (high - low < 1e-12) {
          for (let r = 0; r < rows; r++) jacobian[r * layout.size + i] = 0;
          continue;
        }
        const here = x[i] as number;
        const step = here + differenceStep > high ? -differenceStep : differenceStep;
        moved[i] = here + step;
        write(evaluation(moved), jacobian, i, layout.size);
        moved[i] = here;
        for (let r = 0; r < rows; r++) {
          const index = r * layout.size + i;
          jacobian[index] = ((jacobian[index] as number) - (values[r] as number)) / step;
        }
      }
      airframe.exact();
    },
  };
  return { program, layout, limits, equalities, running, evaluation };
}

interface MixedControl {
  readonly control: number;
  readonly low: number;
  readonly high: number;
  /** Of each axis, over half the range. */
  readonly factors: readonly number[];
}

/** Controls that the mixing matrix moves, where it is asked for; one that cannot move in this flight stands where it is. */
function mixedControls(
  conditions: FullConditions,
  point: FullPoint,
  airframe: Airframe,
  running: readonly boolean[],
): readonly MixedControl[] {
  const { mixing } = conditions.aircraft;
  if (conditions.steering !== "mixed" || !mixing) return [];
  return mixing.flatMap((row) => {
    const control = airframe.controls.findIndex(({ id }) => id === row.control);
    if (control < 0) return [];
    const { minimum: low, maximum: high } = controlBounds(conditions, point, airframe, control, running);
    return high - low > 1e-9 ? [{ control, low, high, factors: mixingAxes.map((axis) => row[axis]) }] : [];
  });
}

function spun(inertia: Float64Array, rates: readonly [number, number, number]): readonly [number, number, number] {
  const row = (at: number) =>
    (inertia[at] as number) * rates[0] + (inertia[at + 1] as number) * rates[1] + (inertia[at + 2] as number) * rates[2];
  return [row(0), row(3), row(6)];
}

/** Length that moments are measured against: the largest rotor's radius, half the span, or the largest arm of a propeller [m]. */
export function referenceSize({ aircraft }: FullConditions): number {
  const rotor = Math.max(0, ...aircraft.rotors.map(({ radius }) => radius));
  if (rotor > 0) return rotor;
  const span = Math.max(0, ...aircraft.surfaces.map((surface) => surface.span / 2));
  return Math.max(span, ...aircraft.propellers.map(({ place, diameter }) => Math.max(Math.hypot(place.x, place.y), diameter / 2)));
}

/** Power that the objective is measured in: some of what hovering on the largest disc would take [W]. */
function referencePower({ aircraft, air }: FullConditions, weight: number): number {
  const discs = aircraft.rotors.reduce((sum, { radius }) => sum + Math.PI * radius ** 2, 0);
  const lifting = aircraft.propellers.reduce((sum, { diameter }) => sum + (Math.PI * diameter ** 2) / 4, 0);
  const area = discs > 0 ? discs : lifting;
  return 0.6 * weight * (area > 0 ? Math.sqrt(weight / (2 * air.density * area)) : 3);
}
