import type { Limit } from "@wingseed/engine";
import { expect, it } from "vitest";
import { limitWord } from "./limit-word.ts";

const limit: Limit = { name: "reserve", family: "rule", share: 1, side: "lower", where: "at the end", binding: true };
const answer = (met?: boolean) => ({ sentence: [], brief: "", ...(met === undefined ? {} : { met }) });

it("says that a limit stops a flight only when that leaves something unmet", () => {
  expect(limitWord(limit, answer(false))).toBe("stops it");
  expect(limitWord(limit, answer(true))).toBe("ends it");
  expect(limitWord({ ...limit, family: "air" }, answer())).toBe("binds");
  expect(limitWord({ ...limit, binding: false }, answer(false))).toBe("");
});
