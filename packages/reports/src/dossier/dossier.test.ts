import { describe, expect, it } from "vitest";
import { figureSeries } from "../draw/index.ts";
import { sampleBench, sampleMission, samplePayload, sampleProblem, sampleSpeed } from "../sample-results.ts";
import type { Block, FigureBlock } from "./blocks.ts";
import { fittedDossier } from "./dossier-pdf.ts";
import { type DossierRequest, dossierBlocks, dossierPdf, type ValidationRow } from "./index.ts";

const row: ValidationRow = {
  check: "v-01",
  source: "a published test",
  quantity: "lift to drag",
  rows: 12,
  gatedRows: 8,
  bias: -0.012345,
  rms: 0.021,
  largest: 0.05,
  tolerance: 0.06,
  passed: true,
};

const request: DossierRequest = {
  project: { title: "Parts for the sound", demo: true, description: "Everything here is invented." },
  chapters: [sampleMission, samplePayload, sampleSpeed],
  validation: [row, { ...row, quantity: "thrust", passed: false, note: "rough blades are not modelled" }],
  program: { name: "wingseed", version: "0.1.0" },
};

function figureBlocks(blocks: readonly Block[]): readonly FigureBlock[] {
  return blocks.flatMap((block) => (block.kind === "figure" ? [block] : block.kind === "pair" ? block.figures : []));
}

function words(blocks: readonly Block[]): string {
  return JSON.stringify(blocks);
}

/** Block list as it is reviewed: figures by their id, digests masked. */
function reviewed(blocks: readonly Block[]): unknown {
  return JSON.parse(
    JSON.stringify(blocks, (name, value: unknown) => {
      if (name === "figure" && typeof value === "object") return (value as { id: string }).id;
      return name === "hash" ? "masked" : value;
    }),
  );
}

describe("the blocks of a dossier", () => {
  const blocks = dossierBlocks(request);
  it("are the ones reviewed", () => {
    expect(reviewed(blocks)).toMatchSnapshot();
  });
  it("begin with identification and put the cautions before any number", () => {
    const kinds = blocks.map((block) => block.kind);
    expect(kinds[0]).toBe("title");
    expect(kinds.indexOf("caution")).toBeLessThan(kinds.indexOf("table"));
    expect(kinds.indexOf("caution")).toBeLessThan(kinds.indexOf("figure"));
  });
  it("take the chapters in the order of the pages, whatever order they come in", () => {
    const headings = blocks.flatMap((block) => (block.kind === "heading" && block.level === 1 ? [block.text] : []));
    expect(headings.slice(-3)).toEqual([samplePayload, sampleSpeed, sampleMission].map((chapter) => chapter.meta.question));
  });
  it("hold the same series as the screen", () => {
    const printed = figureBlocks(blocks);
    expect(printed.length).toBeGreaterThan(4);
    for (const { figure, origin } of printed) {
      const shown = request.chapters
        .filter((chapter) => chapter.meta.name === origin.analysis)
        .flatMap((chapter) => chapter.view.cases.flatMap((each) => each?.figures ?? []))
        .find((each) => each.id === figure.id);
      expect(shown && figureSeries(shown)).toEqual(figureSeries(figure));
    }
  });
  it("mark every answer of a demo, and none otherwise", () => {
    const answers = (list: readonly Block[]) =>
      list.flatMap((block) => (block.kind === "paragraph" && block.look === "answer" ? [block.text] : []));
    for (const answer of answers(blocks)) expect(answer).toContain("[demo values]");
    const real = dossierBlocks({ ...request, project: { ...request.project, demo: false } });
    expect(words(real)).not.toContain("emo values");
  });
  it("draw every measured source with its errors and verdict under it, and set regressions apart", () => {
    const picture = {
      quantity: "dimensionless",
      along: { name: "advance ratio", quantity: "dimensionless" },
      rows: [
        [0.2, 7, 7.1],
        [0.3, 8, 7.8],
      ],
    } as const;
    const drawn = [
      { ...row, reference: "measured", title: "Report 1", picture, reason: "scatter of the test" },
      { ...row, check: "v-02", quantity: "drag", reference: "measured", picture },
      { ...row, check: "v-03", quantity: "inflow", reference: "formula", picture },
    ] as const;
    const list = dossierBlocks({ ...request, validation: drawn });
    const panels = list.flatMap((block) => (block.kind === "panels" ? [block.figures.map(({ caption }) => caption)] : []));
    expect(panels.map((each) => each.length)).toEqual([1, 1, 1]);
    expect(panels[0]?.[0]).toBe("Lift to drag: bias −0.0123, rms 0.0210, largest 0.0500 of 12 rows; gate 0.0600: met.");
    expect(words(list)).toContain("Scatter of the test.");
    expect(words(list)).toContain("not measured: they hold the arithmetic");
    expect(words(list)).toContain("v-03 [3], formula, not measured");
  });
  it("say which check is outside its tolerance, beside the table", () => {
    expect(words(blocks)).toContain("v-01, thrust: outside its tolerance.");
    expect(words(dossierBlocks({ ...request, validation: [] }))).toContain("No comparison with published data");
  });
  it("print the reason of a case without an answer", () => {
    expect(words(dossierBlocks({ ...request, chapters: [sampleProblem] }))).toContain(
      "No answer: At 40 kg payload the rotor stalls in hover",
    );
  });
  it("take analyses on no page only if they ask for a chapter", () => {
    const asking = { ...sampleBench, meta: { ...sampleBench.meta, dossier: { chapter: "arrangement" } } };
    expect(words(dossierBlocks({ ...request, chapters: [sampleBench] }))).not.toContain(sampleBench.meta.question);
    const withBench = dossierBlocks({ ...request, chapters: [asking, samplePayload] });
    const headings = withBench.flatMap((block) => (block.kind === "heading" && block.level === 1 ? [block.text] : []));
    expect(headings.at(-1)).toBe(sampleBench.meta.question);
  });
  it("tell how to make each figure again, without the inputs that nobody gave", () => {
    const chapter = {
      ...samplePayload,
      result: {
        ...samplePayload.result,
        cases: [{ ...samplePayload.result.cases[0], inputs: { altitude: 0, wind: { speed: 3 }, name: "it's" } }],
      },
    } as typeof samplePayload;
    const [first] = figureBlocks(dossierBlocks({ ...request, chapters: [chapter] }));
    expect(first?.origin.command).toBe(
      `wingseed run payload --input '{"wind":{"speed":3}}' --set 'inputs.name=it'\\''s' --format svg --figure endurance`,
    );
    expect(first?.origin.hash).toMatch(/^[0-9a-f]{12}$/);
  });
});

describe("the typeset dossier", () => {
  it("has five pages for the three questions: one each for what it is, the method and the published data, two for the answers", () => {
    expect(fittedDossier(request).pages).toBe(5);
  });
  it("is the same, byte for byte, each time", () => {
    const first = dossierPdf(request);
    expect(Buffer.from(first.slice(0, 5)).toString()).toBe("%PDF-");
    expect(Buffer.from(dossierPdf(request)).equals(Buffer.from(first))).toBe(true);
  });
  it("changes when a number changes", () => {
    const other = dossierPdf({ ...request, validation: [{ ...row, bias: -0.012346e3 }] });
    expect(Buffer.from(other).equals(Buffer.from(dossierPdf({ ...request, validation: [row] })))).toBe(false);
  });
  it("reads nothing that a user wrote as layout", () => {
    const title = '#panic("x") $a_b$ [*] \\ "quoted" <label> @ref // {{ }}';
    expect(dossierPdf({ ...request, project: { title, demo: false, description: title } }).length).toBeGreaterThan(10_000);
  });
  it("sets every kind of figure and an empty request", () => {
    const asking = { ...sampleBench, meta: { ...sampleBench.meta, dossier: { chapter: "arrangement" } } };
    expect(fittedDossier({ ...request, chapters: [asking] }).pages).toBeGreaterThan(2);
    expect(fittedDossier({ ...request, chapters: [], validation: [] }).pages).toBeGreaterThan(0);
  });
});
