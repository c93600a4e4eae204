import type { Air } from "../../environment/atmosphere/index.ts";
import { type Crossing, firstCrossing } from "./first-crossing.ts";
import { type SolvedRotor, solveRotorInflowAndFlap } from "./inflow-and-flap.ts";
import { largestSteadyThrust, unstalledMarch } from "./largest-steady-thrust.ts";
import type { RotorPoint } from "./rotor-point.ts";
import type { RotorWorkspace } from "./rotor-workspace.ts";
import { type CyclicPitch, shaftCoefficients } from "./shaft-axes.ts";

/** The free stream, as airspeed V [m/s] or as advance ratio V cos(shaft angle)/(ΩR) [1]. */
export type Stream = { readonly kind: "airspeed"; readonly value: number } | { readonly kind: "advance-ratio"; readonly value: number };

/** What is held and what is sought; all in axes of the shaft. Thrust [N] and shaft torque [N m] are those of the whole rotor. */
export type OperatingGivens =
  | { readonly seek: "loads"; readonly stream: Stream; readonly shaftAngle: number; readonly tipSpeed: number; readonly collective: number }
  | {
      readonly seek: "collective";
      readonly stream: Stream;
      readonly shaftAngle: number;
      readonly tipSpeed: number;
      readonly thrust: number;
    }
  | {
      readonly seek: "shaft-angle";
      readonly stream: Stream;
      readonly tipSpeed: number;
      readonly collective: number;
      readonly torque: number;
    }
  | {
      readonly seek: "tip-speed";
      readonly airspeed: number;
      readonly shaftAngle: number;
      readonly collective: number;
      readonly held: { readonly kind: "torque" | "thrust"; readonly value: number };
    }
  | {
      readonly seek: "shaft-angle-and-collective";
      readonly stream: Stream;
      readonly tipSpeed: number;
      readonly thrust: number;
      readonly torque: number;
    }
  | {
      readonly seek: "shaft-angle-and-tip-speed";
      readonly airspeed: number;
      readonly collective: number;
      readonly thrust: number;
      readonly torque: number;
    };

/** A rotor found in equilibrium, with the point it was found at. */
export interface OperatingPoint {
  readonly kind: "solved";
  readonly point: RotorPoint;
  readonly shaftAngle: number;
  readonly rotor: SolvedRotor;
}

/** No such state, with the numbers that say why. */
export type NoOperatingPoint =
  | { readonly kind: "not-converged"; readonly residual: number; readonly iterations: number }
  | { readonly kind: "thrust-unavailable"; readonly largestThrust: number }
  | { readonly kind: "thrust-below-range"; readonly smallestThrust: number }
  | { readonly kind: "no-equilibrium"; readonly seek: OperatingGivens["seek"]; readonly reason: string };

/** What stays the same while an operating point is sought. */
export interface OperatingSurroundings {
  readonly air: Air;
  readonly cyclic: CyclicPitch;
}

const degree = Math.PI / 180;
/** Lowest angle of the tip-path plane at which an autorotating disc is looked for: below, it pulls forward. */
const lowestAutorotatingDisc = -1 * degree;
/** Collectives from which a thrust is sought: the second when the first makes too much already. */
const collectiveStarts = [-6 * degree, -24 * degree] as const;
/** Coefficients of thrust and torque are met to this. */
const coefficientTolerance = 1e-11;
/** Advancing tip Mach number and advance ratio between which a rotor speed is sought. */
const fastestTipMach = 0.9;
const largestAdvanceRatio = 1.2;

/**
 * A rotor's operating point from four of: free stream, shaft angle, rotor speed, collective, thrust, shaft torque.
 *
 * Never on the stalled branch where collective is sought: thrust is approached from low collective and not beyond its first
 * maximum. Shaft angles are scanned upward and the first place where the torque needed falls through the given one is taken
 * (the torque is not monotonic); rotor speeds are scanned downward from the fastest, so the fast, stable equilibrium is found.
 *
 * @derivation searches over `solveRotorInflowAndFlap`
 */
export function rotorOperatingPoint(
  ws: RotorWorkspace,
  givens: OperatingGivens,
  surroundings: OperatingSurroundings,
): OperatingPoint | NoOperatingPoint {
  const search = new OperatingSearch(ws, surroundings);
  switch (givens.seek) {
    case "loads":
      return search.loads(givens.stream, givens.shaftAngle, givens.tipSpeed, givens.collective);
    case "collective":
      return search.collective(givens.stream, givens.shaftAngle, givens.tipSpeed, givens.thrust);
    case "shaft-angle":
      return search.shaftAngle(givens.stream, givens.tipSpeed, givens.collective, givens.torque);
    case "tip-speed":
      return search.tipSpeed(givens);
    case "shaft-angle-and-collective":
      return search.shaftAngleAndCollective(givens.stream, givens.tipSpeed, givens.thrust, givens.torque);
    case "shaft-angle-and-tip-speed":
      return search.shaftAngleAndTipSpeed(givens);
  }
}

class OperatingSearch {
  private readonly ws: RotorWorkspace;
  private readonly air: Air;
  private readonly cyclic: CyclicPitch;

  constructor(ws: RotorWorkspace, surroundings: OperatingSurroundings) {
    this.ws = ws;
    this.air = surroundings.air;
    this.cyclic = surroundings.cyclic;
  }

  loads(stream: Stream, shaftAngle: number, tipSpeed: number, collective: number): OperatingPoint | NoOperatingPoint {
    const point: RotorPoint = {
      airspeed: stream.kind === "airspeed" ? stream.value : (stream.value * tipSpeed) / Math.cos(shaftAngle),
      angle: { kind: "shaft", value: shaftAngle, cyclicSine: this.cyclic.sine },
      tipSpeed,
      collective,
      air: this.air,
    };
    const rotor = solveRotorInflowAndFlap(this.ws, point);
    return rotor.kind === "solved" ? { kind: "solved", point, shaftAngle, rotor } : rotor;
  }

  collective(stream: Stream, shaftAngle: number, tipSpeed: number, thrust: number): OperatingPoint | NoOperatingPoint {
    const target = thrust / this.force(tipSpeed);
    const airspeed = stream.kind === "airspeed" ? stream.value : (stream.value * tipSpeed) / Math.cos(shaftAngle);
    const condition = {
      airspeed,
      angle: { kind: "shaft", value: shaftAngle, cyclicSine: this.cyclic.sine },
      tipSpeed,
      air: this.air,
    } as const;
    const thrustOf = (rotor: SolvedRotor): number => shaftCoefficients(rotor, this.cyclic).ct;
    const marchFrom = (start: number) => unstalledMarch(this.ws, condition, start, (rotor) => thrustOf(rotor) >= target);
    const first = marchFrom(collectiveStarts[0]);
    const march = first.kind === "enough" && first.before === first.after ? marchFrom(collectiveStarts[1]) : first;
    if (march.kind === "not-found") return { kind: "no-equilibrium", seek: "collective", reason: march.reason };
    if (march.kind === "passed") {
      // The maximum lies between two steps of the march: it may still reach the target.
      const largest = largestSteadyThrust(this.ws, condition);
      if (largest.kind === "not-found") return { kind: "no-equilibrium", seek: "collective", reason: largest.reason };
      const reached = thrustOf(largest.rotor);
      if (reached < target) return { kind: "thrust-unavailable", largestThrust: reached * this.force(tipSpeed) };
      return this.collectiveWithin(stream, shaftAngle, tipSpeed, target, [largest.collective, march.before.collective]);
    }
    if (march.before === march.after) {
      return { kind: "thrust-below-range", smallestThrust: thrustOf(march.after.rotor) * this.force(tipSpeed) };
    }
    return this.collectiveWithin(stream, shaftAngle, tipSpeed, target, [march.after.collective, march.before.collective]);
  }

  /** Between a collective with more thrust and one with less. */
  private collectiveWithin(
    stream: Stream,
    shaftAngle: number,
    tipSpeed: number,
    target: number,
    places: readonly [number, number],
  ): OperatingPoint | NoOperatingPoint {
    const crossing = firstCrossing(
      places,
      (collective) => {
        const solved = this.loads(stream, shaftAngle, tipSpeed, collective);
        return solved.kind === "solved" ? { value: shaftCoefficients(solved.rotor, this.cyclic).ct - target, payload: solved } : undefined;
      },
      coefficientTolerance,
    );
    return crossing.kind === "found"
      ? crossing.sample.payload
      : { kind: "no-equilibrium", seek: "collective", reason: "the collective could not be closed in on" };
  }

  shaftAngle(stream: Stream, tipSpeed: number, collective: number, torque: number): OperatingPoint | NoOperatingPoint {
    const places = angleScan(torque <= 0, 1);
    const crossing = this.torqueCrossing(torque, tipSpeed, places, (angle) => this.loads(stream, angle, tipSpeed, collective));
    return this.endOfAngleScan(crossing, torque, "shaft-angle");
  }

  shaftAngleAndCollective(stream: Stream, tipSpeed: number, thrust: number, torque: number): OperatingPoint | NoOperatingPoint {
    const places = angleScan(torque <= 0, 3);
    const crossing = this.torqueCrossing(torque, tipSpeed, places, (angle) => this.collective(stream, angle, tipSpeed, thrust));
    return this.endOfAngleScan(crossing, torque, "shaft-angle-and-collective");
  }

  tipSpeed(givens: Extract<OperatingGivens, { readonly seek: "tip-speed" }>): OperatingPoint | NoOperatingPoint {
    const { airspeed, shaftAngle, collective, held } = givens;
    const alongDisc = airspeed * Math.abs(Math.cos(shaftAngle));
    const fastest = fastestTipMach * this.air.speedOfSound - alongDisc;
    const slowest = Math.max(alongDisc / largestAdvanceRatio, 0.002 * this.air.speedOfSound);
    if (fastest <= slowest)
      return { kind: "no-equilibrium", seek: "tip-speed", reason: "the airspeed leaves no rotor speed below the limits" };
    const places: number[] = [];
    for (let place = fastest; place > slowest; place *= 0.93) places.push(place);
    const crossing = firstCrossing(
      [...places, slowest],
      (tipSpeed) => {
        const solved = this.loads({ kind: "airspeed", value: airspeed }, shaftAngle, tipSpeed, collective);
        if (solved.kind !== "solved") return undefined;
        const force = this.force(tipSpeed);
        const value =
          held.kind === "torque"
            ? solved.rotor.cq - held.value / (force * this.ws.model.radius)
            : shaftCoefficients(solved.rotor, this.cyclic).ct - held.value / force;
        return { value, payload: solved };
      },
      coefficientTolerance,
    );
    if (crossing.kind === "found") return crossing.sample.payload;
    return { kind: "no-equilibrium", seek: "tip-speed", reason: scanReason(crossing, held.kind, held.value) };
  }

  shaftAngleAndTipSpeed(
    givens: Extract<OperatingGivens, { readonly seek: "shaft-angle-and-tip-speed" }>,
  ): OperatingPoint | NoOperatingPoint {
    const { airspeed, collective, thrust, torque } = givens;
    const stream = { kind: "airspeed", value: airspeed } as const;
    const thrustMissing = (tipSpeed: number): { readonly value: number; readonly payload: OperatingPoint } | undefined => {
      const solved = this.shaftAngle(stream, tipSpeed, collective, torque);
      if (solved.kind !== "solved") return undefined;
      return { value: shaftCoefficients(solved.rotor, this.cyclic).ct - thrust / this.force(tipSpeed), payload: solved };
    };
    const fastest = fastestTipMach * this.air.speedOfSound - airspeed;
    const slowest = Math.max(airspeed / largestAdvanceRatio, 0.002 * this.air.speedOfSound);
    const places: number[] = [];
    for (let place = fastest; place > slowest; place *= 0.85) places.push(place);
    const crossing = firstCrossing(places, thrustMissing, coefficientTolerance);
    if (crossing.kind === "found") return crossing.sample.payload;
    return { kind: "no-equilibrium", seek: "shaft-angle-and-tip-speed", reason: scanReason(crossing, "thrust", thrust) };
  }

  /** First shaft angle, going up, at which the torque needed falls through the given one. */
  private torqueCrossing(
    torque: number,
    tipSpeed: number,
    places: readonly number[],
    at: (shaftAngle: number) => OperatingPoint | NoOperatingPoint,
  ): Crossing<OperatingPoint> {
    const target = torque / (this.force(tipSpeed) * this.ws.model.radius);
    const autorotating = torque <= 0;
    return firstCrossing(
      places,
      (shaftAngle) => {
        const solved = at(shaftAngle);
        if (solved.kind !== "solved") return undefined;
        if (autorotating && solved.rotor.discAngle < lowestAutorotatingDisc) return undefined;
        return { value: solved.rotor.cq - target, payload: solved };
      },
      coefficientTolerance,
    );
  }

  private endOfAngleScan(
    crossing: Crossing<OperatingPoint>,
    torque: number,
    seek: "shaft-angle" | "shaft-angle-and-collective",
  ): OperatingPoint | NoOperatingPoint {
    if (crossing.kind === "found") return crossing.sample.payload;
    return { kind: "no-equilibrium", seek, reason: scanReason(crossing, "torque", torque) };
  }

  /** ρ π R² (ΩR)² [N]. */
  private force(tipSpeed: number): number {
    const { radius } = this.ws.model;
    return this.air.density * Math.PI * radius * radius * tipSpeed * tipSpeed;
  }
}

/** In fine steps [deg] where autorotation in level flight lies, wider towards vertical descent. */
function angleScan(autorotating: boolean, fine: number): readonly number[] {
  const places: number[] = [];
  let place = autorotating ? -16 : -60;
  while (place < 90) {
    places.push(place * degree);
    place += place < 24 ? fine : Math.max(fine, 3);
  }
  return [...places, Math.PI / 2];
}

function scanReason(crossing: Extract<Crossing<unknown>, { readonly kind: "none" }>, held: "torque" | "thrust", value: number): string {
  if (crossing.solved === 0) return "the rotor stalls, or cannot be solved, at every place that was tried";
  if (held === "torque" && value === 0) {
    return crossing.lowest > 0
      ? "the shaft has to drive this rotor at every place that was tried"
      : "wherever the rotor is not stalled the air already drives it faster";
  }
  return crossing.lowest > 0 ? `the ${held} stays above the given one everywhere` : `the ${held} nowhere falls through the given one`;
}
