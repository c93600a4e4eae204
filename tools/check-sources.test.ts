import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { afterEach, beforeEach, expect, it } from "vitest";
// @ts-expect-error the tools are plain modules without declarations
import { checkSources } from "./check-sources.mjs";

interface Found {
  readonly violations: readonly string[];
  readonly unchecked: readonly string[];
  readonly files: number;
  readonly entries: number;
  readonly citations: number;
}

let root: string;

beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), "wingseed-sources-"));
  write(
    "docs/sources.bib",
    "@book{able-1935,\n  author = {Able, Ann},\n  title = {Rotors}\n}\n\n@book{baker-1980,\n  title = {Wings}\n}\n",
  );
  write(
    "packages/engine/src/a/lift.ts",
    "/** Lift. @source able-1935, ch. 2, eq. (7); baker-1980, drag, unchecked */\nexport const a = 1;\n",
  );
});

afterEach(() => rmSync(root, { recursive: true }));

function write(path: string, text: string): void {
  mkdirSync(dirname(join(root, path)), { recursive: true });
  writeFileSync(join(root, path), text);
}

const check = (): Found => checkSources(root) as Found;

it("a sound tree has no violations, and what nobody looked at is counted", () => {
  expect(check()).toEqual({
    violations: [],
    unchecked: ["packages/engine/src/a/lift.ts: baker-1980"],
    files: 1,
    entries: 2,
    citations: 2,
  });
});

it.each([
  ["packages/engine/src/b.ts", "/**\n * @source able-1936, ch. 2\n */\n"],
  ["packages/engine/src/b.ts", 'const method = { sources: ["able-1935", "able-1936"] };\n'],
  ["packages/engine/src/data/table.json", '{ "source": "able-1936" }\n'],
  ["validation/rotor/source.md", "A. Able, _Rotors_, 1936, bibliography\nkey `able-1936`.\n"],
  ["validation/rotor/result.json", '{ "source": "able-1936" }\n'],
])("an unknown key is found in %s", (path, text) => {
  write(path, text);
  expect(check().violations).toEqual([`${path}: able-1936 is not in docs/sources.bib`]);
});

it.each(["able-1935", "able-1935, read", "able-1935,"])("a citation without a place is found: %s", (written) => {
  write("apps/web/src/b.ts", `/** @source ${written} */\n`);
  expect(check().violations).toEqual(['apps/web/src/b.ts: able-1935 needs the place in it, or the word "unchecked"']);
});

it("recalled from memory counts as unchecked", () => {
  write("apps/web/src/b.ts", "/** @source able-1935, from memory */\n");
  expect(check()).toMatchObject({ violations: [], unchecked: expect.arrayContaining(["apps/web/src/b.ts: able-1935"]) });
});

it("an entry that nobody cites and one that stands there twice are found", () => {
  write(
    "docs/sources.bib",
    "@book{able-1935,\n  title = {A}\n}\n@book{able-1935,\n  title = {A}\n}\n@book{baker-1980,\n  title = {B}\n}\n@misc{cold-1990,\n  title = {C}\n}\n",
  );
  expect(check().violations).toEqual(["docs/sources.bib: nobody cites cold-1990", "docs/sources.bib: able-1935 stands there twice"]);
});

it("tests and built files are not read", () => {
  write("packages/engine/src/b.test.ts", "// @source nobody-1900\n");
  write("packages/engine/dist/src/b.ts", "// @source nobody-1900\n");
  expect(check().violations).toEqual([]);
});

it("an empty tree shows that nothing was seen", () => {
  rmSync(join(root, "packages"), { recursive: true });
  expect(check()).toMatchObject({ files: 0, citations: 0 });
});
