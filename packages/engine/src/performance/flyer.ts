import {
  type FlightConditions,
  type FlightMode,
  type FlightPoint,
  type FullTrimmed,
  type FullTrimmer,
  type TrimLimit,
  type Trimmed,
  type TrimRotor,
  type TrimStart,
  trim,
  trimFrom,
  withSearchedMargin,
} from "../equilibrium/index.ts";
import { coarseFullSpeedLine, fullSpeedLine, type LineFlight, straightAndLevel } from "./full-line.ts";
import { coarseSpeedLine, type LineHooks, type LinePoint, type NotFlown, speedLine } from "./speed-line.ts";

/** A steady flight that was found, at whatever trim level. */
export interface Flown {
  readonly kind: "trimmed";
  /** Speeds [m/s], airspeed along the path; electric power [W]. */
  readonly flown: {
    readonly mode: FlightMode;
    readonly airspeed: number;
    readonly forwardSpeed: number;
    readonly climbRate: number;
    readonly electricPower: number;
  };
  readonly limits: readonly { readonly limit: TrimLimit; readonly share: number }[];
  readonly start: unknown;
}

/** A flight to find: horizontal and vertical speed through the air [m/s]; along the path in a glide. */
export interface FlightRequest {
  readonly mode: FlightMode;
  readonly forwardSpeed: number;
  readonly climbRate: number;
}

/** One aircraft in one loading and air, trimmed at one level: what speeds, ranges and endurances are found with. */
export interface Flyer<F extends Flown = Flown> {
  /** From nothing; stall margins from the table when `rough`. */
  trim(request: FlightRequest, rough?: boolean): F | NotFlown;
  /** Beside a flight that is known. */
  trimFrom(request: FlightRequest, near: F, rough?: boolean): F | NotFlown;
  /** The same flight with its stall margins searched. */
  searched(found: F): F | NotFlown;
  line(mode: FlightMode, speeds: readonly number[], hooks: LineHooks): readonly LinePoint<F>[];
  coarseLine(mode: FlightMode, speeds: readonly number[], hooks: LineHooks): readonly LinePoint<F>[];
}

/** Flights at the trim level `reduced`. @derivation not a formula */
export function reducedFlyer(conditions: FlightConditions, rotor: TrimRotor): Flyer<Trimmed> {
  const point = ({ mode, forwardSpeed, climbRate }: FlightRequest): FlightPoint => ({ mode, forwardSpeed, climbRate });
  const margin = (rough?: boolean) => (rough ? "table" : "exact");
  return {
    trim: (request, rough) => trim(conditions, point(request), rotor, margin(rough)),
    trimFrom: (request, near, rough) => trimFrom(conditions, point(request), rotor, [near.start as TrimStart], margin(rough)),
    searched: (found) => withSearchedMargin(conditions, found, rotor),
    line: (mode, speeds, hooks) => speedLine(conditions, mode, speeds, rotor, hooks),
    coarseLine: (mode, speeds, hooks) => coarseSpeedLine(conditions, mode, speeds, rotor, hooks),
  };
}

/** Flights at the trim level `full`, with side wind, turn and failures as given. @derivation not a formula */
export function fullFlyer(trimmer: FullTrimmer, flight: LineFlight = straightAndLevel): Flyer<FullTrimmed> {
  const point = ({ mode, forwardSpeed, climbRate }: FlightRequest) => ({ ...flight, mode, airspeed: forwardSpeed, climbRate });
  const margin = (rough?: boolean) => (rough ? "table" : "exact");
  const rotors = new Set(trimmer.airframe.rotors.map(({ part }) => part.id));
  const hasClutch = trimmer.airframe.lines.some(({ clutch, drives }) => clutch === "one-way" && rotors.has(drives));
  const closed: NotFlown = { kind: "no-equilibrium", limit: "it has no clutch to open", family: "control" };
  const none = (speeds: readonly number[]) => speeds.map((airspeed) => ({ airspeed, outcome: closed }));
  const refused = (mode: FlightMode) => mode === "clutch-open" && !hasClutch;
  return {
    trim: (request, rough) => (refused(request.mode) ? closed : trimmer.trim(point(request), margin(rough))),
    trimFrom: (request, near, rough) => trimmer.trimFrom(point(request), [near.start], margin(rough)),
    searched: (found) => trimmer.trimFrom(found.point, [found.start]),
    line: (mode, speeds, hooks) => (refused(mode) ? none(speeds) : fullSpeedLine(trimmer, mode, speeds, hooks, flight)),
    coarseLine: (mode, speeds, hooks) => (refused(mode) ? none(speeds) : coarseFullSpeedLine(trimmer, mode, speeds, hooks, flight)),
  };
}
