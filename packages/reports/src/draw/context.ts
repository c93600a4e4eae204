import type { UnitSystem } from "../format/index.ts";
import type { TokenName } from "./theme.ts";

/** On a narrow picture names may hide little; the others go under it. */
export function mostHidden(context: DrawContext): number {
  return context.width < 480 ? 4 : Number.POSITIVE_INFINITY;
}

/** Bands are paler in a coarse picture, and palest, all in one grey, in one of an earlier state. */
export function bandOpacity({ coarse, stale }: DrawContext): number {
  if (stale) return 0.4;
  return coarse ? 0.8 : 1;
}

/** What every part of a picture may use. */
export interface DrawContext {
  /** Width of the whole picture [px]. */
  readonly width: number;
  /** Height wished for the plotting area [px]; it grows where labels need room. */
  readonly plotHeight?: number;
  readonly paint: (token: TokenName) => string;
  readonly system: UnitSystem;
  /** SI value of x where the reader stands. */
  readonly cursor?: number;
  readonly coarse: boolean;
  readonly stale: boolean;
}
