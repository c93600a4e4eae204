import { describe, expect, it } from "vitest";
import { comparisonFigure, errorText, standingOf, standingSentence, type ValidationRow } from "./index.ts";

const plain = (text: string) => text.replaceAll("\u00a0", " ");
const row: ValidationRow = {
  check: "tunnel",
  source: "someone-1935",
  title: "Report 1",
  reference: "measured",
  quantity: "thrust coefficient",
  rows: 3,
  gatedRows: 3,
  bias: "−4.2 %",
  rms: "5.8 %",
  largest: "11 %",
  tolerance: "±12 %",
  passed: true,
  picture: {
    quantity: "dimensionless",
    along: { name: "advance ratio", quantity: "dimensionless" },
    rows: [
      [0.4, 0.005, 0.0051],
      [0.3, 0.006, 0.0058, -0.1, 0.1],
      [0.2, 0.007, 0.0068],
    ],
  },
};

describe("errors in words", () => {
  it("are decimals, and only the smallest raised powers of ten", () => {
    expect(plain(errorText("+5·10^-4 %"))).toBe("+0.0005 %");
    expect(plain(errorText("−9·10^-6"))).toBe("−0.000009");
    expect(plain(errorText("1.5·10^-3 %"))).toBe("0.0015 %");
    expect(plain(errorText("3·10^-9"))).toBe("3 × 10⁻⁹");
    expect(plain(errorText("±12 % below 105 rpm"))).toBe("±12 % below 105 rpm");
    expect(errorText(-0.012345)).toBe("−0.0123");
  });
});

describe("the picture of a comparison", () => {
  it("has the computed values as a line and the published ones as marks, along the axis", () => {
    const figure = comparisonFigure(row);
    expect(figure?.series.map(({ name, meaning, x }) => [name, meaning, x])).toEqual([
      ["computed", "rotor", [0.2, 0.3, 0.4]],
      ["measured", "measured", [0.2, 0.3, 0.4]],
    ]);
    expect(figure?.series[0]?.y).toEqual([0.0068, 0.0058, 0.0051]);
    expect(plain(figure?.caption ?? "")).toBe("thrust coefficient: bias −4.2 %, rms 5.8 %, largest 11 % of 3 rows; gate ±12 %: met");
  });
  it("marks computed values one by one where several lie at one place, and numbers rows without an axis", () => {
    const rows = [...(row.picture?.rows ?? []), [0.3, 0.0061, 0.0059]];
    const branching = comparisonFigure({ ...row, picture: { quantity: "dimensionless", along: row.picture?.along ?? null, rows } });
    expect(branching?.series[0]?.y.filter((_, index) => index % 2 === 1)).toEqual([null, null, null, null]);
    expect(branching?.series[0]?.y).toHaveLength(8);
    const [first = [], second = [], third = []] = row.picture?.rows ?? [];
    const twoRuns = comparisonFigure({
      ...row,
      picture: { quantity: "dimensionless", along: row.picture?.along ?? null, rows: [second, third, first] },
    });
    expect(twoRuns?.series[0]?.y).toEqual([0.0068, null, 0.0058, null, 0.0051, null]);
    const numbered = comparisonFigure({ ...row, picture: { quantity: "length", along: null, rows } });
    expect(numbered?.series[0]?.x).toEqual([1, 2, 3, 4]);
    expect(numbered?.y.quantity).toBe("length");
  });
  it("is none of a single row, or without rows on record", () => {
    const { picture, ...bare } = row;
    expect(comparisonFigure(bare)).toBeUndefined();
    expect(picture && comparisonFigure({ ...row, picture: { ...picture, rows: picture.rows.slice(0, 1) } })).toBeUndefined();
  });
});

describe("how an answer stands to published data", () => {
  const outside = [{ name: "advanceRatio", value: 0.85, low: 0.13, high: 0.7 }];
  it("is read from the outputs, with the errors of the nearest check", () => {
    const standing = standingOf({ domain: { distance: 0, nearest: "tunnel", outside: [] } }, [row, { ...row, check: "other" }]);
    expect(standing?.comparisons).toEqual([row]);
    expect(standing && standingSentence(standing)).toBe("Inside the range compared with measurements: Report 1.");
    expect(standingOf({ thrust: 1 }, [row])).toBeUndefined();
    expect(standingOf(null, [row])).toBeUndefined();
  });
  it("says what lies outside, and by how much", () => {
    const standing = standingOf({ domain: { distance: 0.26, nearest: "tunnel", outside } }, [row]);
    expect(standing && standingSentence(standing)).toBe(
      "Outside the range compared with measurements, 0.3 of its width outside: advance ratio 0.85 (compared 0.13 to 0.7); nearest is Report 1.",
    );
  });
  it("says when nothing was compared, or nothing measured", () => {
    const none = standingOf({ domain: { distance: null, nearest: null, outside: [] } }, [row]);
    expect(none && standingSentence(none)).toBe("No published check covers this.");
    const formula = standingOf({ domain: { distance: 0, nearest: "tunnel", outside: [] } }, [{ ...row, reference: "formula" }]);
    expect(formula && standingSentence(formula)).toContain("held against computed values only");
  });
});
