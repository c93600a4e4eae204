import { fileURLToPath } from "node:url";
import type { AircraftDefinition } from "@wingseed/engine";
import { expect, test } from "vitest";
import { changedProject } from "./changed-project.ts";
import { openProject } from "./open-project.ts";

const demo = openProject(fileURLToPath(new URL("../../../../demo", import.meta.url)));
const file = "aircraft/baseline.yaml";

test("only the document that is named is read with another value, and says so", async () => {
  const changed = changedProject(demo, [{ file, place: "payloads.camera.mass", text: "2 kg" }]);
  const reading = await changed.readDocument(file);
  if (reading.problems) throw new Error(reading.problems[0]?.message);
  const { payloads } = reading.value.data as AircraftDefinition;
  expect(payloads.find(({ name }) => name === "camera")?.mass).toBe(2);
  expect(reading.warnings.map(({ message }) => message)).toEqual(["payloads.camera.mass is 2 kg for this question; the file has 1.60 kg"]);
  const others = ["aircraft/revised.yaml", "project.yaml"];
  for (const path of others) expect((await changed.readDocument(path)).value?.hash).toBe((await demo.readDocument(path)).value?.hash);
  expect(reading.value.hash).not.toBe((await demo.readDocument(file)).value?.hash);
});

test("what cannot be changed is a problem of the reading", async () => {
  const message = async (path: string, place: string, text: string) =>
    (await changedProject(demo, [{ file: path, place, text }]).readDocument(path)).problems?.[0]?.message;
  expect(await message(file, "payloads.piano.mass", "2 kg")).toContain('there is no "piano" in this list');
  expect(await message(file, "payloads.camera.mass", "2 m")).toContain("is a length");
  expect(await message("places/sites.geojson", "features.0.type", "Feature")).toContain("cannot be changed for a question");
  expect(await message("aircraft/none.yaml", "name", "None")).toBe("there is no file aircraft/none.yaml");
});

test("no change is the project itself", () => {
  expect(changedProject(demo, [])).toBe(demo);
});
