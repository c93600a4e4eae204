import { expect, test } from "vitest";
import { type CaseRow, column, readCases } from "../cases.ts";
import { checkAndRecord } from "../record.ts";
import { outputsOf } from "../run-analysis.ts";
import { density, discArea, rotor1 } from "./rotor.ts";

interface RotorOutputs {
  readonly cq: number;
  readonly figureOfMerit: number;
}

const tipSpeed = 152.4;
/** Of one rotor of two blades. */
const solidity = 0.027;

/** Power coefficient of hover at a thrust coefficient; the coaxial pair as one rotor with the blades of both. */
function hovering(rotors: number, ct: number): RotorOutputs {
  return outputsOf<RotorOutputs>("rotor", {
    rotor: { ...rotor1, blades: 2 * rotors },
    air: { density },
    airspeed: 0,
    shaftAngle: 0,
    rotationRate: tipSpeed / rotor1.radius,
    thrust: ct * density * discArea * tipSpeed ** 2,
  });
}

const cases = readCases(new URL("cases.csv", import.meta.url));
const rows = (rotors: number) =>
  cases
    .filter((row) => column(row, "rotors") === rotors)
    .map((row) => ({ row, loading: column(row, "ct") / (solidity * rotors), computed: hovering(rotors, column(row, "ct")) }));
const compare = (of: ReturnType<typeof rows>) =>
  of.map(({ row, loading, computed }) => ({
    expected: column(row, "cp"),
    computed: computed.cq,
    ...(loading >= 0.05 && loading <= 0.11 ? { bounds: [-0.08, 0.08] as const } : {}),
  }));
const along = (of: readonly { readonly row: CaseRow }[]) => ({
  name: "thrust coefficient",
  quantity: "dimensionless" as const,
  values: of.map((one) => column(one.row, "ct")),
});

test("the hovering rotor of NACA TN 2318 is met within the settled tolerances", () => {
  const [single, coaxial] = [rows(1), rows(2)];
  checkAndRecord(new URL("./", import.meta.url), "harrington-1951", [
    {
      quantity: "power coefficient at given thrust, single rotor",
      error: "relative",
      rows: compare(single),
      tolerance: "±8 % for C_T/σ 0.05 to 0.11",
      note: "read off a figure, scatter 2.5 %",
      field: "cq",
      along: along(single),
    },
    {
      quantity: "power coefficient at given thrust, coaxial rotors",
      error: "relative",
      rows: compare(coaxial).map(({ expected, computed }) => ({ expected, computed })),
      tolerance: "reported",
      note: "computed as one rotor with the blades of both",
      field: "cq",
      along: along(coaxial),
    },
    {
      quantity: "power of the coaxial pair over twice that of one rotor at half the thrust",
      error: "1",
      rows: [{ expected: 1.34, computed: hovering(2, 0.0048).cq / (2 * hovering(1, 0.0024).cq), bounds: [-0.08, 0.08] }],
      tolerance: "±0.08",
      note: "computed as one rotor with the blades of both",
    },
  ]);
});

test("the figure of merit rises with loading as far as measured", () => {
  const merit = [0.001, 0.0015, 0.002, 0.0025, 0.003].map((ct) => hovering(1, ct).figureOfMerit);
  expect(merit).toEqual([...merit].sort((a, b) => a - b));
});
