import { describe, expect, it } from "vitest";
import { sampleFigures, sampleGrid, sampleLines, sampleProfile, sampleStacked, sampleTable, sampleTree } from "../draw/sample-figures.ts";
import { sampleForces, sampleMap, sampleScene } from "../draw/sample-places.ts";
import { sampleLoading, sampleRoots } from "../draw/sample-planes.ts";
import { samplePayload, sampleProblem } from "../sample-results.ts";
import { csvText, figureCsv, figureReadings, figureSeries, figuresGeoJson, figureTable, resultCsv } from "./index.ts";

describe("the table behind a figure", () => {
  it("exists for every kind, with rows as wide as its head", () => {
    for (const figure of sampleFigures) {
      const table = figureTable(figure);
      expect(table.rows.length).toBeGreaterThan(0);
      for (const row of table.rows) expect(row).toHaveLength(table.columns.length);
    }
  });
  it("puts series with other x values side by side and leaves what is unknown empty", () => {
    const { columns, rows } = figureTable(sampleLines);
    expect(columns.map((column) => column.label)).toEqual(["payload", "7 blocks", "10 blocks", "13 blocks", "before"]);
    expect(rows.find((row) => row[0] === 2.6)).toEqual([2.6, null, null, 1390, null]);
  });
  it("holds every number of the series", () => {
    for (const figure of [sampleStacked, sampleLines, sampleProfile]) {
      const numbers = figureTable(figure).rows.flat();
      for (const series of figureSeries(figure)) for (const value of series.y) expect(numbers).toContain(value);
    }
  });
  it("lists every point of paths over a plane, also where two lie over one x", () => {
    const roots = figureTable(sampleRoots).rows;
    expect(roots).toHaveLength(sampleRoots.series.flatMap((series) => series.x).length + (sampleRoots.notable ?? []).length);
    const limits = figureTable(sampleLoading).rows.filter(([name]) => name === "aft limit");
    expect(limits).toEqual([
      ["aft limit", -0.02, 13],
      ["aft limit", -0.02, 24],
    ]);
    expect(figureReadings(sampleRoots, -1)).toEqual([]);
  });
  it("tells a drawing by its lengths, marks and limits, and forces by their components", () => {
    const rows = figureTable(sampleScene).rows;
    expect(rows.find(([name]) => name === "span")?.[1]).toBeCloseTo(2.1);
    expect(rows.find(([name]) => name === "aft limit")?.slice(2, 4)).toEqual([-0.04, -0.04]);
    expect(figureTable(sampleForces).rows.find(([name]) => name === "main rotor")).toEqual([
      "main rotor",
      -9,
      -5,
      -150,
      0.4,
      1.2,
      -3,
      0,
      0,
      -0.4,
    ]);
    expect(
      figureCsv(sampleScene)
        .split("\r\n")
        .filter((line) => line.startsWith("line,rotor disc")),
    ).toHaveLength(37);
  });
  it("walks trees and grids", () => {
    expect(figureTable(sampleTree).rows.map((row) => row[0])).toEqual([0, 1, 2, 2, 1]);
    expect(figureTable(sampleGrid).rows).toHaveLength(48);
  });
});

describe("readings at a place along x", () => {
  it("give computed values at computed points and straight lines between them", () => {
    expect(figureReadings(sampleLines, 1).map((reading) => reading.value)).toEqual([1010, 1310, 1560, 990]);
    expect(figureReadings(sampleLines, 0.5)[0]?.value).toBe(1055);
    expect(figureReadings(sampleLines, 0.5)[0]?.text?.text).toBe("17.6\u00a0min");
  });
  it("give none in gaps and beyond the ends", () => {
    expect(figureReadings(sampleLines, 4.5)[2]?.value).toBeNull();
    expect(figureReadings(sampleStacked, 43)[0]?.value).toBeNull();
    expect(figureReadings(sampleTable, 1)).toEqual([]);
  });
});

describe("comma-separated values", () => {
  it("quote what needs it and end lines as the standard says", () => {
    expect(
      csvText(
        ["a", "b"],
        [
          ['say "x", y', null],
          [1.5, true],
        ],
      ),
    ).toBe('a,b\r\n"say ""x"", y",\r\n1.5,true\r\n');
  });
  it("bear SI units in the head of a figure", () => {
    expect(figureCsv(sampleLines).split("\r\n")[0]).toBe("payload [kg],7 blocks [s],10 blocks [s],13 blocks [s],before [s]");
  });
  it("list the rows of a result with the units of its schema", () => {
    const schema = { properties: { rows: { items: { properties: { hover: { quantity: "time" } } } } } };
    expect(resultCsv(samplePayload.result, schema)).toBe("case,hover [s]\r\n1,1284\r\n");
    const nullable = { anyOf: [{ quantity: "time" }, {}] };
    const maybe = { properties: { rows: { items: { properties: { hover: nullable } } } } };
    expect(resultCsv(samplePayload.result, maybe)).toBe("case,hover [s]\r\n1,1284\r\n");
  });
  it("keep a case without an answer, with its reason", () => {
    const lines = resultCsv(sampleProblem.result).split("\r\n");
    expect(lines[0]).toBe("case,hover,problem");
    expect(lines[2]).toContain("2,,no-equilibrium: At 40 kg payload");
  });
  it("write one line a case where the outputs have no rows", () => {
    const result = { ...samplePayload.result, cases: [{ inputs: {}, outputs: { density: 1.225, list: [1, 2], deep: { a: 1 } } }] };
    expect(resultCsv(result)).toBe('case,density,list,deep.a\r\n1,1.225,"[1,2]",1\r\n');
  });
});

describe("GeoJSON", () => {
  it("copies tracks and sites", () => {
    const collection = figuresGeoJson([sampleLines, sampleMap]);
    expect(collection?.features).toHaveLength(sampleMap.tracks.length + sampleMap.sites.length);
    expect(collection?.features[0]?.geometry.coordinates).toEqual(sampleMap.tracks[0]?.points);
  });
  it("is not made where there is no map", () => {
    expect(figuresGeoJson([sampleLines])).toBeUndefined();
  });
});
