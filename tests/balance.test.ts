// The demo's aircraft weighed by hand, its intervals by a crowd of aircraft that differ as the file says they may.
import { type AircraftDefinition, analyses, type Outcome, type ProjectView, type ReadDocument } from "@wingseed/engine";
import { beforeAll, describe, expect, test } from "vitest";
import { type Loading, massProperties, recordLoading } from "../packages/engine/src/aircraft/index.ts";
import { centreLimits } from "../packages/engine/src/analyses/balance/centre-limits.ts";
import { controlLimits, stabilityLimit } from "../packages/engine/src/analyses/balance/computed-limits.ts";
import { contributionsTo, halfWidthOf, unsureNumbers } from "../packages/engine/src/analyses/balance/intervals.ts";
import type { BalanceOutputs, BalanceRow } from "../packages/engine/src/analyses/balance/output-schema.ts";
import { atmosphereAt } from "../packages/engine/src/environment/atmosphere/index.ts";
import { demoView } from "./always-answer/demo-view.ts";

const file = "aircraft/baseline.yaml";
let view: ProjectView;
let document: ReadDocument;
beforeAll(async () => {
  view = await demoView();
  const found = view.documents[file];
  if (found === undefined) throw new Error("the demo has lost its aircraft");
  document = found;
});

const balance = () => {
  const found = analyses.find(({ name }) => name === "balance");
  if (found === undefined) throw new Error("no balance");
  return found;
};

const context = {
  progress: () => {},
  cancelled: () => false,
  partial: () => {},
  analysis: (): never => {
    throw new Error("nothing else is at hand");
  },
};

function asked(inputs: object, change?: (aircraft: AircraftDefinition) => Partial<AircraftDefinition>): Outcome<BalanceOutputs> {
  const aircraft = document.data as AircraftDefinition;
  const documents = { ...view.documents, [file]: { ...document, data: change ? { ...aircraft, ...change(aircraft) } : aircraft } };
  return balance().run({ ...view, documents }, balance().inputs.parse({ aircraft: file, limits: "file", ...inputs }), context);
}

function answered(inputs: object, change?: (aircraft: AircraftDefinition) => Partial<AircraftDefinition>): BalanceOutputs {
  const { outputs, problem } = asked(inputs, change);
  if (outputs === undefined) throw new Error(problem?.message);
  return balance().outputs.parse(outputs) as BalanceOutputs;
}

const rowOf = (outputs: BalanceOutputs, blocks: number, payload: string): BalanceRow => {
  const row = outputs.rows.find((one) => one.blocks === blocks && one.payload === payload);
  if (row === undefined) throw new Error(`no row of ${blocks} blocks with ${payload}`);
  return row;
};

const aftOf = (x: number, from: string) => [{ side: "aft", x, from }];

describe("thirteen blocks and the parts", () => {
  test("weigh and balance as one adds them up by hand", () => {
    const row = rowOf(answered({}), 13, "parts");
    // 9.2 at −0.03, 0.70 and 13 × 0.69 at 0.035 (the middle of the full bay), 1.13 at 0.02: 0.08505 kg m over 20 kg.
    expect(row.mass.value).toBeCloseTo(20, 12);
    expect(row.centre.x.value).toBeCloseTo(0.08505 / 20, 12);
    // (0.70 + 8.97) × 0.06 + 1.13 × 0.12 over 20 kg.
    expect(row.centre.z.value).toBeCloseTo((9.67 * 0.06 + 1.13 * 0.12) / 20, 12);
    expect(row.foreMargin).toBeCloseTo(0.05 - 0.0042525, 12);
    expect(row.aftMargin).toBeCloseTo(0.02 + 0.0042525, 12);
    expect(row).toMatchObject({ verdict: "inside", binding: "aft limit", tooHeavy: false });
    // Roll: 0.55 empty; blocks 0.69 (0.26² + 0.068²) / 12 each; parallel axes in y and z.
    const z = row.centre.z.value;
    const roll = 0.55 + (13 * 0.69 * (0.26 ** 2 + 0.068 ** 2)) / 12 + 9.2 * z ** 2 + 9.67 * (0.06 - z) ** 2 + 1.13 * (0.12 - z) ** 2;
    expect(row.inertia.x.value).toBeCloseTo(roll, 12);
  });

  test("are as unsure as mass and place of the empty aircraft make them", () => {
    const { centre, mass } = rowOf(answered({}), 13, "parts");
    expect(mass.halfWidth).toBeCloseTo(0.092, 9);
    // 3 mm × 9.2 / 20 of the place, 0.092 kg × (−30 − 4.2525) mm / 20 kg of the mass.
    expect(centre.x.halfWidth).toBeCloseTo(Math.hypot((0.003 * 9.2) / 20, (0.092 * (0.03 + 0.0042525)) / 20), 7);
  });

  test("are made of parts that pull the centre of gravity to where it is", () => {
    const { breakdown, rows, now } = answered({});
    expect(rows[now]).toMatchObject({ blocks: 13, payload: "parts" });
    expect(breakdown.reduce((sum, { pull }) => sum + pull, 0)).toBeCloseTo(rows[now]?.centre.x.value ?? 0, 12);
    expect(breakdown.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12);
  });
});

test("an interval is the spread of a crowd of aircraft whose numbers lie where the file says", () => {
  const aircraft = document.data as AircraftDefinition;
  const loading: Loading = { blocks: 7, payloadMass: 1.6, payloadPower: 0, payloadDragArea: 0 };
  const numbers = unsureNumbers({
    ...document.written,
    "/battery/blockMass": { text: "", value: 0.69, line: 1, column: 1, uncertainty: { kind: "uniform", low: 0.66, high: 0.72 } },
    "/payloadBay/x": { text: "", value: 0.02, line: 1, column: 1, uncertainty: { kind: "triangular", low: -0.02, mode: 0.02, high: 0.06 } },
  });
  const results = (one: AircraftDefinition) => [massProperties(one, loading).centre.x];
  const linear = halfWidthOf(contributionsTo(aircraft, numbers, results), 0) / 1.96;
  let state = 12345;
  const even = () => {
    state = (1103515245 * state + 12345) % 2 ** 31;
    return (state + 0.5) / 2 ** 31;
  };
  const normal = () => Math.sqrt(-2 * Math.log(even())) * Math.cos(2 * Math.PI * even());
  const crowd = Array.from({ length: 20_000 }, () => {
    const emptyMass = 9.2 + (0.092 / 1.96) * normal();
    const emptyCentre = { ...aircraft.emptyCentre, x: -0.03 + (0.003 / 1.96) * normal() };
    const battery = { ...aircraft.battery, blockMass: 0.66 + 0.06 * even() };
    // Two even numbers add up to a triangle.
    const payloadBay = { ...aircraft.payloadBay, x: -0.02 + 0.04 * (even() + even()) };
    return results({ ...aircraft, emptyMass, emptyCentre, battery, payloadBay })[0] as number;
  });
  const mean = crowd.reduce((sum, x) => sum + x, 0) / crowd.length;
  const spread = Math.sqrt(crowd.reduce((sum, x) => sum + (x - mean) ** 2, 0) / crowd.length);
  // Twenty thousand aircraft know their own spread to half a per cent.
  expect(linear / spread).toBeGreaterThan(0.985);
  expect(linear / spread).toBeLessThan(1.015);
});

describe("limits", () => {
  const noseHeavy = { payloads: ["camera"], places: [{ name: "nose", x: 0.6, z: 0.1 }] };

  test("count every pack with every payload at every place", () => {
    expect(answered({}).rows).toHaveLength(9);
    const outputs = answered({
      places: [
        { name: "nose", x: 0.3, z: 0.1 },
        { name: "tail", x: -0.3, z: 0.1 },
      ],
    });
    expect(outputs.rows).toHaveLength(15);
    expect(outputs.rows.map(({ place }) => place)).toContain("tail");
  });

  test("that are exceeded are said, and the question is not met", () => {
    const outputs = answered(noseHeavy);
    const row = rowOf(outputs, 7, "camera");
    expect(row).toMatchObject({ verdict: "outside", binding: "fore limit" });
    expect(row.foreMargin).toBeLessThan(0);
    const answer = balance().answer(outputs, balance().inputs.parse(noseHeavy));
    expect(answer.met).toBe(false);
    expect(answer.brief.length).toBeLessThanOrEqual(40);
    expect(
      balance()
        .limits(outputs, {})
        .find(({ binding }) => binding),
    ).toMatchObject({ name: "centre of gravity, fore limit" });
  });

  test("within the interval are told as unsure, with care", () => {
    const { x } = rowOf(answered({}), 13, "parts").centre;
    const near = (aircraft: AircraftDefinition, by: number) => ({ limits: { ...aircraft.limits, centreOfGravityForward: x.value + by } });
    const one = { packs: [13], payloads: ["parts"] };
    expect(answered(one, (a) => near(a, 0.001)).rows[0]).toMatchObject({ verdict: "inside-unsure" });
    expect(answered(one, (a) => near(a, -0.001)).rows[0]).toMatchObject({ verdict: "outside-unsure" });
    expect(answered(one, (a) => near(a, -0.003)).rows[0]).toMatchObject({ verdict: "outside" });
    expect(asked(one, (a) => near(a, 0.001)).warnings?.map(({ kind }) => kind)).toContain("limit-unsure");
  });

  test("that are computed stand in the place of the file's, side by side; the tightest of them counts", () => {
    const aircraft = document.data as AircraftDefinition;
    const loading: Loading = { blocks: 7, payloadMass: 0, payloadPower: 0, payloadDragArea: 0 };
    const aft = (x: number, from: string) => [{ side: "aft" as const, x, from }];
    expect(centreLimits([() => aft(-0.06, "elevator"), () => aft(-0.04, "static margin")], aircraft, loading)).toEqual({
      fore: { side: "fore", x: 0.05, from: "aircraft file" },
      aft: { side: "aft", x: -0.04, from: "static margin" },
    });
  });

  test("come from the flights of stability: the one that asks for the foremost centre of gravity", () => {
    const flight = (airspeed: number, rearmostCentre: number | null) => ({ airspeed, mode: "clutch-open" as const, rearmostCentre });
    expect(stabilityLimit([flight(16, -0.02), flight(24, -0.05), flight(32, null)])).toEqual(
      aftOf(-0.02, "stability at 16 m/s, clutch open"),
    );
    expect(stabilityLimit([flight(16, null)])).toEqual([]);
  });

  test("come from control margins: hover runs out of cyclic ahead, and with more of it kept the range is narrower", () => {
    const aircraft = document.data as AircraftDefinition;
    const [record] = aircraft.payloads;
    if (record === undefined) throw new Error("no payload");
    const air = atmosphereAt({ altitude: 0, temperatureOffset: 0, relativeHumidity: 0 });
    const found = controlLimits(aircraft, recordLoading(13, record), air, () => {});
    const fore = found.filter(({ side }) => side === "fore").toSorted((one, other) => one.x - other.x)[0];
    expect(fore?.from).toBe("longitudinal cyclic range in hover, clutch closed");
    // 7.2° of cyclic in hover tilt the disc by as much; the weight 20 kg below a hub 0.386 m up leans by atan of x over that, less what the wing and the propellers do.
    expect(fore?.x).toBeGreaterThan(0.05);
    expect(fore?.x).toBeLessThan(0.12);
    for (const { side, x } of found) expect(side === "fore" ? x > 0.0043 : x < 0.0043).toBe(true);
  });

  test("of mass leave a loading out of what is nearest", () => {
    const outputs = answered({}, ({ limits }) => ({ limits: { ...limits, largestTakeoffMass: 18 } }));
    expect(outputs.rows.filter(({ tooHeavy }) => tooHeavy)).not.toHaveLength(0);
    expect(outputs.rows[outputs.worst ?? -1]?.tooHeavy).toBe(false);
    const all = answered({}, ({ limits }) => ({ limits: { ...limits, largestTakeoffMass: 9 } }));
    expect(all.worst).toBeNull();
    expect(balance().answer(all, balance().inputs.parse({})).met).toBe(false);
  });
});

describe("hung from the rotor's bolt", () => {
  test("the demo hangs as its masses say", () => {
    const { suspension } = answered({});
    expect(suspension.map(({ agrees }) => agrees)).toEqual([true, true]);
    const [bare] = suspension;
    // 9.2 kg at −0.03 and 0.7 kg at 0.035, 0.06: the centre lies 25.40 mm behind and 354.24 mm under the bolt.
    expect(((bare?.computed.value ?? 0) * 180) / Math.PI).toBeCloseTo((Math.atan2(0.2515 / 9.9, 0.35 + 0.042 / 9.9) * 180) / Math.PI, 9);
  });

  test("an angle that does not fit is said with the centre of gravity that it means", () => {
    const outcome = asked({}, ({ suspension }) => ({ suspension: suspension.map((one) => ({ ...one, noseUp: one.noseUp + 0.05 })) }));
    const row = outcome.outputs?.suspension[1];
    expect(row?.agrees).toBe(false);
    // A twentieth of a radian at 386 mm under the bolt is about 19 mm, and more for the empty aircraft alone.
    const back = (row?.centre.value ?? 0) - (row?.measuredCentre.value ?? 0);
    const bolt = 0.35 + 0.03579;
    const hung = row?.measured.value ?? 0;
    expect(back).toBeCloseTo(0.0042525 + bolt * Math.tan(hung), 9);
    expect(-0.03 - (row?.emptyCentre.value ?? 0)).toBeCloseTo((back * 20) / 9.2, 9);
    expect(outcome.warnings?.map(({ kind }) => kind)).toContain("suspension-disagrees");
    // 0.3 degrees at that depth.
    expect(row?.measuredCentre.halfWidth).toBeGreaterThan((bolt * 0.3 * Math.PI) / 180);
  });
});

test.each([
  [{ packs: [14] }, "The battery bay holds 13 blocks; a pack of 14 was asked for."],
  [{ payloads: ["piano"] }, 'No payload record is called "piano"; the aircraft file has parts, camera, empty.'],
  [{ aircraft: "aircraft/none.yaml" }, "aircraft/none.yaml is not in the project"],
])("%j is refused in words", (inputs, message) => {
  expect(asked(inputs).problem?.message).toContain(message);
});

test("a file without intervals is said to have none", () => {
  const found = asked({});
  expect(found.warnings?.map(({ kind }) => kind)).toEqual(["limits-from-file"]);
  const aircraft = document.data as AircraftDefinition;
  const bare = { ...view, documents: { ...view.documents, [file]: { ...document, data: aircraft, written: {} } } };
  const outcome = balance().run(bare, balance().inputs.parse({ aircraft: file, limits: "file" }), context);
  expect(outcome.warnings?.map(({ kind }: { kind: string }) => kind)).toContain("no-intervals");
});
