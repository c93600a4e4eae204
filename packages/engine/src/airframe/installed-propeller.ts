import type { PropellerPart } from "../aircraft/index.ts";
import type { PartLoads } from "./airframe-loads.ts";
import { cross, type Vector } from "./axes.ts";
import type { PropellerControls } from "./control-map.ts";
import { localVelocity, partLoads } from "./load-sum.ts";
import { Remembered } from "./remembered.ts";
import { type PropellerLoads, propellerLoads, thrustAxis } from "./thrust-propeller.ts";

interface Answer {
  readonly loads: PropellerLoads;
  readonly part: PartLoads;
}

const still: Vector = [0, 0, 0];
const inputs = 11;

/** A propeller at its place, with the controls that set it and the drive line that turns it. */
export class InstalledPropeller {
  readonly part: PropellerPart;
  /** Number of its drive line, −1 where nothing drives it. */
  readonly line: number;
  readonly remembered = new Remembered<Answer>(inputs);
  readonly #controls: PropellerControls;
  readonly #arm: Vector;

  constructor(part: PropellerPart, installed: { readonly controls: PropellerControls; readonly arm: Vector; readonly line: number }) {
    this.part = part;
    this.line = installed.line;
    this.#controls = installed.controls;
    this.#arm = installed.arm;
  }

  /**
   * @param density [kg/m³]
   * @param velocity of the centre of gravity through the air [m/s]
   * @param rates [rad/s]
   * @param controls of the aircraft
   * @param runs turns under its motors, or has none that could stop
   * @param wash of other propellers, backwards along its axis [m/s]
   */
  evaluate(density: number, velocity: Vector, rates: Vector, controls: Float64Array, runs: boolean, wash: number): Answer {
    const { asked } = this.remembered;
    const control = (index: number) => (index < 0 ? 0 : (controls[index] as number));
    for (let k = 0; k < 3; k++) {
      asked[k] = velocity[k] as number;
      asked[3 + k] = rates[k] as number;
    }
    asked[6] = runs ? control(this.#controls.thrust) : 0;
    asked[7] = control(this.#controls.tiltBack);
    asked[8] = control(this.#controls.tiltRight);
    asked[9] = runs ? 1 : 0;
    asked[10] = wash;
    return this.remembered.found() ?? this.remembered.keep(this.#fresh(density, velocity, rates, runs));
  }

  #fresh(density: number, velocity: Vector, rates: Vector, runs: boolean): Answer {
    const { asked } = this.remembered;
    const { part } = this;
    const axis = thrustAxis(part, asked[7] as number, asked[8] as number);
    const local = localVelocity(velocity, rates, this.#arm);
    const loads = propellerLoads(part, density, axis, local, asked[6] as number, asked[10] as number);
    if (!runs) {
      const speed = Math.hypot(local[0], local[1], local[2]);
      const drag = -0.5 * density * part.stoppedDragArea * speed;
      const force: Vector = [drag * local[0], drag * local[1], drag * local[2]];
      return {
        loads: { ...loads, thrust: 0, shaftPower: 0, rotationRate: 0, spin: 0, torque: 0, inducedVelocity: 0 },
        part: partLoads(part.id, "propeller", force, this.#arm, still),
      };
    }
    const spin = part.inertia * loads.spin;
    const gyroscopic = cross(rates, [spin * axis[0], spin * axis[1], spin * axis[2]]);
    const { reaction } = loads;
    const moment: Vector = [reaction[0] - gyroscopic[0], reaction[1] - gyroscopic[1], reaction[2] - gyroscopic[2]];
    return { loads, part: partLoads(part.id, "propeller", loads.force, this.#arm, moment) };
  }
}
