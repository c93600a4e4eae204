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

interface NamedLine {
  readonly name: string;
  readonly x: number[];
  readonly y: number[];
  readonly forbidden: Border["forbidden"];
  readonly family: Border["family"];
}

/** Upward along one side, a line for each limit; where the limit changes from one altitude to the next they meet half way. */
function namedLines(chain: readonly Stretch[], side: (stretch: Stretch) => End, forbidden: Border["forbidden"]): Border[] {
  const lines: NamedLine[] = [];
  let last: { readonly line: NamedLine; readonly x: number; readonly y: number } | undefined;
  for (const stretch of chain) {
    const { airspeed: x, border } = side(stretch);
    const y = stretch.altitude;
    if (!border) {
      last = undefined;
      continue;
    }
    const name = borderName(border.limit);
    let line = last?.line;
    if (line?.name !== name) {
      const meeting = last && { x: (last.x + x) / 2, y: (last.y + y) / 2 };
      if (meeting) append(last?.line, meeting.x, meeting.y);
      line = { name, x: meeting ? [meeting.x] : [], y: meeting ? [meeting.y] : [], forbidden, family: border.family };
      lines.push(line);
    }
    append(line, x, y);
    last = { line, x, y };
  }
  return lines.filter(({ x }) => x.length > 1);
}

function append(line: NamedLine | undefined, x: number, y: number): void {
  line?.x.push(x);
  line?.y.push(y);
}
