import { type QuantityKind, quantityKinds } from "@wingseed/engine";
import { describe, expect, it } from "vitest";
import { siUnit } from "../tables/si-units.ts";
import { displayUnit, displayUnitNames, fromUnit, inUnit, namedDisplayUnit } from "./index.ts";

const kinds = Object.keys(quantityKinds) as QuantityKind[];

describe("units of every kind", () => {
  it("are the engine's own in machine-read heads", () => {
    for (const kind of kinds) expect(siUnit(kind)).toBe(quantityKinds[kind] === "1" ? "" : quantityKinds[kind]);
  });
  it("can be shown, named and turned back", () => {
    for (const kind of kinds)
      for (const name of displayUnitNames(kind)) {
        const unit = namedDisplayUnit(name, kind);
        expect(fromUnit(inUnit(12.5, unit), unit)).toBeCloseTo(12.5, 9);
        expect(displayUnit(kind, 12.5, { unit: name })).toBe(unit);
      }
  });
  it("understand the SI unit wherever a face may ask for it", () => {
    const shown = kinds.filter((kind) => displayUnitNames(kind).some((name) => name === quantityKinds[kind]));
    expect(shown.length).toBeGreaterThan(20);
  });
});
