import { domainOfRows, publishedChecks } from "../../published/index.ts";
import { type Analysis, Cancelled, type Context, type Outcome, type Problem, type ProjectView } from "../contract.ts";
import { isProblem } from "../inputs/flight-conditions.ts";
import { bandNotes } from "./airspeed-band.ts";
import { rotorAnswer, rotorLimits } from "./answer.ts";
import { evenMass } from "./blade-masses.ts";
import { domainCoordinates } from "./domain-coordinates.ts";
import { rotorFigures } from "./figures.ts";
import { rotorBench, rotorFinding } from "./finding.ts";
import { rotorNeeds, rotorReading } from "./model-input.ts";
import { type RotorMeasures, type RotorOutputs, type RotorRow, rotorOutputs, unsolvedRow } from "./output-schema.ts";
import { rotorMeasures, rotorPointOf } from "./outputs.ts";
import { rotorProblem, tipMachProblem } from "./problem.ts";
import { type RotorInputs, rotorInputs } from "./schema.ts";
import { type RotorPointInputs, rotorAir } from "./solution.ts";
import type { RotorBench, RotorState } from "./state.ts";
import { rotorRowInputs, sweptNames } from "./sweep.ts";
import { rotorWarnings } from "./warnings.ts";

/** What does this rotor do at one operating point or along a sweep, driven or autorotating? */
export const rotor: Analysis<RotorInputs, RotorOutputs> = {
  name: "rotor",
  question: "What does this rotor do, driven or turned by the air?",
  inputs: rotorInputs,
  outputs: rotorOutputs,
  quick: true,
  method: {
    summary:
      "Blade elements over azimuth and radius in tip-path-plane axes with first-harmonic flapping of teetering, hinged, hingeless or rigid blades; momentum theory for the disc with a first-harmonic inflow distribution, or ring by ring; measured law of axial descent; section laws over the full circle. What is not given is searched for, never on the stalled side.",
    sources: [
      "johnson-1980",
      "gessow-myers-1952",
      "leishman-2006",
      "glauert-1928",
      "sheldahl-klimas-1981",
      "wheatley-hood-1935",
      "snel-1993",
      "cheeseman-bennett-1955",
    ],
    checks: publishedChecks.filter((check) => check.component === "rotor").map((check) => check.check),
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
  needs: (inputs) => rotorNeeds(inputs.rotor),
  run: (project, inputs, context) => run(project, inputs, context),
  figures: (outputs, inputs) => rotorFigures(outputs, inputs),
  answer: (outputs) => rotorAnswer(outputs),
  limits: (outputs, inputs) => rotorLimits(outputs, inputs),
};

interface SolvedPoint {
  readonly inputs: RotorPointInputs;
  readonly bench: RotorBench;
  readonly state: RotorState;
  readonly measures: RotorMeasures;
}

function run(project: ProjectView, inputs: RotorInputs, context: Context<RotorOutputs>): Outcome<RotorOutputs> {
  const { air, assumed: assumedAir } = rotorAir(inputs);
  const reading = rotorReading(project, inputs, air.density);
  if (isProblem(reading)) return { problem: reading };
  const assumed = [...assumedAir, ...reading.assumed, ...evenMass(inputs.blade, reading.model.rootCutout)];
  const more = assumed.length > 0 ? { assumed } : {};
  const bench = rotorBench(reading, air, inputs);
  const asked = rotorRowInputs(inputs);
  const points = asked.map((row, index) => {
    if (context.cancelled()) throw new Cancelled();
    if (asked.length > 1) context.progress(index, asked.length, "points");
    return solvedPoint(bench, row);
  });
  const solved = points.flatMap((point) => (isProblem(point) ? [] : [point]));
  const [first] = solved;
  if (!first) return { problem: noneSolved(points.filter(isProblem)), ...more };
  const measured = solved.map((point) => point.measures);
  const outputs: RotorOutputs = {
    ...rotorPointOf(first.bench, first.state, first.inputs, first.measures),
    domain: domainOfRows("rotor", measured.map(domainCoordinates)),
    swept: [...sweptNames(inputs.sweep)],
    rows: points.map((point, index) => rowOf(point, asked[index])),
  };
  return { outputs, warnings: [...rotorWarnings(measured, inputs, reading), ...bandNotes(solved)], ...more };
}

function solvedPoint(bench: RotorBench, inputs: RotorPointInputs): SolvedPoint | Problem {
  const { outcome, bench: trimmed } = rotorFinding(bench, inputs);
  if (outcome.kind !== "solved") return rotorProblem(outcome, inputs);
  const measures = rotorMeasures(trimmed, outcome, inputs);
  return tipMachProblem(measures.advancingTipMach) ?? { inputs, bench: trimmed, state: outcome, measures };
}

function rowOf(point: SolvedPoint | Problem, asked: RotorPointInputs | undefined): RotorRow {
  return isProblem(point) ? unsolvedRow(point.message, asked) : { ...point.measures, problem: null };
}

/** Why a point has no answer, or why no point of a sweep has. */
function noneSolved(problems: readonly Problem[]): Problem {
  const [first] = problems;
  if (!first) return { kind: "nothing-asked", message: "The sweep has no points." };
  if (problems.length === 1) return first;
  return { ...first, message: `None of the ${problems.length} points has a solution; of the first: ${first.message}` };
}
