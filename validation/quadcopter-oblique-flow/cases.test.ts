import { beforeAll, test } from "vitest";
import { type CaseRow, column, readCases } from "../cases.ts";
import { type CheckProject, checkProject, trimmedDigits } from "../project-run.ts";
import { checkAndRecord } from "../record.ts";

interface Propeller {
  readonly thrust: number;
  readonly rotationRate: number;
  readonly shaftPower: number;
}
interface TrimOutputs {
  readonly optimum: { readonly state: { readonly propellers: readonly Propeller[] } | null };
}

const folder = new URL("./", import.meta.url);
const cases = readCases(new URL("cases.csv", folder));
let project: CheckProject;
beforeAll(async () => {
  project = await checkProject(new URL("../delivery-quadcopter/project/", folder));
});

/** Mean thrust over rate squared and power over rate cubed of the four: coefficients but for a constant. */
function coefficients(airspeed: number): { readonly thrust: number; readonly power: number } {
  const { optimum } = project.outputsOf<TrimOutputs>("trim", { airspeed, loading: { payload: "none" }, altitude: 380 });
  if (optimum.state === null) throw new Error(`no level flight at ${airspeed} m/s`);
  const { propellers } = optimum.state;
  const mean = (of: (propeller: Propeller) => number) => propellers.reduce((sum, one) => sum + of(one), 0) / propellers.length;
  return {
    thrust: mean(({ thrust, rotationRate }) => thrust / rotationRate ** 2),
    power: mean(({ shaftPower, rotationRate }) => shaftPower / rotationRate ** 3),
  };
}

test("propellers of a flying quadcopter keep their thrust at a given rate, as measured on one rotor", { timeout: 300_000 }, () => {
  const rest = coefficients(0);
  const flown = cases.map((row: CaseRow) => coefficients(column(row, "airspeed")));
  const along = { name: "airspeed", quantity: "speed" as const, values: cases.map((row) => column(row, "airspeed")) };
  checkAndRecord(folder, "kolaei-2018", [
    {
      quantity: "thrust coefficient of the propellers over that in hover",
      error: "1",
      rows: flown.map(({ thrust }) => ({ expected: 1, computed: trimmedDigits(thrust / rest.thrust), bounds: [-0.02, 1] })),
      tolerance: "not below",
      note: "only the sign of the trend is published as text",
      along,
    },
    {
      quantity: "power coefficient of the propellers over that in hover",
      error: "1",
      rows: flown.map(({ power }) => ({ expected: 1, computed: trimmedDigits(power / rest.power) })),
      tolerance: "reported",
      note: "nearly constant in the words of the source",
      along,
    },
  ]);
});
