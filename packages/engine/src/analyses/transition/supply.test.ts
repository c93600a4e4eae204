import { describe, expect, it } from "vitest";
import type { AircraftDefinition } from "../../aircraft/index.ts";
import { supplyAlong } from "./supply.ts";

const motor = {
  speedConstant: 16,
  resistance: 0.03,
  noLoadCurrent: 1.5,
  heatCapacity: 350,
  thermalResistance: 0.45,
};

/** What of an aircraft counts here: one drive line and a pack of one cell per block, 4 V with 0.04 Ω. */
const aircraft = {
  driveLines: [{ id: "drive", motors: [{ id: "motor", motor }] }],
  battery: {
    cell: {
      capacity: 3600,
      openCircuitVoltage: [
        { stateOfCharge: 0, value: 4 },
        { stateOfCharge: 1, value: 4 },
      ],
      resistance: 0.04,
      resistanceFactor: [{ stateOfCharge: 0, value: 1 }],
      resistanceActivation: 0,
      capacityFactor: [{ temperature: 298.15, value: 1 }],
      cutoffVoltage: 3,
    },
    seriesCells: 1,
    parallelCells: 1,
    wiringResistance: 0,
  },
} as unknown as AircraftDefinition;

const setting = {
  aircraft,
  blocks: 2,
  airTemperature: 290,
  cells: { temperature: 298.15, capacityFactor: 1, resistanceFactor: 1 },
  stateOfCharge: 0.5,
};

const drawing = (time: number, current: number, electricPower: number) => ({
  time,
  loads: {
    electricPower,
    drives: [{ id: "drive", drives: "main", shaftPower: 0, electricPower, motorRate: 480, motor: { electricPower, current, voltage: 0 } }],
  },
});

describe("motors and cells along a history", () => {
  it("a winding stays where it is in a flight that does not change: I² R + I₀ ω/K through its resistance to the air", () => {
    const moments = supplyAlong(
      setting,
      [0, 10, 20].map((time) => drawing(time, 40, 50)),
    );
    // By hand: 40² · 0.03 + 1.5 · 480/16 = 48 + 45 = 93 W, times 0.45 K/W above 290 K.
    for (const { windings } of moments) expect(windings[0]).toBeCloseTo(290 + 41.85, 9);
  });

  it("and goes to that of another load with its time constant", () => {
    const history = [drawing(0, 40, 50), ...Array.from({ length: 2000 }, (_, i) => drawing((i + 1) * 0.1, 0, 50))];
    const last = supplyAlong(setting, history).at(-1);
    // By hand: 350 · 0.45 = 157.5 s; 45 W alone leave 20.25 K; after 200 s the rest is 21.6 exp(−200/157.5).
    expect(last?.windings[0]).toBeCloseTo(290 + 20.25 + 21.6 * Math.exp(-200 / 157.5), 1);
  });

  it("a block carries its share of the smaller root of P = I (U − I R)", () => {
    const [moment] = supplyAlong(setting, [drawing(0, 0, 42)]);
    // By hand: two blocks of 0.04 Ω make 0.02 Ω; 42 W at 4 V − I 0.02 Ω is I = 11.137 A.
    const current = (4 - Math.sqrt(16 - 4 * 0.02 * 42)) / 0.04;
    expect(moment?.blockCurrent).toBeCloseTo(current / 2, 12);
    expect(moment?.voltage).toBeCloseTo(4 - 0.02 * current, 12);
  });

  it("says by how much a pack that cannot give the power is asked too much", () => {
    const [moment] = supplyAlong(setting, [drawing(0, 0, 300)]);
    // By hand: at 3 V it gives (4 − 3)/0.02 Ω · 3 V = 150 W.
    expect(moment?.blockCurrent).toBeNull();
    expect(moment?.excess).toBeCloseTo(2, 9);
  });
});
