import { writeRotation } from "./attitude.ts";
import { FlapBalance } from "./flap-balance.ts";
import { inducedVelocityRate } from "./inflow-lag.ts";
import { type BodyVector, type MovingAircraft, type MovingLoads, rotorStateCount } from "./moving-aircraft.ts";
import { bodyState, type RigidBody, rigidBody, rigidBodyRates } from "./rigid-body.ts";
import { driveTorque, type RotorDrive } from "./rotor-drive.ts";

/** Air that moves: velocity toward which it blows, north, east, down [m/s], at a time [s] and a place [m]. */
export type WindField = (time: number, north: number, east: number, down: number) => BodyVector;

export const calm: WindField = () => [0, 0, 0];

/** Numbers per rotor in the state: rotation rate [rad/s], induced velocity [m/s], the governor's torque [N m]. */
const perRotor = 3;
/** Works that are summed up along the way [J]: of the air on the airframe, of the air on the shafts, of the drives; energy drawn from the pack. */
const books = 4;

/** Least rotor speed that is followed [rad/s]. */
export const slowestRotor = 1;

/**
 * The equations of motion of an aircraft: rigid body with six degrees of freedom, speed and induced velocity of every rotor, flapping that
 * follows at once, drives with their governors.
 *
 * State: the rigid body's thirteen, then three per rotor, then four works. Controls, drives, wind and running motors are what they are set to.
 */
export class FlightDynamics {
  readonly aircraft: MovingAircraft;
  readonly body: RigidBody;
  readonly gravity: number;
  readonly size: number;
  readonly controls: Float64Array;
  readonly rotorStates: Float64Array;
  readonly flap: FlapBalance;
  readonly #rotation = new Float64Array(9);
  readonly #torques: Float64Array;
  wind: WindField = calm;
  drives: RotorDrive[];
  running: boolean[] = [];
  /** The last loads that were computed. */
  loads: MovingLoads | undefined;

  constructor(aircraft: MovingAircraft, gravity: number, flapTolerance = 1e-6) {
    this.aircraft = aircraft;
    this.gravity = gravity;
    this.body = rigidBody(aircraft.mass, aircraft.inertia);
    const { rotors, controls } = aircraft;
    this.size = bodyState.size + rotors.length * perRotor + books;
    this.controls = new Float64Array(controls.length);
    this.rotorStates = new Float64Array(rotors.length * rotorStateCount);
    this.#torques = new Float64Array(rotors.length);
    this.flap = new FlapBalance(rotors.length, flapTolerance);
    this.drives = rotors.map(() => ({ kind: "torque", torque: 0 }));
  }

  /** Place of a rotor's rotation rate in the state; its induced velocity and governor come next. */
  rotorAt(rotor: number): number {
    return bodyState.size + rotor * perRotor;
  }

  /** Place of the four works. */
  get booksAt(): number {
    return this.size - books;
  }

  /** Rotation from body to earth of the last state that was looked at. */
  get rotation(): Float64Array {
    return this.#rotation;
  }

  /** Torques that the shafts passed on in the last state [N m]. */
  get torques(): Float64Array {
    return this.#torques;
  }

  /** Velocity through the air in body axes [m/s]. */
  airspeed(time: number, state: Float64Array): BodyVector {
    const m = this.#rotation;
    writeRotation(state, bodyState.quaternion, m);
    const [n, e, d] = this.wind(time, state[bodyState.north] as number, state[bodyState.east] as number, state[bodyState.down] as number);
    return [
      (state[0] as number) - ((m[0] as number) * n + (m[3] as number) * e + (m[6] as number) * d),
      (state[1] as number) - ((m[1] as number) * n + (m[4] as number) * e + (m[7] as number) * d),
      (state[2] as number) - ((m[2] as number) * n + (m[5] as number) * e + (m[8] as number) * d),
    ];
  }

  /** Rates of change of all states. */
  readonly rates = (time: number, state: Float64Array, rate: Float64Array): void => {
    const velocity = this.airspeed(time, state);
    const turning: BodyVector = [state[3] as number, state[4] as number, state[5] as number];
    const motion = { velocity, rates: turning };
    const { rotors } = this.aircraft;
    for (let i = 0; i < rotors.length; i++) {
      const at = this.rotorAt(i);
      const tipSpeed = Math.max(state[at] as number, slowestRotor) * (rotors[i] as (typeof rotors)[number]).part.radius;
      this.rotorStates[i * rotorStateCount] = tipSpeed;
      this.rotorStates[i * rotorStateCount + 1] = (state[at + 1] as number) / tipSpeed;
    }
    this.#driveShafts(state);
    const loads = this.flap.solve(this.rotorStates, () => this.#evaluate(motion));
    this.loads = loads;
    this.#turnRotors(state, loads, rate);
    rigidBodyRates(this.body, this.gravity, state, this.#rotation, loads.force, loads.moment, rate);
    this.#book(state, loads, rate);
  };

  /** Torques of drives that do not wait for what the air asks. */
  #driveShafts(state: Float64Array): void {
    this.aircraft.rotors.forEach(({ part }, i) => {
      const at = this.rotorAt(i);
      const drive = this.drives[i] as RotorDrive;
      if (drive.kind === "held") return;
      this.#torques[i] = driveTorque(drive, state[at + 2] as number, part.polarInertia, state[at] as number, 0).torque;
    });
  }

  /** Loads, and once more where a held rotor asks for another torque than the airframe was given the reaction of. */
  #evaluate(motion: { readonly velocity: BodyVector; readonly rates: BodyVector }): MovingLoads {
    const evaluate = () => this.aircraft.evaluate(motion, this.controls, this.rotorStates, this.running, this.#torques);
    const loads = evaluate();
    let changed = false;
    this.drives.forEach((drive, i) => {
      const asked = loads.rotors[i]?.torque ?? 0;
      if (drive.kind !== "held" || asked === this.#torques[i]) return;
      this.#torques[i] = asked;
      changed = true;
    });
    return changed ? evaluate() : loads;
  }

  #turnRotors(state: Float64Array, loads: MovingLoads, rate: Float64Array): void {
    this.aircraft.rotors.forEach((rotor, i) => {
      const at = this.rotorAt(i);
      const drive = this.drives[i] as RotorDrive;
      const own = loads.rotors[i] as MovingLoads["rotors"][number];
      const { polarInertia, radius } = rotor.part;
      const speed = state[at] as number;
      const torque = this.#torques[i] as number;
      const stopped = speed <= slowestRotor && torque < own.torque;
      rate[at] = drive.kind === "held" || stopped ? 0 : (torque - own.torque) / polarInertia;
      rate[at + 1] = inducedVelocityRate(rotor, own, Math.max(speed, slowestRotor) * radius, state[at + 1] as number);
      rate[at + 2] = driveTorque(drive, state[at + 2] as number, polarInertia, speed, own.torque).integralRate;
    });
  }

  #book(state: Float64Array, loads: MovingLoads, rate: Float64Array): void {
    const { force, moment } = loads;
    const at = this.booksAt;
    let airframe = 0;
    for (let i = 0; i < 3; i++) airframe += (force[i] as number) * (state[i] as number) + (moment[i] as number) * (state[3 + i] as number);
    let shafts = 0;
    let drives = 0;
    loads.rotors.forEach(({ torque }, i) => {
      const speed = state[this.rotorAt(i)] as number;
      shafts -= torque * speed;
      drives += (this.#torques[i] as number) * speed;
    });
    rate[at] = airframe;
    rate[at + 1] = shafts;
    rate[at + 2] = drives;
    rate[at + 3] = loads.electricPower;
  }
}
