import { z } from "zod";
import type { LoadProfile, LoadStage } from "../../drivetrain/battery/index.ts";
import { quantity } from "../../quantities/index.ts";
import type { Context, Need, Problem, ProjectView, Warning } from "../contract.ts";
import { tableInput, tableNeeds, tableRows } from "../inputs/table-input.ts";
import { missionInputs } from "../mission/schema.ts";

/** Longest stretch and most repeats, so that a run has an end. */
const longestStage = 1e6;

const power = (description: string) => quantity("power", { description, minimum: 0, maximum: 1e6 });
const current = (description: string) => quantity("current", { description, minimum: 0, maximum: 1e5 });

const eitherLoad = (row: { readonly power?: number | undefined; readonly current?: number | undefined }) =>
  (row.power === undefined) !== (row.current === undefined);
const eitherSentence = { error: "power or current must be given, not both" };

/** A load from its time on, held until the time of the next row. */
export const loadRow = z.strictObject({
  time: quantity("time", { description: "When this load begins; the first at 0.", minimum: 0, maximum: longestStage }).meta({
    columnNames: ["t"],
  }),
  power: power("At the terminals from here on.").optional(),
  current: current("From the pack from here on.").optional(),
});

const stage = z
  .strictObject({
    duration: quantity("time", { description: "How long the load is held.", exclusiveMinimum: 0, maximum: longestStage }),
    power: power("At the terminals.").optional(),
    current: current("From the pack.").optional(),
  })
  .refine(eitherLoad, eitherSentence)
  .meta({ givens: [{ given: ["power"] }, { given: ["current"] }] });

const kinds = ["power", "current", "steps", "points", "mission"] as const;

/** What is drawn from the pack over time. */
export const loadInput = z
  .strictObject({
    power: power("A constant power at the terminals.").optional(),
    current: current("A constant current from the pack.").optional(),
    duration: quantity("time", {
      description: "How long the constant load is held; until the pack can no more when absent.",
      exclusiveMinimum: 0,
      maximum: longestStage,
    }).optional(),
    steps: z.array(stage).min(1).max(5000).optional().meta({ description: "Loads one after another, each with its duration." }),
    points: tableInput(loadRow, {
      description: "Loads over time; each holds until the next, the last time is the end.",
      fewest: 2,
    }).optional(),
    repeats: z.int().min(1).max(100_000).default(1).meta({ description: "How often steps or points are run through." }),
    mission: missionInputs
      .optional()
      .meta({ description: "The power that a mission of the open project takes over time; asked as the mission is." }),
  })
  .superRefine((given, context) => {
    const named = kinds.filter((kind) => given[kind] !== undefined);
    const complain = (path: string, message: string): void =>
      context.addIssue({ code: "custom", path: path === "" ? [] : [path], message });
    if (named.length !== 1)
      complain("", `one of ${kinds.join(", ")} says what is drawn; given: ${named.length > 0 ? named.join(" + ") : "none of them"}`);
    const constant = given.power !== undefined || given.current !== undefined;
    if (!constant && given.duration !== undefined) complain("duration", "duration goes with a constant power or current");
    if (constant && given.duration === undefined && (given.power ?? given.current) === 0)
      complain("duration", "without a load the pack lasts for ever; give a duration");
    if (given.repeats > 1 && given.steps === undefined && given.points === undefined)
      complain("repeats", "repeats goes with steps or points");
  })
  .meta({
    description: "What is drawn: a constant power or current, steps, a list over time, or a mission's power.",
    givens: [{ given: ["power"] }, { given: ["current"] }, { given: ["steps"] }, { given: ["points"] }, { given: ["mission"] }],
  });

export type LoadInput = z.infer<typeof loadInput>;

/** What must be read or run before this load is known. */
export function loadNeeds(load: LoadInput): readonly Need[] {
  if (load.mission !== undefined) return [{ kind: "analysis", name: "mission", inputs: load.mission }];
  return load.points === undefined ? [] : tableNeeds(load.points);
}

const missionPower = z.looseObject({
  rows: z.array(z.looseObject({ time: z.number(), power: z.number().nullable() })),
  conditions: z.looseObject({ blocks: z.int() }),
  summary: z.looseObject({ completed: z.boolean(), reason: z.string().nullable() }),
});

/** A load with what comes along when a mission makes it. */
export interface LoadReading {
  readonly profile: LoadProfile;
  /** Blocks that the mission flies with. */
  readonly blocks?: number;
  readonly warnings: readonly Warning[];
}

/** The load as stages one after another. */
export function loadOf(load: LoadInput, view: ProjectView, context: Pick<Context<unknown>, "analysis">): LoadReading | Problem {
  if (load.mission !== undefined) return missionLoad(load.mission, context);
  const profile = profileOf(load, view);
  return "kind" in profile ? profile : { profile, warnings: [] };
}

function profileOf(load: LoadInput, view: ProjectView): LoadProfile | Problem {
  const { repeats } = load;
  if (load.steps !== undefined) return { stages: load.steps.map((step) => stageOf(step.duration, step)), repeats };
  if (load.points === undefined) return { stages: [stageOf(load.duration ?? Number.POSITIVE_INFINITY, load)], repeats: 1 };
  const table = tableRows(view, load.points, loadRow);
  if (table.problem) return table.problem;
  const { rows, place } = table;
  const wrong = (index: number, words: string): Problem => ({ kind: "load-profile", message: `${place(index)}: ${words}.` });
  const stages: LoadStage[] = [];
  for (const [index, row] of rows.entries()) {
    const next = rows[index + 1];
    if (index === 0 && row.time !== 0) return wrong(index, `the first time is ${row.time} s; it must be 0`);
    if (next && next.time <= row.time) return wrong(index + 1, `time ${next.time} s does not come after ${row.time} s`);
    const last = next === undefined && row.power === undefined && row.current === undefined;
    if (!last && !eitherLoad(row)) return wrong(index, eitherSentence.error);
    if (next) stages.push(stageOf(next.time - row.time, row));
  }
  return { stages, repeats };
}

function stageOf(
  duration: number,
  { power: watts, current: amperes }: { readonly power?: number | undefined; readonly current?: number | undefined },
): LoadStage {
  return watts === undefined ? { duration, kind: "current", value: amperes ?? 0 } : { duration, kind: "power", value: watts };
}

/** Power at the terminals, constant over each step of the mission, up to its end or to where its flight stops. */
function missionLoad(inputs: unknown, context: Pick<Context<unknown>, "analysis">): LoadReading | Problem {
  const outcome = context.analysis("mission", inputs);
  if (outcome.problem) return outcome.problem;
  const read = missionPower.safeParse(outcome.outputs);
  if (!read.success) return { kind: "load-profile", message: "The mission's answer holds no power over time." };
  const { rows, conditions, summary } = read.data;
  const stages: LoadStage[] = [];
  for (const [index, row] of rows.entries()) {
    const next = rows[index + 1];
    if (!next || next.time <= row.time) continue;
    stages.push({ duration: next.time - row.time, kind: "power", value: Math.max(0, row.power ?? 0) });
  }
  if (stages.length === 0) return { kind: "load-profile", message: "The mission ends before any power is drawn." };
  const cut: Warning = {
    grade: "care",
    kind: "mission-cut-short",
    message: `The mission stops before its end (${summary.reason ?? "no reason given"}); only what it draws until then is asked of the pack.`,
  };
  return { profile: { stages, repeats: 1 }, blocks: conditions.blocks, warnings: summary.completed ? [] : [cut] };
}
