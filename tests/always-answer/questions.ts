import type { Analysis, ProjectView, ReadDocument } from "@wingseed/engine";
import fc from "fast-check";
import { schemaArbitrary } from "../schema-arbitrary.ts";
import { preferredBattery } from "./battery-inputs.ts";
import { preferredPropeller } from "./propeller-inputs.ts";

/** Inputs as anybody may send them, and for some questions an aircraft whose numbers somebody has mistyped. */
export interface Question {
  readonly inputs: unknown;
  readonly slips?: readonly (readonly [number, number])[];
}

const from = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Small meshes where an analysis has one: the question is whether it answers, not how finely. */
const overrides = {
  azimuths: fc.constant(8),
  radialElements: fc.constant(4),
};

/** What is mostly meant, so that more than a few questions get past the refusals. */
const preferred = {
  "rotor.hingeOffset": fc.constant(0),
  "rotor.radius": from(0.2, 4),
  "rotor.chord": from(0.02, 0.4),
  "rotor.stations": fc
    .uniqueArray(fc.integer({ min: 0, max: 20 }), { minLength: 1, maxLength: 4 })
    .map((places) =>
      places.sort((a, b) => a - b).map((place) => ({ radiusFraction: place / 20, chord: 0.05 + place / 200, twist: (10 - place) / 100 })),
    ),
  "rotor.section.cd0": from(0.005, 0.05),
  "rotor.section.cd1": from(-0.01, 0.01),
  "rotor.section.cd2": from(0.1, 1),
  "wing.area": from(0.2, 2),
  "wing.span": from(1, 5),
  "wing.aircraft": fc.constantFrom("aircraft/baseline.yaml", "aircraft/revised.yaml"),
  "wing.part": fc.constantFrom("wing", "tailplane", "fin", "none such"),
  "motor.part": fc.constantFrom("rotor-drive", "left-drive"),
  "rotor.part": fc.constant("main"),
  "section.part": fc.constant("main"),
  "propeller.part": fc.constantFrom("right-propeller", "left-propeller"),
  "wing.section": fc.constantFrom("naca-0012", "naca-0015", { kind: "cambered", thickness: 0.1, camber: 0.03 }),
  "motor.aircraft": fc.constantFrom("aircraft/baseline.yaml", "aircraft/revised.yaml"),
  "motor.noLoadCurrent": from(0, 5),
  "motor.resistance": from(0.01, 1),
  "motor.speedConstant": from(1, 100),
  "motor.poleCount": fc.constantFrom(2, 14, 28),
  "wing.flaps": fc.constantFrom(
    [],
    [{ from: 0.5, to: 0.9, chordFraction: 0.25, deflection: 0.2, side: "opposite" }],
    [{ chordFraction: 0.2, deflection: 0.4 }],
  ),
  "section.aircraft": fc.constantFrom("aircraft/baseline.yaml", "aircraft/revised.yaml"),
  "rotor.tipChord": from(0.02, 0.4),
  "rotor.twist": from(-0.3, 0),
  "rotor.solidity": from(0.02, 0.2),
  "rotor.aircraft": fc.constantFrom("aircraft/baseline.yaml", "aircraft/revised.yaml"),
  sweep: fc.constantFrom({ collective: [0, 0.1, 0.3] }, { collective: [0.05], combine: "together" }),
  stopped: fc.constantFrom([], [], [], ["left-drive"], ["rotor-drive", "right-drive"], ["nowhere"]),
  stuck: fc.constantFrom([], [], [], [{ control: "elevator", at: 0.1 }], [{ control: "nowhere", at: 0 }]),
  groundHeight: from(0.3, 20),
  sideslip: fc.oneof(fc.constantFrom(0, 0, "free"), from(-3, 3)),
  turnRate: fc.oneof(fc.constant(0), from(-1, 1)),
  climbRate: from(-15, 8),
  tipSpeed: from(20, 140),
  ct: from(0, 0.012),
  lift: from(0, 500),
  power: fc.constantFrom(0, 0, 100, 600),
  airspeed: from(0, 45),
  advanceRatio: from(0, 0.6),
  rotationRate: from(5, 120),
  collective: from(-0.1, 0.25),
  thrust: from(0, 500),
  shaftTorque: fc.constantFrom(0, 0, 0, 2, 10),
  aircraft: fc.constantFrom("aircraft/baseline.yaml", "aircraft/revised.yaml"),
  mission: fc.constantFrom("missions/fast.yaml", "missions/slow.yaml"),
  "loading.blocks": fc.constantFrom(7, 10, 13),
  "loading.payload": fc.constantFrom("parts", "camera", "empty"),
  "loading.payloadMass": from(0, 6),
  "packs.*": fc.constantFrom(7, 10, 13),
  "payloads.*": from(0, 6),
  "speeds.*": from(0, 40),
  altitude: from(0, 3000),
  temperatureOffset: from(-30, 30),
  cellTemperature: from(263, 320),
  windSpeed: from(0, 12),
  step: from(1, 30),
};

/** Lists that are long when nobody gives them are mostly given: time goes into many questions, not into long ones. */
const shortLists: Readonly<Record<string, object>> = {
  speed: { speeds: [0, 14] },
  stability: { airspeeds: [18], modes: ["clutch-closed"] },
  transition: { speeds: [0, 12, 20, 26], acceleration: 2 },
  payload: { packs: [10], payloads: [1] },
  envelope: { packs: [10], altitudes: [0, 1500], speeds: [0, 14, 28], ceilingTemperatureOffsets: [] },
};

/** Preferences of one analysis alone: the same name means something else elsewhere. */
const ownPreferred: Readonly<Record<string, Readonly<Record<string, fc.Arbitrary<unknown>>>>> = {
  balance: {
    limits: fc.integer({ min: 0, max: 99 }).map((one) => (one === 0 ? "computed" : "file")),
    "payloads.*": fc.constantFrom("parts", "camera", "empty"),
    "places.x": from(-1, 1),
  },
  battery: preferredBattery,
  trim: {
    aircraft: fc.constantFrom("aircraft/baseline.yaml", "aircraft/revised.yaml"),
    groundHeight: from(0.6, 20),
    "loading.payload": fc.constantFrom("parts", "camera"),
  },
  envelope: { "altitudes.*": from(-500, 5000), "temperatureOffsets.*": from(-40, 40), groundHeight: from(0.6, 10) },
  propeller: preferredPropeller,
  stability: { "derivatives.ixz": fc.constant(0) },
  transition: { acceleration: from(0.5, 4), cruiseSpeed: from(14, 32), clutchSpeed: from(10, 14), rowInterval: from(0.1, 2) },
  transient: {
    duration: from(2, 8),
    step: fc.constantFrom(
      { kind: "engine-stop" },
      { kind: "engine-stop", lines: ["right-drive"], reaction: 0 },
      { kind: "jam", control: "rudder", toward: "minimum" },
      { kind: "block-loss", blocks: 7 },
      { kind: "gust", from: "left", speed: 8 },
    ),
  },
};

type Fields = Readonly<Record<string, unknown>>;

/** Without the second of two inputs that say the same thing, so that most questions are not refused for that. */
function agreed(given: Fields): Fields {
  const { temperature, ...all } = given;
  const { aircraft: _, ...without } = all;
  const others: Fields = "derivatives" in all ? without : all;
  const { loading } = others;
  if (typeof loading !== "object" || loading === null) return "temperatureOffset" in given ? others : given;
  const { payloadMass, ...recorded } = loading as Fields;
  const once = "payload" in recorded ? recorded : loading;
  return { ...others, loading: once, ...("temperatureOffset" in given || temperature === undefined ? {} : { temperature }) };
}

/** So many questions for an analysis, always the same ones for one seed. */
export function questionsFor(analysis: Analysis, count: number, seed: number): Question[] {
  const inputs = schemaArbitrary(analysis.inputs, {
    overrides,
    preferred: { ...preferred, ...ownPreferred[analysis.name] },
    longestList: 2,
  });
  if (analysis.needs === undefined) return fc.sample(inputs, { numRuns: count, seed }).map((given) => ({ inputs: given }));
  const factors = fc.constantFrom(0, 1e-6, 0.1, 0.5, 0.9, 1.1, 2, 10, 1e6, -1);
  const slips = fc.array(fc.tuple(fc.nat(10_000), factors), { minLength: 1, maxLength: 3 });
  const question = fc.tuple(inputs, fc.integer({ min: 0, max: 19 }), slips).map(([given, die, mistyped]): Question => {
    const short = die === 0 ? {} : shortLists[analysis.name];
    const agreeing = die % 5 === 2 ? (given as Fields) : agreed(given as Fields);
    return { inputs: { ...short, ...agreeing }, ...(die % 5 === 1 ? { slips: mistyped } : {}) };
  });
  return fc.sample(question, { numRuns: count, seed });
}

/** The project with every aircraft mistyped: of all its numbers the one of a slip's place, times the slip's factor. */
export function mistypedView(view: ProjectView, slips: Question["slips"]): ProjectView {
  if (slips === undefined) return view;
  const entries = Object.entries(view.documents).map(([path, document]): [string, ReadDocument] => {
    if (document.kind !== "aircraft") return [path, document];
    const data: unknown = structuredClone(document.data);
    const numbers = numbersOf(data);
    for (const [place, factor] of slips) {
      const [owner, key] = numbers[place % numbers.length] as (typeof numbers)[number];
      owner[key] = (owner[key] as number) * factor;
    }
    return [path, { ...document, data }];
  });
  return { ...view, documents: Object.fromEntries(entries) };
}

/** Every number of a value, by what holds it and under which key. */
function numbersOf(value: unknown): (readonly [Record<string, unknown>, string])[] {
  if (typeof value !== "object" || value === null) return [];
  const holder = value as Record<string, unknown>;
  return Object.entries(holder).flatMap(([key, item]) => (typeof item === "number" ? [[holder, key] as const] : numbersOf(item)));
}
