import { beforeAll, expect, test } from "vitest";
import type { FullStart } from "../../packages/engine/src/equilibrium/full/index.ts";
import { column, readCases } from "../cases.ts";
import { checkProject, trimmedDigits } from "../project-run.ts";
import { checkAndRecord } from "../record.ts";

const folder = new URL("./", import.meta.url);
const [measured] = readCases(new URL("cases.csv", folder));
if (!measured) throw new Error("cases.csv has no row");
const degree = Math.PI / 180;

interface Shared {
  /** Of the weight, by the rotor. */
  readonly share: number;
  readonly rotationRate: number;
}

const speeds = [25, 35, 45, 55, 62.6];
/** Wing settings as flown [deg]. */
const settings = [2.2, 0.9, -0.5];
const flown: (Shared | undefined)[][] = [];

beforeAll(async () => {
  const trimmer = (await checkProject(new URL("../naca-tr-434-aircraft/project/", folder))).trimmer();
  const weight = trimmer.airframe.mass * 9.80665;
  for (const setting of settings) {
    let start: FullStart | undefined;
    flown.push(
      speeds.map((airspeed) => {
        const stuck = { "wing-incidence": setting * degree };
        const point = { mode: "clutch-open", airspeed, climbRate: 0, sideslip: 0, stuck } as const;
        const warm = start ? trimmer.trimFrom(point, [start], "table") : undefined;
        const outcome = warm?.kind === "trimmed" ? warm : trimmer.trim(point);
        if (outcome.kind !== "trimmed") return undefined;
        start = outcome.start;
        const { loads, pitch, roll, rotorStates } = outcome.evaluation;
        const force = loads.parts.find(({ id }) => id === "rotor")?.force ?? [0, 0, 0];
        // Against gravity, which stands in body axes as pitch and roll say.
        const down = -Math.sin(pitch) * force[0] + Math.cos(pitch) * (Math.sin(roll) * force[1] + Math.cos(roll) * force[2]);
        return { share: trimmedDigits(-down / weight), rotationRate: trimmedDigits((rotorStates[0] as number) / 6.858) };
      }),
    );
  }
}, 300_000);

test("the sharing of lift of the winged gyroplane is reported, its trends gated", () => {
  const fast = flown[0]?.at(-1);
  if (fast === undefined) throw new Error("no level flight at high speed");
  const note = "mass and wing from memory";
  const [slow, high] = [0, speeds.length - 1];
  const of = (setting: number, speed: number): Shared => flown[setting]?.[speed] ?? { share: Number.NaN, rotationRate: Number.NaN };
  const along = (values: readonly number[]) => ({ name: "wing incidence", quantity: "angle" as const, values });
  checkAndRecord(folder, "wheatley-1935", [
    {
      quantity: "share of lift of the rotor at high speed",
      error: "1",
      rows: [{ expected: column(measured, "rotor_share"), computed: fast.share }],
      tolerance: "reported",
      note: `${note}; wing incidence 2.2°`,
    },
    {
      quantity: "rotor speed at high speed",
      error: "relative",
      rows: [{ expected: column(measured, "rotation_rate"), computed: fast.rotationRate }],
      tolerance: "reported",
      note: `${note}; wing incidence 2.2°; published digit by optical recognition`,
      quantityKind: "rotationRate",
    },
    {
      quantity: "change of the rotor's share from 25 to 62.6 m/s",
      error: "1",
      rows: settings.map((_, k) => ({ expected: 0, computed: of(k, high).share - of(k, slow).share, bounds: [-1, 0] })),
      tolerance: "falls",
      note,
      missed: "rises at the smallest setting: the wing's angle without lift is not known and taken as 0",
      along: along(settings.map((setting) => setting * degree)),
    },
    {
      quantity: "rotor speed at 62.6 m/s over that at 25 m/s",
      error: "1",
      rows: settings.map((_, k) => ({ expected: 1, computed: of(k, high).rotationRate / of(k, slow).rotationRate, bounds: [-1, 0] })),
      tolerance: "falls",
      note,
      missed: "rises at the two smaller settings, where the wing takes hardly more load with speed, for the same reason",
      along: along(settings.map((setting) => setting * degree)),
    },
    {
      quantity: "gain of the rotor's share by the next smaller setting",
      error: "1",
      rows: settings
        .slice(1)
        .flatMap((_, k) =>
          speeds.map((_s, i) => ({ expected: 0, computed: of(k + 1, i).share - of(k, i).share, bounds: [0, 1] as const })),
        ),
      tolerance: "rises",
      note,
      along: { name: "airspeed", quantity: "speed", values: settings.slice(1).flatMap(() => speeds) },
    },
    {
      quantity: "gain of rotor speed by the next smaller setting",
      error: "1",
      rows: settings
        .slice(1)
        .flatMap((_, k) =>
          speeds.map((_s, i) => ({ expected: 1, computed: of(k + 1, i).rotationRate / of(k, i).rotationRate, bounds: [0, 1] as const })),
        ),
      tolerance: "rises",
      note,
      along: { name: "airspeed", quantity: "speed", values: settings.slice(1).flatMap(() => speeds) },
    },
  ]);
  for (const row of flown) for (const one of row) expect(one?.share).toBeGreaterThan(0.4);
});
