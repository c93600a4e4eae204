// Transitions of the demo aircraft: books of energy, what peak power must be, the clutch, the ends, the corridor.
import { openProject } from "@wingseed/documents";
import type { Context, Outcome, ReadDocument } from "@wingseed/engine";
import { beforeAll, describe, expect, test } from "vitest";
import type { TransitionOutputs } from "../../packages/engine/src/analyses/transition/output-schema.ts";
import { transition } from "../../packages/engine/src/analyses/transition/transition.ts";
import type { FullTrimmed } from "../../packages/engine/src/equilibrium/index.ts";
import { flyTransition, transitionPlan } from "../../packages/engine/src/motion/index.ts";
import { rotorSpeedRange, widenedRanges } from "../../packages/engine/src/performance/index.ts";
import { demoTrimmer, judged } from "./six-trim.ts";

const documents: Record<string, ReadDocument> = {};

beforeAll(async () => {
  const project = openProject("demo");
  for (const { path, kind } of await project.list()) {
    const reading = kind === "raster" ? undefined : await project.readDocument(path);
    if (reading && !reading.problems) documents[path] = reading.value as ReadDocument;
  }
});

const context: Context<TransitionOutputs> = {
  progress: () => {},
  cancelled: () => false,
  partial: () => {},
  analysis: () => {
    throw new Error("no other analysis is asked");
  },
};

function asked(given: object): Outcome<TransitionOutputs> {
  return transition.run({ documents, rasters: {} }, transition.inputs.parse(given), context);
}

const speeds = [0, 6, 12, 16, 20, 22, 24];

describe.each(["baseline", "revised"])("the %s aircraft, from hover to cruise and back", (name) => {
  let outputs: TransitionOutputs;
  beforeAll(() => {
    const outcome = asked({ aircraft: `aircraft/${name}.yaml`, speeds });
    if (!outcome.outputs) throw new Error(outcome.problem?.message);
    outputs = transition.outputs.parse(outcome.outputs);
  }, 120_000);

  test("is flown to the end both ways", () => {
    expect(outputs.ways.map(({ way, flown, refusal }) => [way, flown, refusal])).toEqual([
      ["hover to cruise", true, null],
      ["cruise to hover", true, null],
    ]);
  });

  test("balances its books within 0.1 %, and what went into motion is half the mass times the change of speed squared", () => {
    for (const { energy, rows } of outputs.ways) {
      expect(Math.abs(energy?.gap ?? 1)).toBeLessThan(1e-3);
      const [first, last] = [rows[0], rows.at(-1)];
      if (!first || !last || !energy) throw new Error("a flown way has rows and books");
      const gained = (outputs.takeoffMass / 2) * (last.airspeed ** 2 - first.airspeed ** 2);
      expect(Math.abs(energy.kinetic / gained - 1)).toBeLessThan(2e-3);
      const work = energy.airframeWork + energy.shaftWork + energy.driveWork;
      expect(Math.abs(energy.kinetic + energy.height + energy.rotors - work)).toBeLessThan(1e-3 * Math.abs(energy.shaftWork));
    }
  });

  test("draws from the pack what its rows add up to, and more than the shafts get", () => {
    for (const { energy, rows } of outputs.ways) {
      let drawn = 0;
      for (let i = 1; i < rows.length; i++) {
        const [a, b] = [rows[i - 1], rows[i]];
        if (a && b) drawn += ((a.electricPower + b.electricPower) / 2) * (b.time - a.time);
      }
      expect(Math.abs(drawn / (energy?.electricEnergy ?? 1) - 1)).toBeLessThan(5e-3);
      expect(energy?.electricEnergy).toBeGreaterThan(energy?.driveWork ?? 0);
    }
  });

  test("ends as the trims at its ends are", () => {
    const [out, back] = outputs.ways;
    expect(Math.abs(out?.summary?.endAirspeedError ?? 1)).toBeLessThan(0.05);
    expect(Math.abs(back?.summary?.endAirspeedError ?? 1)).toBeLessThan(0.05);
    expect(Math.abs((out?.rows.at(-1)?.electricPower ?? 0) / (outputs.cruisePower ?? 1) - 1)).toBeLessThan(0.01);
    expect(Math.abs((back?.rows.at(-1)?.electricPower ?? 0) / (outputs.hoverPower ?? 1) - 1)).toBeLessThan(0.01);
    expect(Math.abs((back?.rows[0]?.electricPower ?? 0) / (outputs.cruisePower ?? 1) - 1)).toBeLessThan(1e-4);
  });

  test("opens the clutch when the torque has gone, and gives none after that", () => {
    const rows = outputs.ways[0]?.rows ?? [];
    const opened = rows.findIndex(({ clutch }) => clutch === "open");
    expect(opened).toBeGreaterThan(0);
    expect(Math.abs(outputs.ways[0]?.summary?.clutchTorque ?? 1)).toBeLessThan(0.01 * (rows[0]?.driveTorque ?? 0));
    for (const { clutch, driveTorque, drivePowers } of rows.slice(opened)) {
      expect([clutch, driveTorque, drivePowers[0]]).toEqual(["open", 0, 0]);
    }
    expect(rows.every(({ driveTorque }) => driveTorque >= 0)).toBe(true);
  });

  test("closes it again on the way back, and hovers on its torque", () => {
    const rows = outputs.ways[1]?.rows ?? [];
    expect(rows[0]?.clutch).toBe("open");
    expect(rows.at(-1)?.clutch).toBe("closed");
    expect(rows.every(({ driveTorque }) => driveTorque >= 0)).toBe(true);
  });

  const steady = (airspeed: number): number => {
    const above = outputs.corridor.findIndex((row) => row.airspeed >= airspeed);
    const [a, b] = [outputs.corridor[Math.max(above - 1, 0)], outputs.corridor[above]];
    if (!a || !b) throw new Error(`the corridor does not reach ${airspeed} m/s`);
    const share = b.airspeed > a.airspeed ? (airspeed - a.airspeed) / (b.airspeed - a.airspeed) : 0;
    return (a.holdPower ?? 0) + share * ((b.holdPower ?? 0) - (a.holdPower ?? 0));
  };

  test("at its peak on the way out draws no less than steady flight at that speed", () => {
    const summary = outputs.ways[0]?.summary;
    expect(summary?.peakPower).toBeGreaterThan(0.98 * steady(summary?.peakAirspeed ?? 0));
  });

  test("slowing down draws no less than steady flight less what motion and rotor give back", () => {
    const rows = outputs.ways[1]?.rows ?? [];
    for (let i = 5; i < rows.length - 5; i++) {
      const [before, row, after] = [rows[i - 5], rows[i], rows[i + 5]];
      if (!before || !row || !after) continue;
      const time = after.time - before.time;
      const motion = ((outputs.takeoffMass / 2) * (before.airspeed ** 2 - after.airspeed ** 2)) / time;
      const rotor = ((0.7 / 2) * (before.tipSpeed ** 2 - after.tipSpeed ** 2)) / 1.15 ** 2 / time;
      // Thrust that need not be made spares at most twice its power.
      const spared = 2 * (Math.max(motion, 0) + Math.max(rotor, 0));
      expect(row.electricPower).toBeGreaterThan(0.93 * steady(Math.max(row.airspeed, 0)) - spared);
    }
  });

  test("keeps its height within half a metre and every limit that is not a rating for a while", () => {
    for (const { summary, limits } of outputs.ways) {
      expect(Math.max(summary?.heightGained ?? 9, summary?.heightLost ?? 9)).toBeLessThan(0.5);
      expect(limits.filter(({ kept }) => !kept)).toEqual([]);
    }
  });

  test("has a corridor that holds the cheapest rotor speed of every flight, and no open flight in hover", () => {
    expect(outputs.corridor.map(({ airspeed }) => airspeed)).toEqual(speeds);
    for (const { closed, open } of outputs.corridor)
      for (const { tipSpeed, slowest, fastest } of [closed, open]) {
        if (tipSpeed === null) continue;
        expect(slowest?.tipSpeed).toBeLessThanOrEqual(tipSpeed + 1e-6);
        expect(fastest?.tipSpeed).toBeGreaterThanOrEqual(tipSpeed - 1e-6);
      }
    expect(outputs.corridor[0]?.open.electricPower).toBeNull();
    expect(outputs.corridor[0]?.open.limit).not.toBeNull();
    expect(outputs.holdable).toMatchObject({ everySpeed: true, gaps: [] });
  });

  test("has a sentence, a brief of at most 40 characters and pictures", () => {
    const inputs = transition.inputs.parse({});
    const { brief, met } = transition.answer(outputs, inputs);
    expect(brief.length).toBeLessThanOrEqual(40);
    expect(met).toBe(true);
    const figures = transition.figures(outputs, inputs);
    expect(figures.map(({ id }) => id).slice(0, 5)).toEqual(["out", "back", "corridor", "hold", "summary"]);
    expect(transition.limits(outputs, inputs)[0]?.share).toBeLessThanOrEqual(1 + 1e-3);
  });
});

describe("the corridor of rotor speeds", () => {
  test("ends where a step farther does not fly, and a neighbour that reaches farther takes it along", async () => {
    const trimmer = await demoTrimmer("baseline");
    const hooks = { cancelled: () => {} };
    const point = (airspeed: number) => ({ climbRate: 0, sideslip: 0, mode: "clutch-open", airspeed }) as const;
    const flown = [22, 24].map((airspeed) => {
      const free = trimmer.trim(point(airspeed));
      if (free.kind !== "trimmed") throw new Error(`it flies at ${airspeed} m/s with the clutch open`);
      return free;
    });
    const ranges = flown.map((free) => rotorSpeedRange(trimmer, free, hooks));
    expect(ranges[1]?.slowest).toMatchObject({ tipSpeed: 55, limit: "rotor speed range" });
    const wide = widenedRanges(trimmer, ranges, hooks);
    wide.forEach((range, i) => {
      if (!range) throw new Error("it has a range");
      expect(range.fastest.tipSpeed).toBeGreaterThanOrEqual((ranges[i]?.fastest.tipSpeed ?? 0) - 1e-9);
      const { flight, tipSpeed, limit } = range.fastest;
      // The flight at the end is one: at that rotor speed, without torque, in balance by another hand's sums.
      expect(Math.abs((flight.evaluation.rotorStates[0] ?? 0) - tipSpeed)).toBeLessThan(1e-6);
      const { unbalanced } = judged(trimmer, flight);
      for (const [what, value] of Object.entries(unbalanced)) expect(Math.abs(value), what).toBeLessThan(1e-5);
      if (limit !== "rotor speed range") {
        const beyond = trimmer.trimFrom({ ...flight.point, tipSpeed: tipSpeed + 1 }, [flight.start]);
        expect(beyond.kind).not.toBe("trimmed");
      }
    });
  }, 60_000);

  test("a flight that speeds up carries its mass times its acceleration along", async () => {
    const trimmer = await demoTrimmer("baseline");
    const level = { climbRate: 0, sideslip: 0, mode: "clutch-open", airspeed: 22 } as const;
    const fast = trimmer.trim({ ...level, acceleration: 1 });
    if (fast.kind !== "trimmed") throw new Error("it speeds up at 22 m/s");
    const { loads, pitch } = fast.evaluation;
    // Wings level, no sideslip: the force ahead is what it takes, the force up the weight.
    const ahead = loads.force[0] * Math.cos(pitch) + loads.force[2] * Math.sin(pitch);
    const up = loads.force[0] * Math.sin(pitch) - loads.force[2] * Math.cos(pitch);
    expect(ahead / trimmer.airframe.mass).toBeCloseTo(1, 2);
    expect(up / (trimmer.airframe.mass * 9.80665)).toBeCloseTo(1, 3);
  }, 60_000);
});

describe("a transition by itself", () => {
  test("takes less peak power the more slowly it speeds up, and more time", async () => {
    const trimmer = await demoTrimmer("baseline");
    const level = { climbRate: 0, sideslip: 0 };
    const hover = trimmer.trim({ ...level, mode: "clutch-closed", airspeed: 0 });
    const cruise = trimmer.trim({ ...level, mode: "clutch-open", airspeed: 22 });
    const flown = [0.8, 1.3, 2].map((acceleration) => {
      const request = {
        way: "hover to cruise",
        hover: hover as FullTrimmed,
        cruise: cruise as FullTrimmed,
        meetSpeed: 19,
        acceleration,
      } as const;
      const plan = transitionPlan(trimmer, request);
      if ("kind" in plan) throw new Error(plan.reason);
      expect(plan.acceleration).toBe(acceleration);
      const trace = flyTransition(trimmer, plan);
      if ("kind" in trace) throw new Error(`no gain at ${trace.airspeed}`);
      expect(trace.stopped).toBeUndefined();
      return { peak: Math.max(...trace.samples.map(({ loads }) => loads.electricPower)), time: trace.samples.at(-1)?.time ?? 0 };
    });
    const [slow, middle, fast] = flown;
    expect(slow?.peak).toBeLessThan(middle?.peak ?? 0);
    expect(middle?.peak).toBeLessThan(fast?.peak ?? 0);
    expect(slow?.time).toBeGreaterThan(middle?.time ?? 0);
    expect(middle?.time).toBeGreaterThan(fast?.time ?? 0);
  }, 120_000);

  test("that has no cruise with the clutch open says what stands in the way", () => {
    const { outputs } = asked({ aircraft: "aircraft/baseline.yaml", cruiseSpeed: 4, speeds: [0, 4] });
    if (!outputs) throw new Error("it is an answer");
    expect(outputs.cruiseSpeed).toBeNull();
    for (const way of outputs.ways) expect(way).toMatchObject({ flown: false, summary: null, rows: [] });
    expect(outputs.ways[0]?.refusal).toMatch(/does not cruise with the clutch open at 4.0 m\/s: .+ stands in the way/);
    expect(transition.answer(outputs, transition.inputs.parse({})).met).toBe(false);
  }, 60_000);

  test("is refused where two inputs contradict, and where there is no clutch", () => {
    expect(asked({ cruiseSpeed: 15, clutchSpeed: 18 }).problem?.kind).toBe("contradicting-inputs");
    const path = "aircraft/baseline.yaml";
    const whole = documents[path] as ReadDocument;
    const data = whole.data as { driveLines: object[] };
    const fixed = { ...data, driveLines: data.driveLines.map((line) => ({ ...line, clutch: "none" })) };
    const view = { documents: { ...documents, [path]: { ...whole, data: fixed } }, rasters: {} };
    expect(transition.run(view, transition.inputs.parse({ aircraft: path }), context).problem?.kind).toBe("no-clutch");
  });
});
