import { describe, expect, it } from "vitest";
import type { Outcome } from "../contract.ts";
import type { StabilityOutputs } from "./output-schema.ts";
import { stability } from "./stability.ts";

const context = {
  progress: () => {},
  cancelled: () => false,
  partial: () => {},
  analysis: (): never => {
    throw new Error("nothing else is at hand");
  },
};
const ask = (inputs: unknown): Outcome<StabilityOutputs> =>
  stability.run({ documents: {}, rasters: {} }, stability.inputs.parse(inputs), context);
const answered = (inputs: unknown): StabilityOutputs => {
  const outcome = ask(inputs);
  if (!outcome.outputs) throw new Error(outcome.problem?.message);
  return outcome.outputs;
};

const longitudinal = { xu: -0.07, xw: 0.02, zu: -0.4, zw: -1.7, mu: 0, mw: -0.28, mq: -2.2, mwDot: -0.02 };
const lateral = { yv: -0.14, lv: -0.12, lp: -2.3, lr: 1.05, nv: 0.17, np: -1.7, nr: -1.03 };
const light = { derivatives: { kind: "dimensional", airspeed: 50, longitudinal, lateral } };
const transport = {
  derivatives: {
    kind: "coefficients",
    airspeed: 60,
    mass: 1000,
    density: 1.2,
    area: 16,
    chord: 1.5,
    span: 11,
    ix: 1200,
    iy: 1800,
    iz: 2800,
    longitudinal: { cxU: -0.1, cxAlpha: 0.2, czU: 0, czAlpha: -5, czQ: -4, cmU: 0, cmAlpha: -0.8, cmQ: -12 },
  },
};

describe("stability of derivatives", () => {
  it("puts the neutral point of incidence behind the centre of gravity by C_m over C_z of incidence, in chords", () => {
    const { conditions } = answered(transport);
    expect(conditions[0]?.incidenceMargin).toBeCloseTo((0.8 / 5) * 1.5, 12);
    expect(conditions[0]?.speedMargin).toBeCloseTo((0.8 / 5) * 1.5, 12);
    const tuck = answered({
      derivatives: { ...transport.derivatives, longitudinal: { ...transport.derivatives.longitudinal, cmU: -0.05 } },
    });
    expect(tuck.conditions[0]?.incidenceMargin).toBeCloseTo((0.8 / 5) * 1.5, 12);
    expect(tuck.conditions[0]?.speedMargin ?? 1).toBeLessThan(0.24);
  });

  it("is lost where the margin of speed is, by a root that goes through zero there", () => {
    const at = (cmAlpha: number) =>
      answered({ derivatives: { ...transport.derivatives, longitudinal: { ...transport.derivatives.longitudinal, cmAlpha, cmU: -0.05 } } });
    const real = (outputs: StabilityOutputs) => Math.max(...(outputs.conditions[0]?.modes ?? []).map(({ real }) => real));
    const sign = (cmAlpha: number) => Math.sign(at(cmAlpha).conditions[0]?.speedMargin ?? 0);
    let [stable, unstable] = [-0.8, 0.2];
    for (let k = 0; k < 40; k++) {
      const middle = (stable + unstable) / 2;
      if (sign(middle) > 0) stable = middle;
      else unstable = middle;
    }
    const roots = at(stable).conditions[0]?.modes ?? [];
    expect(roots.some(({ real, imaginary }) => imaginary === 0 && Math.abs(real) < 1e-8)).toBe(true);
    expect(real(at(unstable + 0.01))).toBeGreaterThan(0);
  });

  it("answers with what grows, or with what dies away last", () => {
    const spiralling = stability.answer(answered(light), stability.inputs.parse(light));
    expect(spiralling.brief).toMatch(/^spiral doubles in/);
    const only = { derivatives: { kind: "dimensional", airspeed: 50, longitudinal } };
    expect(stability.answer(answered(only), stability.inputs.parse(only)).brief).toMatch(/^stable, phugoid halves in/);
    for (const { brief } of [spiralling]) expect(brief.length).toBeLessThanOrEqual(40);
  });

  it("varies one derivative and draws the way of the roots", () => {
    const varied = { derivatives: { ...light.derivatives, vary: { derivative: "nv", factors: [0.5, 1, 2] } } };
    const { conditions, chosen } = answered(varied);
    expect(conditions.map(({ at }) => at)).toEqual([0.5, 1, 2]);
    expect(chosen).toBe(1);
    const dutch = conditions.map(({ modes }) => modes.find(({ name }) => name === "Dutch roll")?.imaginary ?? 0);
    expect(dutch).toEqual([...dutch].sort((a, b) => a - b));
    const figures = stability.figures(answered(varied), stability.inputs.parse(varied));
    expect(figures.map(({ id }) => id)).toEqual(
      expect.arrayContaining(["roots", "modes", "growth", "response-longitudinal", "response-lateral", "participation"]),
    );
    const only = { kind: "dimensional", airspeed: 50, longitudinal, vary: { derivative: "nv" } };
    expect(ask({ derivatives: only }).problem?.message).toContain("there are xu");
  });

  it("refuses what is no motion, in words", () => {
    const refused = (inputs: unknown): string => {
      const read = stability.inputs.safeParse(inputs);
      return read.success ? "" : read.error.issues.map(({ message }) => message).join("; ");
    };
    expect(refused({ derivatives: { kind: "dimensional", airspeed: 50 } })).toContain("both");
    expect(refused({ derivatives: { ...transport.derivatives, ixz: 2500 } })).toContain("no body has that");
  });

  it("warns of disturbances that are no small motion", () => {
    const kinds = (vertical: number) => (ask({ ...light, disturbance: { vertical } }).warnings ?? []).map(({ kind }) => kind);
    expect(kinds(5)).toEqual([]);
    expect(kinds(20)).toEqual(["large-disturbance"]);
  });
});
