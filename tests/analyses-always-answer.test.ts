// Whatever is asked within the schema, there is an answer: numbers, a named problem or a refusal. Never NaN. A few of the
// questions here; `npm run audit` asks two thousand of every analysis and records what came of them.
import { analyses, z } from "@wingseed/engine";
import { expect, test } from "vitest";
import { checkedAnswer } from "./always-answer/answer-check.ts";
import { demoView } from "./always-answer/demo-view.ts";
import { mistypedView, questionsFor } from "./always-answer/questions.ts";

const seed = 20_240_117;
/** What there is time for in every run of the tests; an analysis that is not listed is quick. */
const affordable: Readonly<Record<string, number>> = {
  rotor: 120,
  propeller: 400,
  battery: 150,
  motor: 300,
  wing: 150,
  section: 400,
  speed: 10,
  payload: 8,
  mission: 6,
  trim: 40,
  stability: 30,
  transient: 20,
  envelope: 3,
  transition: 3,
  balance: 20,
};
const cases = analyses.map((analysis) => ({ analysis, name: analysis.name, count: affordable[analysis.name] ?? 2000 }));

test.each(cases)(
  "$name answers $count generated questions with numbers, a named problem or a refusal",
  async ({ analysis, count }) => {
    const view = await demoView();
    const faults: string[] = [];
    let answered = 0;
    questionsFor(analysis, count, seed).forEach(({ inputs, slips }, index) => {
      const { kind, fault } = checkedAnswer(analysis, inputs, mistypedView(view, slips));
      if (kind === "fault") faults.push(`question ${index}, ${JSON.stringify(inputs)}, slips ${JSON.stringify(slips)}: ${fault}`);
      if (kind === "outputs") answered += 1;
    });
    expect(faults).toEqual([]);
    // A generator that is always refused would prove nothing.
    expect(answered).toBeGreaterThan(count / 20);
  },
  180_000,
);

test("an answer that is not a number would be noticed, as would silence and a fall", () => {
  const [analysis] = analyses;
  if (analysis === undefined) throw new Error("there are no analyses");
  const view = { documents: {}, rasters: {} };
  const answering = (run: typeof analysis.run) => checkedAnswer({ ...analysis, run }, {}, view);
  expect(answering(() => ({ outputs: { rows: [{ blocks: Number.NaN }] } })).kind).toBe("fault");
  expect(answering(() => ({ problem: { kind: "vague", message: "" } })).kind).toBe("fault");
  expect(answering(() => ({ problem: { kind: "loud", message: "power is NaN W" } })).kind).toBe("fault");
  expect(
    answering(() => {
      throw new Error("fell");
    }).fault,
  ).toContain("fell");
  expect(answering(() => ({ problem: { kind: "clear", message: "There is no aircraft." } }))).toEqual({
    kind: "problem",
    problem: "clear",
  });
});

test("an aircraft or mission called like a word of the language is missing like any other", async () => {
  const view = await demoView();
  const flown = analyses.filter(({ inputs }) => Object.hasOwn(z.toJSONSchema(inputs, { io: "input" }).properties ?? {}, "aircraft"));
  expect(flown.length).toBeGreaterThan(1);
  for (const analysis of flown) {
    for (const name of ["toString", "__proto__", "constructor"]) {
      expect(checkedAnswer(analysis, { aircraft: name }, view), `${analysis.name}, ${name}`).toEqual({
        kind: "problem",
        problem: "aircraft-missing",
      });
    }
  }
});
