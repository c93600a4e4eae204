import { solveRotorInflowAndFlap } from "../../aerodynamics/rotor/index.ts";
import { standardGravity } from "../../aircraft/index.ts";
import { type Airframe, rotorStateWidth } from "../../airframe/index.ts";
import type { FullConditions, FullPoint } from "./full-conditions.ts";
import type { FullProblem } from "./full-problem.ts";
import { attitudeIndex } from "./full-variables.ts";
import { collectiveFor, hoverVelocity, liftsUp, mainWing, type RoughFlight, reactionTorque, roughFlight } from "./start-estimates.ts";
import { type WayOfFlying, waysAt } from "./ways-of-flying.ts";

/** Above the horizontal by more than this a propeller lifts rather than pulls; to the side by more it turns the tail. */
const liftingAxis = Math.PI / 4;
const degree = Math.PI / 180;
/** Disc of a rotor that nothing drives: no more of its flapping range than this share. */
const tiltShare = 0.9;

/** Vectors of unknowns for a flight of which nothing is known, one for each way of flying. @derivation rough balance of weight and drag */
export function fullStarts(
  conditions: FullConditions,
  point: FullPoint,
  airframe: Airframe,
  problem: FullProblem,
): readonly Float64Array[] {
  const hover = hoverVelocity(conditions, airframe);
  return waysAt(point.airspeed, hover).map((way) => new Start(conditions, point, airframe, problem, way).x);
}

/** One vector of unknowns, filled part by part. */
class Start {
  readonly x: Float64Array;
  readonly conditions: FullConditions;
  readonly point: FullPoint;
  readonly airframe: Airframe;
  readonly problem: FullProblem;
  readonly way: WayOfFlying;
  readonly rough: RoughFlight;
  /** Downwash of all rotors on their way through the disc [m/s]. */
  downwash: Float64Array;

  constructor(conditions: FullConditions, point: FullPoint, airframe: Airframe, problem: FullProblem, way: WayOfFlying) {
    this.conditions = conditions;
    this.point = point;
    this.airframe = airframe;
    this.problem = problem;
    this.way = way;
    this.x = new Float64Array(problem.layout.size);
    this.rough = roughFlight(conditions, point, airframe, way);
    this.downwash = new Float64Array(airframe.rotors.length);
    this.put(attitudeIndex.pitch, this.rough.pitch);
    this.put(attitudeIndex.roll, 0);
    this.put(attitudeIndex.sideslip, point.sideslip ?? 0);
    this.put(attitudeIndex.path, this.rough.path);
    airframe.controls.forEach((_, k) => {
      const { low, high } = this.range(problem.layout.controlAt + k);
      this.put(problem.layout.controlAt + k, low > 0 || high < 0 ? (low + high) / 2 : 0);
    });
    this.setPropellers();
    airframe.rotors.forEach((_, k) => {
      this.setRotor(k);
    });
    if (way.alignedTail) this.alignTail();
    this.alignFins();
  }

  /** @param value [SI], brought within the bounds */
  put(index: number, value: number): void {
    const { layout } = this.problem;
    const scaled = value / (layout.units[index] as number);
    this.x[index] = Math.min(layout.upper[index] as number, Math.max(layout.lower[index] as number, scaled));
  }

  value(index: number): number {
    return (this.x[index] as number) * (this.problem.layout.units[index] as number);
  }

  range(index: number): { readonly low: number; readonly high: number } {
    const { layout } = this.problem;
    const unit = layout.units[index] as number;
    return { low: (layout.lower[index] as number) * unit, high: (layout.upper[index] as number) * unit };
  }

  /** Number of the unknown of a part's control, −1 without one. */
  control(part: string, what: string): number {
    const found = this.airframe.controls.findIndex((control) => control.part === part && control.what === what);
    return found < 0 ? -1 : this.problem.layout.controlAt + found;
  }

  /** Those that point ahead share the pull, those that stand up the weight where no rotor carries it, those across hold the tail. */
  setPropellers(): void {
    const { propellers, rotors, mass } = this.airframe;
    const weight = mass * standardGravity;
    const up = propellers.filter(({ axis }) => Math.abs(axis.up) > liftingAxis);
    const across = propellers.filter(({ axis }) => Math.abs(axis.right) > liftingAxis && Math.abs(axis.up) <= liftingAxis);
    const pulling = propellers.length - up.length - across.length;
    for (const part of propellers) {
      const index = this.control(part.id, "thrust");
      if (index < 0) continue;
      if (up.includes(part)) this.put(index, rotors.length > 0 ? 0 : weight / up.length);
      else if (across.includes(part)) this.put(index, this.antitorque(part.place.x, Math.sin(part.axis.right)) / across.length);
      else this.put(index, (this.way.forward * weight) / Math.max(pulling, 1));
    }
  }

  /** Thrust across, at this place, that holds the tail against the rotors' torque [N]. @param across share of the thrust to the right */
  antitorque(place: number, across: number): number {
    const { mass } = this.airframe.conditions;
    const arm = (place - mass.centre.x) * across;
    if (Math.abs(arm) < 1e-3) return 0;
    return -reactionTorque(this.conditions, this.airframe, this.problem.running, this.rough.rotorThrust) / arm;
  }

  setRotor(k: number): void {
    const rotor = this.airframe.rotors[k] as Airframe["rotors"][number];
    const { part } = rotor;
    const at = this.problem.layout.rotorAt + k * rotorStateWidth;
    const { low, high } = this.range(at);
    this.put(at, low + this.way.tipSpeed * (high - low));
    const tipSpeed = this.value(at);
    const lifting = this.airframe.rotors.filter(({ part: other }) => liftsUp(other));
    const area = lifting.reduce((sum, { area: one }) => sum + one, 0);
    const thrust = liftsUp(part)
      ? (this.rough.rotorThrust * rotor.area) / area
      : this.antitorque(part.hub.x, Math.sin(part.shaftTilt.right));
    // A shaft across the flight has the flow in its disc whatever the attitude.
    const shaftAngle = liftsUp(part) ? this.rough.pitch + part.shaftTilt.back - this.rough.path : 0;
    const tilt = this.airframe.isDriven(k, this.problem.running) || !liftsUp(part) ? 0 : this.freeTilt(part, shaftAngle);
    const discAngle = shaftAngle + tilt;
    const index = this.control(part.id, "collective");
    if (index >= 0) this.put(index, collectiveFor(this.conditions, rotor, this.point.airspeed, { tipSpeed, discAngle, thrust }));
    const settled = settledRotor(this.conditions, this.point, this.airframe, k, {
      tipSpeed,
      collective: index < 0 ? 0 : this.value(index),
      discAngle,
    });
    const inflow = settled?.inflow ?? Math.sqrt(Math.abs(thrust) / (2 * this.conditions.air.density * rotor.area)) / tipSpeed / 2;
    this.put(at + 1, inflow);
    this.downwash[k] = inflow * tipSpeed;
    this.put(at + 2, 0);
    this.put(at + 3, 0);
    this.put(at + 4, rotor.cones ? (settled?.coning ?? 0.05) : part.precone);
    if (settled) this.steer(part, settled, at, tilt);
  }

  /** How far the disc of a rotor that nothing drives is laid back against the shaft, so that the air turns it [rad]. */
  freeTilt(part: Airframe["rotors"][number]["part"], shaftAngle: number): number {
    if (this.way.freeDisc === undefined || this.control(part.id, "longitudinal-cyclic") < 0) return 0;
    const most = tiltShare * part.flapRange;
    const wanted = this.way.freeDisc * degree - shaftAngle;
    return this.way.freeDisc > 0 ? Math.min(most, Math.max(0, wanted)) : Math.max(-most, Math.min(0, wanted));
  }

  /** The cyclic that keeps the disc at `tilt` to the shaft, as far as there is one; the rest is flapping. */
  steer(part: Airframe["rotors"][number]["part"], { theta1c, theta1s }: Settled, stateAt: number, tilt: number): void {
    const sense = part.turns === "counter-clockwise" ? 1 : -1;
    const longitudinal = this.control(part.id, "longitudinal-cyclic");
    const lateral = this.control(part.id, "lateral-cyclic");
    if (longitudinal >= 0) {
      this.put(longitudinal, theta1s + tilt);
      this.put(stateAt + 2, tilt);
    } else this.put(stateAt + 2, -theta1s);
    if (lateral >= 0) this.put(lateral, -sense * theta1c);
    else this.put(stateAt + 3, sense * theta1c);
  }

  /** Upright surfaces turned into the air from the side. */
  alignFins(): void {
    const { sideslip = 0 } = this.point;
    for (const part of this.conditions.aircraft.surfaces) {
      const index = this.control(part.id, "deflection");
      if (index < 0 || Math.abs(part.dihedral) <= liftingAxis) continue;
      this.put(index, part.zeroLiftAngle - part.incidence - sideslip * Math.sign(part.dihedral));
    }
  }

  /** Flat tail surfaces that can be turned are laid along the flow at their place. */
  alignTail(): void {
    const { aircraft } = this.conditions;
    const wing = mainWing(this.conditions);
    const { airspeed } = this.point;
    const angle = this.rough.pitch - this.rough.path;
    aircraft.surfaces.forEach((part) => {
      const index = this.control(part.id, "deflection");
      if (index < 0 || part === wing || Math.abs(part.dihedral) > liftingAxis) return;
      let down = 0;
      for (const { active, on, kind, from, factor, share } of aircraft.interference) {
        if (!active || on !== part.id) continue;
        if (kind === "rotor-downwash") down += factor * share * (this.downwash[aircraft.rotors.findIndex(({ id }) => id === from)] ?? 0);
        if (kind === "wing-downwash" && from === wing?.id) down += ((factor * share * this.rough.wingLift) / wing.liftSlope) * airspeed;
      }
      const flow = Math.atan2(airspeed * Math.sin(angle) - down, Math.max(airspeed * Math.cos(angle), 0.1));
      this.put(index, part.zeroLiftAngle - part.incidence - flow);
    });
  }
}

interface Settled {
  readonly inflow: number;
  readonly theta1c: number;
  readonly theta1s: number;
  readonly coning: number;
}

/** Inflow and pitch harmonics of one rotor alone, in a wind from ahead. */
function settledRotor(
  { air }: FullConditions,
  point: FullPoint,
  airframe: Airframe,
  index: number,
  rotor: { readonly tipSpeed: number; readonly collective: number; readonly discAngle: number },
): Settled | undefined {
  const solved = solveRotorInflowAndFlap((airframe.rotors[index] as Airframe["rotors"][number]).workspace, {
    airspeed: Math.hypot(point.airspeed, point.climbRate),
    angle: {
      kind: "disc",
      value: rotor.discAngle - Math.atan2(point.climbRate, Math.max(point.airspeed, 1e-9)) * (point.airspeed > 1 ? 1 : 0),
    },
    tipSpeed: rotor.tipSpeed,
    collective: rotor.collective,
    air,
  });
  if (solved.kind !== "solved") return undefined;
  return { inflow: solved.lambdaI, theta1c: solved.theta1c, theta1s: solved.theta1s, coning: solved.coning };
}
