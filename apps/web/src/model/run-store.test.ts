import { describe, expect, it } from "vitest";
import type { Computed, RunEvent } from "./catalogue.ts";
import { askedText, type Client, canonical, createRunStore, isStale, pageState } from "./run-store.ts";

const computed = (name: string): Computed =>
  ({ result: { analysis: name, cases: [{ inputs: {}, outputs: {} }] }, view: { cases: [null] } }) as unknown as Computed;
const refused = {
  result: { cases: [{ inputs: {}, problem: { kind: "no-equilibrium", message: "Too fast." } }] },
  view: { cases: [null] },
} as unknown as Computed;

function bench() {
  const asked: { inputs: Record<string, unknown>; on: (event: RunEvent) => void; cancelled: boolean }[] = [];
  const client: Client = {
    ask(_analysis, inputs, on) {
      const one = { inputs: inputs as Record<string, unknown>, on, cancelled: false };
      asked.push(one);
      return () => {
        one.cancelled = true;
      };
    },
  };
  const store = createRunStore(client, () => 0);
  const last = () => {
    const one = asked.at(-1);
    if (!one) throw new Error("nothing asked");
    return one;
  };
  const state = (inputs = asked.at(-1)?.inputs ?? {}) => pageState(store.getState().runs.q, askedText("toy", inputs));
  return {
    store,
    asked,
    last,
    state,
    ask: (inputs: Record<string, unknown>, again = false) => store.getState().ask("q", "toy", inputs, again),
  };
}

describe("a run", () => {
  it("goes from empty over working and coarse to exact", () => {
    const { ask, last, state } = bench();
    expect(state()).toBe("empty");
    ask({ a: 1 });
    expect(state()).toBe("working");
    last().on({ kind: "progress", progress: { done: 1, total: 4, doing: "speeds" } });
    last().on({ kind: "partial", computed: computed("toy"), statedError: "5 %" });
    expect(state()).toBe("coarse");
    last().on({ kind: "result", computed: computed("toy") });
    expect(state()).toBe("exact");
  });

  it("is working, not exact, from the moment that something else is asked", () => {
    const { ask, last, state } = bench();
    ask({ a: 1 });
    last().on({ kind: "result", computed: computed("toy") });
    expect(state({ a: 2 })).toBe("working");
  });

  it("cancels the one before and listens to it no more", () => {
    const { ask, asked, last, state } = bench();
    ask({ a: 1 });
    ask({ a: 2 });
    expect(asked.map((one) => one.cancelled)).toEqual([true, false]);
    asked[0]?.on({ kind: "result", computed: computed("late") });
    expect(state()).toBe("working");
    last().on({ kind: "result", computed: computed("toy") });
    expect(state()).toBe("exact");
  });

  it("is not started twice for the same inputs, in whatever order they are written, unless asked again", () => {
    const { ask, asked, last } = bench();
    ask({ a: 1, b: 2 });
    ask({ b: 2, a: 1 });
    last().on({ kind: "result", computed: computed("toy") });
    ask({ a: 1, b: 2 });
    expect(asked).toHaveLength(1);
    ask({ a: 1, b: 2 }, true);
    expect(asked).toHaveLength(2);
  });

  it("keeps the last good picture as stale when it is stopped before anything came", () => {
    const { store, ask, last, state } = bench();
    ask({ a: 1 });
    last().on({ kind: "result", computed: computed("toy") });
    ask({ a: 2 });
    store.getState().stop("q");
    expect(last().cancelled).toBe(true);
    expect(state()).toBe("stale");
    const run = store.getState().runs.q;
    expect(run && isStale(run)).toBe(true);
    expect(run?.progress).toBeUndefined();
  });

  it("keeps the finished part, as coarse, when it is stopped after some came", () => {
    const { store, ask, last, state } = bench();
    ask({ a: 1 });
    last().on({ kind: "partial", computed: computed("toy"), statedError: "5 %" });
    store.getState().stop("q");
    expect(state()).toBe("coarse");
  });

  it("shows a refusal in words and keeps the picture before it", () => {
    const { store, ask, last, state } = bench();
    ask({ a: 1 });
    last().on({ kind: "result", computed: computed("toy") });
    ask({ a: "x" });
    last().on({ kind: "problem", problems: [{ kind: "unit", message: "Not a speed.", path: "a" }] });
    expect(state()).toBe("error");
    expect(store.getState().runs.q?.problems[0]?.path).toBe("a");
    expect(store.getState().runs.q?.shown).toBeDefined();
  });

  it("parts a refusal of several inputs, with the paths that the form knows", () => {
    const { store, ask, last } = bench();
    ask({ wind: { speed: "x" } });
    const problems = [
      { path: "inputs.wind.speed", message: "wind.speed: not a speed." },
      { path: "inputs", message: "Give a route." },
    ];
    const problem = { kind: "invalid-inputs", message: "two", problems };
    last().on({
      kind: "result",
      computed: { result: { cases: [{ inputs: {}, problem }] }, view: { cases: [null] } } as unknown as Computed,
    });
    expect(store.getState().runs.q?.problems.map((one) => [one.kind, one.path])).toEqual([
      ["invalid-inputs", "wind.speed"],
      ["invalid-inputs", ""],
    ]);
    expect(store.getState().runs.q?.problems[0]?.message).toBe("not a speed.");
  });

  it("leaves the place out of a sentence that stands at that place, whatever way it is written", () => {
    const { store, ask, last } = bench();
    ask({ a: 1 });
    const problems = [
      { path: "inputs.points.0.thrust", message: "points[0].thrust: too much." },
      { path: "inputs.motor.resistance", message: 'motor: "resistance" is missing' },
      { path: "inputs.points.2", message: "points[2]: one of them is needed" },
      { path: "inputs.wind", message: "windy: not this place" },
    ];
    last().on({ kind: "problem", problems: [{ kind: "invalid-inputs", message: "four", problems }] });
    expect(store.getState().runs.q?.problems.map(({ message }) => message)).toEqual([
      "too much.",
      '"resistance" is missing',
      "one of them is needed",
      "windy: not this place",
    ]);
  });

  it("gives the reason when no case has an answer", () => {
    const { store, ask, last, state } = bench();
    ask({ a: 1 });
    last().on({ kind: "result", computed: refused });
    expect(state()).toBe("error");
    expect(store.getState().runs.q?.problems[0]?.message).toBe("Too fast.");
  });
});

describe("canonical inputs", () => {
  it("keep the order of lists and forget the order of keys", () => {
    expect(canonical({ b: [2, 1], a: { d: 1, c: 2 } })).toBe(canonical({ a: { c: 2, d: 1 }, b: [2, 1] }));
    expect(canonical({ b: [2, 1] })).not.toBe(canonical({ b: [1, 2] }));
  });
});
