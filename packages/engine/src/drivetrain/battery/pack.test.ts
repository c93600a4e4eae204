import { describe, expect, it } from "vitest";
import { batteryPack, type CellCurves } from "./index.ts";

const points = (...pairs: readonly (readonly [number, number])[]) => pairs.map(([stateOfCharge, value]) => ({ stateOfCharge, value }));

/** The invented cell of the demo: 3.4 A h, 42 mΩ. */
const cell: CellCurves = {
  capacity: 3.4 * 3600,
  openCircuitVoltage: points(
    [0, 2.9],
    [0.05, 3.25],
    [0.1, 3.38],
    [0.2, 3.5],
    [0.3, 3.58],
    [0.4, 3.65],
    [0.5, 3.73],
    [0.6, 3.82],
    [0.7, 3.92],
    [0.8, 4.01],
    [0.9, 4.09],
    [1, 4.19],
  ),
  resistance: 0.042,
  resistanceFactor: points([0.05, 1.6], [0.1, 1.25], [0.2, 1]),
  resistanceActivation: 1800,
  capacityFactor: [
    { temperature: 263.15, value: 0.75 },
    { temperature: 273.15, value: 0.85 },
    { temperature: 278.15, value: 0.92 },
    { temperature: 288.15, value: 0.97 },
    { temperature: 298.15, value: 1 },
  ],
  cutoffVoltage: 3,
};
const newCells = { temperature: 298.15, capacityFactor: 1, resistanceFactor: 1 };
const oneCell = { seriesCells: 1, parallelCells: 1, blocks: 1, wiringResistance: 0 };
const thirteenBlocks = { seriesCells: 14, parallelCells: 1, blocks: 13, wiringResistance: 0.004 };

describe("a pack seen from its terminals", () => {
  it("holds 12.7 W h in one demo cell: the hand sum of eleven trapezoids under the rest voltage, 3.728 V times 3.4 A h", () => {
    const pack = batteryPack(cell, oneCell, newCells);
    const steps = 20_000;
    let mean = 0;
    for (let i = 0; i < steps; i++) mean += pack.openCircuitVoltage((i + 0.5) / steps) / steps;
    const wattHours = (mean * pack.capacity) / 3600;
    expect(wattHours).toBeCloseTo(3.728 * 3.4, 3);
    expect(wattHours).toBeCloseTo(12.7, 1);
  });

  it("adds cells in series to the voltage, blocks in parallel to the charge, and wiring to the resistance", () => {
    const pack = batteryPack(cell, thirteenBlocks, newCells);
    expect(pack.openCircuitVoltage(0.5)).toBeCloseTo(14 * 3.73, 12);
    expect(pack.capacity / 3600).toBeCloseTo(13 * 3.4, 10);
    // 14 · 0.042 = 0.588 Ω a block, a thirteenth of it for thirteen, and 4 mΩ of wire.
    expect(pack.resistance(0.5)).toBeCloseTo(0.588 / 13 + 0.004, 12);
    expect(pack.cutoffVoltage).toBe(42);
  });

  it("has two cells side by side with half the resistance and twice the charge of one", () => {
    const one = batteryPack(cell, oneCell, newCells);
    const two = batteryPack(cell, { ...oneCell, parallelCells: 2 }, newCells);
    expect(two.resistance(0.7)).toBeCloseTo(one.resistance(0.7) / 2, 12);
    expect(two.capacity).toBe(one.capacity * 2);
    expect(two.openCircuitVoltage(0.7)).toBe(one.openCircuitVoltage(0.7));
  });

  it("resists more when nearly empty, and holds its curves level beyond their ends", () => {
    const pack = batteryPack(cell, oneCell, newCells);
    expect(pack.resistance(0.1)).toBeCloseTo(0.042 * 1.25, 12);
    expect(pack.resistance(0.15)).toBeCloseTo(0.042 * 1.125, 12);
    expect(pack.resistance(0)).toBe(pack.resistance(0.05));
    expect(pack.resistance(0.9)).toBe(pack.resistance(0.2));
    expect(pack.openCircuitVoltage(-0.1)).toBe(2.9);
    expect(pack.openCircuitVoltage(1.1)).toBe(4.19);
  });
});

describe("cold and age", () => {
  const at = (temperature: number) => batteryPack(cell, oneCell, { ...newCells, temperature });

  it("raise resistance by exp(B (1/T − 1/298.15 K)): 1.738 at 0 °C by hand, none at 25 °C", () => {
    // 1 800 (1/273.15 − 1/298.15) = 0.55257; exp 0.55257 = 1.7377.
    expect(at(273.15).resistance(0.5) / 0.042).toBeCloseTo(1.7377, 4);
    expect(at(298.15).resistance(0.5)).toBeCloseTo(0.042, 14);
    expect(at(313.15).resistance(0.5)).toBeLessThan(0.042);
  });

  it("take charge as the table says, linear between, level beyond", () => {
    const share = (temperature: number) => at(temperature).capacity / cell.capacity;
    expect(share(273.15)).toBeCloseTo(0.85, 12);
    expect(share(283.15)).toBeCloseTo((0.92 + 0.97) / 2, 12);
    expect(share(250)).toBeCloseTo(0.75, 12);
    expect(share(320)).toBe(1);
  });

  it("act on charge and resistance of old cells, not on rest voltage nor on wiring", () => {
    const fresh = batteryPack(cell, thirteenBlocks, newCells);
    const old = batteryPack(cell, thirteenBlocks, { temperature: 298.15, capacityFactor: 0.8, resistanceFactor: 1.5 });
    expect(old.capacity).toBeCloseTo(0.8 * fresh.capacity, 9);
    expect(old.resistance(0.6)).toBeCloseTo((1.5 * 0.588) / 13 + 0.004, 12);
    expect(old.openCircuitVoltage(0.6)).toBe(fresh.openCircuitVoltage(0.6));
  });
});
