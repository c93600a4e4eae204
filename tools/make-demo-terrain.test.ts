import { createHash } from "node:crypto";
import { fileURLToPath } from "node:url";
import { openProject } from "@wingseed/documents";
import { expect, test } from "vitest";
import { demoElevation, demoPopulation } from "./make-demo-terrain.mjs";

const project = openProject(fileURLToPath(new URL("../demo", import.meta.url)));
const hash = (values: Float32Array) =>
  createHash("sha256")
    .update(Uint8Array.from(new Uint8Array(values.buffer)))
    .digest("hex");

async function rasterOf(path: string) {
  const { value, problems } = await project.readRaster(path);
  if (value === undefined) throw new Error(problems?.[0]?.message);
  return value;
}

test.each([
  ["terrain/elevation.tif", demoElevation],
  ["terrain/population.tif", demoPopulation],
] as const)("%s holds exactly what its seed makes", async (path, make) => {
  const raster = await rasterOf(path);
  const made = make();
  expect([raster.width, raster.height]).toEqual([made.width, made.height]);
  expect(hash(raster.values)).toBe(hash(made.values));
  expect(raster.hole.includes(1)).toBe(false);
  expect(raster.origin.x).toBeCloseTo(made.west + made.step / 2, 9);
  expect(raster.origin.y).toBeCloseTo(made.south + (made.height - 0.5) * made.step, 9);
});

test("the demo ground is an archipelago with a ridge of 300 to 400 m, most of it sea", async () => {
  const { values } = await rasterOf("terrain/elevation.tif");
  const highest = values.reduce((most, value) => Math.max(most, value), 0);
  const sea = values.reduce((count, value) => count + (value === 0 ? 1 : 0), 0);
  expect(highest).toBeGreaterThan(300);
  expect(highest).toBeLessThan(400);
  expect(sea / values.length).toBeGreaterThan(0.5);
});

test("the second survey was written by other software: UTM, holes along its edges, ground between", async () => {
  const { crs, hole, values } = await rasterOf("terrain/second-survey.tif");
  expect(crs).toEqual({ kind: "utm", zone: 10, north: false });
  const holes = hole.reduce((count, flag) => count + flag, 0);
  expect(holes / hole.length).toBeGreaterThan(0.01);
  expect(holes / hole.length).toBeLessThan(0.05);
  expect(values.reduce((most, value) => Math.max(most, value), 0)).toBeGreaterThan(100);
});
