import { wingCoefficients } from "../aerodynamics/wing/index.ts";
import { standardGravity, takeoffMass } from "../aircraft/index.ts";
import type { FlightConditions } from "./conditions.ts";
import type { TrimState } from "./trim-variables.ts";

/** Rotor loads in the tip-path plane's axes: thrust along its normal, H aft in it [N]; shaft torque [N m]; mean induced velocity [m/s]. */
export interface RotorLoads {
  readonly thrust: number;
  readonly hForce: number;
  readonly torque: number;
  readonly inducedVelocity: number;
}

/** Forces on the aircraft in the vertical plane: forward and up [N], and the yawing moment that balances the rotor [N m]. */
export interface Balance {
  readonly forward: number;
  readonly up: number;
  readonly yaw: number;
  readonly rotorLift: number;
  readonly wingLift: number;
  readonly wingLiftCoefficient: number;
  readonly rotorDrag: number;
  readonly wingDrag: number;
  readonly bodyDrag: number;
  readonly weight: number;
}

/** Below this speed [m/s] the propeller axis fades from the flight path to the horizontal (own choice for vertical climb). */
const pathFollowingSpeed = 5;

/**
 * Sums the forces of the reduced trim: rotor, wing in the rotor's induced velocity, body, fin, propellers, weight. Pitching
 * and rolling moment and side force are not balanced: the tip-path plane is free of the body within the flap range.
 *
 * The wing sees the flow (U, w + k v_i) of forward speed, climb and induced velocity; so one formula gives the download
 * in hover and the reduced incidence in cruise. The body's vertical drag area sees w + k v_i
 * with a factor of its own.
 *
 * @derivation Newton's law in the vertical plane, level-flight form of rotor and wing loads
 */
export function airframeBalance(
  conditions: FlightConditions,
  speed: { readonly forward: number; readonly climb: number },
  state: TrimState,
  rotor: RotorLoads,
  propellersStopped: boolean,
): Balance {
  const { aircraft, loading, air } = conditions;
  const weight = takeoffMass(aircraft, loading) * standardGravity;
  const { forward, climb } = speed;
  const total = Math.hypot(forward, climb);
  const half = 0.5 * air.density;
  const sine = Math.sin(state.discAngle);
  const cosine = Math.cos(state.discAngle);
  const rotorLift = rotor.thrust * cosine - rotor.hForce * sine;
  const rotorDrag = rotor.thrust * sine + rotor.hForce * cosine;

  const down = climb + aircraft.wing.rotorDownwashFactor * rotor.inducedVelocity;
  const local = Math.hypot(forward, down);
  const cosineFlow = local > 0 ? forward / local : 1;
  const sineFlow = local > 0 ? down / local : 0;
  const coefficients = wingCoefficients(aircraft.wing, state.wingAngle - Math.atan2(down, forward));
  const pressureArea = half * local * local * aircraft.wing.area;
  const wingLift = pressureArea * (coefficients.lift * cosineFlow - coefficients.drag * sineFlow);
  const wingDrag = pressureArea * (coefficients.lift * sineFlow + coefficients.drag * cosineFlow);

  const dragArea = aircraft.body.dragArea + loading.payloadDragArea + (propellersStopped ? aircraft.body.stoppedPropellersDragArea : 0);
  const fin = aircraft.fin;
  const finDragArea = (fin.area * state.finLiftCoefficient ** 2) / (Math.PI * fin.aspectRatio * fin.spanEfficiency);
  const longitudinal = half * total * (dragArea + finDragArea);
  const pathCosineSquared = total > 0 ? (forward / total) ** 2 : 1;
  const bodyDown = climb + aircraft.body.rotorDownwashFactor * rotor.inducedVelocity;
  const bodyDownForce = half * bodyDown * Math.abs(bodyDown) * aircraft.body.verticalDragArea;

  const fade = Math.min(1, forward / pathFollowingSpeed);
  const thrustAngle = fade * Math.atan2(climb, Math.max(forward, pathFollowingSpeed));
  return {
    forward: state.thrustSum * Math.cos(thrustAngle) - rotorDrag - wingDrag - longitudinal * forward,
    up: rotorLift + wingLift + state.thrustSum * Math.sin(thrustAngle) - longitudinal * climb * pathCosineSquared - bodyDownForce - weight,
    yaw:
      state.thrustDifference * aircraft.propellers.place.y +
      half * total * total * fin.area * Math.abs(fin.place.x) * state.finLiftCoefficient -
      rotor.torque,
    rotorLift,
    wingLift,
    wingLiftCoefficient: coefficients.lift,
    rotorDrag,
    wingDrag,
    bodyDrag: longitudinal * forward,
    weight,
  };
}
