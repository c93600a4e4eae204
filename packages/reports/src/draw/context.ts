import type { UnitSystem } from "../format/index.ts";
import type { TokenName } from "./theme.ts";

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
