import {
  type SectionDefinition,
  type SectionLaw,
  sectionCharacteristics,
  sectionCoefficients,
  sectionLaw,
} from "../../aerodynamics/airfoil-section/index.ts";
import { withDragIncrement } from "../../aircraft/index.ts";
import { domainOfRows } from "../../published/index.ts";
import type { Analysis, Answer, Limit, Need, Outcome, ProjectView, Warning } from "../contract.ts";
import { chosenPart } from "../inputs/chosen-part.ts";
import { isProblem } from "../inputs/flight-conditions.ts";
import { type SectionReading, sectionDefinitionOf, sectionNeeds } from "../inputs/section-input.ts";
import { sectionShape } from "../inputs/section-shape.ts";
import { sectionWarnings } from "../inputs/section-warnings.ts";
import { reading, words } from "../tokens.ts";
import { sectionFigures } from "./figures.ts";
import { type SectionInputs, type SectionOutputs, sectionInputs, sectionOutputs } from "./schema.ts";

/** What lift, drag and moment does a section have, and when does it stall? */
export const section: Analysis<SectionInputs, SectionOutputs> = {
  name: "section",
  question: "What lift and drag does this section have, and when does it stall?",
  inputs: sectionInputs,
  outputs: sectionOutputs,
  quick: true,
  method: {
    summary:
      "Tables over the full circle by Reynolds number, a law of five numbers, a law by thickness and camber with drag and largest lift scaled by Reynolds number, or a table given; lift of attached flow scaled for compressibility, separated flow as measured on a 15 % section.",
    sources: ["sheldahl-klimas-1981", "glauert-1928", "glauert-1926-elements", "hoerner-1965", "fritsch-butland-1984"],
    checks: ["sand80-2114"],
  },
  example: { section: "naca-0015", reynoldsNumber: 360_000, machNumber: 0.1 },
  needs: (inputs) => needs(inputs),
  run: (project, inputs) => run(project, inputs),
  figures: (outputs, inputs) => sectionFigures(outputs, inputs),
  answer: (outputs) => answer(outputs),
  limits: (outputs) => limits(outputs),
};

/** A drag below this is none, and a ratio with it says nothing. */
const countedDrag = 1e-9;

function needs({ section: given }: SectionInputs): readonly Need[] {
  if (typeof given === "object" && "aircraft" in given) return [{ kind: "document", path: given.aircraft }];
  return sectionNeeds(given);
}

function definitionOf(project: ProjectView, { section: given, sectionDragIncrement }: SectionInputs): SectionReading {
  if (typeof given !== "object" || !("aircraft" in given)) return sectionDefinitionOf(given, project, sectionDragIncrement);
  const chosen = chosenPart(project, given.aircraft, "rotors", given.part, (_, roles) => roles?.rotor);
  if (isProblem(chosen)) return { problem: chosen };
  return { definition: withDragIncrement(chosen.part.section, sectionDragIncrement), warnings: [] };
}

function run(project: ProjectView, inputs: SectionInputs): Outcome<SectionOutputs> {
  const read = definitionOf(project, inputs);
  if (read.problem) return { problem: read.problem };
  const { machNumber: mach } = inputs;
  const law = sectionLaw(read.definition, { mach });
  const reynolds = nearestKnown(law, inputs.reynoldsNumber);
  const rows = inputs.angles.map((angle) => {
    const { lift, drag, moment } = sectionCoefficients(law, { angleOfAttack: angle, mach, reynolds });
    return {
      angle,
      liftCoefficient: lift,
      dragCoefficient: drag,
      momentCoefficient: moment,
      liftToDrag: drag > countedDrag ? lift / drag : null,
    };
  });
  const characteristics = sectionCharacteristics(law, { mach, reynolds });
  return {
    outputs: {
      rows,
      ...characteristics,
      reynoldsNumber: reynolds,
      machNumber: mach,
      domain: domainOf(inputs),
    },
    warnings: [
      ...read.warnings,
      ...withoutMoments(read.definition),
      ...sectionWarnings(read.definition, { reynoldsNumber: [inputs.reynoldsNumber, inputs.reynoldsNumber], machNumber: [mach, mach] }),
    ],
  };
}

/** A table without moments says nothing about camber's. */
function withoutMoments(definition: SectionDefinition): readonly Warning[] {
  if (definition.kind !== "table" || definition.polars.every((polar) => polar.moment)) return [];
  const message = `Section ${definition.name}: the table has no moments; none is assumed while the flow is attached, as of a section without camber.`;
  return [{ grade: "care", kind: "section-moment", message }];
}

function domainOf({ section: given, reynoldsNumber, machNumber, angles }: SectionInputs): SectionOutputs["domain"] {
  const shape = sectionShape(given);
  if (!shape) return { distance: null, nearest: null, outside: [] };
  return domainOfRows(
    "section",
    angles.map((angle) => ({ reynoldsNumber, machNumber, angle, ...shape })),
  );
}

/** The Reynolds number itself, or the nearest end of those that the section is known for. */
function nearestKnown({ reynolds }: SectionLaw, asked: number): number {
  const [low, high] = [reynolds[0] ?? 0, reynolds[reynolds.length - 1] ?? 0];
  return high === 0 ? asked : Math.min(Math.max(asked, low), high);
}

function answer({ largestLift, stallAngle, bestLiftToDrag, bestLiftToDragAngle }: SectionOutputs): Answer {
  const lift =
    largestLift === null
      ? [words("The section has no largest lift that could be found")]
      : stallAngle === null
        ? [words("The section does not stall; its largest lift coefficient is "), reading(largestLift, "dimensionless", "/largestLift")]
        : [
            words("The section stalls at "),
            reading(stallAngle, "angle", "/stallAngle"),
            words(" with a lift coefficient of "),
            reading(largestLift, "dimensionless", "/largestLift"),
          ];
  const ratio =
    bestLiftToDrag === null || bestLiftToDragAngle === null
      ? [words(".")]
      : [
          words("; its best lift over drag is "),
          reading(bestLiftToDrag, "dimensionless", "/bestLiftToDrag"),
          words(" at "),
          reading(bestLiftToDragAngle, "angle", "/bestLiftToDragAngle"),
          words("."),
        ];
  const brief = [
    ...(largestLift === null ? [] : [`largest lift ${largestLift.toFixed(2)}`]),
    ...(bestLiftToDrag === null ? [] : [`best L/D ${bestLiftToDrag.toFixed(0)}`]),
  ].join(", ");
  return { sentence: [...lift, ...ratio], brief: brief === "" ? "no largest lift found" : brief };
}

/** Angles beyond this are meant to be separated, not flown at [rad]. */
const largestFlownAngle = (40 * Math.PI) / 180;

/** How much of the way from no lift to stall the highest angle uses. */
function limits({ rows, stallAngle, zeroLiftAngle }: SectionOutputs): readonly Limit[] {
  const flown = rows.map((row) => row.angle).filter((angle) => Math.abs(angle) <= largestFlownAngle);
  if (stallAngle === null || zeroLiftAngle === null || flown.length === 0) return [];
  const share = Math.max((Math.max(...flown) - zeroLiftAngle) / (stallAngle - zeroLiftAngle), 0);
  const where = `at ${((stallAngle * 180) / Math.PI).toFixed(1)}°`;
  return [{ name: "stall", family: "air", share, side: "upper", where, binding: share >= 1 }];
}
