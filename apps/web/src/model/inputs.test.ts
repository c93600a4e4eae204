import { describe, expect, it } from "vitest";
import { chosenVariant, inputsOf, leaves, rowFields, shownText } from "./inputs.ts";
import { fieldsOf, type JsonSchema, type RowsField, type VariantsField } from "./schema.ts";

const speed = { type: "number", quantity: "speed", minimum: 0 } as const;
const schema: JsonSchema = {
  type: "object",
  required: ["airspeed"],
  properties: {
    airspeed: { ...speed, label: "Airspeed", description: "Free stream." },
    temperatureOffset: { type: "number", quantity: "temperatureDifference", default: 0 },
    controls: { type: "string", enum: ["optimum", "schedule"], default: "optimum" },
    ribbon: { type: "boolean" },
    speeds: { type: "array", items: speed },
    packs: { type: "array", items: { type: "string" } },
    blades: { type: "integer", minimum: -9007199254740991, maximum: 8 },
    wind: { type: "object", properties: { speed, from: { type: "number", quantity: "angle" } } },
    stations: {
      type: "array",
      items: { type: "object", properties: { fraction: { type: "number" }, chord: { type: "number", quantity: "length" } } },
    },
    inflow: {
      oneOf: [
        { type: "object", properties: { kind: { const: "uniform", type: "string" } }, required: ["kind"] },
        {
          type: "object",
          properties: { kind: { const: "linear", type: "string" }, slope: { type: "number" } },
          required: ["kind", "slope"],
        },
      ],
    },
    density: { $ref: "#/$defs/density" },
  },
  $defs: { density: { type: "number", quantity: "density", description: "Of the air." } },
};
const fields = fieldsOf(schema);
const find = (path: string) => {
  const field = fields.find((one) => one.path === path);
  if (!field) throw new Error(`no field ${path}`);
  return field;
};

describe("the fields of a schema", () => {
  it("follow its order and keep label, words, bounds and standard value", () => {
    expect(fields.map((field) => field.path)).toEqual(Object.keys(schema.properties ?? {}));
    expect(find("airspeed")).toMatchObject({ kind: "quantity", quantity: "speed", label: "Airspeed", minimum: 0, required: true });
    expect(find("temperatureOffset")).toMatchObject({ label: "Temperature offset", standard: 0, required: false });
    expect(find("density")).toMatchObject({ quantity: "density", description: "Of the air." });
  });

  it("leave out the bounds that only say a number is a safe integer", () => {
    expect(find("blades")).toMatchObject({ kind: "quantity", quantity: "dimensionless", maximum: 8 });
    expect(find("blades")).not.toHaveProperty("minimum");
  });

  it("name variants by the word that tells them apart", () => {
    expect((find("inflow") as VariantsField).variants.map((variant) => variant.name)).toEqual(["uniform", "linear"]);
  });

  it("open groups and variants down to the texts", () => {
    expect(leaves(fields).map((field) => field.path)).toContain("wind.from");
    expect(leaves(fields).map((field) => field.path)).toContain("inflow.slope");
  });
});

describe("inputs from typed texts", () => {
  it("say nothing about what was not typed", () => {
    expect(inputsOf(fields, {}, {})).toEqual({});
  });

  it("send a typed unit as it is and add the shown unit to a bare number", () => {
    expect(inputsOf(fields, {}, { airspeed: "43 kt" })).toEqual({ airspeed: "43 kt" });
    expect(inputsOf(fields, {}, { airspeed: " 12.5 " })).toEqual({ airspeed: "12.5 m/s" });
    expect(inputsOf(fields, {}, { temperatureOffset: "−5" }).temperatureOffset).toMatch(/^-5 \S+/);
    expect(inputsOf(fields, {}, { blades: "3" })).toEqual({ blades: 3 });
  });

  it("send what cannot be a number for the server to refuse, never silently nothing", () => {
    expect(inputsOf(fields, {}, { airspeed: "fast" })).toEqual({ airspeed: "fast" });
  });

  it("read lists by commas, let the last unit serve all, and open ranges", () => {
    expect(inputsOf(fields, {}, { speeds: "0, 5, 10 kt" })).toEqual({ speeds: ["0 kt", "5 kt", "10 kt"] });
    expect(inputsOf(fields, {}, { speeds: "0 to 1 by 0.25" })).toEqual({ speeds: ["0 m/s", "0.25 m/s", "0.5 m/s", "0.75 m/s", "1 m/s"] });
    expect(inputsOf(fields, {}, { packs: "small; large" })).toEqual({ packs: ["small", "large"] });
    expect(inputsOf(fields, {}, { speeds: "0 to 1 by 0" })).toEqual({ speeds: ["0 to 1 by 0"] });
  });

  it("build a group only when something in it is given", () => {
    expect(inputsOf(fields, {}, { "wind.speed": "8" })).toEqual({ wind: { speed: "8 m/s" } });
  });

  it("lay typed texts over the example and unset what was emptied", () => {
    const example = { airspeed: 20, wind: { speed: 3, from: 1 } };
    expect(inputsOf(fields, example, { "wind.from": "", controls: "schedule", ribbon: "yes" })).toEqual({
      airspeed: 20,
      controls: "schedule",
      ribbon: true,
      wind: { speed: 3 },
    });
  });

  it("fill in the constant of the chosen variant and drop what belongs to another", () => {
    const example = { inflow: { kind: "linear", slope: 2 } };
    expect(inputsOf(fields, example, {}).inflow).toEqual({ kind: "linear", slope: 2 });
    expect(inputsOf(fields, example, { "inflow~": "uniform" }).inflow).toEqual({ kind: "uniform" });
    expect(inputsOf(fields, {}, { "inflow~": "linear", "inflow.slope": "0.5" }).inflow).toEqual({ kind: "linear", slope: 0.5 });
    expect(chosenVariant(find("inflow") as VariantsField, undefined, {})).toBeUndefined();
  });

  it("keep what the variant before and the chosen one share, and only that", () => {
    const two = fieldsOf({
      type: "object",
      properties: {
        part: {
          anyOf: [
            { type: "object", label: "Written", properties: { size: speed, blades: { type: "integer" } }, required: ["blades"] },
            { type: "object", label: "Measured", properties: { size: speed, table: { type: "string" } }, required: ["table"] },
          ],
        },
      },
    });
    expect(inputsOf(two, { part: { size: 2, blades: 3 } }, { "part~": "Measured" })).toEqual({ part: { size: 2 } });
  });

  it("understand the word of a variant alone, and send a word that none has", () => {
    expect((inputsOf(fields, { inflow: "Linear" }, {}).inflow as { kind: unknown }).kind).toBe("linear");
    expect(inputsOf(fields, { inflow: "round" }, {}).inflow).toBe("round");
  });

  it("add and shorten rows", () => {
    const example = { stations: [{ fraction: 0.2, chord: 0.1 }] };
    expect(inputsOf(fields, example, { "stations#": "2", "stations.1.chord": "80 mm" }).stations).toEqual([
      { fraction: 0.2, chord: 0.1 },
      { chord: "80 mm" },
    ]);
    expect(inputsOf(fields, example, { "stations#": "0" }).stations).toEqual([]);
    expect(rowFields(find("stations") as RowsField, 1).map((field) => field.path)).toEqual(["stations.1.fraction", "stations.1.chord"]);
  });
});

describe("the text in a field", () => {
  it("shows the example in its unit, the draft before it, and nothing when unset", () => {
    expect(shownText(find("airspeed"), { airspeed: 20 }, {})).toBe("20 m/s");
    expect(shownText(find("airspeed"), { airspeed: 20 }, { airspeed: "43 kt" })).toBe("43 kt");
    expect(shownText(find("airspeed"), {}, {})).toBe("");
  });

  it("shortens even lists to a range that reads back the same", () => {
    const speeds = Array.from({ length: 46 }, (_, index) => index);
    const text = shownText(find("speeds"), { speeds }, {});
    expect(text).toBe("0 to 45 by 1 m/s");
    expect(inputsOf(fields, {}, { speeds: text }).speeds).toEqual(speeds.map((value) => `${value} m/s`));
  });
});
