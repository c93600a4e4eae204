import {
  type CyclicPitch,
  createRotorWorkspace,
  flapStiffness,
  type NoOperatingPoint,
  type OperatingPoint,
  type RotorPoint,
  type RotorWorkspace,
  type ShaftCoefficients,
  type SolvedRotor,
  shaftCoefficients,
  solveRotorInflowAndFlap,
  type ThrustLimitCondition,
} from "../../aerodynamics/rotor/index.ts";
import type { Air } from "../../environment/atmosphere/index.ts";
import type { ThrustWanted, TorqueWanted } from "./givens.ts";
import type { RotorFlow } from "./stream.ts";

/** A rotor in equilibrium, seen from its shaft. */
export interface RotorState extends OperatingPoint {
  readonly cyclic: CyclicPitch;
  readonly shaft: ShaftCoefficients;
}

/** Why no state was found. */
export type NoRotorState =
  | Exclude<NoOperatingPoint, { readonly kind: "no-equilibrium" }>
  | { readonly kind: "no-equilibrium"; readonly seek: string; readonly reason: string };

/**
 * What is done with the blades' cyclic pitch: held at a value, or set so that the disc stays normal to the shaft, which is solved at once
 * only of blades that flap once per turn without coupling.
 */
export type CyclicSetting = CyclicPitch | "no-flapping";

/** Blade elements times sweeps after which a search is given up, with even inflow and ring by ring. */
const mostElements = 6e7;
const mostAnnularElements = 3e6;

/** One rotor in one air, with its cyclic pitch: makes states and measures them. */
export class RotorBench {
  /** Sweeps over the blades so far. */
  sweeps = 0;
  readonly ws: RotorWorkspace;
  readonly air: Air;
  readonly setting: CyclicSetting;
  /** Whether searches end near an answer, as `polishedState` takes it. */
  readonly rough: boolean;

  constructor(ws: RotorWorkspace, air: Air, setting: CyclicSetting, rough = false) {
    this.ws = ws;
    this.air = air;
    this.setting = setting;
    this.rough = rough;
  }

  /** Whether a search should end: counted, so that the same question ends the same way everywhere. */
  get spent(): boolean {
    const { annular, mesh } = this.ws;
    const elements = mesh.radiusFraction.length * mesh.sine.length;
    return this.sweeps * elements > (annular ? mostAnnularElements : mostElements);
  }

  /** The same rotor for a search that ends near an answer. */
  roughly(): RotorBench {
    return new RotorBench(this.ws, this.air, this.setting, true);
  }

  /** The same rotor with one induced velocity for the whole disc. */
  withEvenInflow(): RotorBench {
    return new RotorBench(createRotorWorkspace({ ...this.ws.model, inflowBalance: "mean" }), this.air, this.setting);
  }

  /** Flow and rotor speed without a collective. A disc that does not flap lies where the shaft's plane lies. */
  condition({ airspeed, angle }: RotorFlow, tipSpeed: number): ThrustLimitCondition {
    const { setting, air } = this;
    if (setting === "no-flapping") return { airspeed, angle: { kind: "disc", value: angle.value }, tipSpeed, air };
    const held = { kind: angle.of, value: angle.value, cyclicSine: setting.sine, cyclicCosine: setting.cosine };
    return { airspeed, angle: held, tipSpeed, air };
  }

  state(flow: RotorFlow, tipSpeed: number, collective: number): RotorState | NoRotorState {
    if (this.spent) return { kind: "no-equilibrium", seek: "state", reason: `the search was given up after ${this.sweeps} sweeps` };
    const point = { ...this.condition(flow, tipSpeed), collective };
    const rotor = solveRotorInflowAndFlap(this.ws, point);
    if (rotor.kind === "solved") return this.stateOf(point, rotor);
    this.sweeps += rotor.iterations;
    return rotor;
  }

  /** A solved rotor in axes of its shaft. */
  stateOf(point: RotorPoint, rotor: SolvedRotor): RotorState {
    this.sweeps += rotor.sweeps;
    const cyclic = this.setting === "no-flapping" ? { cosine: rotor.theta1c, sine: rotor.theta1s } : this.setting;
    const { coupling } = flapStiffness(this.ws.model.articulation, 1);
    const shaft = shaftCoefficients(rotor, cyclic, coupling);
    const shaftAngle = point.angle.kind === "shaft" ? point.angle.value : point.angle.value - shaft.flapLongitudinal;
    return { kind: "solved", point, shaftAngle, rotor, cyclic, shaft };
  }

  /** Thrust coefficient less the wanted one [1]. */
  thrustMissing({ point, shaft, shaftAngle }: RotorState, wanted: ThrustWanted): number {
    if (wanted.of === "ct") return shaft.ct - wanted.value;
    const target = wanted.value / this.force(point.tipSpeed);
    return wanted.of === "thrust" ? shaft.ct - target : shaft.ct * Math.cos(shaftAngle) - shaft.ch * Math.sin(shaftAngle) - target;
  }

  /** Torque coefficient less the wanted one [1]. */
  torqueMissing({ point, rotor }: RotorState, wanted: TorqueWanted): number {
    const { tipSpeed } = point;
    const arm = wanted.of === "torque" ? this.ws.model.radius : tipSpeed;
    return rotor.cq - wanted.value / (this.force(tipSpeed) * arm);
  }

  /** ρ π R² (ΩR)² [N]. */
  force(tipSpeed: number): number {
    const { radius } = this.ws.model;
    return this.air.density * Math.PI * radius * radius * tipSpeed * tipSpeed;
  }
}
