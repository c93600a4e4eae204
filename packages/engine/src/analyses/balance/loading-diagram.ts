import type { Border, LinesFigure, Meaning, NotablePoint, Series } from "../figures.ts";

/** One loading on the diagram. */
export interface DiagramPoint {
  readonly blocks: number;
  /** What is on board beside the pack, in words. */
  readonly payload: string;
  /** Take-off mass [kg]. */
  readonly mass: number;
  /** Centre of gravity forward of the datum [m]. */
  readonly centre: number;
}

/** How far the centre of gravity may go at each mass [m forward of the datum], and why. */
export interface DiagramLimit {
  readonly name: string;
  readonly side: "forward" | "aft";
  readonly masses: readonly number[];
  readonly centres: readonly number[];
}

const order: readonly Meaning[] = ["ordered.1", "ordered.2", "ordered.3", "ordered.4"];

/**
 * Loading diagram: take-off mass over centre of gravity, a line for every pack from the lightest loading to the heaviest,
 * every loading a named point, between a forward and an aft limit and under the largest mass.
 */
export function loadingDiagram(points: readonly DiagramPoint[], limits: readonly DiagramLimit[], largestMass: number): LinesFigure {
  const packs = [...new Set(points.map((point) => point.blocks))].toSorted((a, b) => a - b);
  const series = packs.map((blocks, index): Series => {
    const own = points.filter((point) => point.blocks === blocks).toSorted((a, b) => a.mass - b.mass);
    const meaning = order[Math.min(index, order.length - 1)] as Meaning;
    return { name: `${blocks} blocks`, meaning, x: own.map((point) => point.centre), y: own.map((point) => point.mass) };
  });
  const notable = points.map(({ blocks, payload, centre, mass }): NotablePoint => {
    const meaning = order[Math.min(packs.indexOf(blocks), order.length - 1)] as Meaning;
    return { name: payload, x: centre, y: mass, meaning };
  });
  const borders = limits.map(
    ({ name, side, masses, centres }): Border => ({
      name,
      x: centres,
      y: masses,
      // Walked upward, to larger mass: forward lies to the right.
      forbidden: side === "forward" ? "right" : "left",
      family: "control",
    }),
  );
  return {
    kind: "lines",
    id: "loading",
    caption: "Take-off mass and centre of gravity of every pack and payload, between the limits",
    plane: true,
    x: { label: "centre of gravity forward of the datum", quantity: "length", unit: "mm" },
    y: { label: "take-off mass", quantity: "mass", unit: "kg" },
    series,
    notable,
    borders,
    bounds: [{ name: "largest take-off mass", axis: "y", value: largestMass, forbidden: "above", family: "rule" }],
  };
}
