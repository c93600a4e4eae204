import type { Analysis, Context, Outcome, Problem, ProjectView } from "../contract.ts";
import { type Assumed, aircraftNeeds, isProblem } from "../inputs/flight-conditions.ts";
import { fullFlight } from "../inputs/full-flight.ts";
import { aircraftOutputs } from "./aircraft-outputs.ts";
import { stabilityAnswer } from "./answer.ts";
import { derivativesOutputs } from "./derivatives-outputs.ts";
import { stabilityFigures } from "./figures.ts";
import { flightsOfDerivatives } from "./from-derivatives.ts";
import { type StabilityOutputs, stabilityOutputs } from "./output-schema.ts";
import { type StabilityInputs, stabilityInputs } from "./schema.ts";
import { stabilityWarnings } from "./warnings.ts";

/** Does it stay there when nobody touches it? */
export const stability: Analysis<StabilityInputs, StabilityOutputs> = {
  name: "stability",
  question: "Does it stay there?",
  inputs: stabilityInputs,
  outputs: stabilityOutputs,
  method: {
    summary:
      "Small motion about a steady flight with fixed controls: six degrees of freedom with rotor speed and inflow as states, by central differences of all loads, or given derivatives; " +
      "modes named by the states that take part most; neutral points of incidence and of speed; push-over, pull-up and gust flown with a reference controller by a third-order method at 200 Hz.",
    sources: ["etkin-reid-1996", "perez-arriaga-1982", "lanchester-1908", "pitt-peters-1981", "hairer-norsett-wanner-1993"],
    checks: ["light-aeroplane-modes", "large-transport-modes", "gyroplane-rotor-speed"],
  },
  example: {},
  needs: (inputs, available) => (inputs.derivatives ? [] : aircraftNeeds(inputs, available)),
  run: (project, inputs, context) => run(project, inputs, context),
  figures: (outputs) => stabilityFigures(outputs),
  answer: (outputs) => stabilityAnswer(outputs),
  limits: () => [],
};

function run(project: ProjectView, inputs: StabilityInputs, context: Context<StabilityOutputs>): Outcome<StabilityOutputs> {
  const { derivatives } = inputs;
  if (derivatives) {
    const flights = flightsOfDerivatives(derivatives);
    return answered(
      isProblem(flights) ? flights : derivativesOutputs(flights as Exclude<typeof flights, Problem>, derivatives, inputs),
      inputs,
      [],
    );
  }
  const flight = fullFlight(project, inputs);
  if (isProblem(flight)) return { problem: flight };
  return answered(aircraftOutputs(flight, inputs, context), inputs, flight.assumed);
}

function answered(outputs: StabilityOutputs | Problem, inputs: StabilityInputs, assumed: Assumed): Outcome<StabilityOutputs> {
  return isProblem(outputs) ? { problem: outputs } : { outputs, warnings: stabilityWarnings(outputs, inputs), assumed };
}
