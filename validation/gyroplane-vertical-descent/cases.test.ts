import { expect, test } from "vitest";
import type { FullStart } from "../../packages/engine/src/equilibrium/full/index.ts";
import { column, readCases } from "../cases.ts";
import { checkProject, trimmedDigits } from "../project-run.ts";
import { checkAndRecord } from "../record.ts";

const folder = new URL("./", import.meta.url);
const [row] = readCases(new URL("cases.csv", folder));
if (!row) throw new Error("cases.csv has no row");
const degree = Math.PI / 180;

test("the whole gyroplane comes straight down as fast as the fit of resultant force says", { timeout: 300_000 }, async () => {
  const project = await checkProject(new URL("../naca-tr-434-aircraft/project/", folder));
  // Collective let free, nothing to pull; a cyclic stick holds the moments that a tail without airspeed cannot.
  const stick = (what: string) => ({
    id: what,
    part: "rotor",
    what,
    setting: { kind: "free", minimum: -10 * degree, maximum: 10 * degree },
  });
  const trimmer = project.trimmer((aircraft) => ({
    ...aircraft,
    controls: [
      ...(aircraft.controls as readonly { readonly id: string }[]).map((control) => {
        if (control.id === "collective") return { ...control, setting: { kind: "free", minimum: -2 * degree, maximum: 6 * degree } };
        return control.id === "throttle" ? { ...control, setting: { kind: "fixed", value: 0 } } : control;
      }),
      stick("longitudinal-cyclic"),
      stick("lateral-cyclic"),
    ],
  }));
  const collectiveAt = trimmer.airframe.controls.findIndex(({ id }) => id === "collective");
  const wanted = column(row, "collective_deg");
  const step = 0.1;
  let start: FullStart | undefined;
  let slower: number | undefined;
  let computed = Number.NaN;
  // Faster and faster from where no pitch autorotates any more: the slope of induced velocity near the windmill state is steep, so that only a
  // neighbour's state is a start. The faster, the less pitch it takes.
  for (let descent = 9.5; descent < 13 && Number.isNaN(computed); descent += step) {
    const point = { mode: "clutch-open", airspeed: 0, climbRate: -descent, sideslip: 0 } as const;
    const outcome = start ? trimmer.trimFrom(point, [{ x: start.x }], "table") : trimmer.trim(point);
    start = outcome.start;
    if (outcome.kind !== "trimmed") continue;
    const collective = (outcome.evaluation.controls[collectiveAt] as number) / degree;
    if (slower !== undefined && collective <= wanted) computed = descent - (step * (wanted - collective)) / (slower - collective);
    slower = collective;
  }
  checkAndRecord(folder, "leishman-2006", [
    {
      quantity: "speed of vertical descent of a whole gyroplane",
      error: "relative",
      rows: [{ expected: column(row, "descent_speed"), computed: trimmedDigits(computed), bounds: [-0.1, 0.1] }],
      tolerance: "±10 %",
      note: "mass and wing from memory",
      quantityKind: "speed",
    },
  ]);
  expect(computed).toBeGreaterThan(0);
});
