// What an answer of the six-component trim must not depend on, and what a refusal promises.
import { describe, expect, it } from "vitest";
import { atmosphereAt } from "../../packages/engine/src/environment/atmosphere/index.ts";
import { type FullPoint, type FullTrimmed, type FullTrimmer, fullObjective } from "../../packages/engine/src/equilibrium/full/index.ts";
import { fullSpeedLine } from "../../packages/engine/src/performance/index.ts";
import { demoDefinition } from "./demo-flight.ts";
import { demoTrimmer, trimmerOf } from "./six-trim.ts";

const level = (mode: FullPoint["mode"], airspeed: number): FullPoint => ({ mode, airspeed, climbRate: 0, sideslip: 0 });
const flights = [level("clutch-closed", 0), level("clutch-closed", 13), level("clutch-open", 19), level("glide", 24)];

function flown(trimmer: FullTrimmer, point: FullPoint): FullTrimmed {
  const outcome = trimmer.trim(point);
  if (outcome.kind !== "trimmed") throw new Error(`${point.mode} at ${point.airspeed} m/s: ${outcome.limit}`);
  return outcome;
}

describe("a six-component trim", () => {
  it("balances forces and moments to a billionth of the weight", async () => {
    const trimmer = await demoTrimmer("baseline");
    for (const point of flights) for (const part of flown(trimmer, point).evaluation.balance) expect(Math.abs(part)).toBeLessThan(1e-9);
  });

  it("is the same to the last bit whatever was solved before", async () => {
    const used = await demoTrimmer("baseline");
    for (const airspeed of [33, 5, 21]) used.trim(level("clutch-closed", airspeed));
    for (const point of [...flights].reverse()) used.trim(point);
    for (const point of flights) {
      const fresh = flown(await demoTrimmer("baseline"), point);
      expect([...flown(used, point).start.x]).toEqual([...fresh.start.x]);
    }
  });

  it("is the same from a neighbour as from nothing", async () => {
    const trimmer = await demoTrimmer("baseline");
    for (const point of flights) {
      const near = flown(trimmer, { ...point, airspeed: point.airspeed + 0.7 });
      const warm = trimmer.trimFrom(point, [near.start]);
      expect(warm.kind).toBe("trimmed");
      expect(fullObjective(warm as FullTrimmed) / fullObjective(flown(trimmer, point))).toBeCloseTo(1, 3);
    }
  });

  it("knows nothing cheaper beside it: no neighbour of a line leads to less", async () => {
    const trimmer = await demoTrimmer("revised");
    const speeds = [3, 6, 9, 12, 15, 18, 21, 24];
    const line = fullSpeedLine(trimmer, "clutch-closed", speeds, { progress: () => {}, cancelled: () => {} });
    line.forEach(({ outcome, airspeed }) => {
      const alone = fullObjective(flown(trimmer, level("clutch-closed", airspeed)));
      expect(outcome.kind).toBe("trimmed");
      expect(Math.abs(fullObjective(outcome as FullTrimmed) / alone - 1)).toBeLessThan(0.005);
    });
    expect(trimmer.counter.failed).toBe(0);
  });
});

describe("a refusal", () => {
  const thin = atmosphereAt({ altitude: 2500, temperatureOffset: 0, relativeHumidity: 0 });

  it("says how far its limit would have to be moved: so far and it flies, a little less and it does not", async () => {
    const aircraft = await demoDefinition("baseline");
    const point = level("glide", 10);
    const refused = trimmerOf(aircraft, { air: thin, controls: "schedule" }).trim(point);
    if (refused.kind !== "no-equilibrium" || refused.needed === undefined) throw new Error(`not refused: ${refused.kind}`);
    expect(refused.limit).toBe("rotor speed range");
    expect(refused.needed.quantity).toBe("speed");
    const [rotor] = aircraft.rotors;
    if (rotor === undefined) throw new Error("the demo has a rotor");
    const flies = (tipSpeedMaximum: number) =>
      trimmerOf({ ...aircraft, rotors: [{ ...rotor, tipSpeedMaximum }] }, { air: thin, controls: "schedule" }).trim(point).kind;
    expect(flies(refused.needed.needed + 0.05)).toBe("trimmed");
    expect(flies(refused.needed.needed - 0.05)).toBe("no-equilibrium");
  });

  it("is counted as limited, never as failed", async () => {
    const trimmer = await demoTrimmer("baseline");
    for (const airspeed of [0, 2, 5]) expect(trimmer.trim(level("clutch-open", airspeed)).kind).toBe("no-equilibrium");
    expect(trimmer.counter).toEqual({ converged: 0, limited: 3, failed: 0 });
  });
});
