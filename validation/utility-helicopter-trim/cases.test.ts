import { beforeAll, expect, test } from "vitest";
import { type CaseRow, column, readCases } from "../cases.ts";
import { type CheckProject, checkProject, trimmedDigits } from "../project-run.ts";
import { checkAndRecord } from "../record.ts";

interface TrimOutputs {
  readonly optimum: {
    readonly state: { readonly pitch: number; readonly rotors: readonly { readonly shaftPower: number }[] } | null;
  };
}

const folder = new URL("./", import.meta.url);
const cases = readCases(new URL("cases.csv", folder));
const speed = (row: CaseRow): number => column(row, "airspeed");
let project: CheckProject;
beforeAll(async () => {
  project = await checkProject(new URL("project/", folder));
});

function level(airspeed: number): { readonly power: number; readonly pitch: number } {
  const { optimum } = project.outputsOf<TrimOutputs>("trim", { airspeed });
  if (optimum.state === null) throw new Error(`no level flight at ${airspeed} m/s`);
  return { power: trimmedDigits(optimum.state.rotors[0]?.shaftPower ?? Number.NaN), pitch: optimum.state.pitch };
}

test("a whole helicopter of 10 t in balance takes the power of the momentum and energy formula", { timeout: 300_000 }, () => {
  const flown = cases.map((row) => level(speed(row)));
  const bucket = Array.from({ length: 7 }, (_, i) => 32 + 3 * i)
    .map((at) => ({ at, power: level(at).power }))
    .reduce((best, one) => (one.power < best.power ? one : best));
  const hover = flown[0]?.power ?? Number.NaN;
  const note = "computed reference: regression, not a measurement";
  checkAndRecord(folder, "utility-helicopter-notes", [
    {
      quantity: "power of the main rotor in level flight, whole helicopter",
      error: "relative",
      rows: cases.map((row, i) => ({
        expected: column(row, "total_power"),
        computed: flown[i]?.power ?? Number.NaN,
        bounds: speed(row) === 0 ? ([-0.1, 0.1] as const) : ([-0.12, 0.12] as const),
      })),
      tolerance: "±10 % in hover, ±12 % in cruise",
      note: `${note}; blades, cut-out, twist and tail rotor from memory`,
      quantityKind: "power",
      along: { name: "airspeed", quantity: "speed", values: cases.map(speed) },
    },
    {
      quantity: "speed of least power, whole helicopter",
      error: "1",
      rows: [{ expected: 40, computed: bucket.at, bounds: [-5, 5] }],
      tolerance: "35 to 45 m/s",
      note,
      quantityKind: "speed",
    },
    {
      quantity: "least power over power in hover, whole helicopter",
      error: "1",
      rows: [{ expected: 0.539, computed: bucket.power / hover, bounds: [-0.019, 0.061] }],
      tolerance: "0.52 to 0.60",
      note,
    },
  ]);
  // It flies with its nose ever further down.
  for (let i = 1; i < flown.length; i++) expect(flown[i]?.pitch).toBeLessThan(flown[i - 1]?.pitch ?? 0);
});
