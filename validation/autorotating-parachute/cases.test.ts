import { expect, test } from "vitest";
import { column, readCases } from "../cases.ts";
import { checkAndRecord } from "../record.ts";
import { signChange } from "../root.ts";
import { outputsOf } from "../run-analysis.ts";

const density = 1.225;
const radius = 6;
const degree = Math.PI / 180;

interface RotorShape {
  readonly radius: number;
  readonly blades: number;
  readonly solidity: number;
  readonly section: unknown;
}

/** Autorotating straight down at an airspeed: the load that it carries there, over disc area. */
function discLoading(shape: RotorShape, airspeed: number): number {
  const { thrust } = outputsOf<{ readonly thrust: number }>("rotor", {
    rotor: {
      radius: shape.radius,
      blades: shape.blades,
      chord: (shape.solidity * Math.PI * shape.radius) / shape.blades,
      rootCutout: 0.15,
      articulation: "hinged",
      section: shape.section,
    },
    air: { density },
    airspeed,
    shaftAngle: 90 * degree,
    collective: 2 * degree,
    shaftTorque: 0,
  });
  return thrust / (Math.PI * shape.radius ** 2);
}

/** Speed of descent under a disc loading. */
function descentSpeed(shape: RotorShape, loading: number): number {
  const parachute = Math.sqrt((2 * loading) / (1.25 * density));
  return signChange(0.7 * parachute, 1.4 * parachute, (airspeed) => discLoading(shape, airspeed) - loading, 1e-4);
}

const fullScale = (solidity: number): RotorShape => ({ radius, blades: 4, solidity, section: "naca-0015" });
const rows = [0.04, 0.07, 0.1].flatMap((solidity) =>
  readCases(new URL("cases.csv", import.meta.url)).map((row) => ({
    row,
    solidity,
    computed: descentSpeed(fullScale(solidity), column(row, "disc_loading")),
  })),
);

test("an autorotating rotor comes down as fast as the fit of resultant force says", () => {
  checkAndRecord(new URL("./", import.meta.url), "leishman-2006", [
    {
      quantity: "speed of vertical descent in autorotation",
      error: "relative",
      rows: rows.map(({ row, computed }) => ({ expected: column(row, "descent_speed"), computed, bounds: [-0.1, 0.1] })),
      tolerance: "±10 %",
      note: "solidity 0.04, 0.07 and 0.10, in this order",
      field: "airspeed",
      quantityKind: "speed",
      along: { name: "disc loading", quantity: "pressure", values: rows.map(({ row }) => column(row, "disc_loading")) },
    },
  ]);
});

test("a small rough rotor comes down faster", () => {
  const section = { kind: "generic", liftSlope: 5.5, cd0: 0.02, cd2: 0.5, stallAngle: 10 * degree };
  for (const loading of [50, 100]) {
    const small = descentSpeed({ radius: 0.6, blades: 2, solidity: 0.07, section }, loading);
    expect(small).toBeGreaterThan(descentSpeed(fullScale(0.07), loading));
  }
});
