import { describe, expect, it } from "vitest";
import { flightRegions } from "./regions.ts";
import type { EnvelopeBorder, EnvelopeOutputs, EnvelopeRow } from "./schema.ts";

const place = { blocks: 13, temperatureOffset: 0, mode: "clutch-closed" } as const;
const speeds = [0, 10, 20, 30, 40];

/** Rows of one altitude: a plus where it flies; borders half way to the neighbours that do not. */
function altitudeRows(altitude: number, picture: string, limits: readonly string[]) {
  const flies = (i: number) => picture[i] === "+";
  const rows = speeds.map((airspeed, i) => ({ ...place, altitude, airspeed, state: flies(i) ? "flies" : "forbidden" }));
  const names = [...limits];
  const border = (side: EnvelopeBorder["side"], airspeed: number): EnvelopeBorder => ({
    ...place,
    altitude,
    side,
    airspeed,
    limit: names.shift() ?? "none",
    family: "power",
  });
  const borders = speeds.flatMap((airspeed, i) => [
    ...(flies(i) && i > 0 && !flies(i - 1) ? [border("slowest", airspeed - 5)] : []),
    ...(flies(i) && i < 4 && !flies(i + 1) ? [border("fastest", airspeed + 5)] : []),
  ]);
  return { rows: rows as unknown as EnvelopeRow[], borders };
}

function drawn(lines: readonly (readonly [picture: string, ...limits: string[]])[]) {
  const altitudes = lines.map((_, i) => i * 1000);
  const all = lines.map(([picture, ...limits], i) => altitudeRows(i * 1000, picture, limits));
  const outputs = { altitudes, rows: all.flatMap(({ rows }) => rows), borders: all.flatMap(({ borders }) => borders) };
  return flightRegions(outputs as unknown as EnvelopeOutputs, 13, 0, "clutch-closed");
}

describe("regions of flight over speed and altitude", () => {
  it("go up the fast side and down the slow one, with the border where the search put it", () => {
    const [region, ...others] = drawn([
      ["++++-", "left motor voltage"],
      ["+++--", "right motor voltage"],
    ]);
    expect(others).toEqual([]);
    expect(region?.x).toEqual([35, 25, 0, 0]);
    expect(region?.y).toEqual([0, 1000, 1000, 0]);
    // The slow side is where the speeds looked at end: no limit, no border. Twins on both sides are one.
    expect(region?.borders).toEqual([{ name: "motor voltage", x: [35, 25], y: [0, 1000], forbidden: "right", family: "power" }]);
  });

  it("name each limit along its part of a side, meeting half way where one takes over", () => {
    const [region] = drawn([
      ["-+++-", "stall", "voltage"],
      ["-+++-", "flapping", "voltage"],
      ["--++-", "flapping", "voltage"],
    ]);
    expect(region?.borders.map(({ name, x, forbidden }) => [name, x, forbidden])).toEqual([
      ["stall", [5, 5], "left"],
      ["flapping", [5, 5, 15], "left"],
      ["voltage", [35, 35, 35], "right"],
    ]);
  });

  it("part where no speed is shared, and end where nothing flies", () => {
    const regions = drawn([["++-++", "gap", "gap"], ["++---", "voltage"], ["-----"]]);
    expect(regions.map(({ y }) => Math.max(...y))).toEqual([1000, 0]);
  });
});
