import type { QuantityKind } from "../quantities/index.ts";

/** What a mark means. Faces choose colour, dash and shape from it; figure data never names a colour. */
export type Meaning =
  | "rotor"
  | "wing"
  | "propellers"
  | "body"
  | "losses"
  | "battery"
  | "avionics"
  | "mode.driven"
  | "mode.autorotating"
  | "measured"
  | "claimed"
  | "before"
  | "limit"
  | "reserve"
  | "terrain"
  | "track"
  | "site"
  | "neutral"
  | "ordered.1"
  | "ordered.2"
  | "ordered.3"
  | "ordered.4";

export interface Axis {
  readonly label: string;
  readonly quantity: QuantityKind;
  /** Unit to show instead of the usual one of the kind. */
  readonly unit?: string;
  /** Says from what a height is measured. */
  readonly datum?: string;
}

/** What kind of thing a limit is. */
export type LimitFamily = "air" | "power" | "strength" | "control" | "rule";

/** What every picture has. */
export interface FigureBase {
  /** Stable within the analysis. */
  readonly id: string;
  /** What the picture shows, as a caption. */
  readonly caption: string;
}
