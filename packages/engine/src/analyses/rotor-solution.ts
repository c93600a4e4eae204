import type { SectionDefinition } from "../aerodynamics/airfoil-section/index.ts";
import {
  createRotorWorkspace,
  type NoOperatingPoint,
  type OperatingGivens,
  type OperatingPoint,
  type RotorModel,
  type RotorWorkspace,
  rotorOperatingPoint,
  type Stream,
} from "../aerodynamics/rotor/index.ts";
import { type Air, atmosphereAt } from "../environment/atmosphere/index.ts";
import type { Outcome } from "./contract.ts";
import type { RotorInputs, RotorOutputs } from "./rotor-schema.ts";

type Assumed = NonNullable<Outcome<RotorOutputs>["assumed"]>;

/** A rotor put to work as the inputs say. */
export interface RotorSolution {
  readonly workspace: RotorWorkspace;
  readonly air: Air;
  readonly assumed: Assumed;
  readonly outcome: OperatingPoint | NoOperatingPoint;
}

/** Lock number of a hinged blade when none is given: forces hardly depend on it. Common practice, 5 to 15. */
const usualLockNumber = 8;

export function rotorSolution(inputs: RotorInputs): RotorSolution {
  const { air, assumed } = rotorAir(inputs);
  const { model, assumed: assumedOfModel } = rotorModel(inputs);
  const workspace = createRotorWorkspace(model);
  const outcome = rotorOperatingPoint(workspace, operatingGivens(inputs), {
    air,
    cyclic: { cosine: inputs.cyclicCosine, sine: inputs.cyclicSine },
  });
  return { workspace, air, assumed: [...assumed, ...assumedOfModel], outcome };
}

function rotorAir(inputs: RotorInputs): { readonly air: Air; readonly assumed: Assumed } {
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

function rotorModel(inputs: RotorInputs): { readonly model: RotorModel; readonly assumed: Assumed } {
  const { rotor, radialFlow } = inputs;
  const hinged = rotor.articulation === "hinged";
  const lockNumber = rotor.lockNumber ?? usualLockNumber;
  const assumeLockNumber = hinged && rotor.lockNumber === undefined;
  return {
    model: {
      radius: rotor.radius,
      bladeCount: rotor.blades,
      rootCutout: rotor.rootCutout,
      stations: rotor.stations ?? [{ radiusFraction: 0, chord: rotor.chord ?? 0, twist: 0 }],
      precone: rotor.precone,
      articulation: hinged ? { kind: "hinged", lockNumber } : { kind: "teetering" },
      section: sectionDefinition(rotor),
      tipLoss: inputs.tipLoss,
      inducedPowerFactor: inputs.inducedPowerFactor,
      inflow: inputs.inflow,
      radialFlow: radialFlow === true ? "resultant" : radialFlow === false ? "off" : radialFlow,
      azimuths: inputs.azimuths,
      radialElements: inputs.radialElements,
    },
    assumed: assumeLockNumber
      ? [
          {
            path: "inputs.rotor.lockNumber",
            value: lockNumber,
            because: "not given: usual value, only coning and lateral flap depend on it",
          },
        ]
      : [],
  };
}

function sectionDefinition(rotor: RotorInputs["rotor"]): SectionDefinition {
  const { section, sectionDragIncrement } = rotor;
  if (typeof section === "string") return { kind: "built-in", name: section, dragIncrement: sectionDragIncrement };
  return { ...section, cd0: section.cd0 + sectionDragIncrement };
}

/** From the inputs, of which the schema has made sure that they fit together, to what is sought. */
function operatingGivens(inputs: RotorInputs): OperatingGivens {
  const { shaftAngle, collective, thrust, shaftTorque: torque, airspeed = 0 } = inputs;
  const stream: Stream =
    inputs.advanceRatio === undefined ? { kind: "airspeed", value: airspeed } : { kind: "advance-ratio", value: inputs.advanceRatio };
  if (inputs.rotationRate !== undefined) {
    const tipSpeed = inputs.rotationRate * inputs.rotor.radius;
    if (shaftAngle !== undefined && collective !== undefined) return { seek: "loads", stream, shaftAngle, tipSpeed, collective };
    if (shaftAngle !== undefined && thrust !== undefined) return { seek: "collective", stream, shaftAngle, tipSpeed, thrust };
    if (collective !== undefined && torque !== undefined) return { seek: "shaft-angle", stream, tipSpeed, collective, torque };
    if (thrust !== undefined && torque !== undefined) return { seek: "shaft-angle-and-collective", stream, tipSpeed, thrust, torque };
  } else if (collective !== undefined) {
    if (shaftAngle !== undefined && torque !== undefined)
      return { seek: "tip-speed", airspeed, shaftAngle, collective, held: { kind: "torque", value: torque } };
    if (shaftAngle !== undefined && thrust !== undefined)
      return { seek: "tip-speed", airspeed, shaftAngle, collective, held: { kind: "thrust", value: thrust } };
    if (thrust !== undefined && torque !== undefined) return { seek: "shaft-angle-and-tip-speed", airspeed, collective, thrust, torque };
  }
  throw new Error("the schema let a combination of givens pass that nothing answers");
}
