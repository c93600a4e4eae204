import { largestSteadyThrust } from "../../aerodynamics/rotor/index.ts";
import type { RotorPointOutputs } from "./output-schema.ts";
import { rootsAlong } from "./roots.ts";
import { collectivePlaces, fineAngles } from "./search-places.ts";
import type { RotorPointInputs } from "./solution.ts";
import type { RotorBench, RotorState } from "./state.ts";
import type { RotorFlow } from "./stream.ts";

type Roots = RotorPointOutputs["torqueRoots"];

/** Torque coefficient met by a root, and the part of the rotor speed by which its steadiness is tried. */
const tolerance = 1e-11;
const faster = 1e-3;
/** A root as near as this to the state answered with is that state [rad]. */
const sameAngle = 1e-6;
/** An advance ratio at a steeper angle is an airspeed out of all measure [rad]. */
const steepest = 1.4;
/** Airspeed below which lift over drag says nothing [m/s]. */
const stillAir = 1e-3;

/** Every angle, or collective, at which the rotor needs no torque at this rotor speed, when that was what was asked for. */
export function torqueRoots(bench: RotorBench, taken: RotorState, inputs: RotorPointInputs): Roots {
  const turnsAlone = inputs.shaftTorque === 0 || inputs.power === 0;
  const known = inputs.rotationRate !== undefined || inputs.tipSpeed !== undefined;
  const loaded = [inputs.thrust, inputs.ct, inputs.lift].some((one) => one !== undefined);
  if (!turnsAlone || !known || loaded) return [];
  if (inputs.collective === undefined) return collectiveRoots(bench, taken);
  const fixed = [inputs.shaftAngle, inputs.discAngle, inputs.climbRate].some((one) => one !== undefined);
  return fixed || !(inputs.airspeed ?? inputs.advanceRatio) ? [] : angleRoots(bench, taken, inputs);
}

/** At the collective that was answered with, over shaft angles from climb to descent. */
function angleRoots(bench: RotorBench, taken: RotorState, { airspeed, advanceRatio = 0 }: RotorPointInputs): Roots {
  const { tipSpeed, collective } = taken.point;
  const flowAt = (angle: number): RotorFlow => ({
    airspeed: airspeed ?? (advanceRatio * tipSpeed) / Math.cos(angle),
    angle: { of: "shaft", value: angle },
  });
  const at = (angle: number, tip = tipSpeed) => valued(bench.state(flowAt(angle), tip, collective));
  const places = fineAngles(false).filter((angle) => airspeed !== undefined || Math.abs(angle) < steepest);
  return rootsAlong(places, (angle) => at(angle), tolerance).roots.map(({ at: angle, payload }) =>
    rootOf(payload, Math.abs(angle - taken.shaftAngle) < sameAngle ? taken : undefined, at(angle, tipSpeed * (1 + faster))?.value, bench),
  );
}

/** In the stream that was answered in, over collectives from low to the stall. */
function collectiveRoots(bench: RotorBench, taken: RotorState): Roots {
  const { tipSpeed, airspeed, angle, collective } = taken.point;
  const flow = { airspeed, angle: { of: angle.kind, value: angle.value } };
  const largest = largestSteadyThrust(bench.ws, bench.condition(flow, tipSpeed));
  const at = (pitch: number, tip = tipSpeed) => valued(bench.state(flow, tip, pitch));
  const places = collectivePlaces(largest.kind === "found" ? largest.collective : undefined);
  return rootsAlong(places, (pitch) => at(pitch), tolerance).roots.map(({ at: pitch, payload }) =>
    rootOf(payload, Math.abs(pitch - collective) < sameAngle ? taken : undefined, at(pitch, tipSpeed * (1 + faster))?.value, bench),
  );
}

function valued(found: ReturnType<RotorBench["state"]>) {
  return found.kind === "solved" ? { value: found.rotor.cq, payload: found } : undefined;
}

/** The root that is the state answered with is told in that state's own numbers. */
function rootOf(found: RotorState, taken: RotorState | undefined, torqueFaster: number | undefined, bench: RotorBench) {
  const { shaft, point, shaftAngle } = taken ?? found;
  const drag = shaft.ct * Math.sin(shaftAngle) + shaft.ch * Math.cos(shaftAngle);
  const lift = shaft.ct * Math.cos(shaftAngle) - shaft.ch * Math.sin(shaftAngle);
  return {
    shaftAngle,
    collective: point.collective,
    thrust: shaft.ct * bench.force(point.tipSpeed),
    liftToDrag: point.airspeed > stillAir && drag !== 0 ? lift / drag : null,
    taken: taken !== undefined,
    holdsSpeed: (torqueFaster ?? -1) > 0,
  };
}
