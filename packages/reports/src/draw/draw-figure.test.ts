import type { Figure, LinesFigure } from "@wingseed/engine";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { figureSeries } from "../tables/index.ts";
import { drawFigure } from "./draw-figure.ts";
import { boxesOverlap, labelBoxes } from "./label.ts";
import { type SvgNode, svgText } from "./node.ts";
import { plotPlace } from "./picture.ts";
import { sampleFigures, sampleGrid, sampleLines, sampleProfile, sampleStacked } from "./sample-figures.ts";
import { sampleMap } from "./sample-places.ts";
import { lightTheme } from "./tokens.ts";

function overlaps(drawn: SvgNode): readonly string[] {
  const boxes = labelBoxes(drawn);
  return boxes.flatMap((a, index) =>
    boxes.slice(index + 1).flatMap((b) => (boxesOverlap(a.box, b.box, -0.5) ? [`"${a.text}" lies on "${b.text}"`] : [])),
  );
}

function withPart(node: SvgNode, part: string): readonly SvgNode[] {
  const own = node.attributes["data-part"] === part ? [node] : [];
  return [...own, ...node.children.flatMap((child) => withPart(child, part))];
}

function tags(node: SvgNode): readonly string[] {
  return [node.tag, ...node.children.flatMap(tags)];
}

describe.each(sampleFigures.map((figure) => [`${figure.kind} figure (${figure.id})`, figure] as const))("a %s", (_, figure: Figure) => {
  it("draws the same picture as before", () => {
    expect(svgText(drawFigure(figure, { width: 760, theme: lightTheme })).replaceAll("><", ">\n<")).toMatchSnapshot();
  });
  it.each([280, 330, 480, 760, 1100])("keeps every label off every other at %i px", (width) => {
    expect(overlaps(drawFigure(figure, { width }))).toEqual([]);
  });
  it("keeps its labels inside the picture", () => {
    for (const width of [330, 760]) {
      const drawn = drawFigure(figure, { width });
      for (const { box, text } of labelBoxes(drawn)) {
        const inside = box.x >= -1 && box.y >= -1 && box.y + box.height <= Number(drawn.attributes.height) + 1;
        expect(inside, text).toBe(true);
        if (figure.kind !== "table") expect(box.x + box.width, text).toBeLessThanOrEqual(width + 1);
      }
    }
  });
  it("names no color but custom properties on a page, and only theme values in a file", () => {
    const page = svgText(drawFigure(figure, { width: 600 }));
    expect(page).not.toMatch(/#[0-9a-f]{3,6}/i);
    expect(svgText(drawFigure(figure, { width: 600, theme: lightTheme }))).not.toContain("var(");
  });
  it("names and bears its caption", () => {
    expect(drawFigure(figure, { width: 600 }).attributes["aria-label"]).toBe(figure.caption);
  });
});

const generatedLines = fc
  .record({
    count: fc.integer({ min: 1, max: 9 }),
    ends: fc.array(fc.double({ min: -500, max: 4000, noNaN: true }), { minLength: 9, maxLength: 9 }),
    points: fc.array(fc.record({ x: fc.double({ min: 0, max: 45, noNaN: true }), y: fc.double({ min: 0, max: 4000, noNaN: true }) }), {
      maxLength: 7,
    }),
    bound: fc.double({ min: 0, max: 4000, noNaN: true }),
    gap: fc.double({ min: 0, max: 44, noNaN: true }),
    width: fc.integer({ min: 260, max: 1200 }),
  })
  .map(({ count, ends, points, bound, gap, width }): { readonly figure: LinesFigure; readonly width: number } => ({
    width,
    figure: {
      kind: "lines",
      id: "generated",
      caption: "generated",
      x: { label: "airspeed", quantity: "speed" },
      y: { label: "electric power", quantity: "power" },
      series: ends.slice(0, count).map((end, index) => ({
        name: `line ${index} with a name of some length`,
        meaning: index % 2 === 0 ? "mode.driven" : "mode.autorotating",
        x: [0, 20, 45 - index],
        y: [1000, index % 3 === 0 ? null : 1200, end],
        ...(index % 2 === 0 ? {} : { end: { limit: "block current", family: "power" as const } }),
      })),
      notable: points.map((point, index) => ({ name: `notable point ${index}`, ...point })),
      bounds: [{ name: "a bound with a name", axis: "y", value: bound, forbidden: "above", family: "air" }],
      gaps: [{ from: gap, to: 45, reason: "no level flight: propeller thrust, 38 N short" }],
    },
  }));

describe("labels", () => {
  it("never overlap, whatever the lines, points, limits and widths", () => {
    fc.assert(
      fc.property(generatedLines, ({ figure, width }) => {
        expect(overlaps(drawFigure(figure, { width }))).toEqual([]);
      }),
      { numRuns: 150, seed: 7 },
    );
  });
  it("lose no name: what has no room in the picture stands in words under it", () => {
    fc.assert(
      fc.property(generatedLines, ({ figure, width }) => {
        const drawn = svgText(drawFigure(figure, { width }));
        const words = drawn.replace(/<\/text><text[^>]*>/g, " ");
        for (const { name } of [...figure.series, ...(figure.notable ?? []), ...(figure.bounds ?? [])]) expect(words).toContain(name);
        expect(words).toContain("no level flight: propeller thrust, 38 N short");
      }),
      { numRuns: 60, seed: 11 },
    );
  });
});

describe("marks", () => {
  it("draw one line or band for every series of the figure", () => {
    for (const figure of sampleFigures.filter((each) => ["lines", "stacked", "profile", "map", "scene"].includes(each.kind))) {
      const text = svgText(drawFigure(figure, { width: 760 }));
      for (const series of figureSeries(figure)) {
        const found = ["series", "site", "mark"].some((attribute) => text.includes(`data-${attribute}="${series.name}"`));
        // What is too small to draw is told in words.
        expect(found || text.includes(`${series.name} 0.`), series.name).toBe(true);
      }
    }
  });
  it("are rings and dashes where the rotor turns free, so that they read without color", () => {
    const line = withPart(drawFigure(sampleStacked, { width: 760 }), "lines")[0] as SvgNode;
    expect(svgText(line)).toContain('stroke-dasharray="9 5"');
    expect(tags(line).filter((tag) => tag === "circle").length).toBeGreaterThan(4);
  });
  it("bear limit ends with their family", () => {
    const ends = withPart(drawFigure(sampleLines, { width: 760 }), "limit-end").map(svgText);
    expect(ends).toHaveLength(3);
    expect(ends.map((text) => /data-family="(\w+)"/.exec(text)?.[1])).toEqual(["rule", "air", "power"]);
  });
  it("get thin when coarse and grey when stale", () => {
    const coarse = svgText(drawFigure(sampleLines, { width: 760, grade: "coarse" }));
    expect(coarse).not.toContain('stroke-width="2.25"');
    const stale = drawFigure(sampleStacked, { width: 760, stale: true });
    expect(svgText(stale).includes("var(--rotor)")).toBe(false);
    const fills = (part: string) =>
      withPart(stale, part).flatMap((node) =>
        [...svgText(node).matchAll(/fill="([^"]+)" fill-opacity="([^"]+)"/g)].map(([, ...look]) => look.join(" ")),
      );
    expect(new Set([...fills("bands"), ...fills("end-labels")]).size).toBe(1);
  });
});

describe("a plot without a value", () => {
  const nothing = (series: LinesFigure["series"]) => series.map((each) => ({ ...each, y: each.y.map(() => null) }));
  const empty = {
    lines: { ...sampleLines, series: nothing(sampleLines.series), gaps: [], bounds: [], notable: [] },
    stacked: {
      ...sampleStacked,
      layers: sampleStacked.layers.map((layer) => ({ ...layer, values: layer.values.map(() => null) })),
      overlays: [],
      notable: [],
    },
    profile: {
      ...sampleProfile,
      panels: sampleProfile.panels.map((panel) => ({ ...panel, series: nothing(panel.series), bounds: [] })),
    },
    grid: { ...sampleGrid, values: sampleGrid.values.map(() => null) },
  } satisfies Readonly<Record<string, Figure>>;
  const words = (figure: Figure) =>
    labelBoxes(drawFigure(figure, { width: 760 }))
      .map(({ text }) => text)
      .join(" ");
  it("is hatched and says why, with the reason that the figure gives", () => {
    expect(words(empty.stacked)).toContain("no level flight: propeller thrust, 12 N short");
    expect(words({ ...empty.lines, gaps: [{ from: 1, to: 2, reason: "no hover" }] })).toContain("no hover");
    for (const figure of [empty.lines, empty.stacked, empty.profile])
      expect(withPart(drawFigure(figure, { width: 760 }), "gap").length).toBeGreaterThan(0);
  });
  it("says what was looked for when the figure gives no reason", () => {
    expect(words(empty.lines)).toContain("no hover at any payload");
    expect(words(empty.grid)).toMatch(/no .+ at any .+ and .+/);
    for (const panel of empty.profile.panels) expect(words(empty.profile)).toContain(`no ${panel.y.label} at any`);
  });
  it("bears no figures on an axis that nothing was found on", () => {
    const ticks = withPart(drawFigure(empty.lines, { width: 760 }), "y-axis").flatMap((axis) => labelBoxes(axis).map(({ text }) => text));
    expect(ticks).toEqual(["hover, min"]);
  });
  it("keeps its words apart and its width", () => {
    for (const figure of Object.values(empty))
      for (const width of [280, 480, 760]) expect(overlaps(drawFigure(figure, { width }))).toEqual([]);
  });
});

describe("a plot", () => {
  it("tells where a pointer stands along x", () => {
    const place = plotPlace(drawFigure(sampleStacked, { width: 760 }));
    expect(place?.xDomain[0]).toBe(0);
    expect(place?.xDomain[1]).toBeGreaterThanOrEqual(45);
    expect(plotPlace(drawFigure(sampleMap, { width: 760 }))).toBeUndefined();
  });
  it("shows the cursor only when asked", () => {
    expect(withPart(drawFigure(sampleStacked, { width: 760 }), "cursor")).toHaveLength(0);
    expect(withPart(drawFigure(sampleStacked, { width: 760, cursor: 20 }), "cursor")).toHaveLength(1);
  });
  it("keeps lengths comparable on maps", () => {
    const drawn = drawFigure(
      {
        ...sampleMap,
        tracks: [],
        sites: [
          { name: "a", at: [0, 60] },
          { name: "b", at: [0.2, 60.1] },
        ],
        relief: undefined as never,
      },
      { width: 700 },
    );
    const centres = withPart(drawn, "site").map(
      (site) =>
        svgText(site)
          .match(/M([\d.]+) ([\d.]+)/)
          ?.slice(1)
          .map(Number) as [number, number],
    );
    const [[x0, y0], [x1, y1]] = centres as [[number, number], [number, number]];
    expect(Math.abs(x1 - x0) / Math.abs(y1 - y0)).toBeCloseTo(1, 1);
  });
});
