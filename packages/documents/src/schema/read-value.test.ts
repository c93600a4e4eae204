import { quantity, z } from "@wingseed/engine";
import { describe, expect, test } from "vitest";
import { readInputs, readInputText } from "./read-inputs.ts";
import { readValue } from "./read-value.ts";

const mass = quantity("mass", { description: "Mass.", minimum: 0, maximum: 100 });
const craft = z
  .strictObject({
    mass,
    blades: z.int().min(1).max(8),
    efficiency: quantity("dimensionless", { description: "Efficiency.", minimum: 0, maximum: 1 }),
    tilt: quantity("angle", { description: "Tilt.", minimum: -Math.PI / 6, maximum: Math.PI / 6 }).optional(),
    wind: quantity("speed", { description: "Wind." }).default(3),
    control: z.discriminatedUnion("kind", [
      z.strictObject({ kind: z.literal("fixed"), value: quantity("angle", { description: "Setting." }) }),
      z.strictObject({ kind: z.literal("free"), minimum: quantity("angle", { description: "Least." }) }),
    ]),
    speed: z.union([quantity("speed", { description: "Speed." }), z.literal("optimum")]),
    at: z.union([z.int().min(1), z.string().min(1)]),
    stations: z.array(z.strictObject({ chord: quantity("length", { description: "Chord.", exclusiveMinimum: 0 }) })).min(1),
    powers: z.record(z.string(), quantity("power", { description: "Power." })),
    pair: z.tuple([quantity("length", { description: "A." }), quantity("time", { description: "B." })]),
    spare: quantity("mass", { description: "Spare." }).nullable(),
    shape: z.enum(["round", "square"]),
    lit: z.boolean(),
    name: z.string().min(1),
  })
  .refine(({ blades, lit }) => blades !== 3 || lit, { path: ["blades"], message: "three blades need light" });

const written = {
  mass: "24 kg ± 1 %",
  blades: 2,
  efficiency: "84 %",
  tilt: "5 deg",
  control: { kind: "fixed", value: { value: "8 deg", source: "drawing 4" } },
  speed: "20 m/s",
  at: "Platform",
  stations: [{ chord: "90 mm" }],
  powers: { lights: "3 W" },
  pair: ["1 m", "2 min"],
  spare: null,
  shape: "round",
  lit: false,
  name: "Test",
};

describe("a document", () => {
  test("comes out in SI, completed by its defaults, with every number as written", () => {
    const reading = readValue(craft, written, "document");
    expect(reading.problems).toEqual([]);
    expect(reading.value).toEqual({
      ...written,
      mass: 24,
      efficiency: 0.84,
      tilt: (5 * Math.PI) / 180,
      wind: 3,
      control: { kind: "fixed", value: (8 * Math.PI) / 180 },
      speed: 20,
      stations: [{ chord: 0.09 }],
      powers: { lights: 3 },
      pair: [1, 120],
    });
    expect(reading.numbers.get("/mass")).toEqual({
      path: ["mass"],
      text: "24 kg ± 1 %",
      value: 24,
      uncertainty: { kind: "normal", halfWidth: 0.24 },
    });
    expect(reading.numbers.get("/control/value")).toMatchObject({ text: "8 deg", source: "drawing 4" });
    expect([...reading.numbers.keys()]).toHaveLength(10);
    expect(readValue(craft, { ...written, speed: "optimum", at: 2, spare: "1 kg" }, "document").value).toMatchObject({
      speed: "optimum",
      at: 2,
      spare: 1,
    });
  });

  test.each([
    [{ mass: 24 }, 'mass: 24 has no unit; a mass is expected, for example "24 kg"', "wrong-quantity"],
    [{ mass: "24 m" }, 'mass: "24 m" is a length; a mass is expected, for example "24 kg"', "wrong-quantity"],
    [{ mass: "-1 kg" }, "mass: -1 kg is out of range; at least 0 kg and at most 100 kg is allowed", "out-of-range"],
    [
      { mass: "uniform(90 kg, 110 kg)" },
      "mass: uniform(90 kg, 110 kg) is out of range; at least 0 kg and at most 100 kg is allowed",
      "out-of-range",
    ],
    [{ tilt: "40 deg" }, "tilt: 40 deg is out of range; at least -30 deg and at most 30 deg is allowed", "out-of-range"],
    [{ mass: [] }, 'mass: a mass is expected, for example "24 kg"; read a list of 0 entries', "wrong-type"],
    [{ mass: Number.POSITIVE_INFINITY }, "mass: a finite number is expected; read Infinity", "wrong-type"],
    [{ mass: { value: "24 kg", source: 3 } }, "mass.source: a source is a text; read 3", "wrong-type"],
    [{ mass: { value: "24 kg", from: "scale" } }, "mass.from: a number written as a mapping has the keys value and source", "unknown-key"],
    [
      { mass: { value: "24 kg", source: "scale", "3 March": null } },
      "mass.3 March: a number written as a mapping has the keys value and source; put a text with a comma in quotes",
      "unknown-key",
    ],
    [{ blades: 2.5 }, "blades: a whole number is expected; read 2.5", "wrong-type"],
    [{ blades: "2" }, 'blades: a whole number is expected; read "2"', "wrong-type"],
    [{ blades: 9 }, "blades: 9 is out of range; at least 1 and at most 8 is allowed", "out-of-range"],
    [{ blades: 3 }, "blades: three blades need light", "rule"],
    [
      { efficiency: "84 % ± 2 %" },
      'efficiency: "84 % ± 2 %" can mean per cent of the value or points; write a plain number, such as "0.84 ± 0.02"',
      "wrong-quantity",
    ],
    [{ control: { kind: "fixt" } }, 'control.kind: "fixed" or "free" is allowed; read "fixt"', "not-allowed"],
    [{ control: {} }, 'control: kind is missing; "fixed" or "free" is allowed', "missing-key"],
    [
      { control: { kind: "free", value: "8 deg", minimum: "1 deg" } },
      "control.value: this key is not known here; the keys are kind, minimum",
      "unknown-key",
    ],
    [{ control: "free" }, 'control: a mapping with kind: "fixed" or "free" is expected; read "free"', "wrong-type"],
    [{ speed: "optimal" }, 'speed: a speed (as in "52 km/h") or "optimum" is expected; read "optimal"', "wrong-type"],
    [{ speed: "20 kg" }, 'speed: "20 kg" is a mass; a speed is expected, for example "52 km/h"', "wrong-quantity"],
    [{ stations: [] }, "stations: a list of at least 1 entry is expected; read a list of 0 entries", "out-of-range"],
    [{ stations: [{ chrod: "1 m" }] }, 'stations[0].chrod: this key is not known here; did you mean "chord"?', "unknown-key"],
    [{ stations: {} }, "stations: a list is expected; read a mapping", "wrong-type"],
    [{ powers: { lights: 3 } }, 'powers.lights: 3 has no unit; a power is expected, for example "1.5 kW"', "wrong-quantity"],
    [{ pair: ["1 m"] }, "pair: a list of 2 entries is expected; read a list of 1 entry", "out-of-range"],
    [{ shape: "oval" }, 'shape: "round" or "square" is allowed; read "oval"', "not-allowed"],
    [{ lit: "yes" }, 'lit: true or false is expected; read "yes"', "wrong-type"],
    [{ name: 7 }, 'name: a text is expected; read 7 (put it in quotes: "7")', "wrong-type"],
    [{ name: "" }, 'name: a text that is not empty is expected; read ""', "out-of-range"],
    [{ naem: "x" }, 'naem: this key is not known here; did you mean "name"?', "unknown-key"],
  ])("with %j is refused with its place and cure", (slip, message, kind) => {
    const { problems, value } = readValue(craft, { ...written, ...slip }, "document");
    expect(value).toBeUndefined();
    expect(problems.map((problem) => problem.message)).toContain(message);
    expect(problems.find((problem) => problem.message === message)).toMatchObject({ kind, severity: "error" });
  });

  test("tells all its problems at once, each once", () => {
    const { problems } = readValue(
      craft,
      { ...written, mass: 24, blades: 9, naem: "x", name: undefined, stations: [{}, { chord: "0 m" }] },
      "document",
    );
    expect(problems.map(({ message }) => message)).toEqual([
      'mass: 24 has no unit; a mass is expected, for example "24 kg"',
      "blades: 9 is out of range; at least 1 and at most 8 is allowed",
      'stations[0]: "chord" is missing: Chord',
      "stations[1].chord: 0 m is out of range; more than 0 m is allowed",
      'naem: this key is not known here; did you mean "name"?',
      '"name" is missing',
    ]);
  });
});

describe("inputs", () => {
  const inputs = z.object({
    payload: quantity("mass", { description: "Payload.", minimum: 0 }).default(1),
    speeds: z.array(quantity("speed", { description: "Speeds." })).optional(),
  });

  test("take plain numbers as SI and texts with their unit, and are not filled by defaults", () => {
    expect(readInputs(inputs, { speeds: [10, "36 km/h"] })).toMatchObject({ inputs: { speeds: [10, 10] }, problems: [] });
    expect(readInputs(inputs, undefined)).toMatchObject({ inputs: {}, problems: [] });
  });

  test("refuse names that the schema does not know, even where it is open", () => {
    const { problems, inputs: read } = readInputs(inputs, { payloud: 3, payload: -1 }, { file: "case.json" });
    expect(read).toBeUndefined();
    expect(problems.map(({ message }) => message)).toEqual([
      'case.json: payloud: this key is not known here; did you mean "payload"?',
      "case.json: payload: -1 is out of range; at least 0 kg is allowed",
    ]);
  });

  test.each([[[1, 2]], ["text"], [3]])("that are %j are refused", (raw) => {
    expect(readInputs(inputs, raw).problems).toHaveLength(1);
  });

  test("given as text need their unit and go by their path", () => {
    expect(readInputText(inputs, "inputs.payload", "2 kg")).toEqual({ kind: "value", path: ["payload"], value: 2 });
    expect(readInputText(inputs, "/speeds/0", "36 km/h")).toEqual({ kind: "value", path: ["speeds", 0], value: 10 });
    expect(readInputText(inputs, "speeds", "[36 km/h, 20 m/s]")).toEqual({ kind: "value", path: ["speeds"], value: [10, 20] });
    expect(readInputText(craft, "control.kind", "fixed")).toMatchObject({ kind: "value", value: "fixed" });
    expect(readInputText(craft, "control.value", "8 deg")).toMatchObject({ kind: "value", path: ["control", "value"] });
    expect(readInputText(craft, "blades", "3")).toMatchObject({ kind: "value", value: 3 });
    expect(readInputText(craft, "lit", "true")).toMatchObject({ kind: "value", value: true });
    expect(readInputText(craft, "powers.lights", "3 W")).toMatchObject({ kind: "value", value: 3 });
    expect(readInputText(craft, "name", "7")).toMatchObject({ kind: "value", value: "7" });
  });

  test("take the word of an alternative alone for that alternative", () => {
    const choice = z.strictObject({
      control: z.union([
        z.strictObject({ kind: z.literal("fixed") }),
        z.strictObject({ kind: z.literal("spring-held"), stiffness: quantity("torque", { description: "Of the spring." }) }),
      ]),
    });
    expect(readInputs(choice, { control: "Fixed" }).inputs).toEqual({ control: { kind: "fixed" } });
    expect(readInputText(choice, "control", "fixed")).toMatchObject({ kind: "value", value: { kind: "fixed" } });
    const messages = (control: string) => readInputs(choice, { control }).problems.map(({ message }) => message);
    expect(messages("spring held")).toEqual(['control: "stiffness" is missing: Of the spring']);
    expect(messages("round")).toEqual(['control: a mapping with kind: "fixed" or "spring-held" is expected; read "round"']);
  });

  test("are told against the alternative whose word they have, beside alternatives without one", () => {
    const choice = z.strictObject({
      section: z.union([
        z.strictObject({ kind: z.literal("thin"), slope: z.number(), drag: z.number() }),
        z.strictObject({ kind: z.literal("thick"), thickness: z.number() }),
        z.strictObject({ file: z.string() }),
      ]),
    });
    const messages = readInputs(choice, { section: { kind: "thin" } }).problems.map(({ message }) => message);
    expect(messages).toEqual(['section: "slope" is missing', 'section: "drag" is missing']);
  });

  test("are told the range in the unit that they were given in", () => {
    const one = z.strictObject({
      warmth: quantity("temperature", { description: "Warmth.", minimum: 250, maximum: 400 }).optional(),
      ohms: quantity("resistance", { description: "Ohms.", minimum: 0.001 }).optional(),
    });
    const message = (raw: unknown) => readInputs(one, raw).problems[0]?.message;
    expect(message({ warmth: "-40 degC" })).toBe(
      "warmth: -40 degC is out of range; at least -23.15 degC and at most 126.85 degC is allowed",
    );
    expect(message({ ohms: "-5 mOhm" })).toBe("ohms: -5 mOhm is out of range; at least 1 mOhm is allowed");
    expect(message({ ohms: -5 })).toBe("ohms: -5 is out of range; at least 0.001 Ohm is allowed");
  });

  test("that want a list are shown how one is written", () => {
    const listed = z.strictObject({ blocks: z.array(z.int()) });
    expect(readInputs(listed, { blocks: 2 }).problems[0]?.message).toBe("blocks: a list is expected, as in [2]; read 2");
    expect(readInputs(listed, { blocks: "2, 5" }).problems[0]?.message).toBe('blocks: a list is expected, as in [2, 5]; read "2, 5"');
  });

  test.each([
    ["payload", "2", 'payload: 2 has no unit; a mass is expected, for example "24 kg"'],
    ["payload", "[", 'payload: "[" does not begin with a number'],
    ["speeds", "[36, 20]", 'speeds[0]: 36 has no unit; a speed is expected, for example "52 km/h"'],
    ["payloud", "2 kg", 'payloud: this input is not known; did you mean "payload"?'],
    ["wind.speed", "2 kg", "wind: this input is not known; the inputs here are payload, speeds"],
  ])("%s=%s is refused", (path, text, message) => {
    const reading = readInputText(inputs, path, text);
    if (reading.kind !== "problems") throw new Error("was read");
    expect(reading.problems[0]?.message).toBe(message);
  });
});

describe("a rule about several inputs", () => {
  const either = z
    .strictObject({ mass: mass.optional(), force: quantity("force", { description: "Force." }).optional() })
    .refine((given) => (given.mass === undefined) !== (given.force === undefined), { message: "give one of mass and force" });
  const messages = (raw: unknown, mode: "input" | "document") => readValue(either, raw, mode).problems.map(({ message }) => message);

  test("is not judged in a question while one of them cannot be read; a document is told everything", () => {
    const raw = { mass: "3 parsec" };
    expect(messages(raw, "input")).toEqual([expect.stringContaining("parsec")]);
    expect(messages(raw, "document")).toContain("give one of mass and force");
    expect(messages({}, "input")).toEqual(["give one of mass and force"]);
  });
});

describe("a name of the trade", () => {
  const motor = z.strictObject({
    speedConstant: quantity("speedConstant", { description: "Rate per volt." }).meta({ columnNames: ["kv"] }),
    gear: quantity("dimensionless", { description: "Ratio." }).default(1),
  });
  const part = z.strictObject({
    motor: z.union([motor, z.strictObject({ file: z.string() })]),
    section: z.union([z.union([z.enum(["naca-0012", "naca-0015"]), z.strictObject({ file: z.string() })]), z.array(z.number())]).optional(),
  });
  const messages = (raw: unknown) => readInputs(part, raw).problems.map(({ message }) => message);

  test("stands for the property that has it", () => {
    expect(readInputs(part, { motor: { KV: "60 rpm/V" } }).inputs).toEqual({ motor: { speedConstant: expect.closeTo(2 * Math.PI, 12) } });
  });

  test("and the property itself are not given together, in either order", () => {
    const sentence = 'motor.kv: this gives "speedConstant" a second time';
    expect(messages({ motor: { speedConstant: 5, kv: "6 rpm/V" } })).toEqual([sentence]);
    expect(messages({ motor: { kv: "6 rpm/V", speedConstant: 5 } })).toEqual([sentence]);
  });

  test("needs its unit, for a plain number may be meant in the trade's unit", () => {
    expect(messages({ motor: { kv: 920 } }).join()).toContain("unit");
  });

  test("is not asked for again where the property is needed", () => {
    expect(messages({ motor: { kv: "fast" } }).join()).not.toContain("missing");
  });

  test("may differ from a listed word in capitals, spaces and hyphens, but not in a document", () => {
    const inputs = { motor: { kv: "6 rpm/V" }, section: "NACA 0012" };
    expect(readInputs(part, inputs).inputs).toMatchObject({ section: "naca-0012" });
    expect(readInputText(part, "section", "NACA 0012")).toMatchObject({ value: "naca-0012" });
    expect(readValue(part, { ...inputs, motor: { file: "a" } }, "document").problems.map(({ message }) => message)).toEqual([
      'section: "naca-0012" or "naca-0015" is allowed; read "NACA 0012"',
    ]);
  });

  test("that is not listed is answered with all that is, choices within choices too", () => {
    expect(messages({ motor: { kv: "6 rpm/V" }, section: "clark-y" })).toEqual([
      'section: "naca-0012" or "naca-0015" or a mapping or a list is expected; read "clark-y"',
    ]);
  });
});

test("slips deep inside an alternative do not make another one the one that was meant", () => {
  const long = z.strictObject({ blades: z.number(), stations: z.array(z.strictObject({ chord: z.number() })) });
  const short = z.strictObject({ table: z.number() });
  const slips = { blades: 2, stations: [{ a: 1 }, { b: 2 }] };
  const { problems } = readInputs(z.strictObject({ it: z.union([long, short]) }), { it: slips });
  expect(problems).toHaveLength(4);
  expect(problems.every(({ message }) => message.startsWith("it.stations["))).toBe(true);
});
