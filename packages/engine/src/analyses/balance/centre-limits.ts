import type { AircraftDefinition, Loading } from "../../aircraft/index.ts";
import type { CentreLimits } from "./arrangement.ts";

/** One end of the permitted range of the centre of gravity. */
export interface CentreLimit {
  readonly side: "fore" | "aft";
  /** Forward of the datum [m]. */
  readonly x: number;
  /** Where it comes from, in words for a table. */
  readonly from: string;
}

/** Limits that one source gives for an aircraft as it is loaded; either end may be missing. */
export type LimitSource = (aircraft: AircraftDefinition, loading: Loading) => readonly CentreLimit[];

/** What the maker wrote into the file. */
export const fileLimits: LimitSource = ({ limits }) => [
  { side: "fore", x: limits.centreOfGravityForward, from: "aircraft file" },
  { side: "aft", x: limits.centreOfGravityAft, from: "aircraft file" },
];

/** The range in force: on each side the tightest of what was computed, and what the file says where nothing was. */
export function centreLimits(
  sources: readonly LimitSource[],
  aircraft: AircraftDefinition,
  loading: Loading,
): { readonly fore: CentreLimit; readonly aft: CentreLimit } {
  const computed = sources.flatMap((source) => source(aircraft, loading));
  const written = fileLimits(aircraft, loading);
  const tightest = (side: CentreLimit["side"], tighter: (a: number, b: number) => boolean): CentreLimit => {
    const own = computed.filter((limit) => limit.side === side);
    const candidates = own.length > 0 ? own : written.filter((limit) => limit.side === side);
    return candidates.reduce((best, limit) => (tighter(limit.x, best.x) ? limit : best));
  };
  return { fore: tightest("fore", (a, b) => a < b), aft: tightest("aft", (a, b) => a > b) };
}

/** The same for the drawing. */
export function drawnLimits({ fore, aft }: { readonly fore: CentreLimit; readonly aft: CentreLimit }): CentreLimits {
  return { forward: fore.x, aft: aft.x, source: fore.from === aft.from ? fore.from : `${fore.from}, ${aft.from}` };
}
