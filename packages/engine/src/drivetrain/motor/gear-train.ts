import type { GearStage } from "./motor-definition.ts";

/**
 * Below this share of the motor's rate without load the constant loss of a stage counts as a constant torque, so that it
 * vanishes at rest with the rate. Our own choice: as a power it would ask for an endless torque there.
 */
const slowShare = 0.05;

interface TurningStage {
  readonly stage: GearStage;
  readonly rate: number;
  /** Torque of the constant loss at its input [N m]. */
  readonly drag: number;
}

function turning(gear: readonly GearStage[], motorRate: number, fullRate: number): readonly TurningStage[] {
  let ratio = 1;
  return gear.map((stage) => {
    const rate = motorRate / ratio;
    const floor = (slowShare * fullRate) / ratio;
    ratio *= stage.ratio;
    return { stage, rate, drag: stage.constantLoss / Math.max(Math.abs(rate), floor) };
  });
}

/**
 * Torque of the last shaft [N m] for a torque of the motor's.
 *
 *     P_in = P_out + p |P_out| + P_c   in each stage
 *
 * @param motorRate [rad/s], not negative
 * @param fullRate rate of the motor without load, which says what is slow [rad/s]
 * @derivation power through each stage in turn; a load that drives pays the share too
 */
export function torqueOut(gear: readonly GearStage[], motorTorque: number, motorRate: number, fullRate: number): number {
  let torque = motorTorque;
  for (const { stage, drag } of turning(gear, motorRate, fullRate)) {
    const left = torque - drag;
    torque = (left * stage.ratio) / (left >= 0 ? 1 + stage.proportionalLoss : 1 - stage.proportionalLoss);
  }
  return torque;
}

/** Torque of the motor [N m] that gives a torque of the last shaft: the way back of `torqueOut`. */
export function torqueIn(gear: readonly GearStage[], shaftTorque: number, motorRate: number, fullRate: number): number {
  let torque = shaftTorque;
  for (const { stage, drag } of turning(gear, motorRate, fullRate).toReversed()) {
    torque = (torque + stage.proportionalLoss * Math.abs(torque)) / stage.ratio + drag;
  }
  return torque;
}
