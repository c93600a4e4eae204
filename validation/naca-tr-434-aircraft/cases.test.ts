import { beforeAll, expect, test } from "vitest";
import type { FullStart } from "../../packages/engine/src/equilibrium/full/index.ts";
import { column, readCases } from "../cases.ts";
import { checkProject, trimmedDigits } from "../project-run.ts";
import { checkAndRecord } from "../record.ts";

const folder = new URL("./", import.meta.url);
const [measured] = readCases(new URL("cases.csv", folder));
if (!measured) throw new Error("cases.csv has no row");
/** Wing and swept disc. */
const referenceArea = 9.4 + Math.PI * 6.858 ** 2;

interface Glide {
  readonly airspeed: number;
  readonly liftToDrag: number;
  readonly sink: number;
  readonly dragCoefficient: number;
  readonly rotationRate: number;
}

const glides: Glide[] = [];
beforeAll(async () => {
  const trimmer = (await checkProject(new URL("project/", folder))).trimmer();
  const weight = trimmer.airframe.mass * 9.80665;
  let start: FullStart | undefined;
  // The fastest first: every slower glide starts from its neighbour.
  for (const airspeed of [60, 50, 40, 35, 32, 29, 26, 24, 22, 20, 18, 17, 16, 15, 14, 13, 12]) {
    const point = { mode: "glide", airspeed, climbRate: 0, sideslip: 0 } as const;
    const outcome = start ? trimmer.trimFrom(point, [start], "table") : trimmer.trim(point);
    if (outcome.kind !== "trimmed") continue;
    start = outcome.start;
    const { evaluation } = outcome;
    const sink = -evaluation.climbRate;
    glides.unshift({
      airspeed,
      liftToDrag: evaluation.airspeed / sink,
      sink,
      dragCoefficient: (weight * sink) / airspeed / (0.5 * 1.225 * airspeed ** 2 * referenceArea),
      rotationRate: (evaluation.rotorStates[0] as number) / 6.858,
    });
  }
}, 300_000);

const best = (better: (one: Glide, other: Glide) => boolean): Glide => glides.reduce((chosen, one) => (better(one, chosen) ? one : chosen));
const slowest = () => best((one, other) => one.sink < other.sink);
const flattest = () => best((one, other) => one.liftToDrag > other.liftToDrag);

test("the gliding gyroplane of NACA TR 434, whole and in balance, is reported", () => {
  const note = "mass, wing and tail from memory";
  const one = (quantity: string, name: string, computed: number) => ({
    quantity,
    error: "relative" as const,
    rows: [{ expected: column(measured, name), computed: trimmedDigits(computed) }],
    tolerance: "reported",
    note,
  });
  checkAndRecord(folder, "wheatley-1932", [
    one("largest lift over drag in a glide, whole aircraft", "largest_lift_to_drag", flattest().liftToDrag),
    { ...one("least sink speed, whole aircraft", "least_sink", slowest().sink), quantityKind: "speed" },
    { ...one("airspeed of least sink, whole aircraft", "speed_of_least_sink", slowest().airspeed), quantityKind: "speed" },
    {
      ...one(
        "least drag coefficient on wing and disc",
        "least_drag_coefficient",
        best((a, b) => a.dragCoefficient < b.dragCoefficient).dragCoefficient,
      ),
      note: "the drag area of the body is chosen by it",
    },
  ]);
});

test("sink is least inside the speed range, and the flattest glide is faster", () => {
  const [first, last] = [glides[0], glides.at(-1)] as [Glide, Glide];
  expect(first.airspeed).toBeLessThan(16);
  expect(first.sink).toBeGreaterThan(slowest().sink);
  expect(last.sink).toBeGreaterThan(1.5 * slowest().sink);
  expect(flattest().airspeed).toBeGreaterThan(slowest().airspeed);
  expect(slowest().airspeed).toBeLessThan(25);
});

test("rotor speed falls slowly as the wing takes its share", () => {
  const rates = glides.filter(({ airspeed }) => airspeed >= 20 && airspeed <= 50).map(({ rotationRate }) => rotationRate);
  for (let i = 1; i < rates.length; i++) expect(rates[i]).toBeLessThan((rates[i - 1] as number) * 1.005);
  expect(Math.max(...rates) / Math.min(...rates)).toBeLessThan(1.2);
});
