import type { Figure, Meaning, Series } from "@wingseed/engine";
import type { TokenName } from "./theme.ts";

/** How a mark of one meaning is drawn. Shapes and dashes carry the meaning where colour cannot. */
export interface MarkStyle {
  readonly paint: TokenName;
  readonly width: number;
  readonly dash?: string;
  /** `line` with optional rings, points only, or the ground under a line. */
  readonly shape: "line" | "rings" | "crosses" | "wedges" | "ground";
}

const fullWidth = 2.25;
const thinWidth = 1.25;

const styles: Readonly<Record<Meaning, MarkStyle>> = {
  rotor: { paint: "rotor", width: fullWidth, shape: "line" },
  wing: { paint: "wing", width: fullWidth, shape: "line" },
  propellers: { paint: "propellers", width: fullWidth, shape: "line" },
  body: { paint: "body", width: fullWidth, shape: "line" },
  losses: { paint: "losses", width: fullWidth, shape: "line" },
  battery: { paint: "battery", width: fullWidth, shape: "line" },
  avionics: { paint: "avionics", width: fullWidth, shape: "line" },
  "mode.driven": { paint: "ink", width: fullWidth, shape: "line" },
  "mode.autorotating": { paint: "ink", width: fullWidth, dash: "9 5", shape: "rings" },
  measured: { paint: "ink", width: 1.5, shape: "crosses" },
  claimed: { paint: "ink", width: 1.5, shape: "wedges" },
  before: { paint: "ink-3", width: thinWidth, dash: "2 3", shape: "line" },
  limit: { paint: "ink", width: 1.75, shape: "line" },
  reserve: { paint: "ink-2", width: 1.5, dash: "5 4", shape: "line" },
  terrain: { paint: "ink-3", width: 1, shape: "ground" },
  track: { paint: "ink", width: fullWidth, shape: "line" },
  site: { paint: "ink", width: 1.5, shape: "wedges" },
  neutral: { paint: "ink-2", width: 1.75, shape: "line" },
  "ordered.1": { paint: "w-4", width: fullWidth, shape: "line" },
  "ordered.2": { paint: "w-5", width: fullWidth, shape: "line" },
  "ordered.3": { paint: "w-7", width: fullWidth, shape: "line" },
  "ordered.4": { paint: "w-7", width: fullWidth, shape: "line" },
};

export interface StyleChoice {
  readonly weight?: Series["weight"];
  /** Coarse results are drawn thin until the exact ones come. */
  readonly coarse?: boolean;
  /** Results of an earlier state are drawn grey. */
  readonly stale?: boolean;
  /** With four ordered lines the third moves one step so that the order stays visible. */
  readonly fourOrdered?: boolean;
}

export function markStyle(meaning: Meaning, choice: StyleChoice = {}): MarkStyle {
  const style = styles[meaning];
  const thin = choice.weight === "thin" || choice.coarse;
  const paint = choice.stale ? "ink-3" : choice.fourOrdered && meaning === "ordered.3" ? "w-6" : style.paint;
  return { ...style, paint, width: thin ? Math.min(thinWidth, style.width) : style.width };
}

/** True when a figure orders four things, which changes the step of the third. */
export function ordersFour(figure: Figure): boolean {
  if (figure.kind === "lines") return figure.series.some((series) => series.meaning === "ordered.4");
  if (figure.kind === "profile") return figure.panels.some((panel) => panel.series.some((series) => series.meaning === "ordered.4"));
  return false;
}
