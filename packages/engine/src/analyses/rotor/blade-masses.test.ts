import { describe, expect, it } from "vitest";
import type { Outcome } from "../contract.ts";
import type { RotorOutputs } from "./output-schema.ts";
import { rotor } from "./rotor.ts";

const nobody = {
  progress: () => {},
  cancelled: () => false,
  partial: () => {},
  analysis: (): never => {
    throw new Error("nothing else is asked for");
  },
};
const blades = { radius: 1, blades: 2, chord: 0.05, rootCutout: 0.1, articulation: "teetering", section: "naca-0015" };
const hover = { rotor: blades, rotationRate: 100, collective: 0.05 };

function asked(inputs: Readonly<Record<string, unknown>>): Outcome<RotorOutputs> {
  return rotor.run({ documents: {}, rasters: {} }, rotor.inputs.parse({ ...hover, ...inputs }), nobody);
}

function solved(inputs: Readonly<Record<string, unknown>>): RotorOutputs {
  const outcome = asked(inputs);
  if (outcome.problem) throw new Error(outcome.problem.message);
  return outcome.outputs;
}

describe("the centrifugal force of a blade", () => {
  it("is mass times distance of its centre of gravity times rotation rate squared", () => {
    expect(solved({ blade: { mass: 0.3, centreOfGravity: 0.4 } }).centrifugalForce).toBeCloseTo(1200, 9);
  });

  it("of a mass spread evenly is that at the middle of the blade, and says what was taken", () => {
    const outcome = asked({ blade: { mass: 0.2 } });
    expect(outcome.outputs?.centrifugalForce).toBeCloseTo(0.2 * 0.55 * 1e4, 9);
    expect(outcome.assumed).toContainEqual(expect.objectContaining({ path: "inputs.blade.centreOfGravity", value: 0.55 }));
  });

  it("grows by the weights put into the blade", () => {
    const blade = { mass: 0.2, centreOfGravity: 0.5, weights: [{ mass: 0.05, radiusFraction: 0.9 }] };
    expect(solved({ blade }).centrifugalForce).toBeCloseTo(1000 + 450, 9);
  });

  it("takes places by the radius", () => {
    const of = (radius: number) => solved({ rotor: { ...blades, radius }, rotationRate: 50, blade: { mass: 0.3 } }).centrifugalForce ?? 0;
    expect(of(2) / of(1)).toBeCloseTo(2, 12);
  });

  it("is none, nor any limit, where no mass is given", () => {
    const outputs = solved({});
    expect(outputs.centrifugalForce).toBeNull();
    expect(rotor.limits(outputs, rotor.inputs.parse(hover)).map(({ family }) => family)).not.toContain("strength");
  });

  it("is held against the strength at the fastest row of a sweep", () => {
    const swept = { rotor: blades, collective: 0.05, sweep: { rotationRate: [80, 100, 90] } };
    const inputs = rotor.inputs.parse({ ...swept, blade: { mass: 0.3, centreOfGravity: 0.4, strength: 1000 } });
    const outcome = rotor.run({ documents: {}, rasters: {} }, inputs, nobody);
    if (outcome.problem) throw new Error(outcome.problem.message);
    const limit = rotor.limits(outcome.outputs, inputs).find(({ family }) => family === "strength");
    expect(limit).toMatchObject({ name: "centrifugal force", binding: true, where: "at 955 rpm" });
    expect(limit?.share).toBeCloseTo(1.2, 9);
    const table = rotor.figures(outcome.outputs, inputs).find(({ id }) => id === "sweep");
    expect(table?.kind === "table" && table.columns.map(({ label }) => label)).toContain("Centrifugal force of a blade");
  });
});
