import type { AnalysisResult, Figure, Limit, Method } from "@wingseed/engine";
import { sampleGrid, sampleLines, sampleProfile, sampleStacked, sampleTable, sampleText, sampleTree } from "./draw/sample-figures.ts";
import { sampleMap, sampleScene } from "./draw/sample-places.ts";
import type { AnalysisMeta, ResultView } from "./view.ts";

/** Invented results for tests of terminal and dossier. No value here comes from an aircraft. */
export interface SampleChapter {
  readonly meta: AnalysisMeta;
  readonly result: AnalysisResult;
  readonly view: ResultView;
}

const method: Method = {
  summary: "Blade elements over azimuth and radius with uniform and first-harmonic inflow; steady balance of forces at each speed.",
  sources: ["glauert-1926", "leishman-2006"],
  checks: ["v-01"],
};

const limits: readonly Limit[] = [
  { name: "block current", family: "power", share: 0.97, side: "upper", where: "in hover", binding: true },
  { name: "stall margin", family: "air", share: 0.78, side: "lower", where: "at 31 m/s, clutch open", binding: false },
  { name: "take-off mass", family: "rule", share: 0.73, side: "upper", where: "everywhere", binding: false },
];

function sample(name: string, question: string, figures: readonly Figure[], sentence: string, time: number): SampleChapter {
  return {
    meta: { name, question, method },
    result: {
      analysis: name,
      cases: [
        { inputs: { aircraft: "aircraft/baseline.yaml", altitude: 0 }, outputs: { rows: [{ hover: time }], summary: { hover: time } } },
      ],
      warnings: [
        { kind: "recalled", message: "The cell’s resistance is recalled, not read (aircraft/baseline.yaml:14:5).", grade: "care" },
        { kind: "model", message: "The wing’s lift law is used outside the tested range of angles.", grade: "note" },
      ],
      provenance: {
        program: { name: "wingseed", version: "0.1.0" },
        registryHash: "5f0c9a3b1d7e",
        runtime: { v8: "11.3", architecture: "x64" },
        documents: [
          { path: "project.yaml", hash: "aa01c55d0b7f3e90aa01c55d0b7f3e90aa01c55d0b7f3e90aa01c55d0b7f3e90" },
          { path: "aircraft/baseline.yaml", hash: "bb02c55d0b7f3e90aa01c55d0b7f3e90aa01c55d0b7f3e90aa01c55d0b7f3e90" },
        ],
        defaults: [
          { path: "/altitude", value: 0, because: "nobody gave one: mean sea level" },
          { path: "/temperatureOffset", value: 0, because: "standard atmosphere" },
        ],
        method,
        seed: null,
      },
    },
    view: {
      cases: [
        {
          answer: {
            sentence: [
              { kind: "words", text: `${sentence}` },
              { kind: "reading", value: time, quantity: "time", path: "/summary/hover" },
              { kind: "words", text: "; block current stops it." },
            ],
            brief: "21 min",
          },
          figures,
          limits,
        },
      ],
    },
  };
}

export const samplePayload = sample(
  "payload",
  "What can it carry, and for how long?",
  [sampleLines, sampleTable],
  "With 1.1 kg and 10 blocks it hovers",
  1284,
);
export const sampleSpeed = sample(
  "speed",
  "What does each speed cost?",
  [sampleStacked, sampleGrid, sampleText],
  "At the cheapest speed it stays up",
  3900,
);
export const sampleMission = sample("mission", "Can it fly this job today?", [sampleMap, sampleProfile], "It lands after", 2400);
export const sampleBench = sample("bench", "How is it arranged?", [sampleScene, sampleTree], "The bench shows", 60);

export const sampleProblem: SampleChapter = {
  ...samplePayload,
  result: {
    ...samplePayload.result,
    cases: [
      ...samplePayload.result.cases,
      {
        inputs: { payload: 40 },
        problem: { kind: "no-equilibrium", message: "At 40 kg payload the rotor stalls in hover: thrust 120 N short." },
      },
    ],
  },
  view: { cases: [...samplePayload.view.cases, null] },
};
