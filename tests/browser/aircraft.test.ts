import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { exactAnswer, keepScreenshot, launchBrowser, openQuestion, openScreen } from "./screen.ts";
import { type ServerProcess, startServer } from "./server-process.ts";
import { soundPage } from "./sound-page.ts";

const screens = [1280, 480].flatMap((width) => (["light", "dark"] as const).map((scheme) => ({ width, scheme })));
/** Pages of the whole aircraft beside the drawing; each at one size, small and dark or wide and light. */
const others = [
  { question: "point", width: 480, scheme: "dark" },
  { question: "envelope", width: 1280, scheme: "dark" },
  { question: "stability", width: 480, scheme: "light" },
  { question: "step", width: 480, scheme: "dark" },
] as const;

let server: ServerProcess;
let browser: Browser;

beforeAll(async () => {
  [server, browser] = await Promise.all([startServer(), launchBrowser()]);
});

afterAll(async () => {
  await browser?.close();
  await server?.stop();
});

describe("the page of the aircraft", () => {
  it.each(screens)("draws it, balances it and stays accessible at $width px, $scheme", { timeout: 300_000 }, async ({ width, scheme }) => {
    const { page, context, complaints } = await openScreen(browser, server.address, { width, height: 900 }, scheme);
    await openQuestion(page, server.address, "#/aircraft");
    await soundPage(page);
    await keepScreenshot(page, `aircraft-${width}-${scheme}`);
    expect(complaints).toEqual([]);
    await context.close();
  });

  it("shows the aircraft from three sides and its bay larger, with lengths and the centre of gravity between its limits", {
    timeout: 300_000,
  }, async () => {
    const { page, context, complaints } = await openScreen(browser, server.address, { width: 1280, height: 900 }, "light");
    await openQuestion(page, server.address, "#/aircraft");
    const views = page.locator('svg[data-figure="arrangement"] [data-view]');
    expect(await attributes(page, '[data-figure="arrangement"] [data-view]', "data-view")).toEqual(
      expect.arrayContaining(["left", "ahead", "above"]),
    );
    expect(await views.count()).toBe(4);
    for (const view of await views.all()) expect(await view.locator('[data-mark="centre of gravity"]').count()).toBe(1);
    expect(await attributes(page, '[data-figure="arrangement"] [data-dimension]', "data-dimension")).toContain("wing span");
    const loadings = await attributes(page, '[data-figure="loading"] [data-notable]', "data-notable");
    expect(loadings.length).toBeGreaterThan(5);
    expect((await attributes(page, '[data-figure="loading"] [data-part="border"]', "data-series")).length).toBeGreaterThanOrEqual(2);
    expect(complaints).toEqual([]);
    await context.close();
  });

  it("keeps the views at one scale: the rotor is as long from the left as from above", { timeout: 300_000 }, async () => {
    const { page, context } = await openScreen(browser, server.address, { width: 1280, height: 900 }, "light");
    await openQuestion(page, server.address, "#/aircraft");
    const widest = (found: readonly Element[]) => Math.max(...found.map((each) => each.getBoundingClientRect().width));
    const lengths = await Promise.all(
      ["left", "above"].map((view) =>
        page.locator(`[data-figure="arrangement"] [data-view="${view}"] path[data-series="main rotor"]`).evaluateAll(widest),
      ),
    );
    expect(lengths[0]).toBeGreaterThan(100);
    expect(Math.abs((lengths[0] ?? 0) - (lengths[1] ?? 0))).toBeLessThan(2);
    await context.close();
  });

  it("gives the numbers behind a drawing, and no cursor where nothing is read along x", { timeout: 300_000 }, async () => {
    const { page, context, complaints } = await openScreen(browser, server.address, { width: 1280, height: 900 }, "light");
    await openQuestion(page, server.address, "#/aircraft");
    const drawing = page.locator('[data-picture="arrangement"]');
    await drawing.locator('[data-key="t"]').click();
    const text = await drawing.locator("table").textContent();
    expect(text).toMatch(/wing span/);
    expect(text).toMatch(/aft limit/);
    expect(await page.locator('[data-picture="arrangement"] .cursor-pad, [data-picture="loading"] .cursor-pad').count()).toBe(0);
    expect(complaints).toEqual([]);
    await context.close();
  });

  it("draws another pack when the packs change", { timeout: 300_000 }, async () => {
    const { page, context, complaints } = await openScreen(browser, server.address, { width: 1280, height: 900 }, "light");
    await openQuestion(page, server.address, "#/aircraft");
    const blocks = () => page.locator('[data-figure="arrangement"] [data-view^="bay"] [data-series="battery blocks"]').count();
    const before = await blocks();
    await openQuestion(page, server.address, "#/aircraft?packs=7");
    const after = await blocks();
    expect([before, after]).toEqual([13, 7]);
    expect(complaints).toEqual([]);
    await context.close();
  });
});

describe("pages of the whole aircraft", () => {
  it.each(others)(
    "$question answers and stays accessible at $width px, $scheme",
    { timeout: 300_000 },
    async ({ question, width, scheme }) => {
      const { page, context, complaints } = await openScreen(browser, server.address, { width, height: 900 }, scheme);
      await openQuestion(page, server.address, `#/${question}`);
      await soundPage(page);
      await keepScreenshot(page, `${question}-${width}-${scheme}`);
      expect(complaints).toEqual([]);
      await context.close();
    },
  );

  it("shows forces with the horizon level, and the attitude in words", { timeout: 300_000 }, async () => {
    const { page, context, complaints } = await openScreen(browser, server.address, { width: 1280, height: 900 }, "light");
    await openQuestion(page, server.address, "#/point");
    const picture = page.locator('svg[data-figure="forces"]');
    expect(await picture.locator('[data-part="arrow"][data-series="weight"]').count()).toBe(2);
    const [from, to] = await picture.locator('[data-view="left"] [data-series="weight"] path').first().evaluate(ends);
    expect(Math.abs((from?.[0] ?? 0) - (to?.[0] ?? 9))).toBeLessThan(0.1);
    expect(to?.[1] ?? 0).toBeGreaterThan((from?.[1] ?? 0) + 40);
    expect(await picture.textContent()).toMatch(/nose (up|down)/);
    await exactAnswer(page);
    expect(complaints).toEqual([]);
    await context.close();
  });
});

/** First and last point of a path. */
function ends(path: Element): readonly (readonly number[])[] {
  const numbers = (path.getAttribute("d") ?? "").match(/-?[\d.]+/g)?.map(Number) ?? [];
  return [numbers.slice(0, 2), numbers.slice(-2)];
}

function attributes(page: Page, selector: string, name: string): Promise<readonly string[]> {
  return page.locator(selector).evaluateAll((found, attribute) => found.map((each) => each.getAttribute(attribute) ?? ""), name);
}
