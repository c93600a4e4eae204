import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { documentKinds, readYamlDocument } from "./document/index.ts";
import { readGeoJson } from "./geojson/index.ts";
import { readGeoTiff } from "./geotiff/index.ts";

const root = new URL("../../../", import.meta.url);
const baseline = readFileSync(new URL("demo/aircraft/baseline.yaml", root), "utf8");
const older = readFileSync(new URL("packages/documents/fixtures/aircraft-format-1.yaml", root), "utf8");
const route = readFileSync(new URL("demo/places/route-platform.geojson", root), "utf8");
const raster = (name: string) => new Uint8Array(readFileSync(new URL(`packages/documents/fixtures/geotiff/${name}.tif`, root)));

const scraps = [
  "{",
  "}",
  "[",
  "]",
  ":",
  "- ",
  "\n",
  "\n  ",
  "'",
  '"',
  "&a ",
  "*a",
  "!!binary ",
  "? ",
  "|",
  ">",
  "#",
  ",",
  "\t",
  "%",
  "@",
  "~",
  "---\n",
  "...\n",
  "\u0000",
  "\ufeff",
  "<<: ",
  "kg",
  "1e999",
  "__proto__: ",
];
const garbage = fc.oneof(
  fc.string({ unit: "binary", maxLength: 80 }),
  fc.array(fc.constantFrom(...scraps), { maxLength: 40 }).map((parts) => parts.join("")),
);

/** A sound text with a piece cut out and something else put in. */
const damaged = (text: string) =>
  fc.tuple(fc.nat(text.length), fc.nat(30), garbage).map(([at, length, put]) => text.slice(0, at) + put + text.slice(at + length));

interface Told {
  readonly document?: unknown;
  readonly problems: readonly { readonly line: number; readonly column: number; readonly message: string }[];
}

function expectAnAnswer({ document, problems }: Told): void {
  expect(document !== undefined || problems.length > 0).toBe(true);
  for (const { line, column, message } of problems) {
    expect(line >= 1 && column >= 1 && message.length > 5).toBe(true);
  }
}

describe("garbage never throws and never hangs", () => {
  test.each(documentKinds.map((kind) => [kind.kind, kind] as const))("as a document of kind %s", (_, kind) => {
    fc.assert(
      fc.property(fc.oneof(garbage, damaged(baseline), damaged(older)), (text) =>
        expectAnAnswer(readYamlDocument(kind, { file: "x.yaml", text, hash: "h" })),
      ),
      { numRuns: 150 },
    );
  });

  test("as GeoJSON", () => {
    fc.assert(
      fc.property(fc.oneof(garbage, damaged(route), fc.json()), (text) =>
        expectAnAnswer(readGeoJson({ file: "x.geojson", text, hash: "h" })),
      ),
      { numRuns: 200 },
    );
  });

  test.each([
    "[".repeat(50_000),
    "{a: ".repeat(20_000),
    "- ".repeat(50_000),
    "? ".repeat(20_000),
    `${'{"a":'.repeat(20_000)}1`,
    "&a ".repeat(10_000),
  ])("deep nesting %#", (text) => {
    for (const kind of documentKinds) expectAnAnswer(readYamlDocument(kind, { file: "x.yaml", text, hash: "h" }));
    expectAnAnswer(readGeoJson({ file: "x.geojson", text, hash: "h" }));
  });

  test.each([
    "int16",
    "float32-deflate",
    "float32-lzw",
    "int16-packbits",
    "float32-tiled-deflate",
    "int16-bigtiff",
    "int16-south-up",
    "float32-utm-south",
  ])("as a raster damaged from %s", async (name) => {
    const sound = raster(name);
    const bytes = fc
      .tuple(fc.array(fc.tuple(fc.nat(sound.length - 1), fc.nat(255)), { minLength: 1, maxLength: 6 }), fc.option(fc.nat(sound.length)))
      .map(([changes, cut]) => {
        const copy = sound.slice(0, cut ?? sound.length);
        for (const [at, value] of changes) if (at < copy.length) copy[at] = value;
        return copy;
      });
    await fc.assert(
      fc.asyncProperty(bytes, async (damage) => {
        const read = await readGeoTiff(damage);
        if (read.kind === "refused") expect(read.message.length).toBeGreaterThan(10);
        else expect(read.grid.values.every(Number.isFinite)).toBe(true);
      }),
      { numRuns: 80 },
    );
  });

  test("as bytes that only begin like a raster", async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.uint8Array({ maxLength: 300 }),
        fc.constantFrom([73, 73, 42, 0, 8, 0, 0, 0], [77, 77, 0, 42, 0, 0, 0, 8], [73, 73, 43, 0, 8, 0, 0, 0, 16, 0, 0, 0, 0, 0, 0, 0]),
        async (tail, head) => {
          expect((await readGeoTiff(Uint8Array.from([...head, ...tail]))).kind).toBe("refused");
        },
      ),
      { numRuns: 300 },
    );
  });
});
