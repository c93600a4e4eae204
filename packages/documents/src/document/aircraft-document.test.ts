import { readFileSync } from "node:fs";
import { type AircraftDefinition, aircraftDefinition } from "@wingseed/engine";
import { describe, expect, test } from "vitest";
import { problemLine } from "../document-problem.ts";
import { documentKinds } from "./document-kinds.ts";
import { readYamlDocument } from "./read-document.ts";

const text = (path: string) => readFileSync(new URL(`../../../../${path}`, import.meta.url), "utf8");
const baseline = text("demo/aircraft/baseline.yaml");
const older = text("packages/documents/fixtures/aircraft-format-1.yaml");
const kind = documentKinds.find((one) => one.kind === "aircraft");
if (kind === undefined) throw new Error("there is no aircraft document");

const read = (written: string) => readYamlDocument(kind, { file: "a.yaml", text: written, hash: "h" });

/** Problems of a text in which one passage stands otherwise, each with the line where it is expected. */
function slips(passage: string, put: string, written = baseline): { readonly lines: readonly string[]; readonly at: number } {
  const offset = written.indexOf(passage);
  if (offset < 0) throw new Error(`the text has no ${passage}`);
  const changed = written.slice(0, offset) + put + written.slice(offset + passage.length);
  const same = [...put].findIndex((letter, index) => letter !== passage[index]);
  const at = written.slice(0, offset + Math.max(same, 0)).split("\n").length;
  return { lines: read(changed).problems.map(problemLine), at };
}

test("the demo's aircraft has no problem", () => {
  expect(read(baseline).problems).toEqual([]);
  expect(read(text("demo/aircraft/revised.yaml")).problems).toEqual([]);
});

/** A passage, what is put there, what is said, and how many lines below the change it is said. */
type Slip = readonly [passage: string, put: string, sentence: string, below?: number];

describe("what does not go together is told with its line", () => {
  const slipped: readonly Slip[] = [
    [
      "drives: main",
      "drives: mian",
      'driveLines[0].drives: there is no rotor or propeller called "mian"; there are main, right-propeller, left-propeller',
    ],
    ["id: left-propeller", "id: main", 'propellers[1].id: "main" is the name of rotors[0] already'],
    [
      "clutch: none",
      "clutch: one-way",
      "driveLines[1].clutch: a one-way clutch is for a rotor that may turn free; right-propeller is a propeller: write none",
    ],
    [
      "drives: left-propeller",
      "drives: right-propeller",
      "driveLines[2].drives: right-propeller is turned by right-drive already; motors on one shaft stand in one drive line",
    ],
    ["id: left-motor", "id: right-motor", 'driveLines[2].motors[0].id: "right-motor" is the name of a motor of right-drive already'],
    [
      "part: main\n    what: collective",
      "part: wing\n    what: collective",
      "controls[0].part: wing is a surface and has no collective; a rotor has one",
    ],
    [
      "part: fin\n    what: deflection",
      "part: tail\n    what: deflection",
      'controls[8].part: there is no surface called "tail"; there are wing, tailplane, fin',
    ],
    [
      "part: fin\n    what: deflection",
      "part: tailplane\n    what: deflection",
      "controls[8].what: deflection of tailplane is moved by elevator already",
      1,
    ],
    ["id: rudder", "id: elevator", 'controls[8].id: "elevator" is the name of controls[7] already'],
    ["value: 8 deg, minimum: 4 deg", "value: 3 deg, minimum: 4 deg", "controls[6].setting.value: lies outside minimum and maximum"],
    ["airspeed: 25 m/s", "airspeed: 5 m/s", "controls[3].setting.schedule[1].airspeed: airspeeds of a schedule rise"],
    [
      "control: rudder",
      "control: ruder",
      'mixing[3].control: there is no control called "ruder"; there are collective, longitudinal-cyclic',
    ],
    ["control: elevator", "control: longitudinal-cyclic", "mixing[1].control: longitudinal-cyclic has its row at mixing[0] already"],
    [
      "from: wing, on: tailplane",
      "from: main, on: tailplane",
      'interference[3].from: wing-downwash comes from a surface: there is no surface called "main"; there are wing, tailplane, fin',
    ],
    ["on: body", "on: main", 'interference[2].on: there is no surface or body called "main"; there are wing, tailplane, fin, body'],
    ["on: body, kind", "on: wing, kind", "interference[2].on: rotor-downwash of main on wing stands here a second time"],
    ["  wing: wing", "  wing: main", 'reduced.wing: there is no surface called "main"'],
    ["bus: rail, power: 8 W", "bus: rial, power: 8 W", 'electrical.loads[0].bus: there is no bus called "rial"; there are pack, rail'],
    ["bus: rail, power: 8 W", "bus: pack, power: 8 W", "electrical.loads[0].emergency: the emergency battery feeds rail, not pack"],
    [
      "from: pack, to: rail",
      "from: rail, to: rail",
      "electrical.buses[1].id: rail is not fed from pack: converter feeds it from rail, which it feeds itself",
      -3,
    ],
    ["from: pack, to: rail", "from: rail, to: pack", "electrical.converters[0].to: pack is at the pack's terminals: the pack feeds it"],
    [
      "- { id: rail, voltage: 12 V }",
      "- { id: rail, voltage: 12 V }\n    - { id: camera, voltage: 5 V }",
      "electrical.buses[2].id: camera is not fed from pack: no converter feeds it",
      1,
    ],
    [
      "payload: parts, noseUp",
      "payload: prats, noseUp",
      'suspension[1].payload: there is no payload record called "prats"; there are parts, camera, empty',
    ],
    ["packs: [7, 10, 13]", "packs: [7, 10, 14]", "battery.packs[2]: the bay holds 13 blocks"],
    ["name: empty", "name: parts", 'payloads[2].name: "parts" is the name of payloads[0] already'],
    ["centreOfGravityAft: -0.02 m", "centreOfGravityAft: 0.2 m", "limits.centreOfGravityAft: the aft limit lies behind the forward one"],
    ["radiusFraction: 1,", "radiusFraction: 0,", "rotors[0].stations[1].radiusFraction: stations go outward"],
  ];
  for (const [passage, put, sentence, below = 0] of slipped)
    test(`${passage} → ${put}`, () => {
      const { lines, at } = slips(passage, put);
      const told = lines.find((line) => line.includes(sentence));
      expect(told, lines.join("\n")).toMatch(new RegExp(`^a\\.yaml:${at + below}:\\d+: `, "u"));
    });

  test("two converters on one bus", () => {
    const second = "- { id: second, from: pack, to: rail, constantLoss: 0 W, proportionalLoss: 0 }";
    const { lines } = slips("  loads:\n    - { id: computer", `    ${second}\n  loads:\n    - { id: computer`);
    expect(lines).toEqual([expect.stringContaining("electrical.converters[1].to: rail is fed by converter already")]);
  });
});

describe("an aircraft file of format 1", () => {
  const document = read(older).document;
  const aircraft = aircraftDefinition.parse(document?.data);

  test("opens, and holds what was written", () => {
    const line = older.split("\n").indexOf("format: 1") + 1;
    expect(read(older).problems.map(problemLine)).toEqual([
      expect.stringMatching(`^a.yaml:${line}:9: warning: format: this document is in format 1 and read as format 2\\. Not written in it`),
    ]);
    const now = read(baseline).document?.data as AircraftDefinition;
    const { propellers, rotors, driveLines, battery } = aircraft;
    expect(rotors).toEqual(now.rotors);
    expect(propellers).toEqual(now.propellers);
    expect({ ...battery, blockSize: now.battery.blockSize }).toEqual(now.battery);
    expect(driveLines.map(({ motors }) => motors)).toEqual(now.driveLines.map(({ motors }) => motors));
    const fin = aircraft.surfaces.find(({ id }) => id === "fin");
    expect(fin?.span).toBeCloseTo(Math.sqrt(0.12), 12);
  });

  test("keeps line, column, interval and source of every number", () => {
    const line = (key: string) => older.split("\n").findIndex((one) => one.trim().startsWith(key)) + 1;
    expect(document?.written["/rotors/0/radius"]).toMatchObject({ text: "1.15 m", line: line("radius:"), column: 11, source: "invented" });
    expect(document?.written["/bodies/0/dragArea"]).toMatchObject({ line: line("dragArea:"), uncertainty: { kind: "normal" } });
    expect(document?.written["/propellers/1/place/y"]).toMatchObject({ value: -0.8, line: line("place: { x: 0.12") });
    expect(document?.written["/propellers/0/stoppedDragArea"]).toMatchObject({ value: 0.002, line: line("stoppedPropellersDragArea:") });
    expect(document?.written["/surfaces/2/dihedral"]).toMatchObject({ source: "format 1", line: line("fin:") + 1 });
  });

  test.each([
    ["radius: 1.15 m", "radius: 1.15 kg", "rotors[0].radius"],
    ["radius: 1.15 m", "raduis: 1.15 m", "rotors[0].raduis: this key is not known here"],
    ["avionicsPower: 25 W", "avionicsPower: 25", "electrical.loads[0].power"],
    ["articulation: teetering", "articulation: rigged", "rotors[0].articulation.kind"],
    ["gearRatio: 7.5", "gearRatio: -7.5", "driveLines[0].gearStages[0].ratio"],
  ])("tells of %s → %s where it stands", (passage, put, sentence) => {
    const { lines, at } = slips(passage, put, older);
    const told = lines.find((line) => line.includes(sentence));
    expect(told, lines.join("\n")).toMatch(new RegExp(`^a\\.yaml:${at}:\\d+: `, "u"));
  });

  test.each([
    ["rotor", "rotor:\n  hub", "rotor: 3\nother:\n  hub"],
    ["propellers", "propellers:", "propellers: []\nothers:"],
    ["electrical", "electrical:", "electric:"],
    ["body", "  dragArea: 0.052 m2 ± 10 %\n", ""],
  ])("with %s as it should not be is told, and nothing falls", (_, passage, put) => {
    const { lines } = slips(passage, put, older);
    expect(lines.length).toBeGreaterThan(0);
  });
});
