// Makes the pictures of the README from the built program and the demo project: node tools/screenshots.mjs
// It drives the page with the helpers of the browser tests, which are TypeScript and bundled here first.
import { mkdirSync, statSync } from "node:fs";
import { fileURLToPath, pathToFileURL } from "node:url";
import { build } from "esbuild";

const root = fileURLToPath(new URL("../", import.meta.url));
const folder = "docs/pictures";
/** Larger files make every clone slow [bytes]. */
const largest = 300_000;
const pictures = [{ name: "speed", fragment: "#/speed" }];
const size = { width: 1280, height: 900 };

process.chdir(root);
const helpers = await bundledHelpers();
await helpers.setup();
const [server, browser] = await Promise.all([helpers.startServer(), helpers.launchBrowser()]);
try {
  mkdirSync(folder, { recursive: true });
  for (const { name, fragment } of pictures) await keepPicture(name, fragment);
} finally {
  await browser.close();
  await server.stop();
}

/** The first window of a page with its exact answer; refuses a page that complains and a file that is too large. */
async function keepPicture(name, fragment) {
  const { page, context, complaints } = await helpers.openScreen(browser, server.address, size, "light");
  await helpers.openQuestion(page, server.address, fragment);
  const path = `${folder}/${name}.png`;
  await page.screenshot({ path });
  await context.close();
  if (complaints.length > 0) throw new Error(`${fragment} complains: ${complaints.join("; ")}`);
  const bytes = statSync(path).size;
  if (bytes > largest) throw new Error(`${path} has ${bytes} bytes; at most ${largest} are kept`);
  console.log(`${path}, ${Math.round(bytes / 1000)} kB`);
}

async function bundledHelpers() {
  const outfile = `${root}node_modules/.cache/screenshot-helpers.mjs`;
  await build({
    stdin: {
      contents: [
        'export { launchBrowser, openQuestion, openScreen } from "./tests/browser/screen.ts";',
        'export { startServer } from "./tests/browser/server-process.ts";',
        'export { default as setup } from "./tests/global-setup.ts";',
      ].join("\n"),
      resolveDir: root,
    },
    outfile,
    bundle: true,
    platform: "node",
    format: "esm",
    packages: "external",
  });
  return import(pathToFileURL(outfile).href);
}
