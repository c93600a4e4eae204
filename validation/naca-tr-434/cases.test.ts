import { expect, test } from "vitest";
import { column, readCases } from "../cases.ts";
import { checkAndRecord } from "../record.ts";
import { runAnalysis } from "../run-analysis.ts";

interface RotorOutputs {
  readonly drag: number;
  readonly lift: number;
  readonly advanceRatio: number;
  readonly rotationRate: number;
}

const density = 1.225;
const weight = 1334 * 9.80665;
const dragArea = 2.36;
const degree = Math.PI / 180;
const rotor = {
  radius: 6.858,
  blades: 4,
  chord: 0.526,
  rootCutout: 0.15,
  articulation: "hinged",
  lockNumber: 15,
  section: "naca-0015",
  sectionDragIncrement: 0.004,
};

interface Glide {
  readonly airspeed: number;
  readonly liftToDrag: number;
  readonly sink: number;
  readonly rotationRate: number;
}

/** Steady glide of rotor and parasite drag, without the wing; undefined where the rotor does not autorotate under the weight. */
function glide(airspeed: number): Glide | undefined {
  const parasite = 0.5 * density * airspeed ** 2 * dragArea;
  let [thrust, found] = [weight, undefined as RotorOutputs | undefined];
  for (let repetition = 0; repetition < 3; repetition++) {
    const answered = runAnalysis<RotorOutputs>("rotor", {
      rotor,
      air: { density },
      airspeed,
      collective: 1.9 * degree,
      thrust,
      shaftTorque: 0,
    });
    if (answered.problem) return undefined;
    found = answered.outputs;
    // The rotor's force and the parasite drag together carry the weight along the flight path's normal and against it.
    thrust *= weight / Math.hypot(found.lift, found.drag + parasite);
  }
  if (!found) return undefined;
  const liftToDrag = found.lift / (found.drag + parasite);
  return { airspeed, liftToDrag, sink: airspeed / Math.hypot(1, liftToDrag), rotationRate: found.rotationRate };
}

const glides = Array.from({ length: 23 }, (_, i) => 11 + 1.5 * i).flatMap((airspeed) => glide(airspeed) ?? []);
const best = (better: (one: Glide, other: Glide) => boolean): Glide => glides.reduce((chosen, one) => (better(one, chosen) ? one : chosen));
const slowest = best((one, other) => one.sink < other.sink);
const flattest = best((one, other) => one.liftToDrag > other.liftToDrag);
const [measured] = readCases(new URL("cases.csv", import.meta.url));
if (!measured) throw new Error("cases.csv has no row");

test("the gliding gyroplane of NACA TR 434 is reported", () => {
  const note = "rotor and parasite drag alone: no wing; weight from memory";
  checkAndRecord(new URL("./", import.meta.url), "wheatley-1932", [
    {
      quantity: "largest lift over drag in a glide",
      error: "relative",
      rows: [{ expected: column(measured, "largest_lift_to_drag"), computed: flattest.liftToDrag }],
      tolerance: "reported",
      note,
    },
    {
      quantity: "least sink speed",
      error: "relative",
      rows: [{ expected: column(measured, "least_sink"), computed: slowest.sink }],
      tolerance: "reported",
      note,
      quantityKind: "speed",
    },
    {
      quantity: "airspeed of least sink",
      error: "relative",
      rows: [{ expected: column(measured, "speed_of_least_sink"), computed: slowest.airspeed }],
      tolerance: "reported",
      note,
      quantityKind: "speed",
    },
  ]);
});

test("sink is least inside the speed range, and the flattest glide is faster", () => {
  const [first, last] = [glides[0], glides.at(-1)] as [Glide, Glide];
  expect(first.sink).toBeGreaterThan(slowest.sink);
  expect(last.sink).toBeGreaterThan(1.5 * slowest.sink);
  expect(flattest.airspeed).toBeGreaterThan(slowest.airspeed);
  expect(slowest.airspeed).toBeLessThan(25);
});

test("rotor speed is set by the load and hardly by the airspeed", () => {
  const rates = glides.filter((one) => one.airspeed > 15 && one.airspeed < 40).map((one) => one.rotationRate);
  expect(Math.max(...rates) / Math.min(...rates)).toBeLessThan(1.2);
});
