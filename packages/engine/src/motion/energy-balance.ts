import type { FlightDynamics } from "./flight-dynamics.ts";
import { bodyEnergy } from "./rigid-body.ts";

/** Where the energy of a flight is at one time, and what was done to it since the books began [J]. */
export interface EnergyState {
  /** Of translation and turning of the airframe. */
  readonly kinetic: number;
  /** Of height. */
  readonly height: number;
  /** In the rotors. */
  readonly rotors: number;
  /** Work of the air on the airframe, with the reaction of driven shafts. */
  readonly airframeWork: number;
  /** Work of the air on the shafts; negative where it brakes them. */
  readonly shaftWork: number;
  /** Work of the drives on the shafts. */
  readonly driveWork: number;
  /** Drawn from the pack. */
  readonly electricEnergy: number;
}

/** Energies of a state of the equations of motion. @derivation ½ m V² + ½ ω·I ω, m g h, ½ J Ω² */
export function energyState(dynamics: FlightDynamics, state: Float64Array): EnergyState {
  const { kinetic, height } = bodyEnergy(dynamics.body, dynamics.gravity, state);
  let rotors = 0;
  dynamics.aircraft.rotors.forEach(({ part }, i) => {
    rotors += (part.polarInertia * (state[dynamics.rotorAt(i)] as number) ** 2) / 2;
  });
  const at = dynamics.booksAt;
  return {
    kinetic,
    height,
    rotors,
    airframeWork: state[at] as number,
    shaftWork: state[at + 1] as number,
    driveWork: state[at + 2] as number,
    electricEnergy: state[at + 3] as number,
  };
}

/**
 * What is missing between two states: change of energy less work, over the sum of what was turned over in between (the largest of the changes
 * and works) [1]. Zero for an exact integration; a rotor that is held breaks it by the torque that holds it.
 */
export function energyGap(before: EnergyState, after: EnergyState): number {
  const of = (name: keyof EnergyState) => after[name] - before[name];
  const gained = of("kinetic") + of("height") + of("rotors");
  const done = of("airframeWork") + of("shaftWork") + of("driveWork");
  const turnover = Math.max(
    ...(["kinetic", "height", "rotors", "airframeWork", "shaftWork", "driveWork"] as const).map((name) => Math.abs(of(name))),
  );
  return turnover > 0 ? (gained - done) / turnover : 0;
}
