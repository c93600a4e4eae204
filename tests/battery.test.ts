// The battery bench fed from the open project: the demo's own battery, and the power that a mission takes over time.
import { type AircraftDefinition, analyses, type Outcome, type ProjectView } from "@wingseed/engine";
import { expect, test } from "vitest";
import { demoView } from "./always-answer/demo-view.ts";

interface BatteryOutputs {
  readonly endedBy: string;
  readonly duration: number;
  readonly energyOut: number;
  readonly energyLost: number;
  readonly stateOfChargeAtEnd: number;
  readonly conditions: { readonly series: number; readonly blocks: number; readonly cutoffVoltage: number };
  readonly rows: readonly { readonly time: number; readonly power: number; readonly voltage: number }[];
}

interface MissionOutputs {
  readonly rows: readonly { readonly time: number; readonly power: number | null; readonly voltage: number | null }[];
  readonly summary: { readonly energyUsed: number; readonly duration: number; readonly landingStateOfCharge: number };
}

const view = await demoView();

function asked<Outputs>(name: string, inputs: unknown): Outcome<Outputs> {
  const analysis = analyses.find((candidate) => candidate.name === name);
  if (!analysis) throw new Error(`there is no ${name}`);
  const nested = (other: string, given: unknown) => asked<unknown>(other, given);
  const context = { progress: () => {}, cancelled: () => false, partial: () => {}, analysis: nested };
  return analysis.run(view as ProjectView, analysis.inputs.parse(inputs), context) as Outcome<Outputs>;
}

function answered<Outputs>(name: string, inputs: unknown): Outputs {
  const outcome = asked<Outputs>(name, inputs);
  if (outcome.problem) throw new Error(outcome.problem.message);
  return outcome.outputs;
}

test("the built-in cell of the demo is the one of its aircraft file", () => {
  const load = { power: 500, duration: 600 };
  const document = view.documents["aircraft/baseline.yaml"];
  if (!document) throw new Error("the demo has lost its aircraft");
  const { battery } = document.data as AircraftDefinition;
  const { seriesCells: series, wiringResistance, thermalResistance } = battery;
  const written = { cell: "demo", series, blocks: Math.max(...battery.packs), wiringResistance };
  const named = answered<BatteryOutputs>("battery", {
    ...written,
    cooling: { thermalResistance, bayOffset: battery.bayTemperatureRise },
    load,
    ambientTemperature: 275,
  });
  const fromFile = answered<BatteryOutputs>("battery", { cell: { aircraft: "aircraft/baseline.yaml" }, load, ambientTemperature: 275 });
  expect(fromFile.conditions.blocks).toBe(13);
  expect(fromFile.energyLost).toBe(named.energyLost);
  expect(fromFile.rows.map(({ voltage }) => voltage)).toEqual(named.rows.map(({ voltage }) => voltage));
});

test("a mission's power is drawn as the mission draws it, and costs the same energy at the terminals", () => {
  const mission = { mission: "missions/slow.yaml", step: 5 };
  const flown = answered<MissionOutputs>("mission", mission);
  const outputs = answered<BatteryOutputs>("battery", {
    cell: { aircraft: "aircraft/baseline.yaml" },
    ambientTemperature: 293.15,
    cooling: { thermalResistance: 1e-3 },
    load: { mission },
    timeStep: 5,
  });
  expect(outputs.endedBy).toBe("end of the load");
  expect(outputs.conditions.blocks).toBe(10);
  expect(outputs.duration).toBeCloseTo(flown.summary.duration, 6);
  expect(outputs.energyOut / flown.summary.energyUsed).toBeCloseTo(1, 9);
  // Held at 25 °C the bench is the mission's own battery, but for how the voltage settles after each change of load.
  expect(Math.abs(outputs.stateOfChargeAtEnd - flown.summary.landingStateOfCharge)).toBeLessThan(5e-4);
});

test("a battery that is asked for an aircraft or a mission needs just that, and nothing for a cell of its own", () => {
  const analysis = analyses.find(({ name }) => name === "battery");
  const needs = (inputs: unknown) => analysis?.needs?.(analysis.inputs.parse(inputs), { documents: {}, rasters: {} });
  expect(needs({ load: { power: 5 } })).toEqual([]);
  expect(needs({ cell: { aircraft: "a.yaml" }, load: { points: { file: "b.csv" } } })).toEqual([
    { kind: "document", path: "a.yaml" },
    { kind: "document", path: "b.csv" },
  ]);
  expect(needs({ load: { mission: {} } })).toMatchObject([{ kind: "analysis", name: "mission" }]);
});
