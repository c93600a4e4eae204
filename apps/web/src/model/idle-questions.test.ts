import { describe, expect, it } from "vitest";
import { nextIdleQuestion } from "./idle-questions.ts";
import type { Question, Slot } from "./question.ts";
import { askedText, type Run } from "./run-store.ts";

function question(name: string, quick = false): Question {
  const analysis = { name, question: "", inputs: {}, outputs: {}, method: { summary: "", sources: [], checks: [] }, example: {}, quick };
  const slot: Slot = { key: name, analysis, first: [], small: [], fields: [], inputs: {} };
  return { key: name, title: name, base: {}, drafts: {}, slots: [slot] };
}

const asked = (name: string, inputs = {}) => askedText(name, inputs);
const run = (name: string, more: Partial<Run> = {}): Run => ({
  analysis: name,
  asked: asked(name),
  inputs: {},
  running: false,
  stopped: false,
  problems: [],
  ...more,
});
const answered = (name: string, at = asked(name)) =>
  ({ shown: { computed: {} as never, grade: "exact", asked: at, inputs: {} }, took: 900 }) as const;
const slowness = { longest: 5000, slow: new Set<string>() };
const questions = [question("one"), question("two"), question("three", true)];
const next = (runs: Readonly<Record<string, Run>>, slow: readonly string[] = []) =>
  nextIdleQuestion(questions, runs, { ...slowness, slow: new Set(slow) })?.key;

describe("the question asked while nobody asks", () => {
  it("is the quick one first, then the others in order, one at a time", () => {
    expect(next({})).toBe("three");
    const first = { three: run("three", answered("three")) };
    expect(next(first)).toBe("one");
    expect(next({ ...first, one: run("one", { running: true }) })).toBeUndefined();
    expect(next({ ...first, one: run("one", answered("one")) })).toBe("two");
  });

  it("is asked again when its inputs have changed, or when it was put off", () => {
    const done = { three: run("three", answered("three")), two: run("two", answered("two")) };
    expect(next({ ...done, one: run("one", answered("one", asked("one", { altitude: 300 }))) })).toBe("one");
    expect(next({ ...done, one: run("one", { stopped: true }) })).toBe("one");
  });

  it("is never one that is known to take long or was given up, nor one that was refused", () => {
    const done = { three: run("three", answered("three")), two: run("two", answered("two")) };
    expect(next(done, ["one"])).toBeUndefined();
    expect(next({ ...done, one: run("one", { took: 9000, asked: "before" }) })).toBeUndefined();
    expect(next({ ...done, one: run("one", { took: 900, asked: "before" }) }, ["one"])).toBe("one");
    expect(next({ ...done, one: run("one", { problems: [{ kind: "no", message: "no" }] }) })).toBeUndefined();
  });
});
