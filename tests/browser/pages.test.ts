import AxeBuilder from "@axe-core/playwright";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { exactAnswer, keepScreenshot, launchBrowser, openQuestion, openScreen } from "./screen.ts";
import { type ServerProcess, startServer } from "./server-process.ts";
import { soundPage } from "./sound-page.ts";

const questions = ["payload", "speed", "mission"];
const screens = [1280, 480].flatMap((width) => (["light", "dark"] as const).map((scheme) => ({ width, scheme })));

let server: ServerProcess;
let browser: Browser;

beforeAll(async () => {
  [server, browser] = await Promise.all([startServer(), launchBrowser()]);
});

afterAll(async () => {
  await browser?.close();
  await server?.stop();
});

describe("the built app on the demo project", () => {
  it.each(screens)("answers, draws and stays accessible at $width px, $scheme", { timeout: 600_000 }, async ({ width, scheme }) => {
    const { page, context, complaints } = await openScreen(browser, server.address, { width, height: 900 }, scheme);
    for (const question of questions) {
      await openQuestion(page, server.address, `#/${question}`);
      await changeCondition(page);
      await soundPage(page);
      await keepScreenshot(page, `${question}-${width}-${scheme}`);
    }
    expect(complaints).toEqual([]);
    await context.close();
  });

  it("says where a number comes from, gives the focus back, and undoes a question with Back", { timeout: 300_000 }, async () => {
    const { page, context, complaints } = await openScreen(browser, server.address, { width: 1280, height: 900 }, "light");
    await openQuestion(page, server.address, "#/speed");
    await page.keyboard.press("w");
    const slip = page.getByRole("dialog");
    await slip.waitFor();
    expect(await slip.textContent()).toMatch(/wingseed run speed[\s\S]*registry/);
    await page.keyboard.press("Escape");
    expect(await page.evaluate(() => document.activeElement?.className)).toBe("reading");
    expect(await slip.count()).toBe(0);

    await changeCondition(page);
    await page.goBack();
    await exactAnswer(page);
    expect(new URL(page.url()).hash).toBe("#/speed");

    await page.locator(".cursor-pad").first().focus();
    await page.keyboard.press("Home");
    await page.keyboard.press("Shift+ArrowRight");
    expect(await page.locator(".cursor-pad").first().getAttribute("aria-valuetext")).toMatch(/\d/);
    expect(await page.locator(".cursor-row .reading").count()).toBeGreaterThan(0);

    await page.keyboard.press("t");
    expect(await page.locator("[data-picture] table tbody tr").count()).toBeGreaterThan(5);
    expect(complaints).toEqual([]);
    await context.close();
  });

  it("puts a refusal at the field it is about and keeps the last good picture", { timeout: 300_000 }, async () => {
    const { page, context, complaints } = await openScreen(browser, server.address, { width: 1280, height: 900 }, "light");
    await openQuestion(page, server.address, "#/speed");
    const field = page.locator(".inputs .control input").first();
    await field.fill("12 parsec");
    await field.press("Enter");
    await page.waitForSelector('main[data-state="error"]');
    expect(await field.getAttribute("aria-invalid")).toBe("true");
    expect(await page.locator(".field-problem").first().textContent()).toContain("parsec");
    expect(await page.locator("svg[data-figure]").count()).toBeGreaterThan(0);
    expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([]);
    expect(complaints).toEqual([]);
    await context.close();
  });
});

/** Types another altitude, or wind where the page flies a mission; waits for the exact answer to that. */
async function changeCondition(page: Page): Promise<void> {
  const before = page.url();
  const [role, text] = before.includes("mission") ? ["wind", "3"] : ["altitude", "250"];
  await page.locator(`[data-condition="condition.${role}"]`).click();
  await page.locator(".condition-panel .control input").first().fill(text);
  await page.keyboard.press("Enter");
  await page.keyboard.press("Escape");
  expect(page.url()).not.toBe(before);
  await exactAnswer(page);
}
