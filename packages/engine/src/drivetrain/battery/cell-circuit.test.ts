import { describe, expect, it } from "vitest";
import { type BlockState, type CellDefinition, rowHead } from "./index.ts";
import { current, fresh, last, pack, power, reference, run } from "./sample-pack.ts";

/** Resistances of a cell without charge or temperature in them. */
const plain = {
  ohmicResistance: [[0.03, 0.03]],
  ohmicActivation: 0,
  pairs: [
    { resistance: [[0.02, 0.02]], timeConstant: [[4, 4]], activation: 0 },
    { resistance: [[0.03, 0.03]], timeConstant: [[50, 50]], activation: 0 },
  ],
};

describe("the circuit of a cell", () => {
  const flat: CellDefinition = {
    ...reference,
    statesOfCharge: [0, 1],
    openCircuitVoltage: [[3.7, 3.7]],
    ...plain,
    diffusion: { time: 200, activation: 0 },
  };
  const alone = { cell: flat, series: 1, isolatorResistance: 0, wiringResistance: 0 };

  it("relaxes as its two exponentials say, at whatever step", () => {
    for (const timeStep of [1, 20]) {
      const { rows, width } = run(pack([fresh], alone), { stages: [current(2, 200), current(0, 200)], timeStep });
      for (let at = 0; at < rows.length; at += width) {
        const time = rows[at] ?? 0;
        const rest = Math.max(0, time - 200);
        const loaded = Math.min(time, 200);
        const pair = (ohm: number, tau: number) => 2 * ohm * (1 - Math.exp(-loaded / tau)) * Math.exp(-rest / tau);
        const expected = 3.7 - (time < 200 ? 2 * 0.03 : 0) - pair(0.02, 4) - pair(0.03, 50);
        expect(rows[at + 1]).toBeCloseTo(expected, 10);
      }
    }
  });

  it("warms to heat times thermal resistance, with its own time constant", () => {
    const cell: CellDefinition = { ...flat, pairs: [] };
    const record = run(pack([fresh], { ...alone, cell, thermalResistance: 20 }), { stages: [current(2, 900)], timeStep: 10 });
    const heat = 4 * 0.03;
    const capacity = cell.mass * cell.specificHeat;
    expect(last(record, rowHead + 2) - 298.15).toBeCloseTo(20 * heat * (1 - Math.exp(-900 / (20 * capacity))), 9);
  });

  it("agrees with the plain discharge where there is neither relaxation nor heat", () => {
    const cell: CellDefinition = { ...reference, statesOfCharge: [0, 1], openCircuitVoltage: [[3, 4]], ...plain, pairs: [] };
    const { diffusion: _, ...still } = cell;
    const record = run(pack([fresh], { ...alone, cell: still, cutoffVoltage: 3.3 }), { stages: [power(8)], timeStep: 1 });
    let charge = 1;
    let seconds = 0;
    for (;;) {
      const rest = 3 + charge;
      const voltage = (rest + Math.sqrt(rest * rest - 4 * 0.03 * 8)) / 2;
      if (voltage < 3.3) break;
      const half = charge - (8 / voltage / 2 / still.capacity) * 0.1;
      charge -= ((8 / ((3 + half + Math.sqrt((3 + half) ** 2 - 4 * 0.03 * 8)) / 2)) * 0.1) / still.capacity;
      seconds += 0.1;
    }
    expect(Math.abs(record.duration - seconds)).toBeLessThan(0.2);
  });

  it("delivers less, never more, as it ages or gets colder", () => {
    const energy = (change: Partial<BlockState>) =>
      run(pack([{ ...fresh, ...change }], { bayTemperature: change.temperature ?? 298.15 }), { stages: [power(120)], timeStep: 10 })
        .energyOut;
    const ages = [1, 1.3, 1.7, 2.2].map((resistanceFactor) => energy({ resistanceFactor }));
    const losses = [1, 0.95, 0.85, 0.7].map((capacityFactor) => energy({ capacityFactor }));
    const colds = [308, 288, 268, 253].map((temperature) => energy({ temperature }));
    for (const falling of [ages, losses, colds]) expect([...falling].sort((a, b) => b - a)).toEqual(falling);
  });

  it("dips in the cold and rises again by its own heat, and does not when it is held at one temperature", () => {
    const cold = { ...fresh, temperature: 243.15 };
    const single = { series: 1, isolatorResistance: 0, wiringResistance: 0, bayTemperature: 243.15 };
    const rise = (thermalResistance: number) => {
      const { rows, width } = run(pack([{ ...cold, stateOfCharge: 0.9 }], { ...single, thermalResistance }), {
        stages: [current(4, 900)],
        timeStep: 5,
      });
      const voltages = Array.from({ length: rows.length / width }, (_, i) => rows[i * width + 1] ?? 0);
      const lowest = voltages.reduce((best, voltage, i) => (i < 100 && voltage < (voltages[best] ?? 0) ? i : best), 0);
      return Math.max(...voltages.slice(lowest)) - (voltages[lowest] ?? 0);
    };
    expect(rise(22)).toBeGreaterThan(0.03);
    expect(rise(0.01)).toBeLessThan(1e-6);
  });
});
