// Asks one question after another in a thread of its own; bundled by tools/audit-always-answer.mjs.
import { parentPort, workerData } from "node:worker_threads";
import { analyses, type ProjectView } from "@wingseed/engine";
import { checkedAnswer } from "./answer-check.ts";
import { demoView } from "./demo-view.ts";
import { mistypedView, type Question, questionsFor } from "./questions.ts";

interface Share {
  readonly names: readonly string[];
  readonly count: number;
  readonly seed: number;
}

interface Order {
  readonly name: string;
  readonly index: number;
}

const { names, count, seed } = workerData as Share;
const view: ProjectView = await demoView();
const questions = new Map<string, readonly Question[]>(
  analyses.filter(({ name }) => names.includes(name)).map((analysis) => [analysis.name, questionsFor(analysis, count, seed)]),
);

parentPort?.on("message", ({ name, index }: Order) => {
  const analysis = analyses.find((entry) => entry.name === name);
  const question = questions.get(name)?.[index];
  if (analysis === undefined || question === undefined) throw new Error(`no question ${index} for ${name}`);
  const before = performance.now();
  const checked = checkedAnswer(analysis, question.inputs, mistypedView(view, question.slips));
  const fault = checked.kind === "fault" ? { question } : {};
  parentPort?.postMessage({
    name,
    index,
    mistyped: question.slips !== undefined,
    seconds: (performance.now() - before) / 1000,
    ...checked,
    ...fault,
  });
});
parentPort?.postMessage("ready");
