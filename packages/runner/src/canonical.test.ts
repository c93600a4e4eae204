import fc from "fast-check";
import { expect, it } from "vitest";
import { canonicalJson } from "./canonical.ts";
import { firstNotFinite } from "./finiteness.ts";

it("equal questions have one text, whatever the order of keys, absent keys and the sign of zero", () => {
  expect(canonicalJson({ b: -0, a: [1, null, "x"], c: undefined })).toBe('{"a":[1,null,"x"],"b":0}');
  expect(canonicalJson({ a: [1, undefined, "x"], b: 0 })).toBe(canonicalJson({ b: -0, a: [1, null, "x"] }));
});

it("different values have different texts, and numbers keep all their bits", () => {
  fc.assert(
    fc.property(fc.jsonValue(), (value) => {
      expect(JSON.parse(canonicalJson(value))).toEqual(JSON.parse(JSON.stringify(value)));
    }),
  );
  expect(canonicalJson(0.1 + 0.2)).not.toBe(canonicalJson(0.3));
  expect(canonicalJson(Number.NaN)).not.toBe(canonicalJson(null));
});

it("a number that is not finite is found at any depth", () => {
  expect(firstNotFinite({ a: [{ b: 1 }, { c: [0, Number.NEGATIVE_INFINITY] }] })).toBe("/a/1/c/1");
  expect(firstNotFinite({ a: [1, "NaN", null, true] })).toBeNull();
});
