import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join, resolve } from "node:path";
import { afterEach, beforeEach, expect, it } from "vitest";
// @ts-expect-error the tools are plain modules without declarations
import { checkLayers } from "./check-layers.mjs";
// @ts-expect-error the tools are plain modules without declarations
import { mayImport } from "./layers.mjs";

let root: string;

beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), "wingseed-layers-"));
  for (const workspace of Object.keys(mayImport as Record<string, string[]>)) {
    const name = `@wingseed/${workspace.split("/")[1]}`;
    write(`${workspace}/package.json`, JSON.stringify({ name, type: "module", exports: { ".": { source: "./src/index.ts" } } }));
    write(`${workspace}/src/index.ts`, "export const here = 1;\nexport type Shape = number;\n");
    mkdirSync(join(root, "node_modules/@wingseed"), { recursive: true });
    symlinkSync(join(root, workspace), join(root, "node_modules", name));
  }
  for (const subject of ["numerics", "aerodynamics", "drivetrain", "mission"]) {
    write(`packages/engine/src/${subject}/index.ts`, 'export { part } from "./part.ts";\n');
    write(`packages/engine/src/${subject}/part.ts`, "export const part = 1;\nexport type Part = number;\n");
  }
});

afterEach(() => rmSync(root, { recursive: true }));

function write(path: string, text: string): void {
  mkdirSync(dirname(join(root, path)), { recursive: true });
  writeFileSync(join(root, path), text);
}

async function found(): Promise<string[]> {
  const { violations, seen, expected } = (await checkLayers(root)) as { violations: string[]; seen: number; expected: number };
  expect(seen).toBe(expected);
  return violations;
}

it("a sound tree has no violations", async () => {
  write("packages/engine/src/mission/leg.ts", 'import { part } from "../aerodynamics/index.ts";\nexport const leg = part;\n');
  write(
    "apps/cli/src/main.ts",
    'import type { Shape } from "@wingseed/engine";\nimport { here } from "@wingseed/runner";\nexport const x: Shape = here;\n',
  );
  expect(await found()).toEqual([]);
});

it.each([
  [
    "an upward import of types alone",
    "packages/engine/src/aerodynamics/sneaky.ts",
    'import type { Part } from "../mission/index.ts";\nexport type Sneaky = Part;\n',
    "aerodynamics-looks-down-only",
  ],
  [
    "an import between subjects of one rank",
    "packages/engine/src/drivetrain/sneaky.ts",
    'import { part } from "../aerodynamics/index.ts";\nexport const sneaky = part;\n',
    "drivetrain-looks-down-only",
  ],
  [
    "an import past another subject's index",
    "packages/engine/src/mission/sneaky.ts",
    'import { part } from "../numerics/part.ts";\nexport const sneaky = part;\n',
    "subjects-meet-at-the-index",
  ],
  ["a file system in the engine", "packages/engine/src/mission/sneaky.ts", 'import "node:fs";\n', "engine-touches-nothing-outside"],
  ["a subject without a rank", "packages/engine/src/astrology/index.ts", "export const star = 1;\n", "every-subject-has-a-rank"],
  [
    "a package that imports an app",
    "packages/runner/src/sneaky.ts",
    'import type { Shape } from "@wingseed/server";\nexport type Sneaky = Shape;\n',
    "packages/runner-imports-downward",
  ],
  [
    "a package entered past its door",
    "apps/cli/src/sneaky.ts",
    'import { part } from "../../../packages/engine/src/mission/part.ts";\nexport const sneaky = part;\n',
    "packages-meet-at-the-door",
  ],
  [
    "physics in the page",
    "apps/web/src/sneaky.ts",
    'import { here } from "@wingseed/engine";\nexport const sneaky = here;\n',
    "apps/web-takes-types-of-packages/engine",
  ],
  [
    "an import that leads nowhere",
    "apps/cli/src/sneaky.ts",
    'import { gone } from "./gone.ts";\nexport const sneaky = gone;\n',
    "everything-resolves",
  ],
  ["a test as a source", "packages/runner/src/sneaky.ts", 'import "./index.test.ts";\n', "tests-are-not-imported"],
])("finds %s", async (_what, path, text, rule) => {
  write("packages/runner/src/index.test.ts", "export {};\n");
  write(path, text);
  expect((await found()).map((violation) => violation.split(":")[0])).toContain(rule);
});

it("finds a circle", async () => {
  write("packages/runner/src/one.ts", 'import type { Two } from "./two.ts";\nexport type One = Two;\n');
  write("packages/runner/src/two.ts", 'import type { One } from "./one.ts";\nexport type Two = One;\n');
  expect((await found()).map((violation) => violation.split(":")[0])).toContain("no-cycles");
});

it("sees every file of this repository", async () => {
  const { seen, expected } = (await checkLayers(resolve("."))) as { seen: number; expected: number };
  expect(expected).toBeGreaterThan(100);
  expect(seen).toBe(expected);
});
