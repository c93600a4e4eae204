import { controlRange, takeoffMass } from "../../aircraft/index.ts";
import { type Airframe, rotorStateWidth } from "../../airframe/index.ts";
import type { FullConditions, FullPoint } from "./full-conditions.ts";

const degree = Math.PI / 180;

/** Unknowns ahead of the controls: pitch, roll, sideslip [deg] and climb angle [deg], which moves in a glide only. */
export const attitudeCount = 4;
export const attitudeIndex = { pitch: 0, roll: 1, sideslip: 2, path: 3 } as const;

/** Unit of each unknown: what one of the solver's means in SI. */
export interface VariableLayout {
  readonly size: number;
  readonly units: Float64Array;
  readonly lower: Float64Array;
  readonly upper: Float64Array;
  readonly stepLimit: Float64Array;
  /** First of what each rotor gives up of its stall margin. */
  readonly givenAt: number;
  /** First axis of the mixing matrix; the end where there is none. */
  readonly axisAt: number;
  /** First unknown of a rotor's own state. */
  readonly rotorAt: number;
  readonly controlAt: number;
}

/** Axes of the mixing matrix in the order of the unknowns. */
export const mixingAxes = ["pitch", "roll", "yaw", "lift", "forward"] as const;

const sidewaysLimit = Math.PI;
const tipSpeedUnit = 10;
const inflowUnit = 0.05;
const flapUnit = 0.1;
/** No steady flight is looked for beyond these [deg]. */
const steepestGlide = 89;

/** Where every unknown may go, in the solver's units. @derivation not a formula */
export function variableLayout(
  conditions: FullConditions,
  point: FullPoint,
  airframe: Airframe,
  running: readonly boolean[],
): VariableLayout {
  const controls = airframe.controls.length;
  const rotors = airframe.rotors.length;
  const controlAt = attitudeCount;
  const rotorAt = controlAt + controls;
  const givenAt = rotorAt + rotors * rotorStateWidth;
  const axisAt = givenAt + rotors;
  const axes = conditions.steering === "mixed" && conditions.aircraft.mixing ? mixingAxes.length : 0;
  const size = axisAt + axes;
  const units = new Float64Array(size).fill(degree);
  const lower = new Float64Array(size);
  const upper = new Float64Array(size);
  const stepLimit = new Float64Array(size).fill(6);
  const bound = (index: number, low: number, high: number, unit: number, step: number) => {
    units[index] = unit;
    lower[index] = low / unit;
    upper[index] = high / unit;
    stepLimit[index] = step;
  };
  const attitude = conditions.aircraft.limits.attitudeMaximum ?? 30 * degree;
  bound(attitudeIndex.pitch, -attitude, attitude, degree, 4);
  bound(attitudeIndex.roll, -attitude, attitude, degree, 4);
  const { sideslip } = point;
  if (sideslip === undefined) bound(attitudeIndex.sideslip, -sidewaysLimit, sidewaysLimit, degree, 3);
  else bound(attitudeIndex.sideslip, sideslip, sideslip, degree, 3);
  if (point.mode === "glide") bound(attitudeIndex.path, -steepestGlide * degree, 0, degree, 4);
  const weight = airframe.mass * 9.80665;
  airframe.controls.forEach((control, i) => {
    const range = controlBounds(conditions, point, airframe, i, running);
    const unit = control.what === "thrust" ? 0.05 * weight : control.what === "tip-speed" ? tipSpeedUnit : degree;
    bound(controlAt + i, range.minimum, range.maximum, unit, control.what === "thrust" ? 1 : 4);
  });
  airframe.rotors.forEach((rotor, i) => {
    const at = rotorAt + i * rotorStateWidth;
    const speed = tipSpeedBounds(conditions, point, airframe, i, running);
    bound(at, speed.minimum, speed.maximum, tipSpeedUnit, 0.5);
    bound(at + 1, -0.1, 0.4, inflowUnit, 0.4);
    const most = rotor.part.flapRange * 1.5;
    bound(at + 2, -most, most, flapUnit, 0.5);
    bound(at + 3, -most, most, flapUnit, 0.5);
    if (rotor.cones) bound(at + 4, -0.2, 0.5, flapUnit, 0.5);
    else bound(at + 4, rotor.part.precone, rotor.part.precone, flapUnit, 0.5);
  });
  airframe.rotors.forEach((rotor, i) => {
    // What a schedule leaves of the stall margin is what it leaves: below the floor at a price, never below 1.
    bound(givenAt + i, 0, conditions.controls === "schedule" ? rotor.part.stallMarginFloor - 1 : 0, 1, 0.1);
  });
  for (let k = 0; k < axes; k++) bound(axisAt + k, -1, 1, 1, 0.3);
  return { size, units, lower, upper, stepLimit, rotorAt, controlAt, givenAt, axisAt };
}

/** Range of a control in this flight [SI]. */
export function controlBounds(
  conditions: FullConditions,
  point: FullPoint,
  airframe: Airframe,
  index: number,
  running: readonly boolean[],
): { readonly minimum: number; readonly maximum: number } {
  const control = airframe.controls[index] as Airframe["controls"][number];
  const stuck = point.stuck?.[control.id];
  if (stuck !== undefined) return { minimum: stuck, maximum: stuck };
  // The rotor's own state holds the speed; the control is read where bounds are made.
  if (control.what === "tip-speed") return { minimum: 0, maximum: 0 };
  if (control.what === "thrust") {
    const propeller = airframe.propellers.findIndex(({ id }) => id === control.part);
    const line = propeller < 0 ? -1 : airframe.propellerLine(propeller);
    if (line >= 0 && running[line] !== true) return { minimum: 0, maximum: 0 };
  }
  const setting = (point.mode === "clutch-closed" ? undefined : control.definition.clutchOpen) ?? control.definition.setting;
  return controlRange(setting, point.airspeed, conditions.controls);
}

/**
 * Tip speeds that a rotor may have [m/s]. A governor holds a driven rotor's; a schedule grows with the square root of mass over density
 * from its reference and is held within its range. A free rotor turns as fast as it will within the rotor's own limits.
 *
 * @derivation constant blade loading along the schedule
 */
export function tipSpeedBounds(
  conditions: FullConditions,
  point: FullPoint,
  airframe: Airframe,
  rotor: number,
  running: readonly boolean[],
): { readonly minimum: number; readonly maximum: number; readonly held: boolean } {
  const { part } = airframe.rotors[rotor] as Airframe["rotors"][number];
  const own = { minimum: part.tipSpeedMinimum, maximum: part.tipSpeedMaximum, held: false };
  if (point.tipSpeed !== undefined) return { minimum: point.tipSpeed, maximum: point.tipSpeed, held: false };
  const governor = airframe.tipSpeedControl(rotor);
  if (governor < 0 || !airframe.isDriven(rotor, running)) return own;
  const { definition } = airframe.controls[governor] as Airframe["controls"][number];
  if (definition.what !== "tip-speed") return own;
  const stuck = point.stuck?.[definition.id];
  if (stuck !== undefined) return { minimum: stuck, maximum: stuck, held: false };
  const { setting, reference } = definition;
  const asked = controlRange(setting, point.airspeed, conditions.controls);
  if (setting.kind !== "scheduled" || conditions.controls === "optimum") return { ...asked, held: false };
  const mass = takeoffMass(conditions.aircraft, conditions.loading);
  const factor = reference ? Math.sqrt((mass / reference.mass) * (reference.density / conditions.air.density)) : 1;
  const wanted = asked.minimum * factor;
  const given = Math.min(setting.maximum, Math.max(setting.minimum, wanted));
  return { minimum: given, maximum: given, held: given !== wanted };
}
