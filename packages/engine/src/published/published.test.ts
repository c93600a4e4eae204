import { describe, expect, it } from "vitest";
import { domainDistance, domainOfRows, domainOutputs, type PublishedCheck, publishedErrors, publishedSeries } from "./index.ts";

const error = {
  field: "ct",
  unit: "relative",
  rows: 2,
  gatedRows: 2,
  bias: 0.01,
  rms: 0.02,
  largest: 0.03,
  lowest: -0.02,
  highest: 0.03,
  passed: true,
};
const made = (check: string, more: Partial<PublishedCheck>): PublishedCheck => ({
  check,
  component: "rotor",
  title: check,
  source: check,
  reference: "measured",
  domain: [],
  series: [],
  errors: [],
  ...more,
});
const points = [
  [0.2, 0.005],
  [0.4, 0.004],
];
const checks = [
  made("slow", {
    domain: [
      { name: "advanceRatio", low: 0, high: 0 },
      { name: "reynoldsNumber", low: 1e5, high: 1e6 },
    ],
    errors: [{ ...error, quantity: "thrust" }],
  }),
  made("fast", {
    domain: [{ name: "advanceRatio", low: 0.2, high: 0.4 }],
    series: [{ label: "measured", x: "advanceRatio", y: "ct", points }],
    errors: [{ ...error, quantity: "lift over drag", field: "liftToDrag" }],
  }),
  made("closed-form", { reference: "formula", domain: [{ name: "advanceRatio", low: 0, high: 9 }] }),
  made("cell", { component: "battery", reference: "computed", series: [{ label: "table", x: "time", y: "voltage", points }] }),
];

describe("the distance from the range held against published data", () => {
  it("is zero inside and says which check is nearest", () => {
    expect(domainDistance("rotor", { advanceRatio: 0.3 }, checks)).toEqual({ distance: 0, nearest: "fast", outside: [] });
    expect(domainDistance("rotor", { advanceRatio: 0, reynoldsNumber: 5e5 }, checks).nearest).toBe("slow");
  });
  it("counts widths outside, Reynolds numbers by factors, and names what lies outside", () => {
    const { distance, outside } = domainDistance("rotor", { advanceRatio: 0.5 }, checks);
    expect(distance).toBeCloseTo(0.5, 12);
    expect(outside).toEqual([{ name: "advanceRatio", value: 0.5, low: 0.2, high: 0.4 }]);
    expect(domainDistance("rotor", { advanceRatio: 0, reynoldsNumber: 1e7 }, checks.slice(0, 1)).distance).toBeCloseTo(1, 12);
    const both = domainDistance("rotor", { advanceRatio: 0.1, reynoldsNumber: 1e4 }, checks.slice(0, 1));
    expect(both.distance).toBeCloseTo(Math.SQRT2, 12);
    expect(both.outside.map(({ name }) => name)).toEqual(["advanceRatio", "reynoldsNumber"]);
  });
  it("takes what arithmetic leaves of nothing for nothing", () => {
    expect(domainDistance("rotor", { advanceRatio: 6e-18, reynoldsNumber: 5e5 }, checks)).toEqual({
      distance: 0,
      nearest: "slow",
      outside: [],
    });
  });
  it("does not take a check for near that is silent about what others state", () => {
    const silent = [...checks, made("silent", { domain: [{ name: "advanceRatio", low: 0, high: 1 }] })];
    const at = { advanceRatio: 0.02, reynoldsNumber: 1.5e6 };
    expect(domainDistance("rotor", at, silent).nearest).toBe("slow");
    expect(domainDistance("rotor", { ...at, reynoldsNumber: 1e9 }, silent)).toEqual({ distance: 0, nearest: "silent", outside: [] });
  });
  it("takes regressions only where nothing was measured", () => {
    expect(domainDistance("rotor", { advanceRatio: 5 }, checks).nearest).not.toBe("closed-form");
    expect(domainDistance("battery", {}, checks)).toEqual({ distance: 0, nearest: "cell", outside: [] });
    expect(domainDistance("kite", { advanceRatio: 1 }, checks)).toEqual({ distance: null, nearest: null, outside: [] });
  });
  it("is never anything but a number or null, whatever it is asked", () => {
    for (const value of [Number.NaN, Number.POSITIVE_INFINITY, -1e300, 0, null, undefined]) {
      const found = domainDistance("rotor", { advanceRatio: value, reynoldsNumber: value }, checks);
      expect(domainOutputs.safeParse(found).success).toBe(true);
    }
  });
  it("of rows is that of the row farthest out", () => {
    const rows = [{ advanceRatio: 0.3 }, { advanceRatio: 0.6 }, { advanceRatio: 0.45 }];
    expect(domainOfRows("rotor", rows, checks).distance).toBeCloseTo(1, 12);
    expect(domainOfRows("rotor", [], checks).nearest).toBeNull();
  });
});

describe("published points and errors", () => {
  it("come from the nearest check that has them, named with their source", () => {
    expect(publishedSeries("rotor", "advanceRatio", "ct", { advanceRatio: 0 }, checks)).toEqual([
      { name: "measured, fast", meaning: "measured", weight: "thin", x: [0.2, 0.4], y: [0.005, 0.004] },
    ]);
    expect(publishedSeries("rotor", "advanceRatio", "power", {}, checks)).toEqual([]);
    expect(publishedSeries("rotor", "advanceRatio", "ct", { advanceRatio: 0.7 }, checks)).toEqual([]);
    expect(publishedSeries("battery", "time", "voltage", {}, checks)[0]?.meaning).toBe("neutral");
  });
  it("are those of a field where one is asked for", () => {
    expect(publishedErrors("rotor", { advanceRatio: 0.3 }, "ct", checks)?.check).toBe("slow");
    expect(publishedErrors("rotor", { advanceRatio: 0.3 }, undefined, checks)?.errors[0]?.quantity).toBe("lift over drag");
    expect(publishedErrors("rotor", {}, "power", checks)).toBeNull();
  });
  it("are those on record for the autorotating rotor", () => {
    const at = { advanceRatio: 0.3 };
    expect(domainDistance("rotor", at).distance).toBe(0);
    const [series] = publishedSeries("rotor", "advanceRatio", "ct", { advanceRatio: 0.3, tipMach: 0.4 });
    expect(series?.meaning).toBe("measured");
    expect(series?.x.length).toBeGreaterThan(3);
    expect(publishedErrors("rotor", at, "ct")?.errors[0]?.rows).toBeGreaterThan(10);
  });
});
