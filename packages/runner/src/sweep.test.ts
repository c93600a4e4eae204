import { expect, it } from "vitest";
import { sweep, withInput } from "./sweep.ts";

it("a sweep gives every combination, the last axis fastest, and leaves what was given alone", () => {
  const given = { a: 0, rotor: { radius: 1 } };
  expect(sweep(given, { a: [1, 2], "inputs.rotor.radius": [3, 4] })).toEqual([
    { a: 1, rotor: { radius: 3 } },
    { a: 1, rotor: { radius: 4 } },
    { a: 2, rotor: { radius: 3 } },
    { a: 2, rotor: { radius: 4 } },
  ]);
  expect(given).toEqual({ a: 0, rotor: { radius: 1 } });
  expect(sweep(given, {})).toEqual([given]);
});

it("an item of a list goes by its id wherever it stands, by its place only where there are no ids", () => {
  const wings = {
    wings: [
      { id: "left", area: 1 },
      { id: "right", area: 2 },
    ],
  };
  expect(withInput(wings, "wings.right.area", 3)).toEqual({
    wings: [
      { id: "left", area: 1 },
      { id: "right", area: 3 },
    ],
  });
  expect(() => withInput(wings, "wings.1.area", 3)).toThrow('no item with the id "1"');
  expect(withInput({ stations: [{ chord: 1 }] }, "stations.0.chord", 2)).toEqual({ stations: [{ chord: 2 }] });
});

it("a path that names nothing is refused", () => {
  for (const path of ["", "inputs", "a..b", "__proto__.x"]) expect(() => withInput({}, path, 1)).toThrow("does not name an input");
});
