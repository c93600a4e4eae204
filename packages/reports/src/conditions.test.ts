import { describe, expect, it } from "vitest";
import { conditionsInWords } from "./conditions.ts";
import { samplePayload } from "./sample-results.ts";

const quantity = (kind: string, role?: string) => ({ type: "number", quantity: kind, ...(role ? { role } : {}) });
const schema = {
  properties: {
    aircraft: { role: "aircraft" },
    loading: { properties: { blocks: { role: "condition.pack" }, payloadMass: quantity("mass", "condition.payload") } },
    altitude: quantity("length", "condition.altitude"),
    wind: { role: "condition.wind", properties: { speed: quantity("speed") } },
    step: quantity("time"),
  },
};

function words(cases: readonly unknown[], defaults: readonly { readonly path: string; readonly value: unknown }[] = []): string {
  const { result } = samplePayload;
  return conditionsInWords(schema, {
    ...result,
    cases: cases.map((inputs) => ({ inputs, outputs: {} })),
    provenance: { ...result.provenance, defaults: defaults.map((each) => ({ ...each, because: "nobody gave one" })) },
  }).replaceAll("\u00a0", " ");
}

describe("the conditions of an answer", () => {
  it("are the inputs that stand for one, in the order of the schema, heights with what they are measured from", () => {
    expect(words([{ step: 1, wind: { speed: 5 }, altitude: 300, loading: { payloadMass: 1.1 } }])).toBe(
      "payload mass 1.10 kg, altitude 300 m above sea, wind speed 5.00 m/s",
    );
  });
  it("count those that the run chose itself", () => {
    const chosen = [
      { path: "/aircraft", value: "aircraft/a.yaml" },
      { path: "/loading/blocks", value: 13 },
      { path: "missions/a.yaml#/altitude", value: 9 },
    ];
    expect(words([{ altitude: 0 }], chosen)).toBe("aircraft/a.yaml, blocks 13, altitude 0 m above sea");
  });
  it("leave out what differs between the cases", () => {
    expect(
      words([
        { altitude: 0, loading: { blocks: 7 } },
        { altitude: 100, loading: { blocks: 7 } },
      ]),
    ).toBe("blocks 7");
  });
});
