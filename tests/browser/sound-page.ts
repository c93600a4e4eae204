import AxeBuilder from "@axe-core/playwright";
import type { Page } from "playwright-core";
import { expect } from "vitest";
import { colourCount, cutLabels, drawnMarks, overlappingLabels, sidewaysScroll } from "./measures.ts";

/** Drawn, readable, inside the window, and without an accessibility violation. */
export async function soundPage(page: Page): Promise<void> {
  const marks = await drawnMarks(page);
  expect(marks.length).toBeGreaterThan(0);
  expect(Math.min(...marks)).toBeGreaterThan(0);
  expect(await colourCount(page.locator("svg[data-figure]").first())).toBeGreaterThan(8);
  expect(await overlappingLabels(page)).toEqual([]);
  expect(await cutLabels(page)).toEqual([]);
  expect(await sidewaysScroll(page)).toBe(0);
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.html).join(" ")}`)).toEqual([]);
}
