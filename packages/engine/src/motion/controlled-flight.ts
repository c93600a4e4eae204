import type { Airframe } from "../airframe/index.ts";
import type { FullTrimmed } from "../equilibrium/index.ts";
import { FlightSimulation } from "./flight-simulation.ts";
import { type Linearisation, linearise } from "./linearisation.ts";
import { type ControllerGains, ReferenceController } from "./reference-controller.ts";
import { type MovingFlight, movingFlight } from "./trimmed-flight.ts";

/** A trimmed flight under its reference controller. */
export interface ControlledFlight {
  readonly flight: MovingFlight;
  readonly linear: Linearisation;
  readonly controller: ReferenceController;
  readonly simulation: FlightSimulation;
  /** Steps of the integrator per step of control that the fastest inflow asks for. */
  readonly substeps: number;
}

/** Flapping is balanced to this angle in flight [rad]: six thousandths of a degree. */
const flapTolerance = 1e-4;
/** Rate of decay times step that the integrator is given at most; it is stable to 0.54. */
const calmestStep = 0.4;
const leastFlapTolerance = 1e-8;

/** Step of control and record of every simulation here [s]: 200 Hz. */
export const controlStep = 0.005;

/**
 * A trimmed flight with its controller: it moves cyclics, tilts, surfaces and thrusts that are free in flight; collective and rotor speed are not
 * the attitude's business.
 */
export function controlledFlight(airframe: Airframe, trimmed: FullTrimmed, gains?: ControllerGains): ControlledFlight {
  const flight = movingFlight(airframe, trimmed, leastFlapTolerance);
  const { dynamics, state } = flight;
  const linear = linearise(dynamics, state);
  const usable = airframe.controls.map(
    ({ what, definition: { setting } }) => what !== "tip-speed" && what !== "collective" && setting.kind === "free",
  );
  const controller = new ReferenceController(linear, airframe.controls, usable, dynamics.controls, gains);
  dynamics.flap.tolerance = flapTolerance;
  dynamics.flap.restart();
  dynamics.rotorStates.set(trimmed.evaluation.rotorStates);
  const n = linear.states.length;
  const fastest = Math.max(0, ...linear.states.map(({ kind }, i) => (kind === "inflow" ? -(linear.matrix[i * n + i] as number) : 0)));
  const substeps = Math.max(1, Math.ceil((fastest * controlStep) / calmestStep));
  return { flight, linear, controller, simulation: new FlightSimulation(flight, controller), substeps };
}
