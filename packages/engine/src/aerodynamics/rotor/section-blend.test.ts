import { describe, expect, it } from "vitest";
import { type SectionDefinition, sectionCoefficients, sectionLaw } from "../airfoil-section/index.ts";
import type { RotorModel } from "./rotor-model.ts";
import { createRotorWorkspace } from "./rotor-workspace.ts";

const thick: SectionDefinition = { kind: "built-in", name: "naca-0015", dragIncrement: 0 };
const thin: SectionDefinition = { kind: "built-in", name: "naca-0012", dragIncrement: 0.003 };
const model: RotorModel = {
  radius: 1,
  bladeCount: 2,
  rootCutout: 0.1,
  stations: [
    { radiusFraction: 0.2, chord: 0.1, twist: 0, section: thick },
    { radiusFraction: 0.6, chord: 0.1, twist: 0, section: thin },
    { radiusFraction: 1, chord: 0.1, twist: 0, section: thin },
  ],
  precone: 0,
  articulation: { kind: "rigid" },
  section: thick,
  tipLoss: { kind: "prandtl" },
  inducedPowerFactor: 1,
  inflow: "uniform",
  radialFlow: "off",
  azimuths: 8,
  radialElements: 18,
};

describe("sections along the blade", () => {
  it("change from one station to the next in proportion, and stay beyond the last ones", () => {
    const { mesh, rings } = createRotorWorkspace(model);
    mesh.radiusFraction.forEach((x, i) => {
      const share = rings.sections[i]?.outerShare ?? Number.NaN;
      if (x > 0.2 && x < 0.6) expect(share).toBeCloseTo((x - 0.2) / 0.4, 12);
      else expect(share).toBe(0);
      expect(rings.sections[i]?.inner.definition).toBe(x < 0.6 ? thick : thin);
    });
  });

  it("without stations of their own are the rotor's, read by the fast way", () => {
    const plain = createRotorWorkspace({ ...model, stations: [{ radiusFraction: 0, chord: 0.1, twist: 0 }] });
    expect(plain.byRings).toBe(false);
    expect(createRotorWorkspace(model).byRings).toBe(true);
  });

  it("from tables over the Mach number are read at the element's own", () => {
    const angles = [-0.2, -0.1, 0, 0.1, 0.2];
    const polar = (machNumber: number, drag: number) => ({
      reynoldsNumber: 1e6,
      machNumber,
      angles,
      lift: angles.map((angle) => 6 * angle),
      drag: angles.map(() => drag),
    });
    const section: SectionDefinition = {
      kind: "table",
      name: "two Mach numbers",
      polars: [polar(0.2, 0.01), polar(0.6, 0.03)],
      dragIncrement: 0,
    };
    const { mesh, rings } = createRotorWorkspace({
      ...model,
      section,
      sectionTipMach: 0.6,
      stations: [{ radiusFraction: 0, chord: 0.1, twist: 0 }],
    });
    mesh.radiusFraction.forEach((x, i) => {
      const law = rings.sections[i]?.inner;
      if (!law) throw new Error("no section");
      const at = { angleOfAttack: 0.05, mach: 0.6 * x, reynolds: 1e6 };
      expect(sectionCoefficients(law, at)).toEqual(sectionCoefficients(sectionLaw(section, { mach: at.mach }), at));
    });
    const drags = rings.sections.map(({ inner }) => sectionCoefficients(inner, { angleOfAttack: 0, mach: 0, reynolds: 1e6 }).drag);
    expect(drags[0]).toBeCloseTo(0.01, 9);
    expect(drags.at(-1)).toBeGreaterThan(0.025);
  });
});
