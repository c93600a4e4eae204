import { test } from "vitest";
import { type CaseRow, column, readCases } from "../cases.ts";
import { checkAndRecord } from "../record.ts";
import { rootNear } from "../root.ts";
import { outputsOf } from "../run-analysis.ts";

interface RotorOutputs {
  readonly power: number;
  readonly drag: number;
  readonly inducedVelocity: number;
}

const density = 1.225;
const radius = 8.17;
const solidity = 0.082;
const tipSpeed = 220.98;
const weight = 9979 * 9.80665;
const dragArea = 3.376;
const area = Math.PI * radius ** 2;
const twist = (-18 * Math.PI) / 180;
const rotor = {
  radius,
  blades: 4,
  stations: [
    { radiusFraction: 0, chord: (solidity * Math.PI * radius) / 4, twist: 0 },
    { radiusFraction: 1, chord: (solidity * Math.PI * radius) / 4, twist },
  ],
  rootCutout: 0.15,
  articulation: "hinged",
  section: { kind: "generic", liftSlope: 5.73, cd0: 0.01, stallAngle: 0.25 },
};

const bodyDrag = (airspeed: number): number => 0.5 * density * airspeed ** 2 * dragArea;

/** Level flight: the disc tilts until the rotor that carries the weight pulls the body. */
function level(airspeed: number): RotorOutputs {
  const drag = bodyDrag(airspeed);
  const run = (discAngle: number): RotorOutputs =>
    outputsOf<RotorOutputs>("rotor", {
      rotor,
      air: { density },
      airspeed,
      discAngle,
      rotationRate: tipSpeed / radius,
      ...(airspeed === 0 ? { thrust: weight } : { lift: weight }),
    });
  if (airspeed === 0) return run(0);
  const guess = -drag / weight;
  return run(rootNear(guess, guess - 0.01, (angle) => run(angle).drag + drag, 1e-4));
}

/** The plain formula, with nothing but the induced velocity of a uniform disc taken from the analysis. */
function formula(airspeed: number): number {
  const drag = bodyDrag(airspeed);
  const discAngle = -Math.atan(drag / weight);
  const thrust = Math.hypot(weight, drag);
  const { inducedVelocity } = outputsOf<RotorOutputs>("rotor", {
    rotor,
    air: { density },
    airspeed,
    discAngle,
    rotationRate: tipSpeed / radius,
    thrust,
    inflow: "uniform",
    inducedPowerFactor: 1,
  });
  const advanceRatio = (airspeed * Math.cos(discAngle)) / tipSpeed;
  const profile = (density * area * tipSpeed ** 3 * solidity * 0.01 * (1 + 4.65 * advanceRatio ** 2)) / 8;
  return 1.15 * thrust * inducedVelocity + profile + drag * airspeed;
}

const cases = readCases(new URL("cases.csv", import.meta.url));
const speed = (row: CaseRow): number => column(row, "airspeed");
const total = (row: CaseRow): number => column(row, "total_power");
const elements = new Map(cases.map((row) => [speed(row), level(speed(row)).power]));
const along = { name: "airspeed", quantity: "speed" as const, values: cases.map(speed) };
const hover = elements.get(0) ?? Number.NaN;
const bucket = Array.from({ length: 7 }, (_, i) => 32 + 3 * i)
  .map((at) => ({ at, power: level(at).power }))
  .reduce((best, one) => (one.power < best.power ? one : best));

test("the power curve of a helicopter of 10 t follows the momentum and energy formula", () => {
  const note = "computed reference: regression, not a measurement";
  checkAndRecord(new URL("./", import.meta.url), "utility-helicopter-notes", [
    {
      quantity: "power of level flight, plain formula",
      error: "relative",
      rows: cases.map((row) => ({ expected: total(row), computed: formula(speed(row)), bounds: [-0.01, 0.01] })),
      tolerance: "±1 %",
      note,
      quantityKind: "power",
      along,
    },
    {
      quantity: "power of level flight, blade elements",
      error: "relative",
      rows: cases.map((row) => ({
        expected: total(row),
        computed: elements.get(speed(row)) ?? Number.NaN,
        bounds: speed(row) === 0 ? [-0.1, 0.1] : [-0.12, 0.12],
      })),
      tolerance: "±10 % in hover, ±12 % in cruise",
      note: `${note}; blades, cut-out and twist from memory`,
      field: "power",
      quantityKind: "power",
      along,
    },
    {
      quantity: "speed of least power",
      error: "1",
      rows: [{ expected: 40, computed: bucket.at, bounds: [-5, 5] }],
      tolerance: "35 to 45 m/s",
      note,
      quantityKind: "speed",
    },
    {
      quantity: "least power over power in hover",
      error: "1",
      rows: [{ expected: 0.539, computed: bucket.power / hover, bounds: [-0.019, 0.061] }],
      tolerance: "0.52 to 0.60",
      note,
    },
  ]);
});
