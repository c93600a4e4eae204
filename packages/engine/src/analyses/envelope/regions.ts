import type { Border } from "../figures.ts";
import { borderName } from "./border-name.ts";
import type { EnvelopeBorder, EnvelopeOutputs, EnvelopeRow } from "./schema.ts";

type Mode = EnvelopeRow["mode"];

interface End {
  readonly airspeed: number;
  /** Absent where the speeds looked at end. */
  readonly border?: EnvelopeBorder;
}

interface Stretch {
  readonly altitude: number;
  readonly slowest: End;
  readonly fastest: End;
}

/** A part of the plane of speed and altitude in which level flight is possible, and the named lines around it. */
export interface FlightRegion {
  readonly x: readonly number[];
  readonly y: readonly number[];
  readonly borders: readonly Border[];
}

/** Parts of the plane of one pack, day and mode: stretches of one altitude joined to those that they overlap at the next. */
export function flightRegions(outputs: EnvelopeOutputs, blocks: number, day: number, mode: Mode): FlightRegion[] {
  const own = (item: { readonly blocks: number; readonly temperatureOffset: number; readonly mode: Mode }) =>
    item.blocks === blocks && item.temperatureOffset === day && item.mode === mode;
  const rows = outputs.rows.filter(own);
  const borders = outputs.borders.filter(own);
  const chains: Stretch[][] = [];
  let open: Stretch[][] = [];
  for (const altitude of outputs.altitudes) {
    const next: Stretch[][] = [];
    for (const stretch of stretchesAt(rows, borders, altitude)) {
      const joined = open.find((chain) => !next.includes(chain) && overlaps(chain[chain.length - 1] as Stretch, stretch));
      const chain = joined ?? [];
      if (!joined) chains.push(chain);
      chain.push(stretch);
      next.push(chain);
    }
    open = next;
  }
  return chains.map(regionOf);
}

function overlaps(a: Stretch, b: Stretch): boolean {
  return a.slowest.airspeed <= b.fastest.airspeed && b.slowest.airspeed <= a.fastest.airspeed;
}

function stretchesAt(rows: readonly EnvelopeRow[], borders: readonly EnvelopeBorder[], altitude: number): Stretch[] {
  const here = rows.filter((row) => row.altitude === altitude);
  const ends = borders.filter((border) => border.altitude === altitude);
  const stretches: Stretch[] = [];
  let first: number | undefined;
  here.forEach((row, i) => {
    if (row.state !== "flies") return;
    first ??= i;
    if (here[i + 1]?.state === "flies") return;
    const low = here[first] as EnvelopeRow;
    const before = here[first - 1];
    const after = here[i + 1];
    const slowest =
      before && ends.find(({ side, airspeed }) => side === "slowest" && airspeed >= before.airspeed && airspeed <= low.airspeed);
    const fastest =
      after && ends.find(({ side, airspeed }) => side === "fastest" && airspeed >= row.airspeed && airspeed <= after.airspeed);
    stretches.push({
      altitude,
      slowest: slowest ? { airspeed: slowest.airspeed, border: slowest } : { airspeed: low.airspeed },
      fastest: fastest ? { airspeed: fastest.airspeed, border: fastest } : { airspeed: row.airspeed },
    });
    first = undefined;
  });
  return stretches;
}

function regionOf(chain: readonly Stretch[]): FlightRegion {
  const up = chain.map(({ fastest }) => fastest.airspeed);
  const down = [...chain].reverse().map(({ slowest }) => slowest.airspeed);
  const heights = chain.map(({ altitude }) => altitude);
  return {
    x: [...up, ...down],
    y: [...heights, ...[...heights].reverse()],
    borders: [...namedLines(chain, ({ slowest }) => slowest, "left"), ...namedLines(chain, ({ fastest }) => fastest, "right")],
  };
}

/** Upward along one side, a line for each limit; where the limit changes the next line begins at the last point of the one before. */
function namedLines(chain: readonly Stretch[], side: (stretch: Stretch) => End, forbidden: Border["forbidden"]): Border[] {
  const lines: { name: string; x: number[]; y: number[]; forbidden: Border["forbidden"]; family: Border["family"] }[] = [];
  let last: { readonly x: number; readonly y: number } | undefined;
  for (const stretch of chain) {
    const { airspeed, border } = side(stretch);
    const point = { x: airspeed, y: stretch.altitude };
    if (border) {
      const line = lines[lines.length - 1];
      const name = borderName(border.limit);
      if (line && line.name === name && last) {
        line.x.push(point.x);
        line.y.push(point.y);
      } else {
        lines.push({
          name,
          x: last ? [last.x, point.x] : [point.x],
          y: last ? [last.y, point.y] : [point.y],
          forbidden,
          family: border.family,
        });
      }
    }
    last = border ? point : undefined;
  }
  return lines.filter(({ x }) => x.length > 1);
}
