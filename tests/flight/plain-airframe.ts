// Everything around the rotor written a second time, for level flight: forces, yaw and electric power from the state of a trim.
import type { ReducedAircraft } from "../../packages/engine/src/aircraft/index.ts";

interface Flow {
  readonly density: number;
  readonly airspeed: number;
}

interface Force {
  readonly forward: number;
  readonly up: number;
}

type Wing = ReducedAircraft["wing"];

/** Share of attached flow [1]. */
const attachedShare = (wing: Wing, alpha: number) => 1 / (1 + Math.exp(wing.stallSharpness * (Math.abs(alpha) - wing.stallAngle)));

/** Lift coefficient at an angle of attack: a finite wing, and a plate beyond stall [1]. */
const liftCoefficientAt = (wing: Wing, alpha: number) => {
  const attached = attachedShare(wing, alpha);
  return attached * wing.liftSlope * alpha + (1 - attached) * wing.flatPlateCoefficient * Math.sin(alpha) * Math.cos(alpha);
};

/** Angle of the flow at the wing to the horizontal [rad]. */
const flowAngleAt = (wing: Wing, airspeed: number, inducedVelocity: number) =>
  Math.atan2(wing.rotorDownwashFactor * inducedVelocity, airspeed);

export function plainWingLiftCoefficient(wing: Wing, airspeed: number, inducedVelocity: number, angle: number): number {
  return liftCoefficientAt(wing, angle - flowAngleAt(wing, airspeed, inducedVelocity));
}

/** Wing in forward flow and the rotor's downwash [N]; `angle` of its chord to the horizontal [rad]. */
export function plainWing(wing: Wing, flow: Flow, inducedVelocity: number, angle: number): Force {
  const flowAngle = flowAngleAt(wing, flow.airspeed, inducedVelocity);
  const alpha = angle - flowAngle;
  const attached = attachedShare(wing, alpha);
  const inducedDrag = ((wing.liftSlope * alpha) ** 2 * wing.area) / (Math.PI * wing.span ** 2 * wing.spanEfficiency);
  const plateDrag = wing.flatPlateCoefficient * Math.sin(alpha) ** 2;
  const speed = Math.hypot(flow.airspeed, wing.rotorDownwashFactor * inducedVelocity);
  const pressureArea = 0.5 * flow.density * speed ** 2 * wing.area;
  const lift = pressureArea * liftCoefficientAt(wing, alpha);
  const drag = pressureArea * (wing.cd0 + attached * inducedDrag + (1 - attached) * plateDrag);
  return {
    forward: -drag * Math.cos(flowAngle) - lift * Math.sin(flowAngle),
    up: lift * Math.cos(flowAngle) - drag * Math.sin(flowAngle),
  };
}

/** Body and fin [N]. */
export function plainBody(aircraft: ReducedAircraft, flow: Flow, inducedVelocity: number, finLift: number, payloadDragArea: number): Force {
  const pressure = 0.5 * flow.density * flow.airspeed ** 2;
  const { fin, body } = aircraft;
  const finDrag = (fin.area * finLift ** 2) / (Math.PI * fin.aspectRatio * fin.spanEfficiency);
  return {
    forward: -pressure * (body.dragArea + payloadDragArea + finDrag),
    up: -0.5 * flow.density * inducedVelocity ** 2 * body.verticalDragArea,
  };
}

/** Yawing moment [N m] of fin and propellers against the rotor's torque. */
export function plainYaw(
  aircraft: ReducedAircraft,
  flow: Flow,
  thrusts: { readonly left: number; readonly right: number },
  finLift: number,
): number {
  const pressure = 0.5 * flow.density * flow.airspeed ** 2;
  return (
    (thrusts.right - thrusts.left) * aircraft.propellers.place.y + pressure * aircraft.fin.area * Math.abs(aircraft.fin.place.x) * finLift
  );
}

type Motor = ReducedAircraft["rotorDrive"]["motor"];

/** Electric power [W] of a motor with its controller for a torque [N m] at a rate [rad/s]. */
function plainMotor(motor: Motor, torque: number, rate: number): number {
  const current = torque * motor.speedConstant + (rate > 0 ? motor.noLoadCurrent : 0);
  const volts = rate / motor.speedConstant + current * motor.resistance;
  return (volts * current + motor.controllerConstantLoss) / (1 - motor.controllerProportionalLoss);
}

/** The other way: shaft and electric power [W] that a current [A] and a voltage [V] at the motor mean. */
export function plainMotorPowers(motor: Motor, at: { readonly current: number; readonly voltage: number }) {
  return {
    shaft: (at.voltage - at.current * motor.resistance) * (at.current - motor.noLoadCurrent),
    electric: (at.voltage * at.current + motor.controllerConstantLoss) / (1 - motor.controllerProportionalLoss),
  };
}

/** About zero thrust [N] the two ways of running are joined by a curve that is not computed again here. */
export const joinedThrust = 0.5;

/** Electric power [W] of one propeller that gives a thrust [N] beyond the joined ones. */
export function plainPropellerPower(aircraft: ReducedAircraft, flow: Flow, thrust: number): number {
  const { propellers } = aircraft;
  const area = (Math.PI * propellers.diameter ** 2) / 4;
  if (thrust < 0) {
    const paid = Math.max(0, -thrust - 0.25 * flow.density * flow.airspeed ** 2 * area);
    const power = paid ** 1.5 / (propellers.reverseFigureOfMerit * Math.sqrt(2 * flow.density * area));
    const rate = 2 * Math.PI * Math.sqrt(-thrust / (propellers.reverseThrustCoefficient * flow.density * propellers.diameter ** 4));
    return plainMotor(propellers.motor, power / rate, rate);
  }
  const induced = -flow.airspeed / 2 + Math.sqrt(flow.airspeed ** 2 / 4 + thrust / (2 * flow.density * area));
  const power = (thrust * (flow.airspeed + propellers.inducedFactor * induced)) / propellers.profileEfficiency;
  // The positive root n of c ρ D⁴ n² − (c ρ D³ V/J₀) n − T = 0.
  const square = propellers.thrustCoefficient * flow.density * propellers.diameter ** 4;
  const linear = (square * flow.airspeed) / (propellers.diameter * propellers.zeroThrustAdvanceRatio);
  const rate = (2 * Math.PI * (linear + Math.sqrt(linear ** 2 + 4 * square * thrust))) / (2 * square);
  return plainMotor(propellers.motor, power / rate, rate);
}

/** Electric power [W] of the rotor drive at a shaft torque [N m], clutch closed. */
export function plainDrivePower(aircraft: ReducedAircraft, torque: number, tipSpeed: number): number {
  const { rotorDrive } = aircraft;
  const rate = tipSpeed / aircraft.rotor.radius;
  const passed = torque * rate * (1 + rotorDrive.gearProportionalLoss) + rotorDrive.gearConstantLoss;
  const motorRate = rate * rotorDrive.gearRatio;
  return plainMotor(rotorDrive.motor, passed / motorRate, motorRate);
}
