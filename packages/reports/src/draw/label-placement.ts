import { type Box, boxesOverlap, type TextAnchor, textBlock } from "./label.ts";

/** A label that wants to stand near a point. */
export interface PlacementWish {
  readonly lines: readonly string[];
  readonly size: number;
  readonly point: readonly [number, number];
  /** Distance from the point to the text [px]. */
  readonly distance?: number;
  /** Ready places, tried before those around the point. */
  readonly preferred?: readonly Place[];
  /** True where no other place would do. */
  readonly nowhereElse?: boolean;
}

export interface Place {
  readonly box: Box;
  readonly anchor: TextAnchor;
}

/** What a label must not cover, and what it should rather not. */
export interface Surroundings {
  readonly inside: Box;
  readonly taken: Box[];
  /** Points along drawn lines [px]: covering them is allowed but costs. */
  readonly lines: readonly (readonly [number, number])[];
}

const keepApart = 3;

/**
 * The cheapest free place for a label, or undefined if every place is taken. The place found is added to what is
 * taken, so labels never lie on each other, in whatever order they come.
 * @param mostCovered how many points of drawn lines the label may hide at most
 */
export function placeLabel(wish: PlacementWish, around: Surroundings, mostCovered = Number.POSITIVE_INFINITY): Place | undefined {
  let best: { readonly place: Place; readonly cost: number } | undefined;
  const places = [...(wish.preferred ?? []), ...(wish.nowhereElse ? [] : placesAround(wish))];
  for (const [rank, place] of places.entries()) {
    if (!isFree(place.box, around)) continue;
    const covered = coveredPoints(place.box, around.lines);
    const cost = rank * 0.5 + 4 * covered;
    if (covered > mostCovered) continue;
    if (!best || cost < best.cost) best = { place, cost };
  }
  if (best) around.taken.push(best.place.box);
  return best?.place;
}

export function isFree(box: Box, around: Surroundings): boolean {
  const { inside, taken } = around;
  const fits =
    box.x >= inside.x &&
    box.y >= inside.y &&
    box.x + box.width <= inside.x + inside.width &&
    box.y + box.height <= inside.y + inside.height;
  return fits && taken.every((other) => !boxesOverlap(box, other, keepApart));
}

/** How many points lie under a box. */
export function coveredPoints(box: Box, points: readonly (readonly [number, number])[]): number {
  let count = 0;
  for (const [x, y] of points) if (x > box.x - 2 && x < box.x + box.width + 2 && y > box.y - 1 && y < box.y + box.height + 1) count++;
  return count;
}

function placesAround(wish: PlacementWish): readonly Place[] {
  const { width, height } = textBlock(wish.lines, wish.size);
  const [x, y] = wish.point;
  const near = wish.distance ?? 8;
  const places: Place[] = [];
  for (const far of [near, near + 14, near + 30, near + 52, near + 80, near + 120]) {
    const middle = { anchor: "middle" as const };
    places.push({ ...middle, box: { x: x - width / 2, y: y - far - height, width, height } });
    places.push({ ...middle, box: { x: x - width / 2, y: y + far, width, height } });
    places.push({ anchor: "start", box: { x: x + far, y: y - height / 2, width, height } });
    places.push({ anchor: "end", box: { x: x - far - width, y: y - height / 2, width, height } });
    places.push({ anchor: "start", box: { x: x + far * 0.7, y: y - far * 0.7 - height, width, height } });
    places.push({ anchor: "end", box: { x: x - far * 0.7 - width, y: y - far * 0.7 - height, width, height } });
    places.push({ anchor: "start", box: { x: x + far * 0.7, y: y + far * 0.7, width, height } });
    places.push({ anchor: "end", box: { x: x - far * 0.7 - width, y: y + far * 0.7, width, height } });
  }
  return places;
}

/** Heights of labels in one column: as near to the wished middles as they get while keeping `pitch` apart. */
export function spreadInColumn(
  wishes: readonly { readonly middle: number; readonly height: number }[],
  column: { readonly top: number; readonly bottom: number; readonly pitch: number },
): readonly number[] {
  const order = wishes.map((_, index) => index).sort((a, b) => (wishes[a]?.middle ?? 0) - (wishes[b]?.middle ?? 0) || a - b);
  const middles = wishes.map((wish) => wish.middle);
  const half = (index: number) => Math.max(wishes[index]?.height ?? 0, column.pitch) / 2;
  let edge = column.top;
  for (const index of order) {
    middles[index] = Math.max(middles[index] ?? 0, edge + half(index));
    edge = (middles[index] ?? 0) + half(index);
  }
  edge = column.bottom;
  for (const index of order.toReversed()) {
    middles[index] = Math.min(middles[index] ?? 0, edge - half(index));
    edge = (middles[index] ?? 0) - half(index);
  }
  return middles;
}

/** Height that a column of labels needs [px]. */
export function columnHeight(heights: readonly number[], pitch: number): number {
  return heights.reduce((sum, height) => sum + Math.max(height, pitch), 0);
}
