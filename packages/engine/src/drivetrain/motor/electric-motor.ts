/** A motor by speed constant, resistance and no-load current, with its controller. SI. */
export interface ElectricMotor {
  /** [rad/(s V)] */
  readonly speedConstant: number;
  readonly resistance: number;
  readonly noLoadCurrent: number;
  readonly controllerConstantLoss: number;
  /** Share of the controller's input [1]. */
  readonly controllerProportionalLoss: number;
}

export interface MotorState {
  /** Drawn from the pack by the controller [W]. */
  readonly electricPower: number;
  /** In the motor [A]. */
  readonly current: number;
  /** At the motor [V]; over pack voltage it is the controller's duty. */
  readonly voltage: number;
}

/**
 * What a motor draws to give a shaft power [W] at a rotation rate [rad/s], its controller included.
 *
 *     I = K Q + I₀,   U = ω/K + I R,   P = (U I + P_c) / (1 − p_c)
 *
 * @source drela-2007, first-order model, unchecked
 */
export function motorState(motor: ElectricMotor, shaft: { readonly power: number; readonly rotationRate: number }): MotorState {
  const torque = shaft.rotationRate > 0 ? shaft.power / shaft.rotationRate : 0;
  const current = torque * motor.speedConstant + (shaft.rotationRate > 0 ? motor.noLoadCurrent : 0);
  const voltage = shaft.rotationRate / motor.speedConstant + current * motor.resistance;
  const electricPower = (voltage * current + motor.controllerConstantLoss) / (1 - motor.controllerProportionalLoss);
  return { electricPower, current, voltage };
}
