import { z } from "zod";
import { type AircraftDefinition, recordLoading } from "../../aircraft/index.ts";
import { atmosphereAt } from "../../environment/atmosphere/index.ts";
import { type Analysis, Cancelled, type Context, type Need, type Outcome, type ProjectView, type Warning } from "../contract.ts";
import { aircraftNeeds, chosenDefinition, isProblem } from "../inputs/flight-conditions.ts";
import { entryAt } from "../inputs/project-definition.ts";
import { balanceAnswer, balanceLimits } from "./answer.ts";
import type { LimitSource } from "./centre-limits.ts";
import { controlLimits, margined, stabilityLimit } from "./computed-limits.ts";
import { balanceFigures } from "./figures.ts";
import { unsureNumbers } from "./intervals.ts";
import { askedLoadings } from "./loadings.ts";
import { type BalanceOutputs, balanceOutputs } from "./output-schema.ts";
import { balanceOutputsOf } from "./outputs.ts";
import { type BalanceInputs, balanceInputs } from "./schema.ts";

/** What is it, and does it balance? */
export const balance: Analysis<BalanceInputs, BalanceOutputs> = {
  name: "balance",
  question: "What is it, and does it balance?",
  inputs: balanceInputs,
  outputs: balanceOutputs,
  method: {
    summary:
      "Masses at their places, their own inertia carried to the common centre of gravity by parallel axes; blocks are even solids that stand in the bay from the front. " +
      "Intervals: the ± of the file, independent of each other, carried on linearly. Hung from a point, the centre of gravity rests below it.",
    sources: ["jcgm-100-2008"],
    checks: [],
  },
  example: {},
  needs,
  run,
  figures: balanceFigures,
  answer: balanceAnswer,
  limits: balanceLimits,
};

function stabilityInputs({ aircraft }: BalanceInputs): Readonly<Record<string, unknown>> {
  return { ...(aircraft === undefined ? {} : { aircraft }), airspeeds: [...margined] };
}

function needs(inputs: BalanceInputs, available: ProjectView): readonly Need[] {
  const documents = aircraftNeeds(inputs, available);
  return inputs.limits === "file" ? documents : [...documents, { kind: "analysis", name: "stability", inputs: stabilityInputs(inputs) }];
}

function run(project: ProjectView, inputs: BalanceInputs, context: Context<BalanceOutputs>): Outcome<BalanceOutputs> {
  const chosen = chosenDefinition(project, inputs.aircraft);
  if (isProblem(chosen)) return { problem: chosen };
  const { definition, path, assumed } = chosen;
  const asked = askedLoadings(definition, inputs);
  if (isProblem(asked)) return { problem: asked };
  const numbers = unsureNumbers(entryAt(project.documents, path)?.written ?? {});
  const ofFile = () => balanceOutputsOf(definition, asked, numbers, []);
  if (inputs.limits === "computed") context.partial(ofFile(), "limits of the aircraft file; computed ones follow");
  const outputs =
    inputs.limits === "file" ? ofFile() : balanceOutputsOf(definition, asked, numbers, [computedSource(definition, inputs, context)]);
  const packs = { path: "/packs", value: definition.battery.packs, because: "the aircraft's packs" };
  const payloads = { path: "/payloads", value: definition.payloads.map(({ name }) => name), because: "every payload record of the file" };
  return {
    outputs,
    warnings: warnings(outputs),
    assumed: [...assumed, ...(inputs.packs ? [] : [packs]), ...(inputs.payloads ? [] : [payloads])],
  };
}

/** Stability and control margins with the largest pack and the standard payload at sea level; they hold for every loading. */
function computedSource(definition: AircraftDefinition, inputs: BalanceInputs, context: Context<BalanceOutputs>): LimitSource {
  const study = context.analysis("stability", stabilityInputs(inputs));
  const flights = margins.safeParse(study.outputs);
  const [record] = definition.payloads;
  const loading = recordLoading(Math.max(...definition.battery.packs), record as NonNullable<typeof record>);
  const air = atmosphereAt({ altitude: 0, temperatureOffset: 0, relativeHumidity: 0 });
  const found = [
    ...(flights.success ? stabilityLimit(flights.data.conditions) : []),
    ...controlLimits(definition, loading, air, () => {
      if (context.cancelled()) throw new Cancelled();
    }),
  ];
  return () => found;
}

/** What is read of the answer of `stability`. */
const margins = z.looseObject({
  conditions: z.array(
    z.looseObject({
      airspeed: z.number(),
      mode: z.enum(["clutch-closed", "clutch-open"]).nullable(),
      rearmostCentre: z.number().nullable(),
    }),
  ),
});

function warnings({ rows, suspension, contributions }: BalanceOutputs): readonly Warning[] {
  const found: Warning[] = [];
  const off = suspension.filter(({ agrees }) => !agrees).map(({ id }) => id);
  if (off.length > 0) {
    const message = `Hung up it does not hang as the file's masses say (${off.join(", ")}): weigh it again before relying on the centre of gravity.`;
    found.push({ kind: "suspension-disagrees", grade: "care", message });
  }
  if (rows.some(({ verdict }) => verdict.endsWith("unsure"))) {
    const message = "A loading lies nearer to a limit than its interval can tell: weigh it before it flies.";
    found.push({ kind: "limit-unsure", grade: "care", message });
  }
  if (contributions.length === 0) {
    const message = "The aircraft file states no interval for masses and places, so none is given here.";
    found.push({ kind: "no-intervals", grade: "note", message });
  }
  if (rows.every(({ fore, aft }) => fore.from === aft.from)) {
    const message = "Limits of the centre of gravity are those of the aircraft file; whether it flies well at them is not computed here.";
    found.push({ kind: "limits-from-file", grade: "note", message });
  }
  return found;
}
