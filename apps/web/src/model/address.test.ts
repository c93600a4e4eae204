import { describe, expect, it } from "vitest";
import { addressText, questionKey, readAddress, withDraft } from "./address.ts";

describe("the address", () => {
  it("brings back the page and every typed text", () => {
    const address = { place: "page", page: "reach", drafts: { altitude: "300 m", "wind.from": "240 °", "packs#": "2" } } as const;
    expect(readAddress(addressText(address))).toEqual(address);
  });

  it("brings back a bench question whose name needs escaping", () => {
    const address = { place: "bench", analysis: "two rotors/á", drafts: { speed: "43 kt & more" } } as const;
    expect(readAddress(addressText(address))).toEqual(address);
  });

  it("brings back the part chosen on a page", () => {
    const address = { place: "page", page: "bench", part: "air screw", drafts: { speed: "3" } } as const;
    expect(readAddress(addressText(address))).toEqual(address);
    expect(questionKey(address)).not.toBe(questionKey({ ...address, part: "other" }));
  });

  it("is the same for equal states whatever the order of typing", () => {
    const empty = { place: "page", page: "reach", drafts: {} } as const;
    const one = withDraft(withDraft(empty, "b", "2"), "a", "1");
    const other = withDraft(withDraft(empty, "a", "1"), "b", "2");
    expect(addressText(one)).toBe(addressText(other));
  });

  it("loses a text that is taken back but keeps one that unsets an input", () => {
    const start = withDraft({ place: "page", page: "reach", drafts: {} }, "altitude", "300 m");
    expect(addressText(withDraft(start, "altitude", undefined))).toBe("#/reach");
    expect(readAddress(addressText(withDraft(start, "altitude", "")))?.drafts).toEqual({ altitude: "" });
  });

  it.each(["", "#", "#/", "#/ask", "#/ask/", "#/a/b/c", "#anchor"])("names no question in %j", (fragment) => {
    expect(readAddress(fragment)).toBeUndefined();
  });

  it("survives a broken escape", () => {
    expect(readAddress("#/reach%")).toEqual({ place: "page", page: "reach%", drafts: {} });
  });

  it("tells a page from a bench of the same name", () => {
    expect(questionKey({ place: "page", page: "x", drafts: {} })).not.toBe(questionKey({ place: "bench", analysis: "x", drafts: {} }));
  });
});
