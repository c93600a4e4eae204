import { beforeAll, expect, test } from "vitest";
import { type CaseRow, column, readCases } from "../cases.ts";
import { type CheckProject, checkProject, trimmedDigits } from "../project-run.ts";
import { checkAndRecord } from "../record.ts";

interface TrimOutputs {
  readonly takeoffMass: number;
  readonly optimum: { readonly state: { readonly electricPower: number; readonly pitch: number } | null };
}

const folder = new URL("./", import.meta.url);
const cases = readCases(new URL("cases.csv", folder));
const siteAltitude = 380;
/** Three complete hover flights of 121 to 142 s [W]. */
const hoverFlights = [459, 461, 473];
let project: CheckProject;
beforeAll(async () => {
  project = await checkProject(new URL("project/", folder));
});

interface Flown {
  readonly mass: number;
  readonly power: number;
  readonly pitch: number;
}

const known = new Map<string, Flown>();

function flown(airspeed: number, payload: number): Flown {
  const record = { 0: "none", 0.25: "light", 0.5: "heavy" }[payload];
  const asked = `${airspeed}, ${record}`;
  const before = known.get(asked);
  if (before) return before;
  const { optimum, takeoffMass } = project.outputsOf<TrimOutputs>("trim", {
    airspeed,
    loading: { payload: record },
    altitude: siteAltitude,
  });
  if (optimum.state === null) throw new Error(`no level flight at ${airspeed} m/s with ${payload} kg`);
  const found = { mass: takeoffMass, power: trimmedDigits(optimum.state.electricPower), pitch: optimum.state.pitch };
  known.set(asked, found);
  return found;
}

test("a delivery quadcopter takes from its battery what was logged", { timeout: 300_000 }, () => {
  const at = (row: CaseRow): Flown => flown(column(row, "airspeed"), column(row, "payload"));
  const computed = cases.map(at);
  const slow = (of: (i: number) => number, i: number): number => {
    const first = cases.findIndex(
      (row) => column(row, "airspeed") === 4 && column(row, "payload") === column(cases[i] as CaseRow, "payload"),
    );
    return of(i) / of(first);
  };
  const faster = cases.flatMap((row, i) => (column(row, "airspeed") > 4 ? [i] : []));
  const exponents = [4, 8, 12].map((speed) => {
    const rows = cases.flatMap((row, i) => (column(row, "airspeed") === speed ? [i] : []));
    const [first, last] = [rows[0] ?? 0, rows.at(-1) ?? 0];
    const of = (power: (i: number) => number) =>
      Math.log(power(last) / power(first)) / Math.log((computed[last]?.mass ?? 1) / (computed[first]?.mass ?? 1));
    return { speed, measured: of((i) => column(cases[i] as CaseRow, "power")), computed: of((i) => computed[i]?.power ?? Number.NaN) };
  });
  const hover = flown(0, 0);
  checkAndRecord(folder, "rodrigues-2021", [
    {
      quantity: "battery power in level flight, nothing fitted",
      error: "relative",
      rows: cases.map((row, i) => ({ expected: column(row, "power"), computed: computed[i]?.power ?? Number.NaN, bounds: [-0.12, 0.12] })),
      tolerance: "±12 %",
      note: "propellers, motors and drag areas from memory",
      missed: "hover within 6 %, but 8 m/s a sixth low and 12 m/s a fifth: momentum theory saves power with speed where the logs show none",
      quantityKind: "power",
      along: { name: "airspeed", quantity: "speed", values: cases.map((row) => column(row, "airspeed")) },
    },
    {
      quantity: "battery power over that at 4 m/s",
      error: "relative",
      rows: faster.map((i) => ({
        expected: slow((k) => column(cases[k] as CaseRow, "power"), i),
        computed: slow((k) => computed[k]?.power ?? Number.NaN, i),
        bounds: [-0.04, 0.04],
      })),
      tolerance: "±4 %",
      note: "flatness of power over speed",
      missed:
        "power falls by 10 to 13 % where the logs stay flat or rise; drag of body and propellers in oblique flow is too small in this aircraft file or in the model",
      along: { name: "airspeed", quantity: "speed", values: faster.map((i) => column(cases[i] as CaseRow, "airspeed")) },
    },
    {
      quantity: "exponent of power over take-off mass",
      error: "1",
      rows: exponents.map(({ computed: found }) => ({ expected: 1.5, computed: found, bounds: [-0.25, 0.25] })),
      tolerance: "1.5 ± 0.25",
      note: `the logs themselves give ${exponents.map(({ measured }) => measured.toFixed(2)).join(", ")} at 4, 8 and 12 m/s`,
      along: { name: "airspeed", quantity: "speed", values: exponents.map(({ speed }) => speed) },
    },
    {
      quantity: "battery power in hover",
      error: "relative",
      rows: hoverFlights.map((power) => ({ expected: power, computed: hover.power })),
      tolerance: "reported",
      note: "payload of the hover flights not stated, taken as none",
      quantityKind: "power",
    },
  ]);
});

test("it flies faster with its nose further down", { timeout: 300_000 }, () => {
  const pitches = [0, 4, 8, 12].map((airspeed) => flown(airspeed, 0).pitch);
  for (let i = 1; i < pitches.length; i++) expect(pitches[i]).toBeLessThan(pitches[i - 1] as number);
});
