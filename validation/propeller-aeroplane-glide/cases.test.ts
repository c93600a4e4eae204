import { test } from "vitest";
import { column, readCases } from "../cases.ts";
import { checkAndRecord } from "../record.ts";
import { outputsOf } from "../run-analysis.ts";

interface WingOutputs {
  readonly aspectRatio: number;
  readonly bestGlideRatio: number;
  readonly bestPowerFactor: number;
  readonly bestGlideAngle: number;
  readonly bestGlideSpeed: number;
  readonly minimumSinkSpeed: number;
  readonly minimumSink: number;
}

const foot = 0.3048;
const pound = 0.45359237;
const gravity = 9.80665;
const weight = 2950 * pound * gravity;
const emptied = weight - 65 * 5.64 * pound * gravity;
const area = 174 * foot ** 2;
/** Weight of fuel per work at the shaft [1/m]. */
const fuelRate = (0.45 * pound * gravity) / (745.7 * 3600);
const propellerEfficiency = 0.8;
const density = 1.225;

const computed = outputsOf<WingOutputs>("wing", {
  wing: { area, span: 35.8 * foot },
  method: { kind: "oswald", efficiency: 0.8, zeroLiftDrag: 0.025 },
  mass: weight / gravity,
  air: { density },
});

/** Breguet: weight falls with fuel at constant lift over drag. */
function range(): number {
  return (propellerEfficiency / fuelRate) * computed.bestGlideRatio * Math.log(weight / emptied);
}

function endurance(): number {
  const falling = emptied ** -0.5 - weight ** -0.5;
  return (propellerEfficiency / fuelRate) * computed.bestPowerFactor * Math.sqrt(2 * density * area) * falling;
}

/** By the number of the row: what it is, in the unit of the row. */
const quantities: Readonly<
  Record<number, { readonly name: string; readonly value: number; readonly field?: string; readonly note?: string }>
> = {
  1: { name: "aspect ratio", value: computed.aspectRatio, field: "aspectRatio" },
  2: { name: "largest lift over drag", value: computed.bestGlideRatio, field: "bestGlideRatio" },
  3: { name: "largest C_L^1.5/C_D", value: computed.bestPowerFactor, field: "bestPowerFactor" },
  4: { name: "least glide angle", value: (computed.bestGlideAngle * 180) / Math.PI },
  5: { name: "range", value: range() / 1609.344, note: "made from lift over drag in the test" },
  6: { name: "endurance", value: endurance() / 3600, note: "made from C_L^1.5/C_D in the test" },
  7: { name: "best glide speed", value: computed.bestGlideSpeed / foot, note: "path angle not taken as small" },
  8: { name: "speed of least sink", value: computed.minimumSinkSpeed / foot, note: "path angle not taken as small" },
  9: { name: "least sink", value: computed.minimumSink / foot, note: "path angle not taken as small" },
};

test("a parabolic polar glides, and flies far and long, as in the worked example", () => {
  const cases = readCases(new URL("cases.csv", import.meta.url));
  checkAndRecord(
    new URL("./", import.meta.url),
    "anderson-flight",
    cases.map((row) => {
      const quantity = quantities[column(row, "quantity")];
      if (!quantity) throw new Error(`no quantity ${column(row, "quantity")}`);
      const { name, value, field, note = "" } = quantity;
      return {
        quantity: name,
        error: "relative",
        rows: [{ expected: column(row, "expected"), computed: value, bounds: [-0.01, 0.01] }],
        tolerance: "±1 %",
        note: [row.place.split(":")[0], note].filter((part) => part !== "").join("; "),
        ...(field === undefined ? {} : { field }),
      };
    }),
  );
});
