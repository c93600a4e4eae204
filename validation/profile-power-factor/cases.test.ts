import { test } from "vitest";
import { type CaseRow, column, readCases } from "../cases.ts";
import { checkAndRecord } from "../record.ts";
import { outputsOf } from "../run-analysis.ts";

const dragCoefficient = 0.01;
const rotor = {
  radius: 1,
  blades: 2,
  chord: 0.06,
  rootCutout: 0,
  articulation: "teetering",
  section: { kind: "generic", liftSlope: 5.7, cd0: dragCoefficient, stallAngle: 0.2 },
};
const solidity = (2 * 0.06) / Math.PI;

function profilePowerFactor(mu: number, radialFlow: boolean): number {
  const density = 1.225;
  const rotationRate = 50;
  const { profilePower } = outputsOf<{ readonly profilePower: number }>("rotor", {
    rotor,
    air: { density },
    advanceRatio: mu,
    shaftAngle: 0,
    rotationRate,
    collective: 0,
    radialFlow,
    azimuths: 36,
    radialElements: 24,
  });
  return (profilePower / (density * Math.PI * rotationRate ** 3)) * (8 / (solidity * dragCoefficient));
}

test("profile power grows with advance ratio as the quadrature says", () => {
  const cases = readCases(new URL("cases.csv", import.meta.url));
  const rows = (name: string, radialFlow: boolean) =>
    cases.map((row: CaseRow) => ({
      expected: column(row, name),
      computed: profilePowerFactor(column(row, "mu"), radialFlow),
      bounds: [-0.005, 0.005] as const,
    }));
  const along = { name: "advance ratio", quantity: "dimensionless" as const, values: cases.map((row) => column(row, "mu")) };
  checkAndRecord(new URL("./", import.meta.url), "johnson-2013", [
    {
      quantity: "profile power factor, radial flow on",
      error: "relative",
      rows: rows("with_radial", true),
      tolerance: "±0.5 %",
      note: "regression against quadrature",
      along,
    },
    {
      quantity: "profile power factor, radial flow off",
      error: "relative",
      rows: rows("without_radial", false),
      tolerance: "±0.5 %",
      note: "regression against quadrature",
      along,
    },
  ]);
});
