import type { RotorPointOutputs } from "./rotor-output-schema.ts";
import { rootsAlong } from "./rotor-roots.ts";
import { fineAngles } from "./rotor-search-places.ts";
import type { RotorPointInputs } from "./rotor-solution.ts";
import type { RotorBench, RotorState } from "./rotor-state.ts";

/** Torque coefficient met by a root, and the part of the rotor speed by which its steadiness is tried. */
const tolerance = 1e-11;
const faster = 1e-3;

/** Every shaft angle at which the rotor needs no torque at this rotor speed and collective, when that was what was asked for. */
export function torqueRoots(bench: RotorBench, taken: RotorState, inputs: RotorPointInputs): RotorPointOutputs["torqueRoots"] {
  const { rotationRate, tipSpeed, collective, shaftAngle, discAngle, climbRate, advanceRatio, airspeed } = inputs;
  const free = [shaftAngle, discAngle, climbRate].every((one) => one === undefined) && collective !== undefined;
  const asked = (inputs.shaftTorque === 0 || inputs.power === 0) && (rotationRate !== undefined || tipSpeed !== undefined) && free;
  if (!asked || (airspeed === undefined && !advanceRatio)) return [];
  const held = taken.point.tipSpeed;
  const speedAt = (angle: number): number => airspeed ?? ((advanceRatio ?? 0) * held) / Math.cos(angle);
  const at = (angle: number, tip = held) => {
    const found = bench.state({ airspeed: speedAt(angle), angle: { of: "shaft", value: angle } }, tip, collective);
    return found.kind === "solved" ? { value: found.rotor.cq, payload: found } : undefined;
  };
  const places = fineAngles(false).filter((angle) => airspeed !== undefined || angle < 1.4);
  return rootsAlong(places, (angle) => at(angle), tolerance).roots.map(({ at: angle, payload }) => {
    const { shaft, point } = payload;
    const drag = shaft.ct * Math.sin(angle) + shaft.ch * Math.cos(angle);
    const lift = shaft.ct * Math.cos(angle) - shaft.ch * Math.sin(angle);
    return {
      shaftAngle: angle,
      thrust: shaft.ct * bench.force(held),
      liftToDrag: point.airspeed > 1e-3 && drag !== 0 ? lift / drag : null,
      taken: Math.abs(angle - taken.shaftAngle) < 1e-6,
      holdsSpeed: (at(angle, held * (1 + faster))?.value ?? -1) > 0,
    };
  });
}
