import { readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { analyses } from "@wingseed/engine";
import { describe, expect, it } from "vitest";
import { answeredPages, benchParts, offeredPages, pages, unplacedAnalyses } from "./pages.ts";

/** Their pages stand in the manifest before they are in the registry. */
const onTheirWay = ["balance", "trim", "envelope", "transition", "stability", "transient"];

describe("the pages", () => {
  it("have unique ids, and each next page is one that answers", () => {
    expect(new Set(pages.map((page) => page.id)).size).toBe(pages.length);
    const answered = answeredPages().map((page) => page.id);
    for (const page of answeredPages()) if (page.next) expect(answered).toContain(page.next);
  });
  it("leave every other analysis to the end of the column", () => {
    const named = [{ name: "speed" }, { name: "rotor" }, { name: "toy" }];
    expect(unplacedAnalyses(named)).toEqual([{ name: "toy" }]);
    expect(benchParts(named).map(({ name }) => name)).toEqual(["Rotor"]);
  });
  it("name only analyses that the registry has, or that are on their way", () => {
    const known = analyses.map((analysis) => analysis.name);
    const wanted = answeredPages().flatMap((page) => page.slots.map((slot) => slot.analysis));
    expect(wanted.length).toBeGreaterThan(0);
    for (const name of wanted) expect([...known, ...onTheirWay]).toContain(name);
  });
  it("are not in this version where the registry lacks what answers them, and no page leads there", () => {
    const offered = offeredPages([{ name: "payload" }, { name: "speed" }, { name: "stability" }]);
    const status = (id: string) => offered.find((page) => page.id === id)?.status;
    const next = (id: string) => offered.find((page) => page.id === id && page.status === "answered" && page.next);
    expect([status("payload"), status("envelope"), status("stability"), status("mission")]).toEqual([
      "answered",
      "not yet",
      "answered",
      "not yet",
    ]);
    expect(next("speed")).toMatchObject({ next: "stability" });
    expect(next("stability")).toBeUndefined();
    expect(offered.map((page) => page.id)).toEqual(pages.map((page) => page.id));
  });
  it("are all offered once every analysis is there", () => {
    const every = answeredPages().flatMap((page) => page.slots.map((slot) => ({ name: slot.analysis })));
    expect(offeredPages(every)).toEqual(pages);
  });
});

describe("what a page of the app may import", () => {
  it.each(["draw/index.ts", "format/index.ts"])("%s reaches no module of Node and no typesetter", (entry) => {
    const root = dirname(fileURLToPath(import.meta.url));
    const seen = new Set<string>();
    const foreign = new Set<string>();
    const visit = (file: string) => {
      if (seen.has(file)) return;
      seen.add(file);
      for (const [, target = ""] of readFileSync(file, "utf8").matchAll(/^(?:import|export) (?!type )[^;]*?from "([^"]+)"/gm)) {
        if (target.startsWith(".")) visit(join(dirname(file), target));
        else foreign.add(target);
      }
    };
    visit(join(root, entry));
    expect(seen.size).toBeGreaterThan(4);
    for (const name of foreign) expect(["d3-scale", "d3-shape", "d3-contour"]).toContain(name);
  });
});
