import type { AircraftDefinition, DriveLine } from "../aircraft/index.ts";
import type { AirframeConditions, AirframeLoads, AirframeMotion } from "./airframe-loads.ts";
import { rotorStateWidth } from "./airframe-loads.ts";
import { cross, type Vector } from "./axes.ts";
import {
  type AirframeControl,
  airframeControls,
  type PropellerControls,
  propellerControls,
  type RotorControls,
  rotorControls,
  surfaceControls,
} from "./control-map.ts";
import { bodyLoads } from "./drag-body.ts";
import { type DrivePower, drivePower, type LossModel, restingDrive } from "./drive-power.ts";
import { ElementRotor, type RotorLoads } from "./element-rotor.ts";
import { LiftingSurface } from "./lifting-surface.ts";
import { LoadSum, localVelocity } from "./load-sum.ts";
import { type PropellerLoads, propellerLoads, thrustAxis } from "./thrust-propeller.ts";
import { type Exposure, exposures, orderByWake, type Wash } from "./wash.ts";

interface RotorEntry {
  readonly rotor: ElementRotor;
  readonly controls: RotorControls;
  readonly arm: Vector;
  /** Number of its drive line, −1 where nothing drives it. */
  readonly line: number;
}

interface PropellerEntry {
  readonly part: AircraftDefinition["propellers"][number];
  readonly controls: PropellerControls;
  readonly arm: Vector;
  readonly line: number;
}

interface SurfaceEntry {
  readonly surface: LiftingSurface;
  readonly deflection: number;
  readonly edges: readonly { readonly at: number; readonly control: number; readonly factor: number }[];
  readonly deflections: Float64Array;
  readonly exposures: readonly Exposure[];
}

const still: Vector = [0, 0, 0];
const usualMesh = { azimuths: 24, radialElements: 16 } as const;

/**
 * The aircraft as the air finds it: forces and moments of all parts, power of all drive lines, and what is left of each rotor's own
 * balance, in any motion and control position.
 *
 * Interference runs one way: rotors and propellers on surfaces and bodies, wings on other surfaces. Reaction torque reaches the
 * airframe only from shafts that are driven.
 */
export class Airframe {
  readonly conditions: AirframeConditions;
  readonly controls: readonly AirframeControl[];
  readonly rotors: readonly ElementRotor[];
  readonly lines: readonly DriveLine[];
  readonly #rotors: readonly RotorEntry[];
  readonly #propellers: readonly PropellerEntry[];
  readonly #surfaces: readonly SurfaceEntry[];
  /** Surfaces in an order in which each comes after those whose wake it is in. */
  readonly #surfaceOrder: readonly number[];
  readonly #bodies: readonly { readonly part: AircraftDefinition["bodies"][number]; readonly exposures: readonly Exposure[] }[];
  readonly #centre: Vector;

  constructor(conditions: AirframeConditions) {
    this.conditions = conditions;
    const { aircraft, air, mass } = conditions;
    this.controls = airframeControls(aircraft);
    this.lines = aircraft.driveLines;
    this.#centre = [mass.centre.x, mass.centre.y, mass.centre.z];
    const lineOf = (id: string) => aircraft.driveLines.findIndex(({ drives }) => drives === id);
    this.#rotors = aircraft.rotors.map((part) => ({
      rotor: new ElementRotor(part, air, conditions.rotorMesh ?? usualMesh),
      controls: rotorControls(this.controls, part.id),
      arm: this.#arm(part.hub),
      line: lineOf(part.id),
    }));
    this.rotors = this.#rotors.map(({ rotor }) => rotor);
    this.#propellers = aircraft.propellers.map((part) => ({
      part,
      controls: propellerControls(this.controls, part.id),
      arm: this.#arm(part.place),
      line: lineOf(part.id),
    }));
    this.#surfaces = aircraft.surfaces.map((part) => {
      const surface = new LiftingSurface(part, air.density, this.#centre);
      const { deflection, edges } = surfaceControls(this.controls, part.id);
      return {
        surface,
        deflection,
        edges: surface.edges.flatMap((edge, at) =>
          edges.filter((entry) => entry.edge === edge).map(({ control, factor }) => ({ at, control, factor })),
        ),
        deflections: new Float64Array(surface.edges.length),
        exposures: exposures(this.#washes(part.id)),
      };
    });
    this.#surfaceOrder = orderByWake(this.#surfaces.map((entry) => entry.exposures.flatMap(({ washes }) => washes)));
    this.#bodies = aircraft.bodies.map((part) => ({ part, exposures: exposures(this.#washes(part.id)) }));
  }

  get mass(): number {
    return this.conditions.mass.mass;
  }

  get inertia(): Float64Array {
    return this.conditions.mass.inertia;
  }

  get propellers(): readonly AircraftDefinition["propellers"][number][] {
    return this.#propellers.map(({ part }) => part);
  }

  /** Whether the drive of a rotor can turn it when these lines run. */
  isDriven(rotor: number, running: readonly boolean[]): boolean {
    const { line } = this.#rotors[rotor] as RotorEntry;
    return line >= 0 && running[line] === true;
  }

  /** Number of the control that sets a rotor's speed, −1 without one. */
  tipSpeedControl(rotor: number): number {
    return (this.#rotors[rotor] as RotorEntry).controls.tipSpeed;
  }

  collectiveControl(rotor: number): number {
    return (this.#rotors[rotor] as RotorEntry).controls.collective;
  }

  /** Drive line of a propeller or rotor in the order of the file, −1 without one. */
  propellerLine(propeller: number): number {
    return (this.#propellers[propeller] as PropellerEntry).line;
  }

  rotorLine(rotor: number): number {
    return (this.#rotors[rotor] as RotorEntry).line;
  }

  #arm(place: { readonly x: number; readonly y: number; readonly z: number }): Vector {
    return [place.x - this.#centre[0], place.y - this.#centre[1], place.z - this.#centre[2]];
  }

  #washes(on: string): readonly (Wash & { readonly share: number })[] {
    const { aircraft } = this.conditions;
    return aircraft.interference
      .filter((entry) => entry.active && entry.on === on && entry.factor * entry.share !== 0)
      .map((entry) => ({
        kind: entry.kind,
        from: (entry.kind === "rotor-downwash"
          ? aircraft.rotors
          : entry.kind === "slipstream"
            ? aircraft.propellers
            : aircraft.surfaces
        ).findIndex(({ id }) => id === entry.from),
        strength: entry.factor,
        share: entry.share,
      }));
  }

  /**
   * Loads in one state.
   *
   * @param controls in the order of `controls`; the entry of a tip-speed control is not read: the rotor's own state is
   * @param rotorStates `rotorStateWidth` numbers per rotor
   * @param running per drive line: turns under its motors
   * @param driveTorques of the rotors' shafts, where they differ from what the air asks: in motion [N m]
   * @derivation sums over parts, moments about the centre of gravity
   */
  evaluate(
    motion: AirframeMotion,
    controls: Float64Array,
    rotorStates: Float64Array,
    running: readonly boolean[],
    driveTorques?: Float64Array,
  ): AirframeLoads {
    const { velocity, rates } = motion;
    const { air, losses, loading } = this.conditions;
    const control = (index: number) => (index < 0 ? 0 : (controls[index] as number));
    const sum = new LoadSum();
    const rotors = this.#rotors.map(({ rotor, controls: by, arm, line }, i) => {
      const at = i * rotorStateWidth;
      const loads = rotor.evaluate(localVelocity(velocity, rates, arm), rates, {
        collective: control(by.collective),
        longitudinalCyclic: control(by.longitudinalCyclic),
        lateralCyclic: control(by.lateralCyclic),
        tiltBack: control(by.tiltBack),
        tiltRight: control(by.tiltRight),
        tipSpeed: rotorStates[at] as number,
        inducedInflow: rotorStates[at + 1] as number,
        flapBack: rotorStates[at + 2] as number,
        flapRight: rotorStates[at + 3] as number,
        coning: rotorStates[at + 4] as number,
      });
      const driven = line >= 0 && running[line] === true;
      const torque = driveTorques ? (driveTorques[i] as number) : driven ? loads.torque : 0;
      const reaction = -loads.sense * torque;
      const turned: Vector = [
        loads.hubMoment[0] + reaction * loads.shaft[0],
        loads.hubMoment[1] + reaction * loads.shaft[1],
        loads.hubMoment[2] + reaction * loads.shaft[2],
      ];
      sum.add(rotor.part.id, "rotor", loads.force, arm, turned);
      return loads;
    });
    const propellers = this.#propellers.map(({ part, controls: by, arm, line }) => {
      const runs = line < 0 || running[line] === true;
      const axis = thrustAxis(part, control(by.tiltBack), control(by.tiltRight));
      const local = localVelocity(velocity, rates, arm);
      const loads = propellerLoads(part, air.density, axis, local, runs ? control(by.thrust) : 0);
      if (runs) {
        const spin = part.inertia * loads.spin;
        const gyroscopic = cross(rates, [spin * axis[0], spin * axis[1], spin * axis[2]]);
        const { reaction } = loads;
        sum.add(part.id, "propeller", loads.force, arm, [
          reaction[0] - gyroscopic[0],
          reaction[1] - gyroscopic[1],
          reaction[2] - gyroscopic[2],
        ]);
        return loads;
      }
      const speed = Math.hypot(local[0], local[1], local[2]);
      const drag = -0.5 * air.density * part.stoppedDragArea * speed;
      sum.add(part.id, "propeller", [drag * local[0], drag * local[1], drag * local[2]], arm, still);
      return { ...loads, thrust: 0, shaftPower: 0, rotationRate: 0, spin: 0, torque: 0, inducedVelocity: 0 };
    });
    for (const index of this.#surfaceOrder) {
      const { surface, deflection, edges, deflections, exposures: pieces } = this.#surfaces[index] as SurfaceEntry;
      deflections.fill(0);
      for (const { at, control: by, factor } of edges) deflections[at] = (deflections[at] as number) + factor * control(by);
      surface.begin(control(deflection), deflections);
      for (const { share, washes } of pieces) surface.add(velocity, rates, this.#washed(washes, rotors, propellers, velocity), share);
    }
    const surfaces = this.#surfaces.map(({ surface }) => {
      const { fx, fy, fz, mx, my, mz, lift, lowestLift, highestLift, angle } = surface.loads;
      sum.addMoments(surface.part.id, "surface", [fx, fy, fz], [mx, my, mz]);
      return { id: surface.part.id, lift, lowestLift, highestLift, angle };
    });
    this.#bodies.forEach(({ part, exposures: pieces }, i) => {
      const further = i === 0 ? loading.payloadDragArea : 0;
      for (const { share, washes } of pieces) {
        const washed = this.#washed(washes, rotors, propellers, velocity);
        const { force, moment } = bodyLoads(part, air.density, this.#centre, velocity, rates, washed, further);
        sum.addMoments(part.id, "body", scaled(force, share), scaled(moment, share));
      }
    });
    let electricPower = this.conditions.hotelPower;
    const drives = this.lines.map((line, index) => {
      const state = running[index] === true ? this.#drive(line, rotors, propellers, rotorStates, losses, driveTorques) : restingDrive(line);
      electricPower += state.electricPower;
      return state;
    });
    return {
      force: [sum.fx, sum.fy, sum.fz],
      moment: [sum.mx, sum.my, sum.mz],
      parts: sum.parts,
      rotors,
      propellers,
      surfaces,
      drives,
      electricPower,
    };
  }

  #drive(
    line: DriveLine,
    rotors: readonly RotorLoads[],
    propellers: readonly PropellerLoads[],
    rotorStates: Float64Array,
    losses: LossModel,
    driveTorques: Float64Array | undefined,
  ): DrivePower {
    const rotor = this.#rotors.findIndex(({ rotor: { part } }) => part.id === line.drives);
    if (rotor >= 0) {
      const rate = (rotorStates[rotor * rotorStateWidth] as number) / (this.#rotors[rotor] as RotorEntry).rotor.part.radius;
      const torque = driveTorques ? (driveTorques[rotor] as number) : (rotors[rotor] as RotorLoads).torque;
      return drivePower(line, torque * rate, rate, losses);
    }
    const propeller = this.#propellers.findIndex(({ part }) => part.id === line.drives);
    const loads = propellers[propeller];
    return loads ? drivePower(line, loads.shaftPower, loads.rotationRate, losses) : restingDrive(line);
  }

  /** Velocity of a part through the air that others move. */
  #washed(washes: readonly Wash[], rotors: readonly RotorLoads[], propellers: readonly PropellerLoads[], velocity: Vector): Vector {
    if (washes.length === 0) return still;
    let x = 0;
    let y = 0;
    let z = 0;
    for (const { kind, from, strength } of washes) {
      if (kind === "rotor-downwash") {
        const { disc, inducedVelocity } = rotors[from] as RotorLoads;
        const speed = strength * inducedVelocity;
        x += speed * disc[0];
        y += speed * disc[1];
        z += speed * disc[2];
      } else if (kind === "slipstream") {
        const { axis, inducedVelocity } = propellers[from] as PropellerLoads;
        const speed = strength * inducedVelocity;
        x += speed * axis[0];
        y += speed * axis[1];
        z += speed * axis[2];
      } else {
        const { surface } = this.#surfaces[from] as SurfaceEntry;
        const speed = Math.hypot(velocity[0], velocity[1], velocity[2]);
        z -= ((strength * surface.loads.lift) / surface.liftSlope) * speed;
      }
    }
    return [x, y, z];
  }
}

function scaled(vector: Vector, factor: number): Vector {
  return [factor * vector[0], factor * vector[1], factor * vector[2]];
}
