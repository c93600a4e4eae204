import { describe, expect, it } from "vitest";
import { sampleForces, sampleScene } from "../draw/sample-places.ts";
import { sampleMission, samplePayload, sampleProblem } from "../sample-results.ts";
import { terminalReport } from "./index.ts";
import { cellWidth } from "./ink.ts";

describe("a result on a terminal", () => {
  it("gives question, sentence, table and limits, and keeps cautions apart", () => {
    const { stdout, stderr } = terminalReport(samplePayload.meta, samplePayload.result, samplePayload.view, {
      conditions: "0 m above sea, 15 °C, calm",
    });
    expect(stdout).toMatchSnapshot();
    expect(stderr).toMatchSnapshot();
  });

  it("never gets wider than the terminal and loses no column", () => {
    for (const width of [60, 72, 100]) {
      const { stdout, stderr } = terminalReport(sampleMission.meta, sampleMission.result, sampleMission.view, { width });
      for (const line of `${stdout}${stderr}`.split("\n")) expect(cellWidth(line)).toBeLessThanOrEqual(width);
    }
    const wide = terminalReport(samplePayload.meta, samplePayload.result, samplePayload.view, { width: 200 }).stdout;
    const narrow = terminalReport(samplePayload.meta, samplePayload.result, samplePayload.view, { width: 60 }).stdout;
    const numbers = (text: string) => text.match(/\d+[.\d]*/g)?.length ?? 0;
    expect(numbers(narrow)).toBeGreaterThanOrEqual(numbers(wide));
  });

  it("keeps the words and only adds control sequences with colour", () => {
    const plain = terminalReport(samplePayload.meta, samplePayload.result, samplePayload.view);
    const inked = terminalReport(samplePayload.meta, samplePayload.result, samplePayload.view, { color: true });
    expect(plain.stdout).not.toContain("\u001b");
    expect(inked.stdout).toContain("\u001b[1m");
    // biome-ignore lint/suspicious/noControlCharactersInRegex: that is what an escape sequence begins with
    expect(inked.stdout.replace(/\u001b\[[0-9;]*m/g, "")).toBe(plain.stdout);
  });

  it("says why a case has no answer", () => {
    const { stdout } = terminalReport(sampleProblem.meta, sampleProblem.result, sampleProblem.view);
    expect(stdout).toContain("Case 2 of 2");
    expect(stdout).toContain("No answer: At 40 kg payload the rotor stalls in hover: thrust 120 N short.");
  });
});

describe("parts on the bench on a terminal", () => {
  const column = (label: string) => ({ label, quantity: "force" }) as const;
  const one = {
    kind: "table",
    id: "one",
    caption: "Forces",
    columns: ["Thrust", "Lift", "Drag", "Side force", "Weight of all"].map(column),
    rows: [[110, 109, 16, 0.3, 120]],
  } as const;
  const sweep = {
    kind: "table",
    id: "sweep",
    caption: "Sweep",
    columns: [column("Thrust"), column("Drag")],
    rows: Array.from({ length: 61 }, (_, index) => [index, index * index]),
  } as const;
  const view = { cases: [{ answer: { sentence: [], brief: "" }, figures: [one, sweep], limits: [] }] };
  const domain = { distance: 0.5, nearest: "tunnel", outside: [{ name: "tipMach", value: 0.5, low: 0.2, high: 0.4 }] };
  const result = { ...samplePayload.result, warnings: [], cases: [{ inputs: {}, outputs: { domain } }] };
  const validation = [
    {
      check: "tunnel",
      source: "s",
      title: "Report 1",
      quantity: "a long name of a compared quantity, rows at rest only",
      rows: 9,
      gatedRows: 9,
      bias: "+1 %",
      rms: "2 %",
      largest: "3 %",
      tolerance: "5 %",
      passed: true,
    },
  ];
  const text = (width: number) => terminalReport(samplePayload.meta, result, view, { width, validation }).stdout;

  it("write one row of many values upright, in two columns where there is room", () => {
    expect(text(60)).toMatch(/Thrust +110 N +Side force +0\.3\d* N/);
    expect(text(60)).not.toContain("Left out");
    const narrow = { ...one, columns: one.columns.map((each) => ({ ...each, label: `${each.label} along an axis of the body` })) };
    const stdout = terminalReport(samplePayload.meta, result, { cases: [{ ...view.cases[0], figures: [narrow] }] } as never, { width: 60 });
    expect(stdout.stdout).toMatch(/Thrust along an axis of the body +110 N\n/);
  });
  it("print every table, and columns without room below, by number where the first column repeats itself", () => {
    const many = (first: readonly number[]) => ({
      ...sweep,
      id: "many",
      caption: "Many columns",
      columns: Array.from({ length: 14 }, (_, index) => column(`Force ${index}`)),
      rows: first.map((value) => Array.from({ length: 14 }, (_, index) => (index === 0 ? value : 100 + index))),
    });
    const printed = (first: readonly number[]) =>
      terminalReport(samplePayload.meta, result, { cases: [{ ...view.cases[0], figures: [sweep, many(first)] }] } as never, { width: 60 })
        .stdout;
    const told = printed([1, 2, 3]);
    expect(told).toMatch(/^ {2}Sweep$/m);
    expect(told).toMatch(/^ {2}Many columns$/m);
    for (let index = 1; index < 14; index++) expect(told).toMatch(new RegExp(`\\b${100 + index}\\b`));
    expect(told).not.toMatch(/\brow\b/);
    expect(printed([5, 5, 7])).toMatch(/\brow\b/);
    for (const line of told.split("\n")) expect(cellWidth(line)).toBeLessThanOrEqual(60);
  });
  it("thin a sweep evenly and keep its ends", () => {
    expect(text(60)).toMatch(/\n +0 +0\n/);
    expect(text(60)).toMatch(/\n +60 +3[ \u202f\u2009]?600\n/);
    expect(text(60)).toContain("of 61 rows; all in --format csv or json");
  });
  it("say how the answer stands to published data, within the width", () => {
    for (const width of [60, 80]) for (const line of text(width).split("\n")) expect(cellWidth(line)).toBeLessThanOrEqual(width);
    expect(text(80).replace(/\s+/g, " ")).toContain("0.5 of its width outside: tip Mach 0.5 (compared 0.2 to 0.4); nearest is Report 1.");
    expect(text(80)).toMatch(/\+1.% +2.% +3.% +9/);
    expect(text(60)).toMatch(/\+1.% +2.% +9/);
  });
});

describe("a drawing on a terminal", () => {
  const shown = (figure: typeof sampleScene, width: number) => {
    const view = { cases: [{ answer: { sentence: [], brief: "" }, figures: [figure], limits: [] }] };
    return terminalReport(samplePayload.meta, { ...samplePayload.result, warnings: [] }, view, { width }).stdout;
  };
  it("is told by its lengths and by where its marks lie", () => {
    const text = shown(sampleScene, 80);
    expect(text).toContain("rotor diameter 2.30\u00a0m");
    expect(text).toContain("centre of gravity 20.0\u00a0mm forward, 10.0\u00a0mm down from the datum");
    expect(text).not.toContain("1.150");
  });
  it("is told by its forces, part by part", () => {
    const text = shown(sampleForces, 100);
    expect(text).toMatch(/main rotor +−9 +−5\.00 +−150/);
    for (const line of shown(sampleForces, 60).split("\n")) expect(cellWidth(line)).toBeLessThanOrEqual(60);
  });
});
