import { describe, expect, it } from "vitest";
import { z } from "zod";
import { quantity } from "../../quantities/index.ts";
import type { ProjectView } from "../contract.ts";
import type { TableData } from "./table-data.ts";
import { tableGrid } from "./table-grid.ts";
import { tableInput, tableNeeds, tableRows } from "./table-input.ts";

const row = z.strictObject({
  warmth: quantity("temperatureDifference", { description: "Above the air.", minimum: -50, maximum: 50 }).meta({ columnNames: ["dt"] }),
  rate: quantity("rotationRate", { description: "Rate.", minimum: 0 }),
  share: quantity("dimensionless", { description: "Share.", minimum: 0, maximum: 1 }).optional(),
});

const column = (name: string, unit: string | null, kinds: TableData["columns"][number]["kinds"], at: number, offset = 0) => ({
  name,
  unit,
  kinds,
  offset,
  line: 1,
  column: at,
});
const warmth = column("warmth", "degC", ["temperature", "temperatureDifference"], 1, 273.15);
const rate = column("rate", "rpm", ["anglePerTime", "rotationRate"], 14);
const table = (columns: TableData["columns"], rows: TableData["rows"]): TableData => ({
  columns,
  rows,
  places: rows.map((cells, i) => ({ line: i + 2, columns: cells.map((_, cell) => 1 + 10 * cell) })),
});
const view = (data: TableData): ProjectView => ({
  documents: { "a.csv": { path: "a.csv", kind: "table", data, written: {}, hash: "h" } },
  rasters: {},
});
const file = { file: "a.csv" };
const message = (data: TableData) => tableRows(view(data), file, row).problem?.message;

describe("the rows of a table", () => {
  it("are the same written out and in a file, where a difference in degrees Celsius is one", () => {
    const read = tableRows(view(table([warmth, rate], [[283.15, 3]])), file, row);
    expect(read.rows).toEqual([{ warmth: 10, rate: 3 }]);
    const written = [{ warmth: 10, rate: 3 }];
    expect(tableRows(view(table([], [])), written, row).rows).toEqual(written);
    expect(tableInput(row, { description: "Rows." }).parse(written)).toEqual(written);
    expect(tableInput(row, { description: "Rows." }).parse(file)).toEqual(file);
  });

  it("name their place", () => {
    const read = tableRows(view(table([warmth, rate], [[283.15, 3]])), file, row);
    expect(read.problem ? "" : read.place(0)).toBe("a.csv:2");
  });

  it("are needed as a document when they stand in a file", () => {
    expect(tableNeeds(file, [{ warmth: 1 }], undefined, "naca-0015", { file: "b.csv" })).toEqual([
      { kind: "document", path: "a.csv" },
      { kind: "document", path: "b.csv" },
    ]);
  });

  it("may have columns in any order, under any of their names", () => {
    const short = { ...warmth, name: "dT" };
    expect(tableRows(view(table([rate, short], [[3, 283.15]])), file, row).rows).toEqual([{ warmth: 10, rate: 3 }]);
  });

  it("are refused with file, line and column", () => {
    expect(message(table([warmth], [[283.15]]))).toBe('a.csv:1:1: column "rate" is missing');
    expect(message(table([warmth, { ...rate, unit: null, kinds: ["dimensionless"] }], [[283.15, 3]]))).toBe(
      'a.csv:1:14: column "rate" needs its unit in square brackets, as in "rate [rpm]"',
    );
    expect(message(table([warmth, { ...rate, unit: "m", kinds: ["length"] }], [[283.15, 3]]))).toBe(
      'a.csv:1:14: [m] does not measure rate; write it as in "rate [rpm]"',
    );
    expect(message(table([warmth, rate, column("colour", null, ["dimensionless"], 30)], [[283.15, 3, 1]]))).toBe(
      'a.csv:1:30: column "colour" is not known here; the columns are warmth, rate, share',
    );
    expect(message(table([warmth, rate, { ...warmth, name: "dt", column: 30 }], [[283.15, 3, 283.15]]))).toBe(
      'a.csv:1:30: column "dt" gives warmth a second time',
    );
    expect(
      message(
        table(
          [warmth, rate],
          [
            [283.15, 3],
            [283.15, -1],
          ],
        ),
      ),
    ).toBe("a.csv:3:11: rate: -1 rad/s is out of range; at least 0 rad/s is allowed");
    expect(tableRows({ documents: {}, rasters: {} }, file, row).problem?.message).toBe("There is no table a.csv.");
    expect(tableRows({ documents: {}, rasters: {} }, { file: "toString" }, row).problem?.kind).toBe("table-missing");
  });
});

describe("a table as a grid", () => {
  const rows = (pairs: readonly (readonly [number, number])[]) => {
    const table = { rows: pairs.map(([x, y]) => ({ x, y, z: 10 * x + y })), name: "the rows given", place: (i: number) => `row ${i + 1}` };
    return tableGrid(table, ["x", "y"]);
  };

  it("finds every row, whatever their order", () => {
    const grid = rows([
      [2, 5],
      [1, 7],
      [1, 5],
      [2, 7],
      [1, 6],
      [2, 6],
    ]);
    if (grid.problem) throw new Error(grid.problem.message);
    expect(grid.axes).toEqual([
      [1, 2],
      [5, 6, 7],
    ]);
    for (const [i, x] of [1, 2].entries()) for (const [j, y] of [5, 6, 7].entries()) expect(grid.at(i, j).z).toBe(10 * x + y);
  });

  it("tells a gap and a row that stands twice", () => {
    expect(
      rows([
        [1, 5],
        [2, 6],
        [1, 6],
      ]).problem?.message,
    ).toBe("the rows given: the grid has a gap: there is no row with x 2, y 5.");
    expect(
      rows([
        [1, 5],
        [1, 5],
      ]).problem?.message,
    ).toBe("row 2: x 1, y 5 stands already at row 1.");
  });
});
