import { firstCrossing } from "../rotor/index.ts";
import type { NoPropellerLoads, PropellerCondition, PropellerLoads, PropellerSource } from "./propeller-source.ts";

/** What the rate is sought by: SI values. */
export type RateTarget =
  | { readonly kind: "thrust"; readonly value: number }
  | { readonly kind: "power"; readonly value: number }
  | { readonly kind: "torque"; readonly value: number };

/** The stream at which it is sought: an airspeed, or an advance ratio that the airspeed follows from. */
export type RateStream =
  | { readonly kind: "airspeed"; readonly airspeed: number }
  | { readonly kind: "advanceRatio"; readonly advanceRatio: number };

export type RateFound =
  | { readonly kind: "found"; readonly condition: PropellerCondition; readonly loads: PropellerLoads }
  | NoPropellerLoads;

/** Lowest tip speed looked at [m/s], step between places, tip Mach number at which the search ends. */
const lowestTipSpeed = 0.3;
const stepFactor = 1.2;
/** Beyond any propeller: a rate is not below the one at which these would give what is wanted. */
const boundThrustCoefficient = 1;
const boundPowerCoefficient = 2;
const boundAdvanceRatio = 10;
export const largestTipMach = 0.9;
const relativeTolerance = 1e-9;

/**
 * The rotation rate at which a propeller gives a thrust, takes a power, or needs a torque (0: it turns free), from the lowest rate
 * upwards: the first rate at which the quantity rises through the wanted value. So a stalled or braking answer at a higher rate is never
 * returned, and of several free rates it is the one that a propeller let go reaches first.
 *
 * @derivation scan and root search
 */
export function rotationRateFor(
  source: PropellerSource,
  stream: RateStream,
  surroundings: Pick<PropellerCondition, "inflowAngle" | "air">,
  target: RateTarget,
): RateFound {
  const { air } = surroundings;
  const conditionAt = (rotationRate: number): PropellerCondition => ({
    ...surroundings,
    rotationRate,
    airspeed: stream.kind === "airspeed" ? stream.airspeed : (stream.advanceRatio * rotationRate * source.diameter) / (2 * Math.PI),
  });
  const places: number[] = [];
  const highest = (2 * largestTipMach * air.speedOfSound) / source.diameter;
  const lowest = Math.max((2 * lowestTipSpeed) / source.diameter, lowestRate(source.diameter, stream, air.density, target));
  for (let rate = lowest; rate < highest; rate *= stepFactor) places.push(rate);
  places.push(highest);
  const scale = Math.max(Math.abs(target.value), scaleOf(target, source.diameter));
  let reason = "";
  const crossing = firstCrossing(
    places,
    (rate) => {
      const condition = conditionAt(rate);
      const loads = source.loadsAt(condition);
      if (loads.kind !== "solved") {
        reason = loads.reason;
        return undefined;
      }
      return { value: target.value - measured(target, loads, rate), payload: { condition, loads } };
    },
    relativeTolerance * scale,
  );
  if (crossing.kind === "found") return { kind: "found", ...crossing.sample.payload };
  if (crossing.solved === 0) return { kind: "none", reason };
  // A table or a law that ends before the rate is reached says so itself.
  if (reason !== "" && target.kind === "torque") return { kind: "none", reason };
  return { kind: "none", reason: missed(target, target.value - crossing.lowest, target.value - crossing.highest) };
}

function lowestRate(diameter: number, stream: RateStream, density: number, { kind, value }: RateTarget): number {
  const turns =
    kind === "thrust"
      ? Math.sqrt(Math.max(value, 0) / (boundThrustCoefficient * density * diameter ** 4))
      : kind === "power"
        ? Math.cbrt(Math.max(value, 0) / (boundPowerCoefficient * density * diameter ** 5))
        : stream.kind === "airspeed"
          ? stream.airspeed / (boundAdvanceRatio * diameter)
          : 0;
  return 2 * Math.PI * turns;
}

function measured({ kind }: RateTarget, loads: PropellerLoads, rate: number): number {
  if (kind === "thrust") return loads.thrust;
  return kind === "torque" ? loads.torque : loads.torque * rate;
}

/** Of a propeller of this diameter that does nearly nothing: thrust 1 mN at 0.25 m, and what goes with it. */
function scaleOf({ kind }: RateTarget, diameter: number): number {
  const thrust = 0.016 * diameter ** 2;
  if (kind === "thrust") return thrust;
  return kind === "torque" ? 0.1 * thrust * diameter : thrust;
}

const units = { thrust: "N", power: "W", torque: "N m" } as const;

function missed({ kind, value }: RateTarget, largest: number, smallest: number): string {
  const amount = (one: number): string => `${Number(one.toPrecision(4))} ${units[kind]}`;
  if (kind === "torque" && value === 0)
    return smallest > 0
      ? "the air does not turn this propeller: it needs torque at every rate"
      : "no rate was found at which the torque vanishes";
  if (largest < value)
    return `the largest ${kind} up to tip Mach number ${largestTipMach} is ${amount(largest)}, ${amount(value)} was asked for`;
  if (smallest > value) return `the smallest ${kind} is ${amount(smallest)}, ${amount(value)} was asked for`;
  return `no rate was found at which the ${kind} rises through ${amount(value)}`;
}
