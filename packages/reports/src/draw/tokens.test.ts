import { describe, expect, it } from "vitest";
import { colorDistance, contrast, deficiencies, seenWith } from "./color-measures.ts";
import { namedTokens } from "./theme.ts";
import { categoryNames, darkTheme, lightTheme, type ThemeTokens } from "./tokens.ts";

const themes: readonly (readonly [string, ThemeTokens])[] = [
  ["light", lightTheme],
  ["dark", darkTheme],
];

/** Smallest distance of all pairs under normal sight and three simulated deficiencies. */
function smallestDistance(pairs: readonly (readonly [string, string])[]): number {
  const distances = pairs.flatMap(([a, b]) => [
    colorDistance(a, b),
    ...deficiencies.map((sight) => colorDistance(seenWith(sight, a), seenWith(sight, b))),
  ]);
  return Math.min(...distances);
}

function neighbours(scale: readonly string[]): readonly (readonly [string, string])[] {
  return scale.slice(1).map((color, index) => [scale[index] as string, color]);
}

describe("measures of color", () => {
  it("know the ends of the contrast scale", () => {
    expect(contrast("#000000", "#FFFFFF")).toBeCloseTo(21, 6);
    expect(contrast("#777777", "#777777")).toBe(1);
  });
  it("give the distance of the published example pair of blues", () => {
    // G. Sharma, W. Wu, E. Dalal, "The CIEDE2000 color-difference formula", 2005, table 1, pair 1: 2.0425 (from memory).
    expect(colorDistance([50, 2.6772, -79.7751], [50, 0, -82.7485])).toBeCloseTo(2.0425, 4);
    // Pair 25 of the same table (from memory): 1.2644.
    expect(colorDistance([60.2574, -34.0099, 36.2677], [60.4626, -34.1751, 39.4387])).toBeCloseTo(1.2644, 4);
  });
  it("leave greys as they are for every sight", () => {
    for (const sight of deficiencies) expect(colorDistance(seenWith(sight, "#808080"), "#808080")).toBeLessThan(1);
  });
});

describe.each(themes)("the %s theme", (_, theme) => {
  const grounds = [theme.ground, theme.surface];
  it("keeps text readable: at least 4.7 to 1", () => {
    const texts = [theme.ink, theme["ink-2"], theme["ink-3"], theme.handle, theme.stops, theme.care, theme.note];
    for (const text of texts) for (const ground of grounds) expect(contrast(text, ground)).toBeGreaterThanOrEqual(4.7);
  });
  it("keeps control edges and category marks visible: at least 3.1 to 1", () => {
    const marks = [theme["control-edge"], ...categoryNames.map((name) => theme[name])];
    for (const mark of marks) for (const ground of grounds) expect(contrast(mark, ground)).toBeGreaterThanOrEqual(3.1);
  });
  it("keeps the ink readable over every step of the relief and water", () => {
    for (const ground of [...theme.relief, theme.water]) expect(contrast(theme.ink, ground)).toBeGreaterThanOrEqual(7);
  });
  it("tells any two categories, and each from the handle, apart in every sight", () => {
    const colors = [...categoryNames.map((name) => theme[name]), theme.handle];
    const pairs = colors.flatMap((a, index) => colors.slice(index + 1).map((b) => [a, b] as const));
    expect(smallestDistance(pairs)).toBeGreaterThanOrEqual(13);
  });
  it("tells neighbouring steps apart", () => {
    expect(smallestDistance(neighbours(theme.w))).toBeGreaterThanOrEqual(8);
    expect(smallestDistance(neighbours(theme.p))).toBeGreaterThanOrEqual(8);
    expect(smallestDistance(neighbours(theme.d))).toBeGreaterThanOrEqual(13);
  });
  it("names every color once", () => {
    const named = namedTokens(theme);
    expect(Object.keys(named)).toHaveLength(19 + 21 + 6);
    for (const value of Object.values(named)) expect(value).toMatch(/^#[0-9A-F]{6}$/);
  });
});
