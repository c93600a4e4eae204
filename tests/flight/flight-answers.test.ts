// What the flight analyses say of the baseline, held against trims and an integral of our own.
import { type AircraftDefinition, analyses, type ProjectView } from "@wingseed/engine";
import { beforeAll, describe, expect, test } from "vitest";
import type { ReducedAircraft } from "../../packages/engine/src/aircraft/index.ts";
import { demoAircraft, demoDefinition, flownLine, standardConditions } from "./demo-flight.ts";

let definition: AircraftDefinition;
let baseline: ReducedAircraft;
beforeAll(async () => {
  definition = await demoDefinition("baseline");
  baseline = await demoAircraft("baseline");
});

const nobody = {
  progress: () => {},
  cancelled: () => false,
  partial: () => {},
  analysis: (name: string): never => {
    throw new Error(`no other analysis is at hand here: ${name}`);
  },
};

/** What an analysis answers about the baseline. */
function answered<Outputs>(name: string, inputs: Record<string, unknown>): Outputs {
  const analysis = analyses.find((entry) => entry.name === name);
  if (analysis === undefined) throw new Error(`no analysis ${name}`);
  const view: ProjectView = {
    documents: { "a.yaml": { path: "a.yaml", kind: "aircraft", data: definition, written: {}, hash: "a" } },
    rasters: {},
  };
  const outcome = analysis.run(view, analysis.inputs.parse({ aircraft: "a.yaml", ...inputs }), nobody);
  if (outcome.problem) throw new Error(outcome.problem.message);
  return outcome.outputs as Outputs;
}

describe("flight with the clutch open", () => {
  test("is impossible a little below its lowest speed and possible a little above, ±0.05 m/s", () => {
    const outputs = answered<{ summary: { lowestAutorotatingSpeed: number } }>("speed", { speeds: [6, 9, 12, 15, 18] });
    const lowest = outputs.summary.lowestAutorotatingSpeed;
    expect(lowest).toBeGreaterThan(6);
    const conditions = standardConditions(baseline);
    const at = (airspeed: number) => flownLine(conditions, "clutch-open", [airspeed])[0]?.outcome.kind;
    expect(at(lowest + 0.05)).toBe("trimmed");
    expect(at(lowest - 0.05)).toBe("no-equilibrium");
  });
});

describe("payload", () => {
  test("shortens hover, endurance and range in every pack; a larger pack lengthens hover at one payload", () => {
    const { rows } = answered<{ rows: Record<string, number | null>[] }>("payload", {
      payloads: [0, 2, 4.5],
      packs: [7, 13],
      largestPayload: false,
    });
    for (const blocks of [7, 13]) {
      const pack = rows.filter((row) => row.blocks === blocks);
      expect(pack).toHaveLength(3);
      for (const column of ["hoverEndurance", "cruiseEndurance", "range"]) {
        const values = pack.map((row) => row[column] as number);
        expect(
          values.every((value, i) => i === 0 || value < (values[i - 1] as number)),
          `${column} of ${blocks} blocks: ${values}`,
        ).toBe(true);
      }
    }
    const empty = rows.filter((row) => row.payload === 0).map((row) => row.hoverEndurance as number) as [number, number];
    expect(empty[1]).toBeGreaterThan(empty[0]);
  });

  test("lasts as long as its power takes to empty the pack, by an integral of its own", () => {
    const { rows } = answered<{ rows: Record<string, number>[] }>("payload", { payloads: [1.13], packs: [7, 13], largestPayload: false });
    const { cell, seriesCells, parallelCells, wiringResistance } = baseline.battery;
    const between = (curve: readonly { readonly stateOfCharge: number; readonly value: number }[], at: number): number => {
      const after = curve.findIndex((point) => point.stateOfCharge >= at);
      const high = curve[after] ?? curve[curve.length - 1];
      const low = curve[after - 1] ?? high;
      if (high === undefined || low === undefined) throw new Error("a curve has points");
      const width = high.stateOfCharge - low.stateOfCharge;
      return width > 0 ? low.value + ((high.value - low.value) * (at - low.stateOfCharge)) / width : high.value;
    };
    const lasting = (power: number, blocks: number): number => {
      const pieces = 8000;
      let seconds = 0;
      for (let i = 0; i < pieces; i++) {
        const charge = 0.2 + (0.8 * (i + 0.5)) / pieces;
        const rest = seriesCells * between(cell.openCircuitVoltage, charge);
        const ohms = (seriesCells * cell.resistance * between(cell.resistanceFactor, charge)) / (parallelCells * blocks) + wiringResistance;
        const current = (rest - Math.sqrt(rest ** 2 - 4 * ohms * power)) / (2 * ohms);
        seconds += (0.8 * cell.capacity * parallelCells * blocks) / pieces / current;
      }
      return seconds;
    };
    expect(rows).toHaveLength(2);
    for (const row of rows) {
      const blocks = row.blocks as number;
      expect((row.hoverEndurance as number) / lasting(row.hoverPower as number, blocks)).toBeCloseTo(1, 5);
      expect((row.cruiseEndurance as number) / lasting(row.minimumPower as number, blocks)).toBeCloseTo(1, 5);
      const range = lasting(row.bestRangePower as number, blocks) * (row.bestRangeSpeed as number);
      expect((row.range as number) / range).toBeCloseTo(1, 5);
    }
  });
});
