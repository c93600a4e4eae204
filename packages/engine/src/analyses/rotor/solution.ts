import { type OperatingGivens, rotorOperatingPoint } from "../../aerodynamics/rotor/index.ts";
import { type Air, atmosphereAt } from "../../environment/atmosphere/index.ts";
import { rotorQuestion } from "./givens.ts";
import type { Assumed } from "./model-input.ts";
import type { RotorInputs } from "./schema.ts";
import { searchRotorState } from "./search.ts";
import type { NoRotorState, RotorBench, RotorState } from "./state.ts";

/** The inputs of one point. */
export type RotorPointInputs = Omit<RotorInputs, "sweep">;

/** The air that the inputs mean. */
export function rotorAir(inputs: RotorPointInputs): { readonly air: Air; readonly assumed: Assumed } {
  const standard = atmosphereAt({ altitude: inputs.altitude ?? 0, temperatureOffset: 0, relativeHumidity: 0 });
  if (!inputs.air) {
    const assumed =
      inputs.altitude === undefined
        ? [{ path: "inputs.altitude", value: 0, because: "no air was given: mean sea level, standard day" }]
        : [];
    return { air: standard, assumed };
  }
  const { density, speedOfSound, dynamicViscosity } = inputs.air;
  const because = "not given: standard day at mean sea level";
  return {
    air: {
      density,
      speedOfSound: speedOfSound ?? standard.speedOfSound,
      dynamicViscosity: dynamicViscosity ?? standard.dynamicViscosity,
    },
    assumed: [
      ...(speedOfSound === undefined ? [{ path: "inputs.air.speedOfSound", value: standard.speedOfSound, because }] : []),
      ...(dynamicViscosity === undefined ? [{ path: "inputs.air.dynamicViscosity", value: standard.dynamicViscosity, because }] : []),
    ],
  };
}

/** The state that one row of inputs asks for on a bench as it stands. */
export function rotorStateOn(bench: RotorBench, inputs: RotorPointInputs): RotorState | NoRotorState {
  const plain = plainGivens(inputs, bench.ws.model.radius);
  const single = plain?.seek === "loads" || plain?.seek === "collective";
  if (plain && (single || (!bench.ws.annular && plain.seek !== "shaft-angle-and-collective"))) {
    const cyclic = { cosine: inputs.cyclicCosine, sine: inputs.cyclicSine };
    const found = rotorOperatingPoint(bench.ws, plain, { air: bench.air, cyclic });
    return found.kind === "solved" ? bench.stateOf(found.point, found.rotor) : found;
  }
  const question = rotorQuestion(inputs, bench.ws.model.radius);
  if ("complaint" in question) throw new Error(`the schema let this pass: ${question.complaint}`);
  return searchRotorState(bench, question);
}

/** What the rotor's own search of operating points takes; undefined for every other question. */
function plainGivens(inputs: RotorPointInputs, radius: number): OperatingGivens | undefined {
  const { shaftAngle, collective, thrust, shaftTorque: torque, airspeed, advanceRatio } = inputs;
  const beyond = [inputs.climbRate, inputs.discAngle, inputs.ct, inputs.lift, inputs.power, inputs.tipSpeed].some(
    (one) => one !== undefined,
  );
  if (beyond || inputs.cyclicTrim === "no-flapping") return undefined;
  const stream =
    advanceRatio !== undefined
      ? ({ kind: "advance-ratio", value: advanceRatio } as const)
      : airspeed !== undefined
        ? ({ kind: "airspeed", value: airspeed } as const)
        : undefined;
  if (!stream || (shaftAngle === undefined && stream.value === 0)) return undefined;
  if (inputs.rotationRate !== undefined) {
    const tipSpeed = inputs.rotationRate * radius;
    if (shaftAngle !== undefined && collective !== undefined) return { seek: "loads", stream, shaftAngle, tipSpeed, collective };
    if (shaftAngle !== undefined && thrust !== undefined) return { seek: "collective", stream, shaftAngle, tipSpeed, thrust };
    if (shaftAngle !== undefined) return undefined;
    if (collective !== undefined && torque !== undefined) return { seek: "shaft-angle", stream, tipSpeed, collective, torque };
    if (thrust !== undefined && torque !== undefined) return { seek: "shaft-angle-and-collective", stream, tipSpeed, thrust, torque };
    return undefined;
  }
  if (collective === undefined || airspeed === undefined) return undefined;
  if (shaftAngle !== undefined && torque !== undefined)
    return { seek: "tip-speed", airspeed, shaftAngle, collective, held: { kind: "torque", value: torque } };
  if (shaftAngle !== undefined && thrust !== undefined)
    return { seek: "tip-speed", airspeed, shaftAngle, collective, held: { kind: "thrust", value: thrust } };
  if (thrust !== undefined && torque !== undefined) return { seek: "shaft-angle-and-tip-speed", airspeed, collective, thrust, torque };
  return undefined;
}
