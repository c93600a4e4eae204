import type { Air } from "../../environment/atmosphere/index.ts";
import { flapStiffness } from "./articulation.ts";
import { collectiveForThrust } from "./collective-for-thrust.ts";
import { type Crossing, firstCrossing } from "./first-crossing.ts";
import { solveRotorInflowAndFlap } from "./inflow-and-flap.ts";
import type { ThrustLimitCondition } from "./largest-steady-thrust.ts";
import type { NoOperatingPoint, OperatingGivens, OperatingPoint, OperatingSurroundings, Stream } from "./operating-givens.ts";
import type { RotorWorkspace } from "./rotor-workspace.ts";
import { type CyclicPitch, shaftCoefficients } from "./shaft-axes.ts";

const degree = Math.PI / 180;
/** Lowest angle of the tip-path plane at which an autorotating disc is looked for: below, it pulls forward. */
const lowestAutorotatingDisc = -1 * degree;
/** Coefficients of thrust and torque are met to this. */
const coefficientTolerance = 1e-11;
/** Advancing tip Mach number and advance ratio between which a rotor speed is sought. */
const fastestTipMach = 0.9;
const largestAdvanceRatio = 1.2;

/** The searches behind `rotorOperatingPoint`. */
export class OperatingSearch {
  private readonly ws: RotorWorkspace;
  private readonly air: Air;
  private readonly cyclic: CyclicPitch;
  /** tan δ₃ of the articulation [1]. */
  private readonly coupling: number;

  constructor(ws: RotorWorkspace, surroundings: OperatingSurroundings) {
    this.ws = ws;
    this.air = surroundings.air;
    this.cyclic = surroundings.cyclic;
    this.coupling = flapStiffness(ws.model.articulation, 1).coupling;
  }

  loads(stream: Stream, shaftAngle: number, tipSpeed: number, collective: number): OperatingPoint | NoOperatingPoint {
    const point = { ...this.condition(stream, shaftAngle, tipSpeed), collective };
    const rotor = solveRotorInflowAndFlap(this.ws, point);
    return rotor.kind === "solved" ? { kind: "solved", point, shaftAngle, rotor } : rotor;
  }

  collective(stream: Stream, shaftAngle: number, tipSpeed: number, thrust: number, exactLimit = true): OperatingPoint | NoOperatingPoint {
    const force = this.force(tipSpeed);
    const condition = this.condition(stream, shaftAngle, tipSpeed);
    const found = collectiveForThrust(this.ws, condition, {
      value: thrust / force,
      tolerance: coefficientTolerance,
      of: (rotor) => shaftCoefficients(rotor, this.cyclic, this.coupling).ct,
      exactLimit,
    });
    switch (found.kind) {
      case "found":
        return { kind: "solved", point: { ...condition, collective: found.collective }, shaftAngle, rotor: found.rotor };
      case "unavailable":
        return { kind: "thrust-unavailable", largestThrust: found.largest * force };
      case "below-range":
        return { kind: "thrust-below-range", smallestThrust: found.smallest * force };
      case "no-search":
        return { kind: "no-equilibrium", seek: "collective", reason: found.reason };
    }
  }

  shaftAngle(stream: Stream, tipSpeed: number, collective: number, torque: number, fine = 1): OperatingPoint | NoOperatingPoint {
    const places = angleScan(torque <= 0, fine);
    const crossing = this.torqueCrossing(torque, tipSpeed, places, (angle) => this.loads(stream, angle, tipSpeed, collective));
    return this.endOfAngleScan(crossing, torque, "shaft-angle");
  }

  shaftAngleAndCollective(stream: Stream, tipSpeed: number, thrust: number, torque: number): OperatingPoint | NoOperatingPoint {
    const places = angleScan(torque <= 0, 4);
    const crossing = this.torqueCrossing(torque, tipSpeed, places, (angle) => this.collective(stream, angle, tipSpeed, thrust, false));
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
            : shaftCoefficients(solved.rotor, this.cyclic, this.coupling).ct - held.value / force;
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
      const solved = this.shaftAngle(stream, tipSpeed, collective, torque, 4);
      if (solved.kind !== "solved") return undefined;
      return { value: shaftCoefficients(solved.rotor, this.cyclic, this.coupling).ct - thrust / this.force(tipSpeed), payload: solved };
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

  private condition(stream: Stream, shaftAngle: number, tipSpeed: number): ThrustLimitCondition {
    return {
      airspeed: stream.kind === "airspeed" ? stream.value : (stream.value * tipSpeed) / Math.cos(shaftAngle),
      angle: { kind: "shaft", value: shaftAngle, cyclicSine: this.cyclic.sine, cyclicCosine: this.cyclic.cosine },
      tipSpeed,
      air: this.air,
    };
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
    place += place < 24 ? fine : 2 + fine;
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
