import { expect, test } from "vitest";
import { column, readCases } from "../cases.ts";
import { checkAndRecord } from "../record.ts";
import { outputsOf } from "../run-analysis.ts";

const folder = new URL("./", import.meta.url);
const degree = Math.PI / 180;
const cases = readCases(new URL("cases.csv", folder));
const rotationRate = (3000 * Math.PI) / 30;
const { rows } = outputsOf<{ readonly rows: readonly { readonly ct: number; readonly cp: number }[] }>("propeller", {
  propeller: { diameter: 18 * 0.0254, pitch: 6.1 * 0.0254, blades: 2, section: { kind: "cambered", thickness: 0.08, camber: 0.05 } },
  altitude: 0,
  points: [
    { rotationRate },
    ...cases.map((row) => ({
      rotationRate,
      advanceRatio: column(row, "advance_ratio"),
      inflowAngle: (90 - column(row, "disc_angle_deg")) * degree,
    })),
  ],
});
const [rest, ...oblique] = rows;

test("a small rotor in oblique flow keeps or gains thrust for nearly the same power, as measured", () => {
  if (!rest) throw new Error("no row at rest");
  const discAngle = {
    name: "disc angle to the stream",
    quantity: "angle" as const,
    values: cases.map((row) => column(row, "disc_angle_deg") * degree),
  };
  checkAndRecord(folder, "kolaei-2018", [
    {
      quantity: "thrust coefficient over that at rest",
      error: "1",
      rows: cases.map((_, i) => ({ expected: 1, computed: (oblique[i]?.ct ?? Number.NaN) / rest.ct, bounds: [-0.02, 1] as const })),
      tolerance: "not below",
      note: "only the sign of the trend is published as text",
      along: discAngle,
    },
    {
      quantity: "power coefficient over that at rest",
      error: "1",
      rows: cases.map((_, i) => ({ expected: 1, computed: (oblique[i]?.cp ?? Number.NaN) / rest.cp, bounds: [-0.15, 0.15] as const })),
      tolerance: "±0.15",
      note: "nearly constant in the words of the source",
      along: discAngle,
    },
  ]);
});

test("thrust in the plane of the disc grows with the advance ratio", () => {
  for (let i = 0; i + 1 < cases.length; i += 2) {
    if (column(cases[i] as (typeof cases)[number], "disc_angle_deg") > 10) continue;
    expect(oblique[i + 1]?.ct).toBeGreaterThan(oblique[i]?.ct ?? 0);
  }
});
