import type { RotorPart } from "../aircraft/index.ts";
import type { AirState } from "../environment/atmosphere/index.ts";
import type { PartLoads } from "./airframe-loads.ts";
import type { Vector } from "./axes.ts";
import type { RotorControls } from "./control-map.ts";
import { ElementRotor } from "./element-rotor.ts";
import { partLoads } from "./load-sum.ts";
import { Remembered } from "./remembered.ts";
import type { RotorLoads } from "./rotor-loads.ts";

interface Answer {
  readonly loads: RotorLoads;
  /** Torque that the shaft gave [N m]. */
  torque: number;
  part: PartLoads | undefined;
}

const inputs = 18;

/** A rotor at its place, with the controls that move it and the drive line that turns it. */
export class InstalledRotor {
  readonly rotor: ElementRotor;
  readonly controls: RotorControls;
  /** Number of its drive line, −1 where nothing drives it. */
  readonly line: number;
  readonly remembered = new Remembered<Answer>(inputs);
  readonly #arm: Vector;

  constructor(
    part: RotorPart,
    air: AirState,
    mesh: { readonly azimuths: number; readonly radialElements: number },
    installed: { readonly controls: RotorControls; readonly arm: Vector; readonly line: number },
  ) {
    this.rotor = new ElementRotor(part, air, mesh);
    this.controls = installed.controls;
    this.line = installed.line;
    this.#arm = installed.arm;
  }

  /**
   * @param velocity of the centre of gravity through the air [m/s]
   * @param rates [rad/s]
   * @param controls of the aircraft
   * @param states of all rotors; this one's begin at `at`
   */
  evaluate(velocity: Vector, rates: Vector, controls: Float64Array, states: Float64Array, at: number): Answer {
    const { asked } = this.remembered;
    const arm = this.#arm;
    const by = this.controls;
    const control = (index: number) => (index < 0 ? 0 : (controls[index] as number));
    asked[0] = velocity[0] + rates[1] * arm[2] - rates[2] * arm[1];
    asked[1] = velocity[1] + rates[2] * arm[0] - rates[0] * arm[2];
    asked[2] = velocity[2] + rates[0] * arm[1] - rates[1] * arm[0];
    asked[3] = rates[0];
    asked[4] = rates[1];
    asked[5] = rates[2];
    asked[6] = control(by.collective);
    asked[7] = control(by.longitudinalCyclic);
    asked[8] = control(by.lateralCyclic);
    asked[9] = control(by.tiltBack);
    asked[10] = control(by.tiltRight);
    for (let k = 0; k < 5; k++) asked[11 + k] = states[at + k] as number;
    asked[16] = this.rotor.groundHeight ?? -1;
    asked[17] = this.rotor.groundHeight === undefined ? 0 : 1;
    return this.remembered.found() ?? this.remembered.keep({ loads: this.#fresh(rates), torque: Number.NaN, part: undefined });
  }

  #fresh(rates: Vector): RotorLoads {
    const { asked } = this.remembered;
    const at = (index: number) => asked[index] as number;
    return this.rotor.evaluate([at(0), at(1), at(2)], rates, {
      collective: at(6),
      longitudinalCyclic: at(7),
      lateralCyclic: at(8),
      tiltBack: at(9),
      tiltRight: at(10),
      tipSpeed: at(11),
      inducedInflow: at(12),
      flapBack: at(13),
      flapRight: at(14),
      coning: at(15),
    });
  }

  /** Loads about the centre of gravity with this torque on the shaft [N m], whose reaction the airframe feels. */
  part(answer: Answer, torque: number): PartLoads {
    if (answer.part && answer.torque === torque) return answer.part;
    const { hubMoment, shaft, force, sense } = answer.loads;
    const reaction = -sense * torque;
    answer.torque = torque;
    answer.part = partLoads(this.rotor.part.id, "rotor", force, this.#arm, [
      hubMoment[0] + reaction * shaft[0],
      hubMoment[1] + reaction * shaft[1],
      hubMoment[2] + reaction * shaft[2],
    ]);
    return answer.part;
  }
}
