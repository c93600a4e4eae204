import { mkdirSync, mkdtempSync, rmSync, utimesSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { afterEach, beforeEach, expect, it } from "vitest";
// @ts-expect-error the tools are plain modules without declarations
import { isStale } from "./ensure-built.mjs";

let root: string;

beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), "wingseed-built-"));
  write("packages/engine/src/index.ts", 100);
  for (const product of ["dist/cli.mjs", "dist/worker.mjs", "dist/registry.mjs", "dist/web/index.html"]) write(product, 200);
});

afterEach(() => rmSync(root, { recursive: true }));

function write(path: string, time: number): void {
  mkdirSync(dirname(join(root, path)), { recursive: true });
  writeFileSync(join(root, path), "");
  utimesSync(join(root, path), time, time);
}

it("what is newer than every source stays", () => {
  expect(isStale(root)).toBe(false);
});

it("a changed source, a new file and a missing product ask for a build", () => {
  write("packages/engine/src/index.ts", 300);
  expect(isStale(root)).toBe(true);
  write("packages/engine/src/index.ts", 100);
  write("apps/web/src/deep/new.tsx", 300);
  expect(isStale(root)).toBe(true);
  write("apps/web/src/deep/new.tsx", 100);
  expect(isStale(root)).toBe(false);
  rmSync(join(root, "dist/web/index.html"));
  expect(isStale(root)).toBe(true);
});

it("tests and products of packages ask for none", () => {
  write("packages/engine/src/index.test.ts", 300);
  write("packages/engine/dist/index.js", 300);
  write("packages/engine/tsconfig.tsbuildinfo", 300);
  expect(isStale(root)).toBe(false);
});

it("an installed package is never stale", () => {
  rmSync(join(root, "packages"), { recursive: true });
  expect(isStale(root)).toBe(false);
});
