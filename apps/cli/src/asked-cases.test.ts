import { expect, it } from "vitest";
import { partsOf, sortedSettings } from "./asked-cases.ts";

it("values of a sweep are cut at commas, but not inside lists, mappings and quotes", () => {
  expect(partsOf("1 kg, 2 kg,3 kg")).toEqual(["1 kg", "2 kg", "3 kg"]);
  expect(partsOf("[1, 2], {a: 1, b: 2}, uniform(1, 2) m, 'x, y'")).toEqual(["[1, 2]", "{a: 1, b: 2}", "uniform(1, 2) m", "'x, y'"]);
  expect(partsOf(" 1 kg ,, ")).toEqual(["1 kg"]);
});

it("a value of a document is told from one of the inputs by the file before it", () => {
  const set = ["inputs.altitude=300 m", "aircraft/first.yaml#rotors.main.radius = 1.2 m", "note=a#b"];
  expect(sortedSettings(set)).toEqual({
    inputs: ["inputs.altitude=300 m", "note=a#b"],
    changes: [{ file: "aircraft/first.yaml", place: "rotors.main.radius", text: "1.2 m" }],
  });
  expect(() => sortedSettings(["aircraft/first.yaml#rotors.main.radius"])).toThrow("wants a name and a value");
});
