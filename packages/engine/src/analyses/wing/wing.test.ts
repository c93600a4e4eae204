import { describe, expect, it } from "vitest";
import type { Outcome, ProjectView } from "../contract.ts";
import type { WingOutputs } from "./output-schema.ts";
import { wing } from "./wing.ts";

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
const ask = (inputs: unknown): Outcome<WingOutputs> => wing.run(empty, wing.inputs.parse(inputs), context);
const answered = (inputs: unknown): WingOutputs => {
  const outcome = ask(inputs);
  if (!outcome.outputs) throw new Error(outcome.problem?.message);
  return outcome.outputs;
};
const kinds = (inputs: unknown) => (ask(inputs).warnings ?? []).map(({ kind }) => kind);

const shape = { area: 0.5, span: 2, taper: 0.6 };
const parabola = { kind: "oswald", efficiency: 0.8, zeroLiftDrag: 0.02 } as const;
const measured = { wing: { ...shape, section: "naca-0012" }, reynoldsNumber: 400_000 };

describe("a wing by a parabolic polar", () => {
  it("has its best glide where induced drag is the drag without lift, and least sink at three times that", () => {
    const outputs = answered({ wing: shape, method: parabola, mass: 5, air: { density: 1.225 } });
    const bestLift = Math.sqrt(Math.PI * 8 * 0.8 * 0.02);
    expect(outputs.bestGlideLift).toBeCloseTo(bestLift, 4);
    expect(outputs.bestGlideRatio).toBeCloseTo(bestLift / 0.04, 6);
    expect(outputs.bestPowerFactorLift).toBeCloseTo(Math.sqrt(3) * bestLift, 3);
    expect(outputs.bestPowerFactor).toBeCloseTo((Math.sqrt(3) * bestLift) ** 1.5 / 0.08, 5);
    const force = Math.hypot(bestLift, 0.04);
    expect(outputs.bestGlideSpeed).toBeCloseTo(Math.sqrt((2 * 5 * 9.80665) / (1.225 * 0.5 * force)), 3);
    expect(outputs.bestGlideAngle).toBeCloseTo(Math.atan(0.04 / bestLift), 6);
  });

  it("counts drag of everything else in, and speeds with the root of mass and the inverse root of density", () => {
    const at = (mass: number, density: number) =>
      answered({ wing: shape, method: { ...parabola, maximumLiftCoefficient: 2.5 }, mass, air: { density }, parasiteDragArea: 0.01 });
    const [one, heavy, thin] = [at(5, 1.2), at(20, 1.2), at(5, 0.3)];
    expect(one.zeroLiftDrag).toBeCloseTo(0.04, 9);
    for (const other of [heavy, thin]) {
      expect((other.bestGlideSpeed ?? 0) / (one.bestGlideSpeed ?? 1)).toBeCloseTo(2, 6);
      expect((other.minimumSink ?? 0) / (one.minimumSink ?? 1)).toBeCloseTo(2, 6);
      expect((other.stallSpeed ?? 0) / (one.stallSpeed ?? 1)).toBeCloseTo(2, 4);
      expect(other.bestGlideRatio).toBeCloseTo(one.bestGlideRatio ?? 0, 9);
    }
  });

  it("keeps a largest lift that is given: rows stall there, and no glide lies beyond it", () => {
    const outputs = answered({ wing: shape, method: { ...parabola, maximumLiftCoefficient: 0.6 }, mass: 5 });
    expect(outputs.largestLift).toBeCloseTo(0.6, 3);
    expect(outputs.bestGlideLift).toBeLessThanOrEqual(0.6001);
    expect(outputs.minimumSinkSpeed ?? 0).toBeGreaterThanOrEqual((outputs.stallSpeed ?? 1) * 0.99);
    expect(Math.max(...outputs.rows.map((row) => row.liftCoefficient))).toBeLessThanOrEqual(0.6001);
  });

  it("takes what is not given from common practice and from the section, and says so", () => {
    const [bare, stated] = [{ kind: "oswald" }, { kind: "oswald", efficiency: 0.7, zeroLiftDrag: 0.03 }];
    const outputs = answered({ ...measured, method: bare, mass: 5 });
    const section = answered({ ...measured, mass: 5 });
    expect(outputs.bestGlideRatio).toBeCloseTo(0.5 * Math.sqrt((Math.PI * 8 * 0.8) / (outputs.zeroLiftDrag ?? 0)), 1);
    expect(Math.abs((outputs.zeroLiftDrag ?? 0) / (section.zeroLiftDrag ?? 1) - 1)).toBeLessThan(0.1);
    expect(kinds({ ...measured, method: bare })).toContain("polar");
    expect(kinds({ ...measured, method: stated })).not.toContain("polar");
  });

  it("says so when the least sink asks for more lift than the section has", () => {
    const dragging = { wing: shape, method: { ...parabola, zeroLiftDrag: 0.2 } };
    expect(kinds(dragging)).toContain("beyond-stall");
    expect(kinds({ wing: shape, method: { ...parabola, zeroLiftDrag: 0.008 } })).not.toContain("beyond-stall");
  });
});

describe("a wing by its lifting line", () => {
  it("goes to and beyond stall, its parts of drag summing up", () => {
    const { rows, stallAngle, largestLift } = answered({ ...measured, parasiteDragArea: 0.005 });
    expect(stallAngle).toBeGreaterThan(9 * degree);
    expect(stallAngle).toBeLessThan(18 * degree);
    expect(largestLift).toBeGreaterThan(0.8);
    expect(rows.filter((row) => row.way === "strips").length).toBeGreaterThan(5);
    for (const row of rows) {
      const parts = row.inducedDragCoefficient + row.profileDragCoefficient + row.parasiteDragCoefficient;
      expect(row.dragCoefficient).toBeCloseTo(parts, 12);
      expect(row.parasiteDragCoefficient).toBeCloseTo(0.01, 12);
      expect(row.liftCoefficient).toBeLessThanOrEqual((largestLift ?? 0) + 0.005);
    }
  });

  it("gives a polar whose fitted parabola runs through its rows", () => {
    const { rows, fitted, aspectRatio, zeroLiftDrag, spanEfficiency } = answered(measured);
    if (!fitted) throw new Error("nothing was fitted");
    for (const row of rows.filter((one) => one.way === "lifting-line" && one.liftCoefficient > 0.15 && one.liftCoefficient < 0.6)) {
      const parabolic = fitted.zeroLiftDrag + row.liftCoefficient ** 2 / (Math.PI * aspectRatio * fitted.oswaldEfficiency);
      expect(Math.abs(parabolic / row.dragCoefficient - 1)).toBeLessThan(0.05);
    }
    expect(Math.abs(fitted.zeroLiftDrag - (zeroLiftDrag ?? 0))).toBeLessThan(0.001);
    expect(fitted.oswaldEfficiency).toBeLessThan(spanEfficiency ?? 0);
  });

  it("flies each angle at the Reynolds number of its glide where only the mass is known", () => {
    const { rows, glide } = answered({ wing: { ...shape, section: "naca-0012" }, mass: 4, angles: [2, 4, 8].map((a) => a * degree) });
    const chord = 0.25;
    for (const row of rows) {
      const force = Math.hypot(row.liftCoefficient, row.dragCoefficient);
      const airspeed = Math.sqrt((2 * 4 * 9.80665) / (1.225 * 0.5 * force));
      expect(Math.abs((1.225 * airspeed * chord) / 1.789e-5 / row.reynoldsNumber - 1)).toBeLessThan(0.01);
    }
    const speeds = glide.map(({ airspeed }) => airspeed);
    expect(speeds).toEqual([...speeds].sort((a, b) => b - a));
    for (const { airspeed, sinkRate, liftToDrag } of glide) expect(sinkRate).toBeCloseTo(airspeed * Math.sin(Math.atan(1 / liftToDrag)), 9);
  });

  it("lifts more with flaps down, stalls earlier, and glides worse; ailerons roll and do nothing else to speak of", () => {
    const flapped = (deflection: number, side = "both") =>
      answered({ ...measured, wing: { ...measured.wing, flaps: [{ from: 0, to: 0.6, chordFraction: 0.25, deflection, side }] } });
    const [clean, down, ailerons] = [flapped(0), flapped(20 * degree), flapped(10 * degree, "opposite")];
    expect(down.largestLift ?? 0).toBeGreaterThan((clean.largestLift ?? 0) + 0.2);
    expect(down.stallAngle ?? 1).toBeLessThan(clean.stallAngle ?? 0);
    expect(down.zeroLiftAngle ?? 0).toBeLessThan(-3 * degree);
    expect(down.bestGlideRatio ?? 99).toBeLessThan(clean.bestGlideRatio ?? 0);
    const [level, rolled] = [clean.rows[12], ailerons.rows[12]];
    expect(rolled?.liftCoefficient).toBeCloseTo(level?.liftCoefficient ?? 0, 2);
    expect(rolled?.rollingMomentCoefficient).toBeLessThan(-0.03);
    expect(level?.rollingMomentCoefficient).toBeCloseTo(0, 9);
  });

  it("measures angles from the line that incidence is measured from", () => {
    const set = answered({ ...measured, wing: { ...measured.wing, incidence: 3 * degree } });
    const plain = answered(measured);
    expect(set.zeroLiftAngle).toBeCloseTo((plain.zeroLiftAngle ?? 0) - 3 * degree, 6);
    expect(set.rows[10]?.liftCoefficient).toBeCloseTo(plain.rows[13]?.liftCoefficient ?? 0, 9);
  });

  it("warns of short wings, of much sweep, of flaps from memory and of Reynolds numbers beyond the section's", () => {
    expect(kinds({ ...measured, wing: { area: 1, span: 1.5 } })).toContain("aspect-ratio");
    expect(kinds({ ...measured, wing: { ...measured.wing, sweep: 0.5 } })).toContain("sweep");
    expect(kinds({ ...measured, wing: { ...measured.wing, flaps: [{ chordFraction: 0.2, deflection: 0.1 }] } })).toContain("flaps");
    expect(kinds({ ...measured, reynoldsNumber: 3000 })).toContain("reynolds-number");
  });
});

describe("the question about a wing", () => {
  it("is refused in words where it does not go together", () => {
    const refused = (inputs: unknown): string => {
      const read = wing.inputs.safeParse(inputs);
      return read.success ? "" : read.error.issues.map(({ message }) => message).join("; ");
    };
    expect(refused({ ...measured, airspeed: 20 })).toContain("reynoldsNumber or airspeed");
    expect(refused({ ...measured, altitude: 0, air: { density: 1 } })).toContain("air or altitude");
    expect(refused({ wing: { aircraft: "a.yaml" }, method: parabola })).toContain("polar of its file");
    expect(refused({ wing: { area: 1, span: 0.1 } })).toContain("aspect ratio");
    expect(refused({ wing: { ...shape, flaps: [{ from: 0.5, to: 0.5, chordFraction: 0.2, deflection: 0 }] } })).toContain("farther out");
  });

  it("has an answer, limits and figures that agree with its outputs", () => {
    const inputs = wing.inputs.parse({ ...measured, mass: 4 });
    const outputs = answered({ ...measured, mass: 4 });
    expect(wing.answer(outputs, inputs).brief.length).toBeLessThanOrEqual(40);
    const limits = wing.limits(outputs, inputs);
    expect(limits.map(({ where }) => where)).toEqual(["at the best glide", "at the least sink"]);
    expect(limits[0]?.share).toBeCloseTo((outputs.bestGlideLift ?? 0) / (outputs.largestLift ?? 1), 9);
    expect(limits[0]?.share).toBeLessThan(limits[1]?.share ?? 0);
    const figures = wing.figures(outputs, inputs);
    expect(figures.map(({ id }) => id)).toEqual(
      expect.arrayContaining(["lift", "drag", "moment", "polar", "sink", "power", "loading", "summary", "coefficients"]),
    );
  });
});
