import type { Question } from "./question.ts";
import { askedText, type Run } from "./run-store.ts";

/** What is known of how long questions take. */
export interface Slowness {
  /** A question that took this long [ms] is not asked unasked. */
  readonly longest: number;
  /** Keys of those that were given up before their time was known. */
  readonly slow: ReadonlySet<string>;
}

/**
 * The question to ask next while nobody asks anything: one whose answer does not stand for its inputs as they are now,
 * and that is not known to take long; those that call themselves quick come first. None while one is under way.
 */
export function nextIdleQuestion(
  questions: readonly Question[],
  runs: Readonly<Record<string, Run>>,
  { longest, slow }: Slowness,
): Question | undefined {
  if (questions.some(({ key }) => runs[key]?.running)) return undefined;
  const waiting = questions.filter((question) => {
    const took = runs[question.key]?.took;
    return !hasOutcome(question, runs[question.key]) && (took === undefined ? !slow.has(question.key) : took < longest);
  });
  return waiting.find(({ slots: [slot] }) => slot.analysis.quick) ?? waiting[0];
}

/** True when the inputs as they are now have been answered or refused. */
function hasOutcome({ slots: [slot] }: Question, run: Run | undefined): boolean {
  const asked = askedText(slot.analysis.name, slot.inputs);
  const refused = run?.asked === asked && run.problems.length > 0;
  return refused || (run?.shown?.asked === asked && run.shown.grade === "exact");
}
