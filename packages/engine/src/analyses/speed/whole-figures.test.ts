import { describe, expect, it } from "vitest";
import type { SpeedOutputs, SpeedRow } from "./schema.ts";
import { wholeColumns, wholeFigures } from "./whole-figures.ts";

const row = (mode: SpeedRow["mode"], airspeed: number, more: Partial<SpeedRow>) =>
  ({ mode, airspeed, electricPower: 1000, schedulePower: null, pitch: null, roll: null, sideslip: null, ...more }) as SpeedRow;
const outputs = (rows: readonly SpeedRow[]) => ({ rows }) as unknown as SpeedOutputs;

describe("what six components tell of every speed", () => {
  it("is nothing at the trim level reduced", () => {
    const rows = [row("clutch-closed", 10, {}), row("clutch-open", 10, {})];
    expect(wholeFigures(outputs(rows), rows, [])).toEqual([]);
    expect(wholeColumns(outputs(rows))).toEqual([]);
  });
  it("shows least power beside the schedule in both modes, and bank and sideslip of the cheaper one", () => {
    const closed = row("clutch-closed", 10, { schedulePower: 1100, pitch: 0.05, roll: 0.02, sideslip: 0.1 });
    const open = row("clutch-open", 10, { electricPower: 900, pitch: 0.08, roll: 0.01, sideslip: 0.1 });
    const [schedule, attitude] = wholeFigures(outputs([closed, open]), [open], []);
    expect(schedule?.kind === "lines" && schedule.series.map(({ name, y }) => [name, y[0]])).toEqual([
      ["least, clutch closed", 1000],
      ["on schedule, clutch closed", 1100],
      ["least, clutch open", 900],
      ["on schedule, clutch open", null],
    ]);
    expect(attitude?.kind === "lines" && attitude.series.map(({ y }) => y[0])).toEqual([0.08, 0.01, 0.1]);
    expect(wholeColumns(outputs([closed, open])).map(({ column }) => column.label)).toEqual(["on schedule", "nose up", "bank", "sideslip"]);
  });
});
