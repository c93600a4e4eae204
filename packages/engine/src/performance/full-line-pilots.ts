import { type FullOutcome, type FullPoint, type FullTrimmed, type FullTrimmer, fullObjective } from "../equilibrium/full/index.ts";
import type { LineHooks, LinePoint } from "./speed-line.ts";

/** One speed of a line at the trim level `full`. */
export type FullLinePoint = LinePoint<FullTrimmed>;

/** A second optimum is dearer by more [1]. */
const distinct = 0.005;
/** Dearer by less is the same optimum: what the solver's tolerance leaves open [1]. */
const same = 1e-4;
/** Speeds at least this near to each other are trimmed from every way of flying [m/s]. */
const pilotSpacing = 4;

/** A line on its way: what is found at each speed so far, and the start of a flight beside it that does not fly. */
interface Way {
  readonly trimmer: FullTrimmer;
  readonly points: readonly FullPoint[];
  readonly hooks: LineHooks;
  readonly line: (FullLinePoint | undefined)[];
  readonly outcomes: (FullOutcome | undefined)[];
}

/** Outcomes at all speeds, followed from pilots; stall margins from the table. @derivation not a formula */
export function followedLine(trimmer: FullTrimmer, points: readonly FullPoint[], hooks: LineHooks): FullLinePoint[] {
  const empty = () => new Array<undefined>(points.length).fill(undefined);
  const way: Way = { trimmer, points, hooks, line: empty(), outcomes: empty() };
  const pilots = pilotsAmong(points);
  for (const pilot of pilots) take(way, pilot, trimmer.trim(points[pilot] as FullPoint, "table"));
  pilots.slice(1).forEach((high, k) => {
    const low = pilots[k] as number;
    if (!arrives(way, low, high)) follow(way, high, low);
    fillRest(way, low, high);
    hooks.progress(high, points.length * 2);
  });
  return way.line as FullLinePoint[];
}

/** Numbers of the first and last point and of some between. */
function pilotsAmong(points: readonly FullPoint[]): readonly number[] {
  const pilots: number[] = [];
  points.forEach((_, i) => {
    const last = points[pilots[pilots.length - 1] as number];
    const next = points[i + 1];
    if (!last || !next || next.airspeed - last.airspeed > pilotSpacing) pilots.push(i);
  });
  return pilots;
}

/** Keeps the cheaper of what was known at a speed and what is found. */
function take({ points, line, outcomes, hooks }: Way, i: number, found: FullOutcome): void {
  hooks.cancelled();
  const known = outcomes[i];
  const { airspeed } = points[i] as FullPoint;
  line[i] = known ? better(airspeed, known, found) : { airspeed, outcome: found };
  outcomes[i] = line[i]?.outcome === found || known === undefined ? found : known;
}

/** Follows the line up from a pilot to the next; whether it arrives at that one's flight. */
function arrives(way: Way, low: number, high: number): boolean {
  let near = way.outcomes[low];
  for (let i = low + 1; i <= high && near?.kind === "trimmed"; i++) {
    const found = way.trimmer.trimFrom(way.points[i] as FullPoint, [near.start], "table");
    if (i === high && agree(found, way.outcomes[high])) return true;
    if (found.kind === "trimmed" || i < high) take(way, i, found);
    near = found;
  }
  return false;
}

/** Follows the line down from a pilot until it joins what is there, or flies no more. */
function follow(way: Way, high: number, low: number): void {
  let near = way.outcomes[high];
  for (let i = high - 1; i > low && near?.kind === "trimmed"; i--) {
    const found = way.trimmer.trimFrom(way.points[i] as FullPoint, [near.start], "table");
    if (agree(found, way.outcomes[i])) return;
    take(way, i, found);
    near = found;
  }
}

/** Speeds that neither pilot reaches: beside one that flies, and midway, they are tried from every way of flying, else from a near miss. */
function fillRest(way: Way, low: number, high: number): void {
  const { trimmer, points, outcomes } = way;
  const flies = (i: number) => outcomes[i]?.kind === "trimmed";
  const middle = Math.floor((low + high) / 2);
  for (let i = low + 1; i < high; i++) {
    if (flies(i)) continue;
    const point = points[i] as FullPoint;
    const miss = outcomes[i] ?? outcomes[i - 1];
    const widely = flies(i - 1) || flies(i + 1) || i === middle || miss === undefined;
    if (widely) take(way, i, trimmer.trim(point, "table"));
    else if (outcomes[i] === undefined) take(way, i, trimmer.trimFrom(point, [miss.start], "table"));
  }
}

/** Whether two flights at one speed are the same optimum. @derivation not a formula */
export function agree(one: FullLinePoint["outcome"], other: FullLinePoint["outcome"] | undefined): boolean {
  if (one.kind !== "trimmed" || other?.kind !== "trimmed") return false;
  return Math.abs(fullObjective(one) - fullObjective(other)) < same * Math.abs(fullObjective(other));
}

/** The cheaper of two flights at one speed, the other one kept where it is another optimum. @derivation not a formula */
export function better(airspeed: number, first: FullLinePoint["outcome"], second: FullLinePoint["outcome"] | undefined): FullLinePoint {
  if (second?.kind !== "trimmed") return { airspeed, outcome: first };
  if (first.kind !== "trimmed") return { airspeed, outcome: second };
  const [keep, drop] = fullObjective(second) < fullObjective(first) * (1 - 1e-7) ? [second, first] : [first, second];
  return fullObjective(drop) > fullObjective(keep) * (1 + distinct)
    ? { airspeed, outcome: keep, other: drop }
    : { airspeed, outcome: keep };
}
