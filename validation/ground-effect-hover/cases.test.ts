import { beforeAll, expect, test } from "vitest";
import { type CaseRow, column, readCases } from "../cases.ts";
import { type CheckProject, checkProject, trimmedDigits } from "../project-run.ts";
import { checkAndRecord } from "../record.ts";

interface TrimOutputs {
  readonly optimum: {
    readonly state: {
      readonly electricPower: number;
      readonly rotors: readonly { readonly thrust: number; readonly inducedVelocity: number }[];
    } | null;
  };
}

const folder = new URL("./", import.meta.url);
const cases = readCases(new URL("cases.csv", folder));
const radius = 1;
let project: CheckProject;
beforeAll(async () => {
  project = await checkProject(new URL("project/", folder));
});

function hover(height?: number) {
  const { optimum } = project.outputsOf<TrimOutputs>("trim", {
    airspeed: 0,
    ...(height === undefined ? {} : { groundHeight: height * radius }),
  });
  const rotor = optimum.state?.rotors[0];
  if (!optimum.state || !rotor) throw new Error(`no hover at ${height} radii`);
  return { ...rotor, power: optimum.state.electricPower };
}

test("a hover near the ground takes less by the published formula", { timeout: 300_000 }, () => {
  const far = hover();
  const ratio = (row: CaseRow): number => {
    const near = hover(column(row, "height"));
    // The thrust is that of the weight either way, but for the tail rotor's tilt.
    expect(near.thrust / far.thrust).toBeCloseTo(1, 2);
    return (near.inducedVelocity / Math.sqrt(near.thrust) / (far.inducedVelocity / Math.sqrt(far.thrust))) ** (-2 / 3);
  };
  const of = (kind: number) => cases.filter((row) => column(row, "kind") === kind);
  const rows = (kind: number, bound: number) =>
    of(kind).map((row) => ({
      expected: column(row, "thrust_ratio"),
      computed: trimmedDigits(ratio(row)),
      bounds: [-bound, bound] as const,
    }));
  const along = (kind: number) => ({
    name: "height over radius",
    quantity: "dimensionless" as const,
    values: of(kind).map((row) => column(row, "height")),
  });
  checkAndRecord(folder, "cheeseman-bennett-1955", [
    {
      quantity: "thrust near the ground over thrust far from it, formula",
      error: "1",
      rows: rows(1, 0.002),
      tolerance: "±0.002",
      note: "regression through a whole trim",
      along: along(1),
    },
    {
      quantity: "thrust near the ground over thrust far from it, single rotor",
      error: "1",
      rows: rows(2, 0.1),
      tolerance: "±0.1",
      note: "quoted by a second document in words",
      along: along(2),
    },
    {
      quantity: "thrust near the ground over thrust far from it, quadcopter",
      error: "1",
      rows: rows(3, 0.1),
      tolerance: "±0.1",
      note: "quoted by a second document in words",
      missed: "the flow that rises between several rotors is not modelled",
      along: along(3),
    },
  ]);
});

test("and the less power the lower it hovers", () => {
  const powers = [0.6, 1, 2, 4].map((height) => hover(height).power);
  for (let i = 1; i < powers.length; i++) expect(powers[i]).toBeGreaterThan(powers[i - 1] as number);
  expect(hover().power).toBeGreaterThan(powers[3] as number);
});
