// Which aircraft the trim level reduced knows, and what is said of the others.
import type { AircraftDefinition } from "@wingseed/engine";
import { beforeAll, expect, test } from "vitest";
import { emergencyPower, networkPower, reducedAircraft } from "../../packages/engine/src/aircraft/index.ts";
import { demoDefinition } from "./demo-flight.ts";

let baseline: AircraftDefinition;
beforeAll(async () => {
  baseline = await demoDefinition("baseline");
});

const first = <Entry>(entries: readonly Entry[], change: Partial<Entry>): Entry[] =>
  entries.map((entry, index) => (index === 0 ? { ...entry, ...change } : entry));
const without = <Entry extends { readonly id: string }>(entries: readonly Entry[], id: string) =>
  entries.filter((entry) => entry.id !== id);
const control = (aircraft: AircraftDefinition, id: string) => {
  const found = aircraft.controls.find((one) => one.id === id);
  if (found === undefined) throw new Error(`no control ${id}`);
  return found;
};

const changes: readonly (readonly [string, (aircraft: AircraftDefinition) => Partial<AircraftDefinition>])[] = [
  ["does not say under reduced", () => ({ reduced: undefined })],
  ["The rotor second has no place in it.", ({ rotors }) => ({ rotors: rotors.flatMap((one) => [one, { ...one, id: "second" }]) })],
  ["The shaft of the rotor main is tilted.", ({ rotors }) => ({ rotors: first(rotors, { shaftTilt: { back: 0.1, right: 0 } }) })],
  ["The rotor main turns clockwise.", ({ rotors }) => ({ rotors: first(rotors, { turns: "clockwise" }) })],
  ["The rotor main must teeter", ({ rotors }) => ({ rotors: first(rotors, { articulation: { kind: "rigid" } }) })],
  ["No control sets the collective of main.", ({ controls }) => ({ controls: without(controls, "collective") })],
  ["No drive line turns main.", ({ driveLines }) => ({ driveLines: without(driveLines, "rotor-drive") })],
  ["states no constantEfficiency", ({ driveLines }) => ({ driveLines: first(driveLines, { constantEfficiency: undefined }) })],
  ["are not alike", ({ propellers }) => ({ propellers: first(propellers, { diameter: 0.5 }) })],
  ["do not mirror each other", ({ propellers }) => ({ propellers: first(propellers, { place: { x: 0, y: 0.8, z: 0 } }) })],
  ["The surface wing is not flat.", ({ surfaces }) => ({ surfaces: first(surfaces, { tipDihedral: 0.05 }) })],
  ["The surface wing lifts at no angle", ({ surfaces }) => ({ surfaces: first(surfaces, { zeroLiftAngle: -0.03 }) })],
  [
    "The wing wing is moved in flight by wing-incidence.",
    (aircraft) => ({
      controls: [
        ...without(aircraft.controls, "wing-incidence"),
        { ...control(aircraft, "wing-incidence"), setting: { kind: "free", minimum: 0, maximum: 0.1 } },
      ] as AircraftDefinition["controls"],
    }),
  ],
  ["meets a share of wing", ({ interference }) => ({ interference: first(interference, { share: 0.5 }) })],
];

test.each(changes)("%s", (sentence, change) => {
  const found = reducedAircraft({ ...baseline, ...change(baseline) });
  expect(found).toMatchObject({ kind: "not-reducible", reason: expect.stringContaining(sentence) });
});

test("downwash that is left out in the file is left out of the reduced aircraft", () => {
  const off = reducedAircraft({ ...baseline, interference: first(baseline.interference, { active: false }) });
  const on = reducedAircraft(baseline);
  expect(on).toMatchObject({ wing: { rotorDownwashFactor: 1 }, body: { rotorDownwashFactor: 1 } });
  expect(off).toMatchObject({ wing: { rotorDownwashFactor: 0 }, body: { rotorDownwashFactor: 1 } });
});

test("what stays on takes 25 W from the pack, the emergency battery gives 38 W in a manoeuvre with lights", () => {
  const calm = { lightsOn: false, manoeuvring: false, payloadPower: 0 };
  expect(networkPower(baseline.electrical, calm).atTerminals).toBeCloseTo(25, 9);
  expect(emergencyPower(baseline.electrical, { lightsOn: true, manoeuvring: true })).toBeCloseTo(38, 9);
});
