import AxeBuilder from "@axe-core/playwright";
import { analyses } from "@wingseed/engine";
import { benchParts } from "@wingseed/reports";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { exactAnswer, keepScreenshot, launchBrowser, openQuestion, openScreen, type Screen } from "./screen.ts";
import { type ServerProcess, startServer } from "./server-process.ts";
import { soundPage } from "./sound-page.ts";

const parts = benchParts(analyses);
const screens = [
  { width: 1280, scheme: "light" },
  { width: 480, scheme: "dark" },
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

async function onScreen(work: (screen: Screen) => Promise<void>, width = 1280, scheme: "light" | "dark" = "light"): Promise<void> {
  const screen = await openScreen(browser, server.address, { width, height: 900 }, scheme);
  await work(screen);
  expect(screen.complaints).toEqual([]);
  await screen.context.close();
}

/** The part in front of us and where it comes from. */
function standsAs(page: Page): Promise<{ readonly question: string | undefined; readonly source: string | undefined }> {
  return page.evaluate(() => ({
    question: document.querySelector<HTMLElement>("main")?.dataset.question,
    source: document.querySelector<HTMLElement>("[data-part-source]")?.dataset.partSource,
  }));
}

function loadFile(page: Page, name: string, text: string): Promise<void> {
  return page.locator('.part-source input[type="file"]').setInputFiles({ name, mimeType: "text/plain", buffer: Buffer.from(text) });
}

/** Waits for the exact answer to what the address asks after a step. */
async function answerAfter(page: Page, step: () => Promise<unknown>): Promise<void> {
  const before = page.url();
  await step();
  await page.waitForFunction((url) => location.href !== url, before);
  await exactAnswer(page);
}

describe("the component bench", () => {
  it.each(screens)("answers for every part, draws and stays accessible at $width px, $scheme", { timeout: 600_000 }, ({ width, scheme }) =>
    onScreen(
      async ({ page }) => {
        expect(parts.length).toBeGreaterThan(1);
        await openQuestion(page, server.address, "#/bench");
        for (const part of parts) {
          const link = page
            .getByRole("navigation", { name: "What does each part do alone?" })
            .getByRole("link", { name: part.name, exact: true });
          await link.click();
          await page.waitForSelector(`main[data-question="page:bench/${part.analysis}"]`);
          await exactAnswer(page);
          expect(await link.getAttribute("aria-current")).toBe("page");
          expect(await page.locator(".standing p").first().textContent()).toMatch(/compared|held against|covers/);
          await soundPage(page);
          await keepScreenshot(page, `bench-${part.analysis}-${width}-${scheme}`);
        }
      },
      width,
      scheme,
    ),
  );

  it("takes every part from the aircraft of the project and back", { timeout: 300_000 }, () =>
    onScreen(async ({ page }) => {
      let taken = 0;
      for (const part of parts) {
        await openQuestion(page, server.address, `#/bench/${part.analysis}`);
        const button = page.getByRole("button", { name: "this project" });
        if ((await button.count()) === 0) continue;
        const before = await page.locator("p.answer").textContent();
        await answerAfter(page, () => button.click());
        expect(await standsAs(page)).toEqual({ question: `page:bench/${part.analysis}`, source: "project" });
        expect(decodeURIComponent(page.url())).toContain("aircraft/");
        await answerAfter(page, () => page.getByRole("button", { name: "the example" }).click());
        expect(await page.locator("p.answer").textContent()).toBe(before);
        taken++;
      }
      expect(taken).toBeGreaterThan(0);
    }),
  );

  it("takes inputs from a file, one of several cases, and says what is wrong with another file", { timeout: 300_000 }, () =>
    onScreen(async ({ page }) => {
      const [part] = parts;
      if (!part) throw new Error("no part on the bench");
      const { example } = analyses.find(({ name }) => name === part.analysis) ?? { example: {} };
      await openQuestion(page, server.address, `#/bench/${part.analysis}`);
      await answerAfter(page, () => loadFile(page, "two.json", JSON.stringify([example, { ...example, altitude: "1 km" }])));
      expect((await standsAs(page)).source).toBe("file");
      expect(await page.locator(".part-source").textContent()).toContain("two.json");
      const first = await page.locator("p.answer").textContent();
      await answerAfter(page, () => page.getByLabel("two.json, case").selectOption("2"));
      expect(await page.locator("p.answer").textContent()).not.toBe(first);

      await loadFile(page, "broken.json", '{"rotor": ');
      await page.waitForSelector(".part-source [role=alert]");
      expect(await page.locator(".part-source [role=alert]").textContent()).toContain("broken.json is no JSON");
      expect((await standsAs(page)).source).toBe("file");

      await loadFile(page, "odd.json", JSON.stringify({ ...example, windage: 3 }));
      await page.waitForSelector('main[data-state="error"]');
      expect(await page.locator(".problems").textContent()).toContain("windage");
      expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([]);
    }),
  );

  it("takes a table from a file and from the clipboard, and puts a wrong unit at its cell", { timeout: 300_000 }, () =>
    onScreen(async ({ page }) => {
      await openQuestion(page, server.address, "#/bench/section");
      await answerAfter(page, () =>
        loadFile(page, "polar.csv", "angle [deg],cl,cd\n-4,-0.3,0.012\n0,0.1,0.010\n8,0.9,0.015\n12,1.1,0.03\n"),
      );
      const cells = page.locator(".rows-grid input");
      expect(await page.locator(".rows-grid tbody tr").count()).toBe(4);
      expect(await cells.first().inputValue()).toBe("-4");

      await answerAfter(page, () => pasteInto(page, "-6\n-2\n2\n6"));
      expect(await page.locator(".rows-grid tbody tr").count()).toBe(4);
      expect(await page.locator('[aria-label="Angle, row 3"]').inputValue()).toBe("2");

      await page.locator('[aria-label="Angle, row 2"]').fill("3 parsec");
      await page.keyboard.press("Enter");
      await page.waitForSelector('main[data-state="error"] [aria-label="Angle, row 2"][aria-invalid="true"]');
      expect(await page.locator(".field-problem").first().textContent()).toContain("parsec");

      await loadFile(page, "foreign.csv", "day,rain\n1,2\n");
      await page.waitForSelector(".part-source [role=alert]");
      expect(await page.locator(".part-source [role=alert]").textContent()).toMatch(/day, rain.*angle/s);
      expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([]);
    }),
  );
});

describe("what is typed on the bench", () => {
  it("is refused at its own field: what is missing there, and a range in the unit that was typed", { timeout: 300_000 }, () =>
    onScreen(async ({ page }) => {
      await openQuestion(page, server.address, "#/bench/motor");
      const resistance = page.getByLabel("Resistance", { exact: true });
      const refusal = () => page.locator('[id="input-motor.resistance-problem"]').textContent();
      await resistance.fill("-5 mOhm");
      await resistance.press("Enter");
      await page.waitForSelector('main[data-state="error"]');
      expect(await refusal()).toContain("at least 0.01 mOhm");
      await answerAfter(page, async () => {
        await resistance.fill("50");
        await resistance.press("Enter");
      });
      await resistance.fill("");
      await resistance.press("Enter");
      await page.waitForSelector('main[data-state="error"]');
      expect(await refusal()).toBe('"resistance" is missing: Of winding and leads');
      await page.locator(".problems a").click();
      expect(await page.evaluate(() => document.activeElement?.id)).toBe("input-motor.resistance");
      expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([]);
    }),
  );

  it("is told at the group where several inputs do not go together", { timeout: 300_000 }, () =>
    onScreen(async ({ page }) => {
      await openQuestion(page, server.address, "#/bench/battery");
      await loadFile(page, "load.csv", "t [s],power [W]\n0,500\n100,800\n");
      await page.waitForSelector('main[data-state="error"]');
      expect(await page.locator('[id="input-load"]').textContent()).toContain("given: power + points");
    }),
  );

  it("may be a section of one station's own, beside the name of one in its cell", { timeout: 300_000 }, () =>
    onScreen(async ({ page }) => {
      await openQuestion(page, server.address, "#/bench/propeller");
      const whole = await page.locator("p.answer").textContent();
      await loadFile(page, "blade.csv", "r/R,c/R,beta [deg]\n0.2,0.15,30\n0.6,0.18,18\n1,0.08,10\n");
      for (const label of ["Pitch", "Chord fraction"]) {
        await page.waitForSelector('main[data-state="error"]');
        const field = page.getByRole("textbox", { name: label, exact: true });
        await field.fill("");
        await field.press("Enter");
      }
      await exactAnswer(page);
      const bare = await page.locator("p.answer").textContent();
      expect(bare).not.toBe(whole);

      await page.getByText("Section of single rows").click();
      await page.locator('[id="input-propeller.stations.1.section~"]').selectOption("cambered");
      await page.waitForSelector('main[data-state="error"]');
      expect(await page.locator('[id="input-propeller.stations.1.section.thickness-problem"]').textContent()).toContain("missing");
      const thickness = page.locator('[id="input-propeller.stations.1.section.thickness"]');
      await answerAfter(page, async () => {
        await thickness.fill("0.2");
        await thickness.press("Enter");
      });
      const cell = page.getByRole("combobox", { name: "Section, row 2" });
      expect(await cell.locator("option:checked").textContent()).toBe("cambered, below");
      expect(await page.locator("p.answer").textContent()).not.toBe(bare);
      expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([]);

      await answerAfter(page, () => cell.selectOption("naca-0012"));
      expect(await cell.inputValue()).toBe("naca-0012");
      await answerAfter(page, () => cell.selectOption(""));
      expect(await page.locator("p.answer").textContent()).toBe(bare);
    }),
  );

  it("stays where two ways of giving a part share it: a measured table keeps the diameter on screen", { timeout: 300_000 }, () =>
    onScreen(async ({ page }) => {
      await openQuestion(page, server.address, "#/bench/propeller");
      await answerAfter(page, () => loadFile(page, "measured.csv", "J,CT,CP\n0,0.12,0.05\n0.4,0.08,0.045\n0.8,0,0.02\n"));
      expect(await page.getByLabel("Diameter", { exact: true }).inputValue()).toBe("0.30");
      // C_T ρ n² D⁴ at 6000 rpm and 0.3 m.
      expect(await page.locator("p.answer").textContent()).toMatch(/11\.9.N/);
    }),
  );

  it("says which list a table was taken for and what its heads lack", { timeout: 300_000 }, () =>
    onScreen(async ({ page }) => {
      await openQuestion(page, server.address, "#/bench/rotor");
      const refusal = page.locator(".part-source [role=alert]");
      await loadFile(page, "blade.csv", "r/R,chord,twist [deg]\n0.15,90,5\n1,60,-3\n");
      await refusal.waitFor();
      expect(await refusal.textContent()).toBe(
        'blade.csv was taken for stations: column chord needs its unit in square brackets, as in "chord [m]".',
      );
    }),
  );
});

/** Pastes text as a spreadsheet would into the first cell of the first table. */
async function pasteInto(page: Page, text: string): Promise<void> {
  await page.locator(".rows-grid input").first().focus();
  await page.evaluate((pasted) => {
    const clipboardData = new DataTransfer();
    clipboardData.setData("text/plain", pasted);
    document.activeElement?.dispatchEvent(new ClipboardEvent("paste", { clipboardData, bubbles: true, cancelable: true }));
  }, text);
}
