import type { Analysis, Outcome } from "./contract.ts";
import { rotorFigures } from "./rotor-figures.ts";
import { rotorAnswer, rotorLimits, rotorProblem, rotorWarnings, tipMachProblem } from "./rotor-judgement.ts";
import { rotorOutputsOf } from "./rotor-outputs.ts";
import { type RotorInputs, type RotorOutputs, rotorInputs, rotorOutputs } from "./rotor-schema.ts";
import { rotorSolution } from "./rotor-solution.ts";

/** What does this rotor do at one operating point, driven or autorotating? */
export const rotor: Analysis<RotorInputs, RotorOutputs> = {
  name: "rotor",
  question: "What does this rotor do, driven or turned by the air?",
  inputs: rotorInputs,
  outputs: rotorOutputs,
  quick: true,
  method: {
    summary:
      "Blade elements over azimuth and radius in tip-path-plane axes with first-harmonic flapping, momentum theory with a first-harmonic inflow distribution, measured law of axial descent, section tables over the full circle.",
    sources: ["johnson-1980", "gessow-myers-1952", "leishman-2006", "glauert-1928", "sheldahl-klimas-1981", "wheatley-hood-1935"],
    checks: ["naca-tr-515", "glauert-inflow", "profile-power-factor"],
  },
  example: {
    rotor: {
      radius: "1.15 m",
      blades: 2,
      chord: "90 mm",
      rootCutout: 0.15,
      precone: "2 deg",
      articulation: "teetering",
      section: "naca-0015",
    },
    altitude: "0 m",
    airspeed: "16 m/s",
    rotationRate: "640 rpm",
    collective: "3 deg",
    shaftTorque: "0 N m",
  },
  run: (_project, inputs) => run(inputs),
  figures: (outputs) => rotorFigures(outputs),
  answer: (outputs) => rotorAnswer(outputs),
  limits: (outputs) => rotorLimits(outputs),
};

function run(inputs: RotorInputs): Outcome<RotorOutputs> {
  const { workspace, outcome, assumed } = rotorSolution(inputs);
  const more = assumed.length > 0 ? { assumed } : {};
  if (outcome.kind !== "solved") return { problem: rotorProblem(outcome, inputs), ...more };
  const outputs = rotorOutputsOf(inputs, workspace, outcome);
  const refused = tipMachProblem(outputs);
  if (refused) return { problem: refused, ...more };
  return { outputs, warnings: rotorWarnings(outputs, inputs, workspace), ...more };
}
