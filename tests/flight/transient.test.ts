// The demo's aircraft through a step: what must hold whatever its numbers are.
import { analyses, type Outcome } from "@wingseed/engine";
import { describe, expect, it } from "vitest";
import type { TransientOutputs } from "../../packages/engine/src/analyses/transient/output-schema.ts";
import { packPower } from "../../packages/engine/src/analyses/transient/pack-power.ts";
import { demoView } from "../always-answer/demo-view.ts";
import { demoDefinition } from "./demo-flight.ts";

const context = {
  progress: () => {},
  cancelled: () => false,
  partial: () => {},
  analysis: (): never => {
    throw new Error("nothing else is at hand");
  },
};

async function asked(inputs: Record<string, unknown>): Promise<Outcome<TransientOutputs>> {
  const analysis = analyses.find(({ name }) => name === "transient");
  if (!analysis) throw new Error("no transient");
  return analysis.run(
    await demoView(),
    analysis.inputs.parse({ aircraft: "aircraft/baseline.yaml", controls: "optimum", ...inputs }),
    context,
  );
}

async function flown(inputs: Record<string, unknown>): Promise<TransientOutputs> {
  const { outputs, problem } = await asked(inputs);
  if (!outputs) throw new Error(problem?.message);
  return outputs;
}

const hover = { airspeed: 0, duration: 6 };

describe("a flight through a step", () => {
  it("goes on as it was when a control jams where it stands: the trim is a steady state of the motion", async () => {
    const outputs = await flown({ airspeed: 20, duration: 8, step: { kind: "jam", toward: "held" } });
    expect(outputs.recovered).toBe(true);
    expect(outputs.peakRoll + outputs.peakPitch).toBeLessThan(1e-4);
    expect(Math.abs(outputs.heightLost)).toBeLessThan(0.01);
    expect(outputs.samples.at(-1)?.airspeed).toBeCloseTo(outputs.samples[0]?.airspeed ?? 0, 3);
  });

  it("closes its books of energy to a thousandth, in every kind of step", async () => {
    for (const step of [
      { kind: "engine-stop" },
      { kind: "gust", from: "right" },
      { kind: "block-loss", blocks: 11 },
      { kind: "jam", control: "rudder" },
    ]) {
      const { energyGap } = await flown({ ...hover, step });
      expect(Math.abs(energyGap)).toBeLessThan(1e-3);
    }
  });

  it("costs more rotor speed and more height the later somebody reacts to a stopped drive", async () => {
    const late = [];
    for (const reaction of [0.2, 0.6, 1]) late.push(await flown({ ...hover, step: { kind: "engine-stop", reaction } }));
    const lowest = late.map(({ rotors: [rotor] }) => rotor?.lowestShare ?? 0);
    for (let k = 1; k < late.length; k++) expect(lowest[k]).toBeLessThan(lowest[k - 1] as number);
    for (const { heightLost, lowestLoadFactor } of late) {
      expect(heightLost).toBeGreaterThan(5);
      expect(lowestLoadFactor).toBeLessThan(0.95);
    }
  });

  it("turns farther and loads more in a stronger gust, and comes back", async () => {
    const gusts = [];
    for (const speed of [1, 2, 4]) gusts.push(await flown({ airspeed: 0, duration: 16, step: { kind: "gust", from: "right", speed } }));
    const rolls = gusts.map(({ peakRoll }) => peakRoll);
    for (let k = 1; k < gusts.length; k++) expect(rolls[k]).toBeGreaterThan(rolls[k - 1] as number);
    for (const { recovered, stopped } of gusts) expect([recovered, stopped]).toEqual([true, null]);
  });

  it("keeps its height on the blocks that are left as long as they give the power, and sinks faster the fewer there are", async () => {
    const lost = [];
    // A second and a half after the loss: later the rotor has stalled, for nobody lowers the collective.
    for (const blocks of [8, 11, 12, 13])
      lost.push((await flown({ airspeed: 0, duration: 2.5, step: { kind: "block-loss", blocks } })).heightLost);
    expect(Math.abs(lost[0] ?? 1)).toBeLessThan(0.01);
    expect(lost[1]).toBeGreaterThan(0.02);
    for (let k = 2; k < lost.length; k++) expect(lost[k]).toBeGreaterThan(lost[k - 1] as number);
  });

  it("is the same in every bit when flown again", async () => {
    const step = { kind: "gust", from: "ahead", speed: 5 };
    expect(await flown({ airspeed: 10, duration: 4, step })).toEqual(await flown({ airspeed: 10, duration: 4, step }));
  });

  it("says so where there is no flight to begin from, or no such part", async () => {
    expect((await asked({ airspeed: 80 })).problem?.message).toContain("no level flight at 80 m/s");
    expect((await asked({ ...hover, step: { kind: "jam", control: "flap" } })).problem?.message).toContain("elevator");
    expect((await asked({ ...hover, step: { kind: "engine-stop", lines: ["third-drive"] } })).problem?.message).toContain("rotor-drive");
    expect((await asked({ ...hover, step: { kind: "block-loss", blocks: 99 } })).problem?.message).toContain("cannot fall out");
  });
});

describe("the most that blocks give", () => {
  it("grows with their number and charge, and is none without blocks", async () => {
    const aircraft = await demoDefinition("baseline");
    expect(packPower(aircraft, 0, 0.5)).toBe(0);
    const [few, many] = [packPower(aircraft, 2, 0.5), packPower(aircraft, 12, 0.5)];
    expect(many / few).toBeGreaterThan(5);
    expect(many / few).toBeLessThan(6.001);
    expect(packPower(aircraft, 2, 0.05)).toBeLessThan(few);
    // Two blocks of 14 cells, 15 A each: open voltage 14 × 3.73 V at half charge, less 30 A through half of a block's 14 × 42 mΩ and through 4 mΩ.
    expect(few).toBeCloseTo(30 * (14 * 3.73 - 30 * ((14 * 0.042) / 2 + 0.004)), 6);
  });
});
