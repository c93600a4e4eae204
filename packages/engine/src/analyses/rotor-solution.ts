import {
  createRotorWorkspace,
  flapStiffness,
  type OperatingGivens,
  type RotorModel,
  rotorOperatingPoint,
} from "../aerodynamics/rotor/index.ts";
import { type Air, atmosphereAt } from "../environment/atmosphere/index.ts";
import { rotorQuestion } from "./rotor-givens.ts";
import type { Assumed, RotorReading } from "./rotor-model-input.ts";
import type { RotorInputs } from "./rotor-schema.ts";
import { searchRotorState } from "./rotor-search.ts";
import { type NoRotorState, RotorBench, type RotorState } from "./rotor-state.ts";

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

/** A rotor on the bench, as the inputs set its cyclic pitch. */
export function rotorBench({ model }: RotorReading, air: Air, inputs: RotorPointInputs): RotorBench {
  const held = { cosine: inputs.cyclicCosine, sine: inputs.cyclicSine };
  return new RotorBench(createRotorWorkspace(model), air, inputs.cyclicTrim === "no-flapping" && flapsFreely(model) ? "no-flapping" : held);
}

/** Whether pitch relative to the tip-path plane is all that flapping depends on. */
function flapsFreely({ articulation }: RotorModel): boolean {
  const { surplus, coupling, rigid } = flapStiffness(articulation, 1);
  return surplus === 0 && coupling === 0 && !rigid;
}

/** The state that one row of inputs asks for, with the bench that it was found on. */
export interface RotorFinding {
  readonly bench: RotorBench;
  readonly outcome: RotorState | NoRotorState;
}

/** Flapping left by a cyclic pitch that shall take it away, and the most times that it is corrected. */
const flapTolerance = 1e-9;
const mostCorrections = 40;

/** The state that one row of inputs asks for; the schema has made sure that its givens fit together. */
export function rotorFinding(bench: RotorBench, inputs: RotorPointInputs): RotorFinding {
  if (inputs.cyclicTrim === "held" || flapsFreely(bench.ws.model) || bench.ws.model.articulation.kind === "rigid")
    return { bench, outcome: stateOn(bench, inputs) };
  let trimmed = bench;
  for (let correction = 0; correction < mostCorrections; correction++) {
    const outcome = stateOn(trimmed, inputs);
    if (outcome.kind !== "solved") return { bench: trimmed, outcome };
    const { shaft, rotor } = outcome;
    if (Math.hypot(shaft.flapLongitudinal, shaft.flapLateral) < flapTolerance) return { bench: trimmed, outcome };
    trimmed = new RotorBench(bench.ws, bench.air, { cosine: rotor.theta1c, sine: rotor.theta1s });
  }
  return {
    bench,
    outcome: { kind: "no-equilibrium", seek: "cyclic pitch", reason: "no cyclic pitch was found that takes the flapping away" },
  };
}

function stateOn(bench: RotorBench, inputs: RotorPointInputs): RotorState | NoRotorState {
  const plain = plainGivens(inputs, bench.ws.model.radius);
  if (plain) {
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
