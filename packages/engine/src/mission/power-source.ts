import type { PoweredMode } from "../performance/index.ts";

/** A limit by name, with the family that says what it is made of. */
export interface NamedLimit {
  readonly name: string;
  readonly family: "air" | "power" | "strength" | "control" | "rule";
}

/** One steady flight to price. Horizontal and vertical speed through the air [m/s], height above mean sea level [m]. */
export interface PowerRequest {
  /** Which loading of the flight, counted from 0. */
  readonly loading: number;
  readonly altitude: number;
  readonly forward: number;
  readonly climb: number;
  readonly mode: PoweredMode;
}

/** Least power that carries the aircraft so, or the limit that forbids it. */
export type PowerAnswer =
  | {
      readonly kind: "flies";
      /** At the pack's terminals [W]. */
      readonly electricPower: number;
      /** [W] */
      readonly rotorShaftPower: number;
      /** Largest steady thrust over trimmed thrust [1]. */
      readonly stallMargin: number;
      /** Used share of each of the source's limits, in their order [1]. */
      readonly shares: readonly number[];
      /** Start for a neighbouring request, meaningful to the source alone. */
      readonly trace?: unknown;
    }
  | { readonly kind: "no-equilibrium"; readonly limit: NamedLimit };

/** What the mission asks of the aircraft: exact answers, each a function of its arguments alone. */
export interface PowerSource {
  readonly limits: readonly NamedLimit[];
  /** From nothing, and from a neighbour's trace when one is given: whichever is cheaper. */
  power(request: PowerRequest, trace?: unknown): PowerAnswer;
  /** From a neighbour's trace alone: quick, and says nothing about what other starts would find. */
  powerFrom(request: PowerRequest, trace: unknown): PowerAnswer;
}
