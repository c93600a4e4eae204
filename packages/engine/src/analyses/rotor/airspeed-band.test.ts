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
const degree = Math.PI / 180;
const small = { radius: 0.6, blades: 4, chord: 0.05, rootCutout: 0.15, articulation: "teetering", section: "naca-0012" };
const falling = { rotor: small, shaftAngle: 90 * degree, thrust: 22, collective: 0, shaftTorque: 0 };

function asked(inputs: Readonly<Record<string, unknown>>): Outcome<RotorOutputs> {
  return rotor.run({ documents: {}, rasters: {} }, rotor.inputs.parse(inputs), nobody);
}

function solved(inputs: Readonly<Record<string, unknown>>): RotorOutputs {
  const outcome = asked(inputs);
  if (outcome.problem) throw new Error(outcome.problem.message);
  return outcome.outputs;
}

const notes = (outcome: Outcome<RotorOutputs>) => (outcome.warnings ?? []).filter(({ kind }) => kind === "airspeed-band");

describe("the airspeed that an autorotating rotor was asked for", () => {
  const outcome = asked(falling);
  const outputs = solved(falling);

  it("lies in a band of the errors that stand beside it", () => {
    const [decisive] = outputs.airspeedBandChecks;
    const factor = (decisive?.factor ?? 0) ** (1 + (decisive?.distance ?? 0));
    expect(factor).toBeGreaterThan(1.05);
    expect((outputs.airspeedBandLow ?? 0) * factor).toBeCloseTo(outputs.airspeed, 9);
    expect((outputs.airspeedBandHigh ?? 0) / factor).toBeCloseTo(outputs.airspeed, 9);
  });

  it("is told with the band, in the sentence, in brief, in the table and with what it stands on", () => {
    const { sentence, brief } = rotor.answer(outputs, rotor.inputs.parse(falling));
    const paths = sentence.flatMap((token) => (token.kind === "reading" ? [token.path] : []));
    expect(paths).toEqual(expect.arrayContaining(["/climbRate", "/airspeedBandLow", "/airspeedBandHigh"]));
    expect(brief).toMatch(/^sinks at \d+\.\d \(\d+\.\d to \d+\.\d\) m\/s$/u);
    const table = rotor.figures(outputs, rotor.inputs.parse(falling)).find(({ id }) => id === "attitude");
    expect(table?.kind === "table" && table.rows[0]).toEqual(expect.arrayContaining([outputs.airspeedBandLow, outputs.airspeedBandHigh]));
    expect(notes(outcome)).toHaveLength(1);
    expect(notes(outcome)[0]?.message).toContain(outputs.airspeedBandChecks[0]?.title);
  });

  it("has its band row by row in a sweep, and the note once", () => {
    const swept = { ...falling, thrust: undefined, sweep: { thrust: [20, 25] } };
    const { rows } = solved(swept);
    const shares = rows.map((row) => (row.airspeedBandLow ?? 0) / (row.airspeed ?? 1));
    for (const share of shares) expect(share).toBeGreaterThan(0.5);
    for (const share of shares) expect(share).toBeLessThan(0.95);
    expect(notes(asked(swept)).map(({ message }) => message)).toEqual([expect.stringMatching(/^Of the first of 2 points: /u)]);
  });
});

describe("an airspeed that was given, or of a driven rotor,", () => {
  it("has no band and no word about one", () => {
    const { thrust: _, ...loaded } = falling;
    const driven = { rotor: small, airspeed: 5, shaftAngle: 0, rotationRate: 100, collective: 0.05 };
    for (const inputs of [{ ...loaded, airspeed: 6 }, driven]) {
      const { airspeedBandLow, airspeedBandHigh, airspeedBandChecks } = solved(inputs);
      expect([airspeedBandLow, airspeedBandHigh, airspeedBandChecks]).toEqual([null, null, []]);
      expect(notes(asked(inputs))).toEqual([]);
    }
  });
});
