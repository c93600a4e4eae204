import { describe, expect, it } from "vitest";
import {
  builtInCell,
  type CellDefinition,
  holdingTime,
  preparedPack,
  type RunLimits,
  type RunRecord,
  runPack,
  sustainedPower,
} from "./index.ts";

/** Flat rest voltage, one resistance, no heat to speak of: everything can be worked out by hand. */
const { diffusion: _, ...reference } = builtInCell("reference-nca");
const plain: CellDefinition = {
  ...reference,
  statesOfCharge: [0, 1],
  openCircuitVoltage: [[3, 4]],
  ohmicResistance: [[0.1, 0.1]],
  ohmicActivation: 0,
  pairs: [],
};
const noLimits: RunLimits = {
  continuousCurrent: null,
  shortTimeCurrent: null,
  shortTime: 0,
  temperatureMinimum: null,
  temperatureMaximum: null,
  lowestStateOfCharge: null,
};
const fresh = { capacityFactor: 1, resistanceFactor: 1, stateOfCharge: 1, temperature: 298.15 };
const pack = {
  cell: plain,
  series: 1,
  parallel: 1,
  blocks: [fresh],
  isolatorResistance: 0,
  wiringResistance: 0,
  thermalResistance: 20,
  bayTemperature: 298.15,
  cutoffVoltage: 2.5,
};

type Stage = readonly [kind: "power" | "current", value: number, duration: number];

function run(stages: readonly Stage[], limits: Partial<RunLimits>, endAtFirstLimit = false, timeStep = 7): RunRecord {
  const { model, start } = preparedPack(pack);
  return runPack({
    model,
    start,
    profile: { stages: stages.map(([kind, value, duration]) => ({ kind, value, duration })), repeats: 1 },
    timeStep,
    rowInterval: timeStep,
    longest: 1e6,
    limits: { ...noLimits, ...limits },
    endAtFirstLimit,
    mostSteps: 1e6,
    mostRowValues: 1e8,
  });
}

describe("limits along a run", () => {
  it("a current above the continuous one may flow for the short time, and no longer", () => {
    const limits = { continuousCurrent: 2, shortTimeCurrent: 6, shortTime: 10 };
    expect(
      run(
        [
          ["current", 5, 9.9],
          ["current", 1, 5],
          ["current", 5, 9.9],
        ],
        limits,
      ).watch.passed,
    ).toEqual({});
    expect(
      run(
        [
          ["current", 1, 20],
          ["current", 5, 11],
        ],
        limits,
      ).watch.passed,
    ).toEqual({ "continuous current": 30 });
    expect(
      run(
        [
          ["current", 1, 20],
          ["current", 7, 5],
        ],
        limits,
      ).watch.passed,
    ).toEqual({ "short-time current": 20 });
  });

  it("an hour's charge is counted to the instant, inside a step", () => {
    const { watch } = run([["current", 2, 4000]], { lowestStateOfCharge: 0.5 });
    expect(watch.passed["lowest state of charge"]).toBeCloseTo((0.5 * plain.capacity) / 2, 5);
  });

  it("a current that grows under a power passes the limit when the voltage has fallen so far", () => {
    const { watch } = run([["power", 9, 4000]], { shortTimeCurrent: 2.6 });
    const charge = 9 / 2.6 + 2.6 * 0.1 - 3;
    const passed = watch.passed["short-time current"] ?? 0;
    const before = run([["power", 9, passed]], {}).rows;
    expect(before[before.length - 6]).toBeCloseTo(charge, 6);
  });

  it("a block that warms passes its limit when the exponential says, and one that begins too cold at once", () => {
    const warm = run([["current", 3, 3000]], { temperatureMaximum: 305 });
    const capacity = plain.mass * plain.specificHeat;
    const time = -20 * capacity * Math.log(1 - (305 - 298.15) / (20 * 0.9));
    expect(warm.watch.passed["highest temperature"]).toBeCloseTo(time, 5);
    expect(run([["current", 3, 100]], { temperatureMinimum: 300 }).watch.passed["lowest temperature"]).toBe(0);
  });

  it("ends the run at the first one where that is asked for, at its very instant", () => {
    const limits = { lowestStateOfCharge: 0.5, temperatureMaximum: 330 };
    const { end, duration, rows, width } = run([["current", 2, 4000]], limits, true);
    expect(end).toBe("lowest state of charge");
    expect(duration).toBeCloseTo((0.5 * plain.capacity) / 2, 5);
    expect(rows[rows.length - width + 3]).toBeCloseTo(0.5, 9);
  });
});

describe("what a pack can still give", () => {
  it("is refused at the stage that asks too much, and the run ends in the state before", () => {
    const record = run(
      [
        ["power", 5, 60],
        ["power", 60, 60],
      ],
      {},
    );
    expect(record).toMatchObject({ end: "cut-off voltage", duration: 60, lastLoad: { value: 60, since: 60 } });
    const charge = record.stepper.state[0] ?? 0;
    expect(record.stepper.scratch.largestPower).toBeCloseTo((2.5 * (3 + charge - 2.5)) / 0.1, 6);
    expect(record.rows[record.rows.length - record.width + 1]).toBeGreaterThan(3.8);
  });

  it("names the resistance where that forbids more before the cut-off voltage does", () => {
    const { model, start } = preparedPack({ ...pack, cutoffVoltage: 1 });
    const plan = { model, start, profile: { stages: [{ kind: "power" as const, value: 41, duration: 10 }], repeats: 1 } };
    const record = runPack({
      ...plan,
      timeStep: 1,
      rowInterval: 1,
      longest: 100,
      limits: noLimits,
      endAtFirstLimit: false,
      mostSteps: 100,
      mostRowValues: 1e4,
    });
    expect(record.end).toBe("internal resistance");
    expect(record.stepper.scratch.largestPower).toBeCloseTo(16 / 0.4, 9);
  });

  it("for longer is less, holds for just so long, and nothing is left of an empty block", () => {
    const { model, start } = preparedPack({ ...pack, cell: builtInCell("reference-nca") });
    const durations = [1, 10, 60, 300];
    const powers = durations.map((duration) => sustainedPower(model, start, duration));
    expect([...powers].sort((a, b) => b - a)).toEqual(powers);
    for (const [index, held] of durations.entries()) {
      expect(holdingTime(model, start, true, powers[index] ?? 0, 1e4)).toBeGreaterThanOrEqual(held);
      expect(holdingTime(model, start, true, 1.001 * (powers[index] ?? 0), 1e4)).toBeLessThan(held);
    }
    const empty = Float64Array.from(start);
    empty[0] = -0.01;
    expect(sustainedPower(model, empty, 10)).toBe(0);
  });
});
