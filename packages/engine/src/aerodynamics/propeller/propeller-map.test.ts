import { describe, expect, it } from "vitest";
import {
  type MomentumPropeller,
  measuredPropeller,
  momentumSource,
  type PropellerMapRow,
  propellerMap,
  propellerState,
  rotationRateFor,
} from "./index.ts";

const air = { density: 1.2, speedOfSound: 340, dynamicViscosity: 1.8e-5 };
const place = (index: number): string => `row ${index + 1}`;
const law = (j: number, level: number) => ({ ct: (0.12 - 0.1 * j - 0.05 * j * j) * (level / 500) ** 0.1, cp: 0.05 - 0.06 * j * j });
const rows = (levels: readonly number[], ratios: readonly number[]): PropellerMapRow[] =>
  levels.flatMap((level) => ratios.map((advanceRatio) => ({ advanceRatio, level, ...law(advanceRatio, level) })));

function source(given: readonly PropellerMapRow[]) {
  const read = propellerMap(given, place);
  if (read.slip !== undefined) throw new Error(read.slip);
  return measuredPropeller({
    diameter: 0.3,
    map: read.map,
    levels: given[0]?.level === undefined ? "none" : "rotationRate",
    referenceChord: undefined,
  });
}

function readAt(given: readonly PropellerMapRow[], advanceRatio: number, rotationRate: number) {
  const n = rotationRate / (2 * Math.PI);
  const loads = source(given).loadsAt({ rotationRate, airspeed: advanceRatio * n * 0.3, inflowAngle: 0, air });
  if (loads.kind !== "solved") return loads.reason;
  const scale = air.density * n ** 2 * 0.3 ** 4;
  return { ct: loads.thrust / scale, cp: (loads.torque * 2 * Math.PI) / (scale * 0.3), extrapolated: loads.extrapolated };
}

describe("a measured propeller", () => {
  const measured = rows([400, 600], [0, 0.2, 0.4, 0.6]);

  it("gives back its rows, whatever their order", () => {
    for (const row of measured) {
      const read = readAt([...measured].reverse(), row.advanceRatio, row.level ?? 0);
      if (typeof read === "string") throw new Error(read);
      expect(read.ct).toBeCloseTo(row.ct, 12);
      expect(read.cp).toBeCloseTo(row.cp, 12);
      expect(read.extrapolated).toEqual([]);
    }
  });

  it("is exact between rows of a parabola, and within 1 % between two rates of a power law", () => {
    const between = readAt(measured, 0.33, 400);
    const rates = readAt(measured, 0.3, 490);
    if (typeof between === "string" || typeof rates === "string") throw new Error("nothing read");
    expect(between.ct).toBeCloseTo(law(0.33, 400).ct, 12);
    expect(rates.ct / law(0.3, 490).ct).toBeCloseTo(1, 2);
  });

  it("names what it continues, and ends a quarter of the range beyond its last row", () => {
    const beyond = readAt(measured, 0.7, 500);
    if (typeof beyond === "string") throw new Error(beyond);
    expect(beyond.extrapolated).toEqual(["advance ratio outside the table's 0 to 0.6"]);
    expect(readAt(measured, 0.76, 500)).toBe("the table ends at advance ratio 0.6");
    const fast = readAt(measured, 0.2, 900);
    if (typeof fast === "string") throw new Error(fast);
    expect(fast.extrapolated).toEqual(["above the highest rate or Reynolds number of the table"]);
    expect(fast.ct).toBeCloseTo(law(0.2, 600).ct, 12);
  });

  it("takes what was measured at rest only as a shift that fades along the curve", () => {
    const mixed = [...rows([600], [0.1, 0.3, 0.5]), ...rows([300, 450, 600], [0])];
    const rest = readAt(mixed, 0, 450);
    const moving = readAt(mixed, 0.3, 600);
    const shifted = readAt(mixed, 0.25, 300);
    if (typeof rest === "string" || typeof moving === "string" || typeof shifted === "string") throw new Error("nothing read");
    expect(rest.ct).toBeCloseTo(law(0, 450).ct, 12);
    expect(moving.ct).toBeCloseTo(law(0.3, 600).ct, 12);
    expect(shifted.ct).toBeCloseTo(law(0.25, 600).ct + 0.5 * (law(0, 300).ct - law(0, 600).ct), 3);
  });

  it("says where rows contradict one another or are too few", () => {
    const slip = (given: readonly PropellerMapRow[]) => propellerMap(given, place).slip;
    expect(slip([...rows([400], [0, 0.2]), ...rows([400], [0.2])])).toBe("row 3: advance ratio 0.2 stands already at row 2");
    expect(slip([...rows([400], [0, 0.2]), ...rows([800], [0.3])])).toContain("row 3: the only row at its level");
    expect(slip([...rows([400], [0, 0.2]), { advanceRatio: 0.1, ct: 0.1, cp: 0.1 }])).toContain("row 3: the level");
    expect(propellerMap(rows([400], [0, 0.5]), place).slip).toBeUndefined();
    expect(source(rows([400], [0, 0.2])).loadsAt({ rotationRate: -400, airspeed: 0, inflowAngle: 0, air }).kind).toBe("none");
    expect(source(rows([400], [0, 0.2])).loadsAt({ rotationRate: 400, airspeed: 3, inflowAngle: 0.3, air }).kind).toBe("none");
  });

  it("warns of a wide gap", () => {
    const read = propellerMap(rows([400], [0, 0.1, 0.5]), place);
    expect(read.slip === undefined && read.remarks).toEqual(["nothing between advance ratio 0.1 and 0.5; a smooth curve runs across"]);
  });
});

describe("the momentum law of an aircraft as a propeller", () => {
  const propeller: MomentumPropeller = {
    diameter: 0.48,
    inducedFactor: 1.2,
    profileEfficiency: 0.8,
    reverseFigureOfMerit: 0.38,
    thrustCoefficient: 0.095,
    zeroThrustAdvanceRatio: 1.05,
    reverseThrustCoefficient: 0.06,
  };

  it("takes the power that flights are computed with", () => {
    const loads = momentumSource(propeller).loadsAt({ rotationRate: 500, airspeed: 12, inflowAngle: 0, air });
    if (loads.kind !== "solved") throw new Error(loads.reason);
    const state = propellerState(propeller, { density: air.density, airspeed: 12 }, loads.thrust);
    expect(state.rotationRate).toBeCloseTo(500, 9);
    expect(loads.torque * 500).toBeCloseTo(state.shaftPower, 9);
  });

  it("answers backwards, and not where it knows nothing", () => {
    const at = (rotationRate: number, airspeed: number) =>
      momentumSource(propeller).loadsAt({ rotationRate, airspeed, inflowAngle: 0, air });
    const back = at(-400, 5);
    expect(back.kind === "solved" && back.thrust < 0 && back.torque < 0).toBe(true);
    expect(at(100, 30)).toEqual({ kind: "none", reason: "the momentum law ends where thrust vanishes" });
    expect(at(0, 30).kind).toBe("none");
    const free = rotationRateFor(
      momentumSource(propeller),
      { kind: "airspeed", airspeed: 12 },
      { inflowAngle: 0, air },
      { kind: "torque", value: 0 },
    );
    expect(free).toEqual({ kind: "none", reason: "the momentum law ends where thrust vanishes" });
  });
});
