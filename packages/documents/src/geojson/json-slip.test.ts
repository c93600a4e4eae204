import fc from "fast-check";
import { expect, test } from "vitest";
import { jsonSlip } from "./json-slip.ts";

function isJson(text: string): boolean {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
}

test("finds a slip exactly where the platform's own reader refuses", () => {
  const pieces = fc.array(
    fc.constantFrom(
      "{",
      "}",
      "[",
      "]",
      ",",
      ":",
      '"a"',
      "1",
      "-0.5e3",
      "01",
      "true",
      "nul",
      " ",
      "\n",
      '"\\u00e9"',
      '"\\x"',
      '"\t"',
      "'a'",
    ),
    { maxLength: 9 },
  );
  const nearlyJson = fc.oneof(
    fc.json(),
    pieces.map((parts) => parts.join("")),
    fc
      .tuple(fc.json(), fc.nat(), fc.string({ maxLength: 2 }))
      .map(([text, at, put]) => text.slice(0, at % (text.length + 1)) + put + text.slice(at % (text.length + 1))),
  );
  fc.assert(
    fc.property(nearlyJson, (text) => {
      expect(jsonSlip(text) === undefined).toBe(isJson(text));
    }),
    { numRuns: 5000 },
  );
});

test("the text before a slip can still become JSON", () => {
  expect(jsonSlip('{"a": [1, 2,], "b": 3}')).toEqual({ offset: 12, read: '"], "b": 3}"', expected: "a value" });
  expect(jsonSlip('{"a" 1}')).toMatchObject({ offset: 5, expected: '":"' });
});
