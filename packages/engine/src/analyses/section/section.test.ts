import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Outcome, ProjectView } from "../contract.ts";
import type { TableData } from "../inputs/table-data.ts";
import type { SectionOutputs } from "./schema.ts";
import { section } from "./section.ts";

const degree = Math.PI / 180;
const empty: ProjectView = { documents: {}, rasters: {} };
const context = {
  progress: () => {},
  cancelled: () => false,
  partial: () => {},
  analysis: (): never => {
    throw new Error("nothing else is at hand");
  },
};
const ask = (inputs: unknown, view = empty): Outcome<SectionOutputs> => section.run(view, section.inputs.parse(inputs), context);
const answered = (inputs: unknown, view = empty): SectionOutputs => {
  const outcome = ask(inputs, view);
  if (!outcome.outputs) throw new Error(outcome.problem?.message);
  return outcome.outputs;
};
const kinds = (inputs: unknown) => (ask(inputs).warnings ?? []).map(({ kind }) => kind);

/** A thin section without surprises: straight lift to 10 degrees, then a drop. */
const polar = (shift = 0, more: object = {}) =>
  [-10, -5, 0, 5, 10, 12, 15].map((angle) => ({
    angle: angle * degree,
    liftCoefficient: angle <= 10 ? 0.1 * (angle + 2) + shift : 1.1 + shift - 0.05 * (angle - 10),
    dragCoefficient: 0.01 + 0.0001 * angle * angle,
    ...more,
  }));

describe("the section analysis", () => {
  it("reads a built-in section and finds its stall and best lift over drag", () => {
    const outputs = answered({ section: "naca-0015", reynoldsNumber: 360_000, angles: [0, 6 * degree, 30 * degree] });
    expect(outputs.rows.map(({ liftCoefficient }) => Number(liftCoefficient.toFixed(3)))).toEqual([0, 0.66, 0.855]);
    expect(outputs.rows[1]?.dragCoefficient).toBeCloseTo(0.0126, 4);
    expect(outputs.rows[0]?.momentCoefficient).toBeCloseTo(0, 9);
    expect(outputs.rows[2]?.momentCoefficient).toBeLessThan(-0.05);
    expect(outputs.stallAngle).toBeGreaterThan(10 * degree);
    expect(outputs.stallAngle).toBeLessThan(12 * degree);
    expect(outputs.largestLift).toBeGreaterThan(0.94);
    expect(outputs.largestLift).toBeLessThan(0.96);
    expect(outputs.bestLiftToDrag).toBeGreaterThan(0.824 / 0.0157);
    expect(outputs.bestLiftToDrag).toBeLessThan(1.03 * (0.824 / 0.0157));
    expect(outputs.zeroLiftAngle).toBeCloseTo(0, 6);
  });

  it("adds the drag increment to every kind of section", () => {
    const kinds = [
      "naca-0015",
      { kind: "cambered", thickness: 0.08, camber: 0.04 },
      { kind: "generic", liftSlope: 5.7, cd0: 0.01, stallAngle: 0.2 },
      polar(),
    ];
    for (const one of kinds) {
      const drag = (sectionDragIncrement: number) =>
        answered({ section: one, sectionDragIncrement, angles: [0.03] }).rows[0]?.dragCoefficient ?? 0;
      expect(drag(0.004) - drag(0)).toBeCloseTo(0.004, 12);
    }
  });

  it("scales the lift of attached flow for compressibility and no drag", () => {
    const at = (machNumber: number) => answered({ section: "naca-0015", machNumber, angles: [2 * degree] }).rows[0];
    expect((at(0.6)?.liftCoefficient ?? 0) / (at(0)?.liftCoefficient ?? 1)).toBeCloseTo(1.25, 3);
    expect(at(0.6)?.dragCoefficient).toBe(at(0)?.dragCoefficient);
    expect(kinds({ section: "naca-0015", machNumber: 0.6 })).toEqual([]);
    expect(kinds({ section: "naca-0015", machNumber: 0.8 })).toEqual(["mach-number"]);
  });

  it("holds the edge of the known Reynolds numbers, and says so in outputs and warnings", () => {
    const low = answered({ section: "naca-0015", reynoldsNumber: 2000 });
    expect(low.reynoldsNumber).toBe(10_000);
    expect(kinds({ section: "naca-0015", reynoldsNumber: 2000 })).toEqual(["reynolds-number"]);
    expect(kinds({ section: "naca-0012" })).toEqual(["section-data"]);
  });
});

describe("a section by thickness and camber", () => {
  const at = (camber: number, reynoldsNumber: number, thickness = 0.12) =>
    answered({ section: { kind: "cambered", thickness, camber }, reynoldsNumber });

  it("lifts at zero angle and pitches nose down as its mean line makes it", () => {
    const arched = at(0.04, 1e6);
    // A 4 % mean line: about −4° and −0.1, common practice.
    expect(arched.zeroLiftAngle).toBeGreaterThan(-4.6 * degree);
    expect(arched.zeroLiftAngle).toBeLessThan(-3.6 * degree);
    const moment = arched.rows.find(({ angle }) => Math.abs(angle) < 1e-6)?.momentCoefficient ?? 0;
    expect(moment).toBeGreaterThan(-0.13);
    expect(moment).toBeLessThan(-0.08);
    expect(at(0, 1e6).zeroLiftAngle).toBeCloseTo(0, 6);
  });

  it("loses lift and gains drag as the Reynolds number falls, all the way", () => {
    const numbers = [2e6, 1e6, 5e5, 2e5, 1e5, 5e4, 2e4].map((reynolds) => at(0.04, reynolds));
    for (const [i, lower] of numbers.entries()) {
      const higher = numbers[i - 1];
      if (!higher) continue;
      expect(lower.leastDrag).toBeGreaterThan(higher.leastDrag ?? 0);
      expect(lower.largestLift).toBeLessThan(higher.largestLift ?? 0);
      expect(lower.bestLiftToDrag).toBeLessThan(higher.bestLiftToDrag ?? 0);
    }
  });

  it("upside down is the same section mirrored, without camber", () => {
    const angles = [3, 9, 20, 80, 150, 179].map((angle) => angle * degree);
    const both = (sign: number) =>
      answered({ section: { kind: "cambered", thickness: 0.1 }, angles: angles.map((angle) => sign * angle) }).rows;
    const [up, down] = [both(1), both(-1)];
    for (const [i, row] of up.entries()) {
      expect(down[i]?.liftCoefficient).toBeCloseTo(-row.liftCoefficient, 3);
      expect(down[i]?.dragCoefficient).toBeCloseTo(row.dragCoefficient, 3);
      expect(down[i]?.momentCoefficient).toBeCloseTo(-row.momentCoefficient, 3);
    }
  });

  it("stalls gently when thin and sharply when thick", () => {
    const drop = (thickness: number) => {
      const { largestLift, stallAngle } = at(0, 5e5, thickness);
      const after = answered({ section: { kind: "cambered", thickness }, reynoldsNumber: 5e5, angles: [(stallAngle ?? 0) + 3 * degree] });
      return (largestLift ?? 0) - (after.rows[0]?.liftCoefficient ?? 0);
    };
    expect(drop(0.05)).toBeLessThan(0.1);
    expect(drop(0.12)).toBeGreaterThan(0.2);
  });
});

describe("a section by a table", () => {
  it("passes through its rows, and completes the circle with a warning", () => {
    const angles = [-10, 0, 10, 15].map((angle) => angle * degree);
    const outputs = answered({ section: polar(), angles });
    expect(outputs.rows.map((row) => Number(row.liftCoefficient.toFixed(2)))).toEqual([-0.8, 0.2, 1.2, 0.85]);
    expect(ask({ section: polar() }).warnings?.map(({ message }) => message)).toEqual([
      "Section the rows given: angles beyond -10.0 to 15.0 degrees are not in the table; there the flow is taken as separated, as measured on a 15 % section.",
      "Section the rows given: the table has no moments; none is assumed while the flow is attached, as of a section without camber.",
    ]);
    const around = answered({ section: polar(), angles: [90 * degree, -90 * degree] }).rows;
    expect(around[0]?.dragCoefficient).toBeCloseTo(1.8, 2);
    expect(around[1]?.dragCoefficient).toBeCloseTo(1.8, 2);
  });

  it("has no jump anywhere on the circle", () => {
    const angles = Array.from({ length: 2000 }, (_, i) => -Math.PI + (i * 2 * Math.PI) / 1999);
    const { rows } = answered({ section: polar(0, { momentCoefficient: -0.05 }), angles });
    for (const [i, row] of rows.entries()) {
      const before = rows[i - 1] ?? rows[rows.length - 1];
      if (!before) continue;
      expect(Math.abs(row.liftCoefficient - before.liftCoefficient)).toBeLessThan(0.04);
      expect(Math.abs(row.dragCoefficient - before.dragCoefficient)).toBeLessThan(0.02);
      expect(Math.abs(row.momentCoefficient - before.momentCoefficient)).toBeLessThan(0.02);
    }
  });

  it("runs straight over the logarithm of the Reynolds number, and polars need not share their angles", () => {
    const second = polar(0.2, { reynoldsNumber: 4e5 }).slice(1);
    const rows = [...polar(0, { reynoldsNumber: 1e5 }), ...second];
    const lift = (reynoldsNumber: number) => answered({ section: rows, reynoldsNumber, angles: [0] }).rows[0]?.liftCoefficient ?? 0;
    expect(lift(2e5) - lift(1e5)).toBeCloseTo(0.1, 3);
    expect(lift(4e5) - lift(1e5)).toBeCloseTo(0.2, 3);
    expect(lift(9e9 / 1000)).toBe(lift(4e5));
    expect(kinds({ section: rows, reynoldsNumber: 9e6 })).toContain("reynolds-number");
  });

  it("is met at its own Mach numbers, runs straight between them and is scaled beyond", () => {
    const rows = [...polar(0, { machNumber: 0.3 }), ...polar(0.2, { machNumber: 0.5 })];
    const lift = (machNumber: number) => answered({ section: rows, machNumber, angles: [0] }).rows[0]?.liftCoefficient ?? 0;
    expect(lift(0.3)).toBeCloseTo(0.2, 4);
    expect(lift(0.5)).toBeCloseTo(0.4, 4);
    expect(lift(0.4)).toBeCloseTo(0.3, 4);
    expect(lift(0)).toBeCloseTo(0.2 * Math.sqrt(1 - 0.09), 3);
    expect(lift(0.7)).toBeCloseTo((0.4 * Math.sqrt(0.75)) / Math.sqrt(0.51), 3);
    expect(kinds({ section: rows, machNumber: 0.7 })).toContain("mach-number");
    expect(kinds({ section: rows, machNumber: 0.4 })).not.toContain("mach-number");
  });

  it("whose Mach numbers have different Reynolds numbers says so, and reads what there is", () => {
    const at = (machNumber: number, reynoldsNumber: number, shift: number) => polar(shift, { machNumber, reynoldsNumber });
    const rows = [...at(0.2, 1e5, 0), ...at(0.2, 4e5, 0.2), ...at(0.4, 2e5, 0.4)];
    expect((ask({ section: rows }).warnings ?? []).map(({ message }) => message).join()).toContain(
      "the Reynolds numbers at Mach 0.2 (100000, 400000) and at Mach 0.4 (200000) are not the same",
    );
    const lift = answered({ section: rows, machNumber: 0.3, reynoldsNumber: 2e5, angles: [0] }).rows[0]?.liftCoefficient;
    expect(lift).toBeCloseTo(0.2 + (0.1 + 0.4) / 2, 2);
  });

  it("that begins at zero without lift is half of a symmetric section, and says so", () => {
    const half = [0, 5, 10, 14, 20].map((angle) => ({
      angle: angle * degree,
      liftCoefficient: angle <= 10 ? 0.1 * angle : 0.7,
      dragCoefficient: 0.01,
    }));
    const { rows } = answered({ section: half, angles: [-5 * degree, 5 * degree] });
    expect(rows[0]?.liftCoefficient).toBeCloseTo(-(rows[1]?.liftCoefficient ?? 0), 3);
    expect(ask({ section: half }).warnings?.[0]?.message).toContain("taken as symmetric");
  });

  it("without a stall in it names that, and a wide gap between angles", () => {
    const short = polar().slice(0, 4);
    expect(
      ask({ section: short })
        .warnings?.map(({ message }) => message)
        .join(),
    ).toContain("lift still grows at the last angle");
    const gap = polar().filter(({ angle }) => Math.abs(angle) > 6 * degree || angle === 0);
    expect(
      ask({ section: [...gap.slice(0, 1), ...gap.slice(2)] })
        .warnings?.map(({ message }) => message)
        .join(),
    ).toContain("nothing between -10.0 and 10.0");
  });

  it("is refused with the place where it is wrong", () => {
    const message = (section: unknown) => ask({ section }).problem?.message;
    const twice = [...polar(), polar()[6]];
    expect(message(twice)).toMatch(/^row 8: angle 15.000 degrees of the table stands already at row 7/u);
    expect(message([...polar()].reverse())).toMatch(/^row 2: angle 12.000 degrees of the table follows 15.000/u);
    expect(message([...polar(0, { reynoldsNumber: 1e5 }), ...polar()])).toMatch(/^row 8: reynoldsNumber is missing here/u);
    expect(message([...polar(0, { reynoldsNumber: 1e5 }), ...polar(0, { reynoldsNumber: 2e5 }).slice(0, 2)])).toMatch(
      /2 angles; at least 3/u,
    );
  });

  it("may stand in a file, under the names of the trade", () => {
    const column = (name: string, unit: string | null, kinds: TableData["columns"][number]["kinds"]) => ({
      name,
      unit,
      kinds,
      offset: 0,
      line: 1,
      column: 1,
    });
    const columns = [
      column("alpha", "deg", ["angle", "latitude"]),
      column("Re", null, ["dimensionless"]),
      column("Cl", null, ["dimensionless"]),
      column("C_d", null, ["dimensionless"]),
    ];
    const rows = polar().map((row) => [row.angle, 2e5, row.liftCoefficient, row.dragCoefficient]);
    const data: TableData = { columns, rows, places: rows.map((_, i) => ({ line: i + 2, columns: [1, 5, 9, 13] })) };
    const view: ProjectView = { documents: { "p.csv": { path: "p.csv", kind: "table", data, written: {}, hash: "h" } }, rasters: {} };
    const inputs = section.inputs.parse({ section: { file: "p.csv" }, angles: [0] });
    expect(section.needs?.(inputs, empty)).toEqual([{ kind: "document", path: "p.csv" }]);
    expect(answered({ section: { file: "p.csv" }, angles: [0] }, view).rows[0]?.liftCoefficient).toBeCloseTo(0.2, 4);
    expect(ask({ section: { file: "q.csv" } }, view).problem?.kind).toBe("table-missing");
  });

  it("whatever it holds within the bounds of a row, is answered with finite numbers or refused with words", () => {
    const value = (low: number, high: number) => fc.double({ min: low, max: high, noNaN: true });
    const angles = fc
      .uniqueArray(fc.integer({ min: -1800, max: 1800 }), { minLength: 3, maxLength: 9 })
      .map((all) => all.sort((a, b) => a - b));
    const one = fc.record({ reynoldsNumber: value(100, 1e9), machNumber: fc.constantFrom(0, 0.3, 0.95), angles });
    const tables = fc.array(one, { minLength: 1, maxLength: 4 }).chain((polars) => {
      const rows = polars.flatMap(({ angles: all, ...at }) => all.map((angle) => ({ ...at, angle: (angle / 10) * degree })));
      const coefficients = fc.record({ liftCoefficient: value(-5, 5), dragCoefficient: value(1e-6, 5), momentCoefficient: value(-2, 2) });
      return fc
        .array(coefficients, { minLength: rows.length, maxLength: rows.length })
        .map((all) => rows.map((row, i) => ({ ...row, ...all[i] })));
    });
    const questions = fc.record({ section: tables, reynoldsNumber: value(1000, 1e8), machNumber: value(0, 0.9) });
    let solved = 0;
    fc.assert(
      fc.property(questions, (inputs) => {
        const read = section.inputs.parse(inputs);
        const outcome = section.run(empty, read, context);
        if (!outcome.outputs) return expect(outcome.problem?.message).not.toBe("");
        solved++;
        const told = JSON.stringify(
          [outcome, section.figures(outcome.outputs, read), section.limits(outcome.outputs, read)],
          (_, item: unknown) => (typeof item === "number" && !Number.isFinite(item) ? "not finite" : item),
        );
        expect(told).not.toContain("not finite");
        expect(section.answer(outcome.outputs, read).brief.length).toBeLessThanOrEqual(40);
      }),
      { seed: 20_240_117, numRuns: 25 },
    );
    expect(solved).toBeGreaterThan(8);
  });
});
