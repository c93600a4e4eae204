import type { LinesFigure } from "@wingseed/engine";
import { describe, expect, it } from "vitest";
import { lineReadings, nearestIndex, readableFigure } from "./cursor.ts";

const figure: LinesFigure = {
  kind: "lines",
  id: "f",
  caption: "F",
  x: { label: "airspeed", quantity: "speed" },
  y: { label: "power", quantity: "power" },
  series: [
    { name: "driven", meaning: "mode.driven", x: [0, 10, 20], y: [5, 3, null] },
    { name: "free", meaning: "mode.autorotating", weight: "thin", x: [5, 10], y: [8, 6] },
    { name: "free", meaning: "mode.autorotating", x: [10, 30], y: [6, 4] },
  ],
};

describe("the cursor", () => {
  it("stops at every computed place of every line, in order", () => {
    expect(readableFigure(figure)?.places).toEqual([0, 5, 10, 20, 30]);
    expect(nearestIndex([0, 5, 10, 20, 30], 14)).toBe(2);
    expect(nearestIndex([0, 5, 10, 20, 30], -99)).toBe(0);
  });

  it("reads each line once, also one drawn in parts, and says nothing in gaps", () => {
    const at = (x: number) => Object.fromEntries(lineReadings(figure, x, "si").map(({ column, value }) => [column.label, value]));
    expect(at(5)).toEqual({ driven: 4, free: 8 });
    expect(at(20)).toEqual({ driven: null, free: 5 });
    expect(at(30)).toEqual({ driven: null, free: 4 });
  });

  it("has nothing to read on a table or a map", () => {
    expect(readableFigure({ kind: "table", id: "t", caption: "", columns: [], rows: [] })).toBeUndefined();
    expect(readableFigure({ kind: "map", id: "m", caption: "", tracks: [], sites: [] })).toBeUndefined();
  });
});
