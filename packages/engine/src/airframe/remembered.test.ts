import { describe, expect, it } from "vitest";
import { Remembered } from "./remembered.ts";

const asking = (memory: Remembered<string>, ...numbers: number[]) => {
  memory.asked.set(numbers);
  return memory.found();
};

describe("what a part remembers", () => {
  it("is its last answer, to the same numbers only", () => {
    const memory = new Remembered<string>(2);
    expect(asking(memory, 1, 2)).toBeUndefined();
    memory.keep("first");
    expect(asking(memory, 1, 2)).toBe("first");
    expect(asking(memory, 1, 2 + 1e-15)).toBeUndefined();
    memory.keep("second");
    expect(asking(memory, 1, 2)).toBeUndefined();
  });

  it("keeps a pinned answer beside it until another is pinned", () => {
    const memory = new Remembered<string>(1);
    asking(memory, 1);
    memory.keep("base");
    memory.pin();
    asking(memory, 2);
    memory.keep("moved");
    expect([asking(memory, 1), asking(memory, 2)]).toEqual(["base", "moved"]);
    memory.forget();
    expect([asking(memory, 1), asking(memory, 2)]).toEqual(["base", undefined]);
    memory.clear();
    expect(asking(memory, 1)).toBeUndefined();
  });

  it("never answers to what is no number", () => {
    const memory = new Remembered<string>(1);
    asking(memory, Number.NaN);
    memory.keep("nothing");
    expect(asking(memory, Number.NaN)).toBeUndefined();
  });
});
