import type { WingPoint } from "../../aerodynamics/wing/index.ts";
import { type Air, atmosphereAt } from "../../environment/atmosphere/index.ts";
import type { Problem, ProjectView } from "../contract.ts";
import type { Assumed } from "../inputs/flight-conditions.ts";
import { isProblem } from "../inputs/flight-conditions.ts";
import { type WingReading, wingReading } from "./input.ts";
import type { WingInputs } from "./schema.ts";

const gravity = 9.80665;
/** Where nothing says how fast it flies [1]. */
const usualReynolds = 500_000;
/** Lift coefficient of a usual cruise, for the section of a parabolic polar [1]. */
const usualLift = 0.6;
/** Glides steeper than this are dives: their speed is not followed further [1]. */
const leastForce = 0.05;
/** First guess of the lift of a stalled wing, no more [1]. */
const mostLift = 1.2;
const fastestMach = 0.85;
const reynoldsRange = [1000, 1e8] as const;

/** A wing in its air with what it carries. */
export interface WingBench {
  readonly reading: WingReading;
  readonly air: Air;
  /** [N]; undefined without mass. */
  readonly weight: number | undefined;
  readonly parasite: number;
  readonly at: (angle: number) => BenchPoint;
  /** On a parabola without stall, where there is one. */
  readonly attachedAt: ((angle: number) => BenchPoint) | undefined;
}

/** The wing at an angle of attack, with what else drags. */
export interface BenchPoint {
  readonly angle: number;
  readonly wing: WingPoint;
  readonly lift: number;
  /** All of it. */
  readonly drag: number;
  readonly reynolds: number;
}

export function wingAir(inputs: WingInputs): { readonly air: Air; readonly assumed: Assumed } {
  const standard = atmosphereAt({ altitude: inputs.altitude ?? 0, temperatureOffset: inputs.temperatureOffset, relativeHumidity: 0 });
  if (inputs.air) {
    const { density, dynamicViscosity, speedOfSound } = inputs.air;
    const air = {
      density,
      dynamicViscosity: dynamicViscosity ?? standard.dynamicViscosity,
      speedOfSound: speedOfSound ?? standard.speedOfSound,
    };
    const because = "not given: standard day at mean sea level";
    return {
      air,
      assumed: [
        ...(dynamicViscosity === undefined ? [{ path: "/air/dynamicViscosity", value: standard.dynamicViscosity, because }] : []),
        ...(speedOfSound === undefined ? [{ path: "/air/speedOfSound", value: standard.speedOfSound, because }] : []),
      ],
    };
  }
  const assumed =
    inputs.altitude === undefined ? [{ path: "/altitude", value: 0, because: "no air was given: mean sea level, standard day" }] : [];
  return { air: standard, assumed };
}

/** The wing of the inputs, ready to be asked at any angle, or why there is none. */
export function wingBench(project: ProjectView, inputs: WingInputs): (WingBench & { readonly assumed: Assumed }) | Problem {
  const { air, assumed: assumedAir } = wingAir(inputs);
  const weight = inputs.mass === undefined ? undefined : inputs.mass * gravity;
  const size = sizeOf(inputs);
  const steady = steadyStream(inputs, air, size);
  const chosen =
    steady ?? (weight !== undefined && size ? streamAt(glideSpeed(weight, air, size.area, usualLift), air, size.chord) : usual);
  const reading = wingReading(project, inputs, chosen);
  if (isProblem(reading)) return reading;
  const parasite = inputs.parasiteDragArea / reading.area;
  const chord = reading.area / reading.span;
  const dragging = (angle: number, wing: WingPoint, { reynolds }: Stream): BenchPoint => {
    return { angle, wing, lift: wing.lift, drag: wing.induced + wing.profile + parasite, reynolds };
  };
  const point = (angle: number, stream: Stream): BenchPoint =>
    dragging(angle, reading.at({ angle: angle + reading.incidence, reynolds: stream.reynolds, mach: stream.mach }), stream);
  const gliding = (angle: number): BenchPoint => {
    const streamOf = (force: number): Stream => streamAt(glideSpeed(weight ?? 0, air, reading.area, force), air, chord);
    const guessed = point(angle, streamOf(Math.min(Math.abs(reading.attachedLift(angle + reading.incidence)), mostLift)));
    return point(angle, streamOf(Math.hypot(guessed.lift, guessed.drag)));
  };
  const followed = steady === undefined && weight !== undefined;
  const at = followed && reading.scaled ? gliding : (angle: number) => point(angle, chosen);
  const nothing = !followed && steady === undefined && reading.scaled;
  const because = "neither Reynolds number, airspeed nor mass was given";
  const assumed = nothing ? [...assumedAir, { path: "/reynoldsNumber", value: usualReynolds, because }] : assumedAir;
  const { attached } = reading;
  const attachedAt = attached && ((angle: number) => dragging(angle, attached.at(angle + reading.incidence), chosen));
  return { reading, air, weight, parasite, at, attachedAt, assumed };
}

interface Stream {
  readonly reynolds: number;
  readonly mach: number;
}

const usual: Stream = { reynolds: usualReynolds, mach: 0 };

function sizeOf({ wing }: WingInputs): { readonly area: number; readonly chord: number } | undefined {
  return "aircraft" in wing ? undefined : { area: wing.area, chord: wing.area / wing.span };
}

function steadyStream(inputs: WingInputs, air: Air, size: { readonly chord: number } | undefined): Stream | undefined {
  if (inputs.reynoldsNumber !== undefined) return { reynolds: inputs.reynoldsNumber, mach: 0 };
  return inputs.airspeed === undefined ? undefined : streamAt(inputs.airspeed, air, size?.chord ?? 1);
}

function streamAt(airspeed: number, air: Air, chord: number): Stream {
  const reynolds = (air.density * airspeed * chord) / air.dynamicViscosity;
  return {
    reynolds: Math.min(Math.max(reynolds, reynoldsRange[0]), reynoldsRange[1]),
    mach: Math.min(airspeed / air.speedOfSound, fastestMach),
  };
}

/** Speed at which the whole force on the wing carries the weight [m/s]. */
export function glideSpeed(weight: number, air: Air, area: number, force: number): number {
  return Math.sqrt((2 * weight) / (air.density * area * Math.max(force, leastForce)));
}
