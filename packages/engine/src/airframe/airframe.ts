import type { AircraftDefinition, DriveLine } from "../aircraft/index.ts";
import type { AirframeConditions, AirframeLoads, AirframeMotion } from "./airframe-loads.ts";
import { rotorStateWidth } from "./airframe-loads.ts";
import type { Vector } from "./axes.ts";
import { type AirframeControl, airframeControls, propellerControls, rotorControls } from "./control-map.ts";
import type { ElementRotor } from "./element-rotor.ts";
import { InstalledBody } from "./installed-body.ts";
import { InstalledDrive } from "./installed-drive.ts";
import { InstalledPropeller } from "./installed-propeller.ts";
import { InstalledRotor } from "./installed-rotor.ts";
import { InstalledSurface } from "./installed-surface.ts";
import { LoadSum } from "./load-sum.ts";
import { PropellerWakes } from "./propeller-wakes.ts";
import type { Remembered } from "./remembered.ts";
import type { RotorLoads } from "./rotor-loads.ts";
import type { PropellerLoads } from "./thrust-propeller.ts";
import { type Exposure, exposuresOf, flowNumbers, orderByWake } from "./wash.ts";

/** What moves the air around other parts. */
interface Wakes {
  readonly rotors: readonly RotorLoads[];
  readonly propellers: readonly PropellerLoads[];
  /** Lift coefficient of each surface so far [1]. */
  readonly lifts: Float64Array;
  readonly velocity: Vector;
}

const usualMesh = { azimuths: 24, radialElements: 16 } as const;

/**
 * The aircraft as the air finds it: forces and moments of all parts, power of all drive lines, and what is left of each rotor's own
 * balance, in any motion and control position.
 *
 * Interference runs one way, rotors and propellers on surfaces and bodies, wings on other surfaces; but among propellers both ways. Reaction torque reaches the
 * airframe only from shafts that are driven. Every part remembers its last answer, so that asking again with one control moved costs what
 * that control moves; between `linearise` and `exact` rotors answer from slopes.
 */
export class Airframe {
  readonly conditions: AirframeConditions;
  readonly controls: readonly AirframeControl[];
  readonly rotors: readonly ElementRotor[];
  readonly lines: readonly DriveLine[];
  readonly #rotors: readonly InstalledRotor[];
  readonly #propellers: readonly InstalledPropeller[];
  readonly #propellerWakes: PropellerWakes;
  readonly #surfaces: readonly InstalledSurface[];
  /** Surfaces in an order in which each comes after those whose wake it is in. */
  readonly #surfaceOrder: readonly number[];
  readonly #bodies: readonly InstalledBody[];
  readonly #drives: readonly InstalledDrive[];
  readonly #memories: readonly Remembered<unknown>[];
  readonly #centre: Vector;

  constructor(conditions: AirframeConditions) {
    this.conditions = conditions;
    const { aircraft, air, mass, loading, losses } = conditions;
    const { rotors, propellers, driveLines } = aircraft;
    this.controls = airframeControls(aircraft);
    this.lines = driveLines;
    this.#centre = [mass.centre.x, mass.centre.y, mass.centre.z];
    const lineOf = (id: string) => driveLines.findIndex(({ drives }) => drives === id);
    const mesh = conditions.rotorMesh ?? usualMesh;
    this.#rotors = rotors.map(
      (part) =>
        new InstalledRotor(part, air, mesh, {
          controls: rotorControls(this.controls, part.id),
          arm: this.#arm(part.hub),
          line: lineOf(part.id),
        }),
    );
    this.rotors = this.#rotors.map(({ rotor }) => rotor);
    this.#propellers = propellers.map(
      (part) =>
        new InstalledPropeller(part, {
          controls: propellerControls(this.controls, part.id),
          arm: this.#arm(part.place),
          line: lineOf(part.id),
        }),
    );
    this.#propellerWakes = new PropellerWakes(aircraft);
    this.#surfaces = aircraft.surfaces.map(
      (part) => new InstalledSurface(part, air.density, this.#centre, this.controls, exposuresOf(aircraft, part.id)),
    );
    this.#surfaceOrder = orderByWake(this.#surfaces.map((surface) => surface.exposures.flatMap(({ washes }) => washes)));
    this.#bodies = aircraft.bodies.map(
      (part, i) =>
        new InstalledBody(part, air.density, this.#centre, exposuresOf(aircraft, part.id), i === 0 ? loading.payloadDragArea : 0),
    );
    this.#drives = driveLines.map((line) => {
      const number = (parts: readonly { readonly id: string }[]) => parts.findIndex(({ id }) => id === line.drives);
      return new InstalledDrive(line, { rotor: number(rotors), propeller: number(propellers) }, losses);
    });
    this.#memories = [this.#rotors, this.#propellers, this.#surfaces, this.#bodies, this.#drives].flatMap((parts) =>
      parts.map(({ remembered }) => remembered as Remembered<unknown>),
    );
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
    const line = this.rotorLine(rotor);
    return line >= 0 && running[line] === true;
  }

  /** Number of the control that sets a rotor's speed, −1 without one. */
  tipSpeedControl(rotor: number): number {
    return (this.#rotors[rotor] as InstalledRotor).controls.tipSpeed;
  }

  collectiveControl(rotor: number): number {
    return (this.#rotors[rotor] as InstalledRotor).controls.collective;
  }

  /** Drive line of a propeller or rotor in the order of the file, −1 without one. */
  propellerLine(propeller: number): number {
    return (this.#propellers[propeller] as InstalledPropeller).line;
  }

  rotorLine(rotor: number): number {
    return (this.#rotors[rotor] as InstalledRotor).line;
  }

  #arm(place: { readonly x: number; readonly y: number; readonly z: number }): Vector {
    return [place.x - this.#centre[0], place.y - this.#centre[1], place.z - this.#centre[2]];
  }

  /**
   * Until `exact` is called rotors answer from their slopes at this state, and every part remembers its answer there.
   *
   * @param motion, controls, rotorStates, running as in `evaluate`
   */
  linearise(motion: AirframeMotion, controls: Float64Array, rotorStates: Float64Array, running: readonly boolean[]): void {
    // Afresh, so that each rotor holds the sweep of this state and each memory its answer.
    for (const memory of this.#memories) memory.clear();
    this.evaluate(motion, controls, rotorStates, running);
    for (const memory of this.#memories) memory.pin();
    for (const rotor of this.rotors) rotor.linearise();
  }

  /** Rotors sweep again. */
  exact(): void {
    for (const rotor of this.rotors) rotor.exact();
    for (const memory of this.#memories) memory.forget();
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
    const { density } = this.conditions.air;
    const sum = new LoadSum();
    const rotors = this.#rotors.map((rotor, i) => {
      const answer = rotor.evaluate(velocity, rates, controls, rotorStates, i * rotorStateWidth);
      const torque = driveTorques ? (driveTorques[i] as number) : this.isDriven(i, running) ? answer.loads.torque : 0;
      sum.add(rotor.part(answer, torque));
      return answer.loads;
    });
    const propellers = this.#propellerWakes.settled((propeller, wash) => {
      const installed = this.#propellers[propeller] as InstalledPropeller;
      const runs = installed.line < 0 || running[installed.line] === true;
      return installed.evaluate(density, velocity, rates, controls, runs, wash);
    });
    for (const { part } of propellers) sum.add(part);
    const propellerLoads = propellers.map(({ loads }) => loads);
    const wakes: Wakes = { rotors, propellers: propellerLoads, lifts: new Float64Array(this.#surfaces.length), velocity };
    const answers = new Array<ReturnType<InstalledSurface["evaluate"]>>(this.#surfaces.length);
    for (const index of this.#surfaceOrder) {
      const surface = this.#surfaces[index] as InstalledSurface;
      this.#washed(surface.exposures, surface.flows, wakes);
      const answer = surface.evaluate(velocity, rates, controls);
      answers[index] = answer;
      wakes.lifts[index] = answer.reading.lift;
    }
    const surfaces = answers.map(({ part, reading }) => {
      sum.add(part);
      return reading;
    });
    for (const body of this.#bodies) {
      this.#washed(body.exposures, body.flows, wakes);
      sum.add(body.evaluate(velocity, rates));
    }
    let electricPower = this.conditions.hotelPower;
    const drives = this.#drives.map((drive, index) => {
      const state = running[index] === true ? this.#driven(drive, rotors, propellerLoads, rotorStates, driveTorques) : drive.resting;
      electricPower += state.electricPower;
      return state;
    });
    return {
      force: [sum.fx, sum.fy, sum.fz],
      moment: [sum.mx, sum.my, sum.mz],
      parts: sum.parts,
      rotors,
      propellers: propellerLoads,
      surfaces,
      drives,
      electricPower,
    };
  }

  #driven(
    drive: InstalledDrive,
    rotors: readonly RotorLoads[],
    propellers: readonly PropellerLoads[],
    rotorStates: Float64Array,
    driveTorques: Float64Array | undefined,
  ) {
    const { rotor, propeller } = drive;
    if (rotor >= 0) {
      const rate = (rotorStates[rotor * rotorStateWidth] as number) / (this.rotors[rotor] as ElementRotor).part.radius;
      const torque = driveTorques ? (driveTorques[rotor] as number) : (rotors[rotor] as RotorLoads).torque;
      return drive.evaluate(torque * rate, rate);
    }
    const loads = propellers[propeller];
    return loads ? drive.evaluate(loads.shaftPower, loads.rotationRate) : drive.resting;
  }

  /** Velocity of each piece of a part through the air that others move. */
  #washed(exposures: readonly Exposure[], flows: Float64Array, { rotors, propellers, lifts, velocity }: Wakes): void {
    flows.fill(0);
    exposures.forEach(({ washes }, piece) => {
      const at = piece * flowNumbers;
      for (const { kind, from, strength } of washes) {
        if (kind === "wing-downwash") {
          const { liftSlope } = (this.#surfaces[from] as InstalledSurface).surface;
          const speed = Math.hypot(velocity[0], velocity[1], velocity[2]);
          flows[at + 2] = (flows[at + 2] as number) - ((strength * (lifts[from] as number)) / liftSlope) * speed;
          continue;
        }
        const moved = kind === "rotor-downwash" ? (rotors[from] as RotorLoads) : (propellers[from] as PropellerLoads);
        const along = "disc" in moved ? moved.disc : moved.axis;
        const speed = strength * moved.inducedVelocity;
        for (let k = 0; k < flowNumbers; k++) flows[at + k] = (flows[at + k] as number) + speed * (along[k] as number);
      }
    });
  }
}
