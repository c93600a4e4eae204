import { describe, expect, it } from "vitest";
import { fieldsOf } from "./schema.ts";
import { seldomFields } from "./seldom.ts";

const fields = fieldsOf({
  type: "object",
  required: ["name"],
  properties: {
    name: { type: "string" },
    altitude: { type: "number", quantity: "length", role: "condition.altitude", default: 0 },
    reserve: { type: "object", default: {}, properties: { charge: { type: "number", default: 0.2 } } },
    loading: { type: "object", default: {}, properties: { blocks: { type: "integer", role: "condition.pack" } } },
    lights: { type: "boolean", default: false },
    thrust: { type: "number", quantity: "force" },
  },
});
const seldom = (base: unknown) => seldomFields(fields, base).map((field) => field.path);

describe("fields that are seldom typed into", () => {
  it("have a standard, no role in them, and no value to begin with", () => {
    expect(seldom({})).toEqual(["reserve", "lights"]);
    expect(seldom({ lights: true })).toEqual(["reserve", "loading", "thrust"]);
    expect(seldom({ lights: true, loading: { blocks: 7 } })).toEqual(["reserve", "thrust"]);
  });
  it("are not set apart when there are no others", () => {
    expect(seldomFields(fieldsOf({ type: "object", properties: { step: { type: "number", default: 1 } } }), {})).toEqual([]);
  });
});
