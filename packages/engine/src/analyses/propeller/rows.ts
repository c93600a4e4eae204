import {
  largestTipMach,
  type NoPropellerLoads,
  type PropellerCondition,
  type PropellerLoads,
  propellerCoefficients,
  type RateStream,
  rotationRateFor,
} from "../../aerodynamics/propeller/index.ts";
import type { Air } from "../../environment/atmosphere/index.ts";
import type { PropellerReading } from "./input.ts";
import type { PropellerRow } from "./output-schema.ts";
import type { PropellerPoint } from "./schema.ts";

/** A point with its loads, or with the reason why it has none. */
export interface FoundPoint {
  readonly row: PropellerRow;
  readonly condition: PropellerCondition;
  readonly loads: PropellerLoads | undefined;
}

type Solved = { readonly condition: PropellerCondition; readonly found: PropellerLoads | NoPropellerLoads };

/** One row of the answer. */
export function propellerRowOf(reading: PropellerReading, air: Air, point: PropellerPoint): FoundPoint {
  const { condition, found: answered } = solved(reading, air, point);
  const { source } = reading;
  const { rotationRate, airspeed, inflowAngle } = condition;
  const tipMach = tipMachOf(source.diameter, condition);
  const found = source.kind === "blades" && tipMach > largestTipMach ? tooFast(tipMach) : answered;
  const loads = found.kind === "solved" ? found : undefined;
  const standing = point.state === "stopped" || point.state === "folded";
  const known = point.state === "turning" ? point.rotationRate !== undefined || loads !== undefined : loads !== undefined || standing;
  const power = loads && loads.torque * rotationRate;
  const coefficients = propellerCoefficients({
    thrust: loads?.thrust ?? 0,
    power: power ?? 0,
    rotationRate,
    airspeed,
    inflowAngle,
    diameter: source.diameter,
    density: air.density,
  });
  const turning = (rotationRate * source.diameter) / 2;
  const chord = source.referenceChord;
  const row: PropellerRow = {
    ...(loads
      ? coefficients
      : { advanceRatio: known ? coefficients.advanceRatio : null, ct: null, cp: null, efficiency: null, figureOfMerit: null }),
    thrust: loads?.thrust ?? null,
    torque: loads?.torque ?? null,
    power: power ?? null,
    rotationRate: known ? rotationRate : null,
    airspeed: known || point.airspeed !== undefined ? airspeed : null,
    inflowAngle,
    normalForce: loads?.normalForce ?? null,
    sideForce: loads?.sideForce ?? null,
    pitchingMoment: loads?.pitchingMoment ?? null,
    yawingMoment: loads?.yawingMoment ?? null,
    inducedVelocity: loads?.inducedVelocity ?? null,
    reynoldsNumber: chord === undefined ? null : (air.density * Math.hypot(0.75 * turning, airspeed) * chord) / air.dynamicViscosity,
    tipMach,
    state: loads ? stateOf(point, loads, power ?? 0, rotationRate) : "none",
    extrapolated: loads ? [...loads.extrapolated] : [],
    reason: found.kind === "none" ? sentence(found.reason) : null,
  };
  return { row, condition, loads };
}

/** Of the tip where it meets most stream, from rotation and airspeed. */
function tipMachOf(diameter: number, { rotationRate, airspeed, inflowAngle, air }: PropellerCondition): number {
  const around = (Math.abs(rotationRate) * diameter) / 2 + airspeed * Math.abs(Math.sin(inflowAngle));
  return Math.hypot(around, airspeed * Math.cos(inflowAngle)) / air.speedOfSound;
}

function tooFast(tipMach: number): NoPropellerLoads {
  return { kind: "none", reason: `the tips move at Mach ${tipMach.toFixed(2)}; the section law ends at ${largestTipMach}` };
}

function sentence(reason: string): string {
  return `${reason.charAt(0).toUpperCase()}${reason.slice(1)}.`;
}

function solved(reading: PropellerReading, air: Air, point: PropellerPoint): Solved {
  const { source } = reading;
  const { inflowAngle, state, advanceRatio, rotationRate } = point;
  const still = { rotationRate: 0, airspeed: point.airspeed ?? 0, inflowAngle, air };
  if (state === "stopped") return { condition: still, found: source.loadsAt(still) };
  if (state === "folded") return { condition: still, found: foldedLoads(reading, still) };
  const stream: RateStream =
    advanceRatio === undefined ? { kind: "airspeed", airspeed: point.airspeed ?? 0 } : { kind: "advanceRatio", advanceRatio };
  if (state === "turning" && rotationRate !== undefined) {
    const airspeed =
      stream.kind === "airspeed" ? stream.airspeed : (stream.advanceRatio * Math.abs(rotationRate) * source.diameter) / (2 * Math.PI);
    const condition = { rotationRate, airspeed, inflowAngle, air };
    return { condition, found: source.loadsAt(condition) };
  }
  const target =
    state === "freeWheeling"
      ? ({ kind: "torque", value: 0 } as const)
      : point.thrust !== undefined
        ? ({ kind: "thrust", value: point.thrust } as const)
        : ({ kind: "power", value: point.power ?? 0 } as const);
  const found = rotationRateFor(source, stream, { inflowAngle, air }, target);
  return found.kind === "found" ? { condition: found.condition, found: found.loads } : { condition: still, found };
}

/** Drag along the stream and nothing else. */
function foldedLoads(
  { foldedDragArea }: PropellerReading,
  { airspeed, inflowAngle, air }: PropellerCondition,
): PropellerLoads | NoPropellerLoads {
  if (foldedDragArea === undefined) return { kind: "none", reason: "no drag area of the folded propeller is given" };
  const drag = 0.5 * air.density * airspeed ** 2 * foldedDragArea;
  return {
    kind: "solved",
    thrust: -drag * Math.cos(inflowAngle),
    torque: 0,
    normalForce: drag * Math.abs(Math.sin(inflowAngle)),
    sideForce: 0,
    pitchingMoment: 0,
    yawingMoment: 0,
    inducedVelocity: null,
    inducedPower: null,
    rings: [],
    extrapolated: [],
  };
}

function stateOf({ state }: PropellerPoint, { thrust }: PropellerLoads, power: number, rotationRate: number): PropellerRow["state"] {
  if (state !== "turning") return state;
  if (rotationRate < 0) return "reversed";
  if (power < 0) return "windmill";
  return thrust < 0 ? "braking" : "normal";
}
