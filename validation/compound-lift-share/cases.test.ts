import { expect, test } from "vitest";
import { column, readCases } from "../cases.ts";
import { checkProject, trimmedDigits } from "../project-run.ts";
import { checkAndRecord } from "../record.ts";

const folder = new URL("./", import.meta.url);
const [quoted] = readCases(new URL("cases.csv", folder));
if (!quoted) throw new Error("cases.csv has no row");
const speeds = [55, 65, 75];

test("the wing of a compound gyroplane takes its share of the lift, more of it the faster", { timeout: 300_000 }, async () => {
  const trimmer = (await checkProject(new URL("project/", folder))).trimmer();
  const weight = trimmer.airframe.mass * 9.80665;
  const share = (airspeed: number): number => {
    const outcome = trimmer.trim({ mode: "clutch-open", airspeed, climbRate: 0, sideslip: 0 });
    if (outcome.kind !== "trimmed") throw new Error(`no flight at ${airspeed} m/s`);
    const { pitch, roll, loads } = outcome.evaluation;
    const force = loads.parts.find(({ id }) => id === "wing")?.force ?? [0, 0, 0];
    return trimmedDigits((Math.sin(pitch) * force[0] - Math.cos(pitch) * (Math.sin(roll) * force[1] + Math.cos(roll) * force[2])) / weight);
  };
  const fast = column(quoted, "airspeed");
  const shares = [...speeds, fast].map(share);
  const { comparisons } = checkAndRecord(folder, "compound-gyroplane-note", [
    {
      quantity: "share of lift of the wing in gyroplane flight",
      error: "1",
      rows: [{ expected: column(quoted, "wing_share"), computed: shares.at(-1) ?? Number.NaN }],
      tolerance: "reported",
      note: "aircraft from memory, sharing of least power; that it lies so near is chance",
    },
    {
      quantity: "gain of the wing's share by 10 m/s",
      error: "1",
      rows: speeds.map((_, i) => ({ expected: 0, computed: (shares[i + 1] ?? 0) - (shares[i] ?? 0), bounds: [0, 1] as const })),
      tolerance: "rises",
      note: "aircraft from memory",
      along: { name: "airspeed", quantity: "speed", values: speeds },
    },
  ]);
  expect(comparisons).toHaveLength(2);
});
