import type { Figure } from "../figures.ts";
import { manoeuvreFigures } from "./manoeuvre-figures.ts";
import { marginFigures } from "./margin-figures.ts";
import { growthFigures, modeTables, rootFigures } from "./mode-figures.ts";
import type { StabilityOutputs } from "./output-schema.ts";
import { responseFigures } from "./response-figures.ts";

/** Where the roots lie, how they wander, static margins, manoeuvres, the answer to a sharp gust, and the modes in numbers. */
export function stabilityFigures(outputs: StabilityOutputs): readonly Figure[] {
  return [
    ...rootFigures(outputs),
    ...modeTables(outputs),
    ...growthFigures(outputs),
    ...marginFigures(outputs),
    ...manoeuvreFigures(outputs),
    ...responseFigures(outputs),
  ];
}
