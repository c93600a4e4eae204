// The dossier as the demo's own results and the comparisons on record make it, measured as it is set.
import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { pathToFileURL } from "node:url";
import { openProject } from "@wingseed/documents";
import { answeredPages } from "@wingseed/reports";
import type { DossierRequest, TableBlock } from "@wingseed/reports/dossier";
import { createRunner } from "@wingseed/runner";
import { answeredDossier } from "@wingseed/server";
import { beforeAll, expect, it } from "vitest";
import { tableParts } from "../packages/reports/src/dossier/column-widths.ts";
import { dossierSections, fullSize } from "../packages/reports/src/dossier/dossier-blocks.ts";
import { fittedDossier } from "../packages/reports/src/dossier/dossier-pdf.ts";
import { textWidth, wrapText } from "../packages/reports/src/draw/index.ts";

const built = (file: string) => pathToFileURL(resolve("dist", file)).href;
const onRecord = JSON.parse(readFileSync("validation/summary.json", "utf8")) as DossierRequest["validation"];

let request: DossierRequest;

beforeAll(async () => {
  const project = openProject("demo");
  const runner = await createRunner({
    registryUrl: built("registry.mjs"),
    workerUrl: built("worker.mjs"),
    cacheDirectory: null,
    project,
    version: "0.1.0",
  });
  try {
    request = await answeredDossier({
      runner,
      project,
      version: "0.1.0",
      validation: onRecord,
      references: JSON.parse(readFileSync("dist/references.json", "utf8")),
      signal: new AbortController().signal,
    });
  } finally {
    await runner.close();
  }
  expect(request.chapters.flatMap(({ result }) => result.cases.filter(({ problem }) => problem))).toEqual([]);
}, 240_000);

it("has a chapter for every question of the pages, each on about a page, and some of published data, about three sources a page", () => {
  const asked = answeredPages().map((page) => page.slots[0].analysis);
  expect(request.chapters.map(({ meta }) => meta.name).toSorted()).toEqual(asked.toSorted());
  expect(onRecord.length).toBeGreaterThan(10);
  const sources = new Set(onRecord.map((row) => row.check)).size;
  const { pages } = fittedDossier(request);
  expect(pages).toBeGreaterThanOrEqual(request.chapters.length);
  // One of identification, up to three of method and its sources.
  expect(pages).toBeLessThanOrEqual(4 + request.chapters.length + Math.ceil(sources / 3));
});

it("draws every measured source that has two rows or more", () => {
  const blocks = dossierSections(request).flatMap((section) => section.blocks(fullSize));
  const drawn = new Set(blocks.flatMap((block) => (block.kind === "panels" ? block.figures.map(({ figure }) => figure.id) : [])));
  const measured = onRecord.filter((row) => row.reference === "measured" && row.rows > 1);
  expect(measured.length).toBeGreaterThan(3);
  for (const check of new Set(measured.map((row) => row.check)))
    expect(
      [...drawn].some((id) => id.startsWith(`${check}-`)),
      `no picture of ${check}`,
    ).toBe(true);
});

it("is the same, byte for byte, when it is set again", () => {
  expect(Buffer.from(fittedDossier(request).pdf).equals(Buffer.from(fittedDossier(request).pdf))).toBe(true);
});

it("gives every column of every table room for its longest word and its figures, on the page", () => {
  const tables = dossierSections(request).flatMap((section) => section.blocks(fullSize).filter((block) => block.kind === "table"));
  expect(tables.length).toBeGreaterThan(4);
  for (const table of tables)
    for (const scale of [1, 0.88])
      for (const { block, layout } of tableParts(table, scale)) {
        expect(layout.columns.reduce((sum, width) => sum + width, 0)).toBeLessThanOrEqual((174 / 25.4) * 72 + 1e-6);
        layout.columns.forEach((width, index) => {
          expect(longestPiece(block, index, layout.typeSize), `${block.caption}: ${block.head[index]}`).toBeLessThanOrEqual(width);
        });
      }
});

it("sets most comparisons in one line, the others in two or three, four for the longest tolerance", () => {
  const table = comparisons();
  const [part] = tableParts(table);
  const lines = table.rows.map((row) =>
    row.length === 1
      ? 1
      : Math.max(...row.map((cell, index) => wrapText(cell, part?.layout.typeSize ?? 0, (part?.layout.columns[index] ?? 0) - 6).length)),
  );
  expect(Math.max(...lines)).toBeLessThanOrEqual(4);
  expect(lines.filter((count) => count > 1).length).toBeLessThan(lines.length / 2);
  expect(lines.filter((count) => count > 2).length).toBeLessThanOrEqual(lines.length / 10);
});

it("says of comparisons that judge nothing that they are reported only, and writes numbers to be read", () => {
  const rows = comparisons().rows.filter((row) => row.length > 1);
  expect(rows.map((row) => row[0])).toEqual(onRecord.map((row) => row.quantity));
  const ungated = onRecord.flatMap((row, index) => (row.gatedRows === 0 ? [index] : []));
  expect(ungated.length).toBeGreaterThan(0);
  for (const index of ungated) expect(rows[index]?.slice(-2)).toEqual(["reported, not gated", "–"]);
  expect(rows.filter((row) => row.at(-1) === "yes")).toHaveLength(onRecord.filter((row) => row.passed && row.gatedRows > 0).length);
  expect(JSON.stringify(rows)).not.toContain("10^");
});

function comparisons(): TableBlock {
  const blocks = dossierSections(request).flatMap((section) => section.blocks(fullSize));
  const table = blocks.find((block): block is TableBlock => block.kind === "table" && block.head.includes("tolerance"));
  if (!table) throw new Error("no table of comparisons");
  return table;
}

/** The widest part of a column that must stay in one line: a word, or a figure with its unit. */
function longestPiece(block: TableBlock, index: number, size: number): number {
  const cells = block.rows.filter((row) => row.length === block.head.length).map((row) => row[index] ?? "");
  const pieces = block.numeric[index] ? cells : cells.flatMap((cell) => cell.split(" "));
  return Math.max(...[...pieces, ...(block.head[index] ?? "").split(" ")].map((piece) => textWidth(piece, size)));
}
