import { type Analysis, analyses, type Context, type Outcome, type ProjectView } from "@wingseed/engine";

/** What came of a question; `fault` says in words what an answer must not be. */
export interface Checked {
  readonly kind: "refused" | "problem" | "outputs" | "fault";
  readonly fault?: string;
  /** Name of the problem. */
  readonly problem?: string;
}

/** What an analysis may use of the world; other analyses only where it has said so, as the runner has it. */
function contextOf(analysis: Analysis, inputs: unknown, view: ProjectView): Context<unknown> {
  return {
    progress: () => {},
    cancelled: () => false,
    partial: () => {},
    analysis: (name, asked) => {
      const declared = analysis.needs?.(inputs, view).some((need) => need.kind === "analysis" && need.name === name);
      const other = analyses.find((candidate) => candidate.name === name);
      if (!declared || !other) throw new Error(`asked for ${name} without having said so`);
      const read = other.inputs.safeParse(asked);
      if (!read.success) throw new Error(`asked ${name} with inputs that it does not take: ${read.error.message}`);
      return other.run(view, read.data, contextOf(other, read.data, view));
    },
  };
}

const unspeakable = /NaN|Infinity|undefined|null/u;

/** Asks and judges: an answer is a refusal with words, a named problem, or outputs of finite numbers that every face can show. */
export function checkedAnswer(analysis: Analysis, inputs: unknown, view: ProjectView): Checked {
  try {
    return judged(analysis, inputs, view);
  } catch (error) {
    return { kind: "fault", fault: `threw ${error instanceof Error ? (error.stack ?? error.message) : String(error)}` };
  }
}

function judged(analysis: Analysis, inputs: unknown, view: ProjectView): Checked {
  const fault = (text: string): Checked => ({ kind: "fault", fault: text });
  const read = analysis.inputs.safeParse(inputs);
  if (!read.success)
    return read.error.issues.every((issue) => issue.message.length > 0) ? { kind: "refused" } : fault("refused without a word");
  const outcome: Outcome<unknown> = analysis.run(view, read.data, contextOf(analysis, read.data, view));
  if (outcome.problem) {
    const { kind, message } = outcome.problem;
    if (kind === "" || message === "") return fault("a problem without name or words");
    if (unspeakable.test(message)) return fault(`problem says "${message}"`);
    const where = notFinite(outcome.problem);
    return where === undefined ? { kind: "problem", problem: kind } : fault(`problem${where} is not finite`);
  }
  const checked = analysis.outputs.safeParse(outcome.outputs);
  const issue = checked.error?.issues[0];
  if (issue) return fault(`outputs/${issue.path.join("/")}: ${issue.message}`);
  const told = { outcome, figures: analysis.figures(outcome.outputs, read.data), limits: analysis.limits(outcome.outputs, read.data) };
  const where = notFinite(told);
  if (where !== undefined) return fault(`${where} is not finite`);
  const { brief, sentence } = analysis.answer(outcome.outputs, read.data);
  if (brief.length > 40) return fault(`brief of ${brief.length} characters: ${brief}`);
  const spoken = `${brief} ${JSON.stringify(sentence)}`;
  return unspeakable.test(spoken) ? fault(`says ${spoken}`) : { kind: "outputs" };
}

/** Path of the first number that is not finite, or undefined. */
function notFinite(value: unknown, path = ""): string | undefined {
  if (typeof value === "number") return Number.isFinite(value) ? undefined : path;
  if (typeof value !== "object" || value === null) return undefined;
  for (const [key, item] of Object.entries(value)) {
    const found = notFinite(item, `${path}/${key}`);
    if (found !== undefined) return found;
  }
  return undefined;
}
