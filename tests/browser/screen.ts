import { mkdirSync } from "node:fs";
import { type Browser, type BrowserContext, chromium, type Page } from "playwright-core";

export interface ScreenSize {
  readonly width: number;
  readonly height: number;
}

export interface Screen {
  readonly page: Page;
  readonly context: BrowserContext;
  /** Errors of the page and its console, and requests to any other place, as they come. */
  readonly complaints: string[];
}

const switches = [
  "--no-sandbox",
  "--no-zygote",
  "--headless=shell",
  "--use-angle=swiftshader",
  "--enable-unsafe-swiftshader",
  "--ignore-gpu-blocklist",
  "--disable-background-networking",
  "--disable-dev-shm-usage",
];

/** The browser of the test dependencies, or the one that CHROMIUM_PATH names. */
export function launchBrowser(): Promise<Browser> {
  const executablePath = process.env.CHROMIUM_PATH;
  if (!executablePath) throw new Error("CHROMIUM_PATH names no browser: on this system set it to an installed Chromium.");
  return chromium.launch({ executablePath, args: switches });
}

/** A window that is the same on every machine: fixed size, language, time zone, no motion. */
export async function openScreen(browser: Browser, address: string, viewport: ScreenSize, colorScheme: "light" | "dark"): Promise<Screen> {
  const context = await browser.newContext({ viewport, colorScheme, locale: "en-US", timezoneId: "UTC", reducedMotion: "reduce" });
  const page = await context.newPage();
  const complaints: string[] = [];
  page.on("console", (message) => message.type() === "error" && complaints.push(`console: ${message.text()}`));
  page.on("pageerror", (error) => complaints.push(`error: ${error.message}`));
  page.on("request", (request) => {
    if (!/^(?:data|blob):/.test(request.url()) && !request.url().startsWith(`${address}/`))
      complaints.push(`request elsewhere: ${request.url()}`);
  });
  return { page, context, complaints };
}

/** Opens a question and waits for its exact answer, with the typeface in place. */
export async function openQuestion(page: Page, address: string, fragment: string): Promise<void> {
  await page.goto(`${address}/${fragment}`);
  await exactAnswer(page);
}

/** Waits for the exact answer; a refusal instead is told at once. */
export async function exactAnswer(page: Page): Promise<void> {
  const settled = await page.waitForSelector('main[data-state="exact"], main[data-state="error"]', { timeout: 240_000 });
  if ((await settled.getAttribute("data-state")) !== "exact") throw new Error(`No answer at ${page.url()}: ${await settled.textContent()}`);
  await page.waitForFunction(() =>
    [...document.querySelectorAll("[data-picture]")].every((picture) => picture.querySelector("svg[data-figure]")),
  );
  await page.evaluate(() => document.fonts.ready);
}

/** Keeps the whole page as `artefacts/pages/NAME.png` and gives its path. */
export async function keepScreenshot(page: Page, name: string, folder = "artefacts/pages"): Promise<string> {
  mkdirSync(folder, { recursive: true });
  const path = `${folder}/${name}.png`;
  await page.screenshot({ path, fullPage: true });
  return path;
}
