// How the demo's aircraft moves by itself: rotor speed as a state, trends of balance, manoeuvres. The modes of aeroplanes are held in validation/.
import { type AircraftDefinition, analyses, type Outcome, type ProjectView } from "@wingseed/engine";
import { describe, expect, it } from "vitest";
import type { StabilityOutputs } from "../../packages/engine/src/analyses/stability/output-schema.ts";
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

async function asked(
  inputs: Record<string, unknown>,
  change?: (aircraft: AircraftDefinition) => AircraftDefinition,
): Promise<StabilityOutputs> {
  const analysis = analyses.find(({ name }) => name === "stability");
  if (!analysis) throw new Error("no stability");
  const view = await demoView();
  const path = "aircraft/baseline.yaml";
  const document = view.documents[path];
  if (!document) throw new Error("no aircraft");
  const data = change ? change(await demoDefinition("baseline")) : document.data;
  const project: ProjectView = { ...view, documents: { ...view.documents, [path]: { ...document, data } } };
  const outcome: Outcome<StabilityOutputs> = analysis.run(project, analysis.inputs.parse({ aircraft: path, ...inputs }), context);
  if (!outcome.outputs) throw new Error(outcome.problem?.message);
  return outcome.outputs;
}

const short = { duration: 6 };
const cruise = { airspeeds: [24], modes: ["clutch-open"], controls: "optimum" };
const first = (outputs: StabilityOutputs) => {
  const [condition] = outputs.conditions;
  if (!condition || condition.problem !== null) throw new Error(condition?.problem ?? "no condition");
  return condition;
};

describe("an aircraft on its autorotating rotor", () => {
  // Thomson & Houston, 23rd European Rotorcraft Forum, 1997, abstract: in flight data of a light gyroplane the longitudinal modes are benign and
  // classical, but rotor speed must be in the structure of the model. No numbers are printed there, so none are compared.
  it("has rotor speed as a state of its own slow mode; held, the classical modes are others", async () => {
    const condition = first(await asked({ ...cruise, manoeuvres: short }));
    const rotor = condition.modes.find(({ name }) => name === "rotor speed");
    expect(rotor?.participation[0]?.state).toBe("rotor-speed-1");
    expect(condition.modes.map(({ name }) => name)).toEqual(
      expect.arrayContaining(["short period", "phugoid", "Dutch roll", "roll", "spiral"]),
    );
    const frozen = (name: string) => condition.frozenModes.find((mode) => mode.name === name);
    expect(frozen("rotor speed")).toBeUndefined();
    const phugoid = condition.modes.find(({ name }) => name === "phugoid");
    const moved = Math.abs((frozen("phugoid")?.real ?? 0) / (phugoid?.real ?? 1) - 1);
    expect(moved).toBeGreaterThan(0.02);
  });

  it("loses rotor speed in a push-over, the more the less load factor is left", async () => {
    const flown = [];
    for (const pitch of [0.15, 0.3, 0.45]) flown.push((await asked({ ...cruise, manoeuvres: { ...short, pitch } })).manoeuvres[0]);
    const loads = flown.map((each) => each?.lowestLoadFactor ?? 0);
    const rotors = flown.map((each) => each?.lowestRotorShare ?? 0);
    expect(flown.map((each) => each?.name)).toEqual(["push-over", "push-over", "push-over"]);
    for (let k = 1; k < 3; k++) {
      expect(loads[k]).toBeLessThan(loads[k - 1] as number);
      expect(rotors[k]).toBeLessThan(rotors[k - 1] as number);
    }
    expect(rotors[2]).toBeLessThan(0.98);
    for (const each of flown) expect(Math.abs(each?.energyGap ?? 1)).toBeLessThan(1e-3);
  });
});

describe("static margins", () => {
  const closed = { airspeeds: [24], modes: ["clutch-closed"], controls: "optimum", manoeuvres: short };
  const moved = (x: number) => (aircraft: AircraftDefinition) => ({
    ...aircraft,
    emptyCentre: { ...aircraft.emptyCentre, x: aircraft.emptyCentre.x + x },
  });

  it("fall by as much as the centre of gravity moves aft, and the place of the rearmost centre stays", async () => {
    const [plain, aft] = [await asked(closed), await asked(closed, moved(-0.04))];
    const shift = (plain.centre ?? 0) - (aft.centre ?? 0);
    expect(shift).toBeGreaterThan(0.01);
    const fallen = (first(plain).incidenceMargin ?? 0) - (first(aft).incidenceMargin ?? 0);
    expect(fallen / shift).toBeGreaterThan(0.6);
    expect(fallen / shift).toBeLessThan(1.4);
    expect(first(aft).rearmostCentre ?? 1).toBeCloseTo(first(plain).rearmostCentre ?? 0, 2);
  });

  it("grow with a larger tail", async () => {
    const larger = (aircraft: AircraftDefinition) => ({
      ...aircraft,
      surfaces: aircraft.surfaces.map((part) => (part.id === "tailplane" ? { ...part, area: part.area * 1.5 } : part)),
    });
    const [plain, tailed] = [await asked(closed), await asked(closed, larger)];
    expect(first(tailed).incidenceMargin ?? 0).toBeGreaterThan((first(plain).incidenceMargin ?? 0) + 0.01);
  });

  it("say where the thrust line runs above the centre of gravity, by how far the propellers are raised", async () => {
    const raised = (aircraft: AircraftDefinition) => ({
      ...aircraft,
      propellers: aircraft.propellers.map((part) => ({ ...part, place: { ...part.place, z: part.place.z - 0.1 } })),
    });
    const [plain, high] = [await asked(closed), await asked(closed, raised)];
    expect((first(high).thrustLineHeight ?? 0) - (first(plain).thrustLineHeight ?? 0)).toBeCloseTo(0.1, 2);
  });
});
