import { cp, mkdir, mkdtemp, readFile, rm, symlink, utimes, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { problemLine } from "../document-problem.ts";
import { openProject } from "./open-project.ts";

const demo = fileURLToPath(new URL("../../../../demo", import.meta.url));
const fixtures = fileURLToPath(new URL("../../fixtures/geotiff", import.meta.url));

const definition = `format: 1
title: A small project
aircraft: [aircraft/baseline.yaml]
terrain:
  - { path: terrain/ground.tif, heightDatum: mean-sea-level }
`;

let folder = "";
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), "wingseed-project-"));
  for (const name of ["aircraft", "places", "terrain", "missions"]) await mkdir(join(folder, name));
  await put("project.yaml", definition);
  await cp(join(demo, "aircraft/baseline.yaml"), join(folder, "aircraft/baseline.yaml"));
  await cp(join(fixtures, "int16.tif"), join(folder, "terrain/ground.tif"));
});
afterEach(() => rm(folder, { recursive: true, force: true }));

const put = (path: string, text: string) => writeFile(join(folder, path), text);
const checked = async () => (await openProject(folder).check()).map(problemLine);

test("a sound project has no problems and lists its files by kind", async () => {
  expect(await checked()).toEqual([]);
  expect(await openProject(folder).list()).toEqual([
    { path: "aircraft/baseline.yaml", kind: "aircraft" },
    { path: "project.yaml", kind: "project" },
    { path: "terrain/ground.tif", kind: "raster" },
  ]);
});

test("documents come in SI with the hash of their bytes", async () => {
  const { value } = await openProject(folder).readDocument("project.yaml");
  expect(value).toMatchObject({ path: "project.yaml", kind: "project", data: { title: "A small project" } });
  expect(value?.hash).toMatch(/^[0-9a-f]{64}$/);
});

describe("tables", () => {
  const polar = "angle [deg],lift\n0,0\n";

  test("are read wherever they lie, and belong to the project in their own folder", async () => {
    await mkdir(join(folder, "tables"));
    await put("tables/polar.csv", polar);
    await put("places/log.csv", "not a table");
    const project = openProject(folder);
    expect((await project.readDocument("tables/polar.csv")).value).toMatchObject({ kind: "table", data: { rows: [[0, 0]] } });
    expect((await project.readDocument("places/log.csv")).problems?.[0]?.message).toBe("the table has names of columns but no row");
    expect((await project.list()).filter(({ kind }) => kind === "table")).toEqual([{ path: "tables/polar.csv", kind: "table" }]);
    expect(await checked()).toEqual([]);
  });

  test("are looked for in the folders that the question names, one after another, and nowhere else", async () => {
    const beside = await mkdtemp(join(tmpdir(), "wingseed-beside-"));
    await writeFile(join(beside, "polar.csv"), polar);
    expect((await openProject(folder).readDocument("polar.csv")).problems?.[0]?.message).toBe("there is no file polar.csv");
    const project = openProject(folder, { tableFolders: [folder, beside] });
    expect((await project.readDocument("polar.csv")).value).toMatchObject({ kind: "table" });
    expect((await project.readDocument("other.csv")).problems?.[0]?.message).toBe(
      `there is no file other.csv; it was looked for in ${folder}, ${beside}`,
    );
    expect((await project.readDocument("../polar.csv")).problems?.[0]?.kind).toBe("outside-project");
    expect((await project.readDocument("aircraft/none.yaml")).problems?.[0]?.message).toBe("there is no file aircraft/none.yaml");
    await rm(beside, { recursive: true });
  });

  test("with a byte order mark are tables", async () => {
    await put("polar.csv", `\ufeff${polar}`);
    expect((await openProject(folder).readDocument("polar.csv")).value).toMatchObject({
      data: { columns: [{ name: "angle" }, { name: "lift" }] },
    });
  });
});

describe("what is wrong between documents is told where it is written", () => {
  test.each([
    [
      "a missing aircraft",
      definition.replace("baseline", "basline"),
      'project.yaml:3:12: aircraft[0]: there is no aircraft file "aircraft/basline.yaml"; did you mean "aircraft/baseline.yaml"?',
    ],
    [
      "a missing raster",
      definition.replace("ground.tif", "hills.tif"),
      'project.yaml:5:13: terrain[0].path: there is no raster file "terrain/hills.tif"; there is terrain/ground.tif',
    ],
    [
      "a file of another kind",
      definition.replace("aircraft/baseline.yaml", "project.yaml"),
      'project.yaml:3:12: aircraft[0]: "project.yaml" is a project file, an aircraft file is expected; there is aircraft/baseline.yaml',
    ],
    [
      "a path that leaves the project",
      definition.replace("aircraft/baseline", "../baseline"),
      'project.yaml:3:12: aircraft[0]: there is no aircraft file "../baseline.yaml"; there is aircraft/baseline.yaml',
    ],
    [
      "no geoid undulation",
      definition.replace("mean-sea-level", "ellipsoid"),
      "project.yaml:5:46: terrain[0].heightDatum: heights above the ellipsoid need geoidUndulation beside them",
    ],
    [
      "an undulation too many",
      definition.replace("sea-level }", "sea-level, geoidUndulation: 4 m }"),
      "project.yaml:5:79: terrain[0].geoidUndulation: geoidUndulation goes with heightDatum ellipsoid only",
    ],
    [
      "a date that is none",
      `${definition}cautionsAccepted: { by: me, on: yesterday }\n`,
      'project.yaml:6:33: cautionsAccepted.on: must be a date such as "2031-04-30"',
    ],
  ])("%s", async (_, text, line) => {
    await put("project.yaml", text);
    expect(await checked()).toContain(line);
  });

  test("a raster that nobody gives a datum", async () => {
    await put("project.yaml", definition.slice(0, definition.indexOf("terrain:")));
    expect(await checked()).toEqual([
      "terrain/ground.tif:1:1: nobody says what the heights of this raster are measured from; list it under terrain (or population) in project.yaml",
    ]);
    expect((await openProject(folder).readRaster("terrain/ground.tif")).value?.heightDatum).toBe("unknown");
  });

  test("a raster that says otherwise than the project", async () => {
    await cp(join(fixtures, "int16-egm96.tif"), join(folder, "terrain/ground.tif"));
    expect(await checked()).toEqual([]);
    await put("project.yaml", definition.replace("mean-sea-level", "ellipsoid, geoidUndulation: -12 m"));
    expect(await checked()).toEqual([
      "terrain/ground.tif:1:1: the raster says that its heights are measured from mean sea level, project.yaml says the ellipsoid; one of them is wrong",
    ]);
  });

  test("files that the project does not name, or that have a name nobody reads", async () => {
    await cp(join(demo, "aircraft/baseline.yaml"), join(folder, "aircraft/other.yaml"));
    await put("aircraft/third.yml", "format: 1\n");
    expect(await checked()).toEqual([
      "aircraft/other.yaml:1:1: warning: project.yaml does not list this aircraft, so nothing takes it unless it is named",
      "aircraft/third.yml:1:1: warning: this file is not read: aircraft/third.yml is no document of a project; they lie at project.yaml, aircraft/*.yaml, missions/*.yaml, places/*.geojson, terrain/*.tif, tables/*.csv",
    ]);
  });

  test("everything at once, in reading order", async () => {
    await put("project.yaml", "format: 1\ntitle: 3\naircraft: [aircraft/none.yaml]\n");
    await put("places/a.geojson", "{}");
    await put("terrain/ground.tif", "no raster");
    await put("missions/m.yaml", "format: 9\n");
    expect((await checked()).map((line) => line.split(": ")[0])).toEqual([
      "missions/m.yaml:1:9",
      "places/a.geojson:1:1",
      "project.yaml:2:8",
      "project.yaml:3:12",
      "terrain/ground.tif:1:1",
    ]);
  });

  test("no project.yaml, no folder", async () => {
    await rm(join(folder, "project.yaml"));
    expect(await checked()).toEqual(["project.yaml:1:1: there is no file project.yaml"]);
    expect(await openProject(join(folder, "nowhere")).check()).toMatchObject([{ kind: "missing-file", read: join(folder, "nowhere") }]);
  });
});

describe("nothing outside the folder is read", () => {
  test.each([
    ["../secret.yaml", "leads out of the project folder"],
    ["aircraft/../../secret.yaml", "leads out of the project folder"],
    ["/etc/passwd", "is an absolute path"],
    ["C:/secret.yaml", "is an absolute path"],
    ["aircraft\\baseline.yaml", "forward slashes"],
    ["aircraft//baseline.yaml", "leads out of the project folder or around in it"],
    ["", "a path is empty"],
    ["aircraft/a\0.yaml", "a character that no path has"],
    ["secrets/x.yaml", "is no document of a project"],
  ])("%j", async (path, words) => {
    const project = openProject(folder);
    for (const reading of [await project.readDocument(path), await project.readRaster(path)]) {
      expect(reading.value).toBeUndefined();
      expect(reading.problems?.[0]?.message).toMatch(new RegExp(`${words}|is no document of a project`));
    }
  });

  test("a link that leads out, a link in a circle, a folder in the place of a file", async () => {
    const outside = await mkdtemp(join(tmpdir(), "wingseed-outside-"));
    await writeFile(join(outside, "x.yaml"), "format: 1\n");
    await symlink(join(outside, "x.yaml"), join(folder, "aircraft/out.yaml"));
    await symlink("circle.yaml", join(folder, "aircraft/circle.yaml"));
    await mkdir(join(folder, "aircraft/folder.yaml"));
    const project = openProject(folder);
    const message = async (path: string) => (await project.readDocument(path)).problems?.[0]?.message;
    expect(await message("aircraft/out.yaml")).toBe("aircraft/out.yaml leads out of the project folder by a link");
    expect(await message("aircraft/circle.yaml")).toBe("cannot read aircraft/circle.yaml: its links run in a circle");
    expect(await message("aircraft/folder.yaml")).toBe("aircraft/folder.yaml is no plain file");
    await rm(outside, { recursive: true });
  });
});

describe("reading again", () => {
  test("gives the same reading while a file stays as it is, and a new one when it changes", async () => {
    const project = openProject(folder);
    const first = await project.readDocument("project.yaml");
    expect((await project.readDocument("project.yaml")).value).toBe(first.value);
    const { atime, mtime } = await import("node:fs/promises").then(({ stat }) => stat(join(folder, "project.yaml")));
    await put("project.yaml", definition.replace("small", "SMALL"));
    await utimes(join(folder, "project.yaml"), atime, mtime);
    const second = await project.readDocument("project.yaml");
    expect(second.value?.data).toMatchObject({ title: "A SMALL project" });
    expect(second.value?.hash).not.toBe(first.value?.hash);
  });

  test("a raster keeps its pixels but not its hash when the project changes what they are measured from", async () => {
    const project = openProject(folder);
    const first = (await project.readRaster("terrain/ground.tif")).value;
    await put("project.yaml", definition.replace("mean-sea-level", "ellipsoid, geoidUndulation: -12 m"));
    const second = (await project.readRaster("terrain/ground.tif")).value;
    expect(first).toMatchObject({ heightDatum: "mean-sea-level" });
    expect(second).toMatchObject({ heightDatum: "ellipsoid", geoidUndulation: -12 });
    expect(second?.values).toBe(first?.values);
    expect(second?.hash).not.toBe(first?.hash);
  });

  test("two readers at the same time share one raster", async () => {
    const project = openProject(folder);
    const [first, second] = await Promise.all([project.readRaster("terrain/ground.tif"), project.readRaster("terrain/ground.tif")]);
    expect(first.value?.values).toBe(second.value?.values);
  });

  test("bytes that are no text and a document too large are refused", async () => {
    await writeFile(join(folder, "places/a.geojson"), Uint8Array.from([0xff, 0xfe, 0x00]));
    await writeFile(join(folder, "places/b.geojson"), new Uint8Array(5 * 2 ** 20));
    const project = openProject(folder);
    expect((await project.readDocument("places/a.geojson")).problems?.[0]?.message).toBe("the file is no text in UTF-8");
    expect((await project.readDocument("places/b.geojson")).problems?.[0]?.message).toBe(
      "the file has 5242880 bytes; at most 4194304 are read",
    );
  });
});

test("the demo project has no problems, and says that it is invented", async () => {
  const project = openProject(demo);
  expect((await project.check()).map(problemLine)).toEqual([]);
  expect((await project.readDocument("project.yaml")).value?.data).toMatchObject({ demo: true });
  for (const { path, kind } of await project.list()) {
    if (!path.endsWith(".yaml")) continue;
    const [first = ""] = (await readFile(join(demo, path), "utf8")).split("\n");
    const schema = /^# yaml-language-server: \$schema=(.*)$/u.exec(first)?.[1];
    expect(schema, `${path} names the schema of its kind in its first line`).toMatch(new RegExp(`${kind}\\.schema\\.json$`));
    expect(JSON.parse(await readFile(join(demo, path, "..", schema ?? ""), "utf8"))).toHaveProperty("title");
  }
});
