import type { SceneFigure } from "@wingseed/engine";
import { formatReading, type UnitSystem } from "../format/index.ts";
import { figureTable } from "../tables/index.ts";
import { type Ink, wrapCells } from "./ink.ts";
import { tableText } from "./table-text.ts";

export interface SceneTextOptions {
  readonly width: number;
  readonly system: UnitSystem;
  readonly ink: Ink;
  readonly mostRows: number;
}

/** What a drawing says, for a face that cannot draw: its lengths and marked points in words, forces as a table. */
export function sceneText(figure: SceneFigure, options: SceneTextOptions): readonly string[] {
  const { width, system, ink } = options;
  const head = wrapCells(`  ${figure.caption}`, width, "  ").map(ink.quiet);
  if (figure.arrows) return [...head, ...tableText(figureTable(figure), options)];
  const length = (value: number) => formatReading(value, "length", { system }).text;
  const lengths = (figure.dimensions ?? []).map(({ name, from, to }) => {
    const size = Math.hypot(...from.map((value, axis) => value - (to[axis] as number)));
    return `${name} ${length(size)}`;
  });
  const marks = (figure.marks ?? []).map(({ name, at: [x, y, z] }) => {
    const places = [way(x, "forward", "aft"), way(y, "right", "left"), way(z, "down", "up")].filter((place) => place !== "");
    return `${name} ${places.length === 0 ? "at the datum" : `${places.join(", ")} from the datum`}`;
  });
  function way(value: number, positive: string, negative: string): string {
    return Math.abs(value) < 5e-4 ? "" : `${length(Math.abs(value))} ${value > 0 ? positive : negative}`;
  }
  return [...head, ...[...lengths, ...marks].flatMap((each) => wrapCells(`  ${each}`, width, "    "))];
}
