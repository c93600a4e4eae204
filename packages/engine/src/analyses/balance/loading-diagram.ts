import type { Border, LinesFigure, Meaning, NotablePoint, Series } from "../figures.ts";
import type { BalanceOutputs, BalanceRow } from "./output-schema.ts";

const ordered: readonly Meaning[] = ["ordered.4", "ordered.3", "ordered.2", "ordered.1"];

/**
 * Loading diagram: mass over centre of gravity. A line for every payload as blocks are put in from the front, every loading
 * of a pack a named point with its interval, the limits at both sides as they are at each mass, and the largest mass.
 */
export function loadingDiagram(outputs: BalanceOutputs): LinesFigure {
  const { rows, paths, largestMass } = outputs;
  const masses = [...paths.flatMap(({ points }) => points.map(({ mass }) => mass)), largestMass];
  const lines = paths.map(({ payload, place, points }, index): Series => {
    return {
      name: whatElse(payload, place),
      meaning: ordered[index % ordered.length] as Meaning,
      x: points.map(({ x }) => x),
      y: points.map(({ mass }) => mass),
      weight: "thin",
    };
  });
  return {
    kind: "lines",
    id: "loading",
    caption:
      "Mass over centre of gravity as blocks are put in from the front, a line a payload; points are blocks + payload with their 95 % intervals",
    plane: true,
    x: { label: "centre of gravity forward of the datum", quantity: "length", unit: "mm" },
    y: { label: "mass", quantity: "mass", unit: "kg" },
    series: lines,
    notable: rows.map(({ blocks, payload, place, centre, mass }): NotablePoint => {
      const index = paths.findIndex((path) => path.payload === payload && path.place === place);
      const meaning = ordered[Math.max(0, index) % ordered.length] as Meaning;
      const halfWidth = { x: centre.x.halfWidth, y: mass.halfWidth };
      return { name: `${blocks} + ${whatElse(payload, place)}`, x: centre.x.value, y: mass.value, meaning, halfWidth };
    }),
    borders: (["fore", "aft"] as const).flatMap((side) => limitBorders(rows, side, masses)),
    bounds: [{ name: "largest take-off mass", axis: "y", value: largestMass, forbidden: "above", family: "rule" }],
  };
}

function whatElse(payload: string, place: string): string {
  return place === "payload bay" || place === "no payload" ? payload : `${payload}, ${place}`;
}

/** The limits of one side from the lightest to the heaviest mass, a line for every source; beyond the loadings they are held. */
function limitBorders(rows: readonly BalanceRow[], side: "fore" | "aft", masses: readonly number[]): readonly Border[] {
  const sources = [...new Set(rows.map((row) => row[side].from))];
  return sources.flatMap((from): readonly Border[] => {
    const own = rows.filter((row) => row[side].from === from).toSorted((a, b) => a.mass.value - b.mass.value);
    const [first, last] = [own[0], own.at(-1)];
    if (!first || !last) return [];
    const alone = sources.length === 1;
    const [low, high] = alone ? [Math.min(...masses), Math.max(...masses)] : [first.mass.value, last.mass.value];
    return [
      {
        name: `${side} limit, ${from}`,
        family: from === "aircraft file" ? "rule" : "control",
        // Walked upward, to larger mass: what lies too far forward is on the right.
        forbidden: side === "fore" ? "right" : "left",
        x: [first[side].x, ...own.map((row) => row[side].x), last[side].x],
        y: [low, ...own.map((row) => row.mass.value), high],
      },
    ];
  });
}
