import { test } from "vitest";
import { type CaseRow, column, readCases } from "../cases.ts";
import { checkAndRecord } from "../record.ts";
import { outputsOf } from "../run-analysis.ts";

interface RotorOutputs {
  readonly thrust: number;
  readonly hForce: number;
  readonly sideForce: number;
  readonly flapLongitudinal: number;
  readonly flapLateral: number;
  readonly discAngle: number;
  readonly inducedVelocity: number;
}

const density = 1.225;
const radius = 1;
const rotor = {
  radius,
  blades: 2,
  chord: 0.08,
  rootCutout: 0.1,
  articulation: "teetering",
  section: { kind: "generic", liftSlope: 5.7, cd0: 0.01, stallAngle: 0.4 },
};

function run(airspeed: number, shaftAngle: number): RotorOutputs {
  return outputsOf<RotorOutputs>("rotor", {
    rotor,
    air: { density },
    airspeed,
    shaftAngle,
    rotationRate: 90,
    thrust: 90,
    inflow: "uniform",
  });
}

/** Thrust along the normal of the tip-path plane, from the forces along and across the shaft. */
function discThrust(of: RotorOutputs): number {
  const { flapLongitudinal: back, flapLateral: side } = of;
  return of.hForce * Math.sin(back) * Math.cos(side) + of.sideForce * Math.sin(side) + of.thrust * Math.cos(back) * Math.cos(side);
}

const hoverVelocity = (thrust: number): number => Math.sqrt(thrust / (2 * density * Math.PI * radius * radius));

/** Tilts the shaft and sets the airspeed until the disc lies along the stream at the wanted ratio. */
function alongStream(ratio: number): number {
  let shaftAngle = 0;
  let airspeed = ratio * hoverVelocity(90);
  let found = run(airspeed, shaftAngle);
  for (let repetition = 0; repetition < 12; repetition++) {
    shaftAngle -= found.discAngle;
    airspeed = ratio * hoverVelocity(discThrust(found));
    found = run(airspeed, shaftAngle);
  }
  return found.inducedVelocity / hoverVelocity(discThrust(found));
}

function alongAxis(ratio: number): number {
  const hover = hoverVelocity(90);
  return run(Math.abs(ratio) * hover, ratio > 0 ? -Math.PI / 2 : Math.PI / 2).inducedVelocity / hover;
}

const ratio = (row: CaseRow): number =>
  column(row, "forward_ratio") > 0 ? alongStream(column(row, "forward_ratio")) : alongAxis(column(row, "climb_ratio"));

test("induced velocity follows momentum theory where it holds", () => {
  const cases = readCases(new URL("cases.csv", import.meta.url));
  const comparison = (place: string) => {
    const there = cases.filter((row) => row.place === place);
    const forward = place === "forward flight";
    return {
      quantity: `induced velocity, ${place}`,
      error: "1" as const,
      rows: there.map((row) => ({ expected: column(row, "expected"), computed: ratio(row), bounds: [-1e-3, 1e-3] as const })),
      tolerance: "±0.001 of the ratio",
      note: "regression against closed forms",
      along: {
        name: forward ? "advance ratio over hover inflow" : "climb speed over hover induced velocity",
        quantity: "dimensionless" as const,
        values: there.map((row) => column(row, forward ? "forward_ratio" : "climb_ratio")),
      },
    };
  };
  checkAndRecord(new URL("./", import.meta.url), "glauert-1926", ["forward flight", "axial climb", "windmill brake"].map(comparison));
});
