import type { Box } from "./label.ts";
import type { Surroundings } from "./label-placement.ts";
import type { PixelPoint } from "./polyline.ts";
import type { Projection } from "./scene-projection.ts";

/** Where a view lies on the picture. */
export interface ViewPlace {
  readonly look: Projection;
  /** The part of the paper that it shows [m]. */
  readonly extent: Box;
  /** Pixels a metre. */
  readonly scale: number;
  readonly room: { readonly right: number; readonly below: number };
  /** Its upper left corner, title included [px]. */
  readonly x: number;
  readonly y: number;
  /** Present on a part drawn larger: it is cut at its edges. */
  readonly title?: string;
}

/** What the views of one picture share. */
export interface SharedNames {
  /** Names written so far: each stands once. */
  readonly named: Set<string>;
  /** All views, the detail first. */
  readonly places: readonly ViewPlace[];
}

/** One view with what a layer of it needs to draw. */
export interface ViewCanvas {
  readonly look: Projection;
  readonly box: Box;
  readonly place: ViewPlace;
  readonly around: Surroundings;
  toPaper(flat: PixelPoint): PixelPoint;
}
