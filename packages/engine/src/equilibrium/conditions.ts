import type { Loading, ReducedAircraft } from "../aircraft/index.ts";
import type { AirState } from "../environment/atmosphere/index.ts";

/** `clutch-closed`: the motor may drive the rotor. `clutch-open`: the rotor turns free, propellers pull. `glide`: free rotor, propellers stopped. */
export type FlightMode = "clutch-closed" | "clutch-open" | "glide";

/** At `optimum` scheduled controls are free within their limits; at `schedule` they follow the file. */
export type ControlUse = "optimum" | "schedule";

/** How losses between pack and shafts are counted: by component, or by two constant efficiencies for comparison. */
export type LossModel = "component" | "constant";

/** Everything that trim depends on but speed and mode. */
export interface FlightConditions {
  readonly aircraft: ReducedAircraft;
  readonly loading: Loading;
  readonly air: AirState;
  readonly controls: ControlUse;
  readonly losses: LossModel;
  readonly lightsOn: boolean;
}

/** One point to trim: horizontal and vertical speed through the air [m/s], climb positive. */
export interface FlightPoint {
  readonly mode: FlightMode;
  readonly forwardSpeed: number;
  /** Solved for in a glide, where it is ignored. */
  readonly climbRate: number;
  /**
   * Which way the propeller works that the rotor's torque unloads (the left one). Power has a kink between the two, so an
   * optimum on either side is looked for on its own; absent: whichever the start leads to.
   */
  readonly leftPropeller?: "pulls" | "pushes";
}
