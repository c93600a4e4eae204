import { expect, it } from "vitest";
import { partsOf } from "./asked-cases.ts";

it("values of a sweep are cut at commas, but not inside lists, mappings and quotes", () => {
  expect(partsOf("1 kg, 2 kg,3 kg")).toEqual(["1 kg", "2 kg", "3 kg"]);
  expect(partsOf("[1, 2], {a: 1, b: 2}, uniform(1, 2) m, 'x, y'")).toEqual(["[1, 2]", "{a: 1, b: 2}", "uniform(1, 2) m", "'x, y'"]);
  expect(partsOf(" 1 kg ,, ")).toEqual(["1 kg"]);
});
