import type { Analysis, Context, Outcome, ProjectView } from "../contract.ts";
import { isProblem } from "../inputs/flight-conditions.ts";
import { wingAnswer, wingLimits } from "./answer.ts";
import { wingBench } from "./bench.ts";
import { wingFigures } from "./figures.ts";
import { wingNeeds } from "./input.ts";
import { type WingOutputs, wingOutputs } from "./output-schema.ts";
import { wingOutputsOf } from "./outputs.ts";
import { type WingInputs, wingInputs } from "./schema.ts";
import { wingSearch } from "./search.ts";
import { wingWarnings } from "./warnings.ts";

/** What lift and drag does a wing have, and how does what hangs on it glide? */
export const wing: Analysis<WingInputs, WingOutputs> = {
  name: "wing",
  question: "What lift and drag does this wing have, and how does it glide?",
  inputs: wingInputs,
  outputs: wingOutputs,
  quick: true,
  method: {
    summary:
      "Lifting line with section data up to the first stall, strips with the downwash of attached flow beyond it; or a parabolic polar with the slope of lift from aspect ratio and sweep, joined to a flat plate; plain flaps by thin-section theory with losses; steady glides.",
    sources: ["multhopp-1938", "helmbold-1942", "hoak-finck-1978", "glauert-1926-elements", "anderson-flight"],
    checks: ["naca-tn-2080", "propeller-aeroplane-glide", "lifting-line-theory"],
  },
  example: {
    wing: {
      area: "0.42 m2",
      span: "1.85 m",
      taper: 0.6,
      twist: "-2 deg",
      section: { kind: "cambered", thickness: 0.12, camber: 0.03 },
      flaps: [{ from: 0.55, to: 0.95, chordFraction: 0.25, deflection: "0 deg" }],
    },
    parasiteDragArea: "0.02 m2",
    mass: "10 kg",
    altitude: "0 m",
  },
  needs: (inputs) => wingNeeds(inputs),
  run: (project, inputs, context) => run(project, inputs, context),
  figures: (outputs) => wingFigures(outputs),
  answer: (outputs) => wingAnswer(outputs),
  limits: (outputs) => wingLimits(outputs),
};

function run(project: ProjectView, inputs: WingInputs, context: Context<WingOutputs>): Outcome<WingOutputs> {
  const bench = wingBench(project, inputs);
  if (isProblem(bench)) return { problem: bench };
  const rows = inputs.angles.map((angle, index) => {
    if (index % 20 === 0) context.progress(index, inputs.angles.length, "angles");
    return bench.at(angle);
  });
  const outputs = wingOutputsOf(bench, rows, wingSearch(bench), inputs);
  return { outputs, warnings: wingWarnings(bench, outputs, inputs), assumed: bench.assumed };
}
