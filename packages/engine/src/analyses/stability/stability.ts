import type { Analysis, Outcome, Warning } from "../contract.ts";
import { isProblem } from "../inputs/flight-conditions.ts";
import { stabilityAnswer } from "./answer.ts";
import { stabilityFigures } from "./figures.ts";
import { flightsOfDerivatives } from "./from-derivatives.ts";
import { type StabilityOutputs, stabilityOutputs } from "./output-schema.ts";
import { stabilityOutputsOf } from "./outputs.ts";
import { type StabilityInputs, stabilityInputs } from "./schema.ts";

/** Does it stay there when nobody touches it? */
export const stability: Analysis<StabilityInputs, StabilityOutputs> = {
  name: "stability",
  question: "Does it stay there?",
  inputs: stabilityInputs,
  outputs: stabilityOutputs,
  quick: true,
  method: {
    summary:
      "Small motion about a steady flight with fixed controls: roots of the linear equations in stability axes, named by the states that take part most; neutral points of incidence and of speed; exact linear response to a sharp gust.",
    sources: ["etkin-reid-1996", "perez-arriaga-1982", "lanchester-1908"],
    checks: ["light-aeroplane-modes", "large-transport-modes"],
  },
  example: {
    derivatives: {
      kind: "dimensional",
      airspeed: "32 m/s",
      longitudinal: { xu: -0.11, xw: 0.18, zu: -0.62, zw: -2.9, mu: 0.02, mw: -0.55, mq: -3.8, mwDot: -0.03 },
      lateral: { yv: -0.32, lv: -0.35, lp: -6.2, lr: 1.4, nv: 0.42, np: -0.5, nr: -1.1 },
    },
  },
  run: (_project, inputs) => run(inputs),
  figures: (outputs) => stabilityFigures(outputs),
  answer: (outputs) => stabilityAnswer(outputs),
  limits: () => [],
};

function run(inputs: StabilityInputs): Outcome<StabilityOutputs> {
  const flights = flightsOfDerivatives(inputs);
  if (isProblem(flights)) return { problem: flights };
  const outputs = stabilityOutputsOf(flights, inputs);
  return isProblem(outputs) ? { problem: outputs } : { outputs, warnings: smallMotion(inputs) };
}

/** Angles of a disturbance above this are no small motion [rad]. */
const small = 0.17;

function smallMotion({ derivatives, disturbance }: StabilityInputs): readonly Warning[] {
  const angle = Math.atan2(Math.max(Math.abs(disturbance.vertical), Math.abs(disturbance.side)), derivatives.airspeed);
  if (angle <= small) return [];
  const message = "The disturbance turns the stream by more than ten degrees: the linear response says little beyond its sign.";
  return [{ grade: "care", kind: "large-disturbance", message }];
}
