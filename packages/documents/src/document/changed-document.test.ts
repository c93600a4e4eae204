import { readFileSync } from "node:fs";
import type { AircraftDefinition, ReadDocument } from "@wingseed/engine";
import { describe, expect, test } from "vitest";
import { changedDocument } from "./changed-document.ts";
import { documentKinds } from "./document-kinds.ts";
import { readYamlDocument } from "./read-document.ts";
import { valuePlace } from "./value-place.ts";

const kind = documentKinds.find((one) => one.kind === "aircraft");
if (kind === undefined) throw new Error("there is no aircraft document");
const text = readFileSync(new URL("../../../../demo/aircraft/baseline.yaml", import.meta.url), "utf8");
const document = readYamlDocument(kind, { file: "aircraft/baseline.yaml", text, hash: "h" }).document as ReadDocument;
const changed = (...changes: readonly (readonly [string, string])[]) =>
  changedDocument(
    kind,
    document,
    changes.map(([place, put]) => ({ place, text: put })),
  );

describe("a place by names", () => {
  test.each([
    ["rotors.main.radius", ["rotors", 0, "radius"]],
    ["/controls/collective/clutchOpen/minimum", ["controls", 0, "clutchOpen", "minimum"]],
    ["payloads.camera.mass", ["payloads", 1, "mass"]],
    ["rotors.main.stations.1.chord", ["rotors", 0, "stations", 1, "chord"]],
    ["battery.packs[2]", ["battery", "packs", 2]],
    ["mixing.rudder.yaw", ["mixing", 3, "yaw"]],
    ["emptyProducts", ["emptyProducts"]],
  ])("%s", (written, path) => {
    expect(valuePlace(document.data, written)).toEqual({ kind: "place", path });
  });

  test.each([
    ["rotors.0.radius", 'there is no "0" in this list; there is main'],
    ["rotors.man.radius", 'did you mean "main"?'],
    ["roters.main.radius", 'did you mean "rotors"?'],
    ["rotors.main.stations.7.chord", '"7" is no entry of this list of 2'],
    ["name.first.second", "in a single value"],
    ["", "names no place"],
  ])("%s is none", (written, message) => {
    expect(valuePlace(document.data, written)).toMatchObject({ kind: "problem", message: expect.stringContaining(message) });
  });
});

describe("a changed document", () => {
  test("has the value in SI, its interval, a hash of its own and a remark", () => {
    const found = changed(["rotors.main.radius", "120 cm ± 1 %"], ["limits.altitudeMaximum", "3000 m"]);
    if (found.kind !== "document") throw new Error("refused");
    const { rotors, limits } = found.document.data as AircraftDefinition;
    expect([rotors[0]?.radius, limits.altitudeMaximum]).toEqual([1.2, 3000]);
    expect(found.document.written["/rotors/0/radius"]).toMatchObject({
      text: "120 cm ± 1 %",
      uncertainty: { kind: "normal", halfWidth: 0.012 },
    });
    expect(found.document.hash).not.toBe(document.hash);
    expect(found.remarks[0]).toMatchObject({
      severity: "warning",
      message: "rotors.main.radius is 120 cm ± 1 % for this question; the file has 1.15 m",
    });
    expect((document.data as AircraftDefinition).rotors[0]?.radius).toBe(1.15);
  });

  test("may gain what the file leaves open, and turn what is a word or a yes", () => {
    const found = changed(
      ["controls.governor.rate", "20 m/s2"],
      ["rotors.main.inflow", "uniform"],
      ["interference.main-on-wing.active", "false"],
      ["controls.rudder.setting", "{ kind: fixed, value: 2 deg }"],
    );
    if (found.kind !== "document") throw new Error(JSON.stringify(found.problems));
    const { controls, rotors, interference } = found.document.data as AircraftDefinition;
    expect(controls.find(({ id }) => id === "governor")?.rate).toBe(20);
    expect([rotors[0]?.inflow, interference[0]?.active]).toEqual(["uniform", false]);
    expect(controls.find(({ id }) => id === "rudder")?.setting).toEqual({ kind: "fixed", value: expect.closeTo(0.0349, 4) });
  });

  test.each([
    ["rotors.main.radius", "1.2", "has no unit"],
    ["rotors.main.radius", "1.2 kg", "is a mass"],
    ["rotors.main.radius", "-1 m", "out of range"],
    ["controls.elevator.setting.maximum", "8 m/s", "is a speed"],
    ["driveLines.rotor-drive.drives", "mian", 'there is no rotor or propeller called "mian"'],
    ["rotors.main.diameter", "2 m", "this key is not known here"],
    ["rotor.main.radius", "2 m", 'did you mean "rotors"?'],
  ])("%s = %s is refused: %s", (place, put, message) => {
    const found = changed([place, put]);
    if (found.kind !== "problems") throw new Error("taken");
    expect(found.problems.map((problem) => problem.message).join("; ")).toContain(message);
  });
});
