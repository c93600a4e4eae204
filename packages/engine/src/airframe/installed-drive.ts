import type { DriveLine } from "../aircraft/index.ts";
import { type DrivePower, drivePower, type LossModel, restingDrive } from "./drive-power.ts";
import { Remembered } from "./remembered.ts";

const inputs = 2;

/** A drive line with the rotor or propeller that it turns. */
export class InstalledDrive {
  readonly line: DriveLine;
  /** Number of the rotor that it turns, −1 for none. */
  readonly rotor: number;
  /** Number of the propeller that it turns, −1 for none. */
  readonly propeller: number;
  readonly remembered = new Remembered<DrivePower>(inputs);
  readonly #losses: LossModel;
  readonly #resting: DrivePower;

  constructor(line: DriveLine, drives: { readonly rotor: number; readonly propeller: number }, losses: LossModel) {
    this.line = line;
    this.rotor = drives.rotor;
    this.propeller = drives.propeller;
    this.#losses = losses;
    this.#resting = restingDrive(line);
  }

  /** @param shaftPower [W] @param rate of the shaft [rad/s] */
  evaluate(shaftPower: number, rate: number): DrivePower {
    const { asked } = this.remembered;
    asked[0] = shaftPower;
    asked[1] = rate;
    return this.remembered.found() ?? this.remembered.keep(drivePower(this.line, shaftPower, rate, this.#losses));
  }

  get resting(): DrivePower {
    return this.#resting;
  }
}
