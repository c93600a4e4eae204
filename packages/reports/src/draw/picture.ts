import type { Figure } from "@wingseed/engine";
import type { DrawContext } from "./context.ts";
import { element, type SvgNode, textElement } from "./node.ts";
import type { PlotFrame } from "./plot-frame.ts";

/** The typeface of all pictures and what stands in for it. */
const family = "'Ysabeau Office Variable', 'Ysabeau Office', 'IBM Plex Sans', sans-serif";

/** The outer element of a picture: size, name for screen readers, and where its plot lies. */
export function picture(figure: Figure, height: number, parts: readonly SvgNode[], context: DrawContext, frame?: PlotFrame): SvgNode {
  const whole = Math.ceil(height);
  const plot = frame
    ? {
        "data-plot": [frame.left, frame.top, frame.right, frame.bottom].map((value) => value.toFixed(1)).join(" "),
        "data-x-domain": frame.x.domain.join(" "),
      }
    : {};
  return element(
    "svg",
    {
      viewBox: `0 0 ${Math.round(context.width)} ${whole}`,
      width: Math.round(context.width),
      height: whole,
      role: "img",
      "aria-label": figure.caption,
      "font-family": family,
      "font-variant-numeric": "tabular-nums",
      "data-figure": figure.id,
      "data-kind": figure.kind,
      ...plot,
    },
    [textElement("title", {}, figure.caption), ...parts],
  );
}

/** Where the plot of a drawn picture lies and how its x axis runs, so that a pointer can be read as a value. */
export interface PlotPlace {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
  /** [SI] */
  readonly xDomain: readonly [number, number];
}

/** Undefined for pictures without a shared x axis (maps, tables, drawings). */
export function plotPlace(drawn: SvgNode): PlotPlace | undefined {
  const [plot, domain] = [drawn.attributes["data-plot"], drawn.attributes["data-x-domain"]];
  if (typeof plot !== "string" || typeof domain !== "string") return undefined;
  const [left = 0, top = 0, right = 0, bottom = 0] = plot.split(" ").map(Number);
  const [from = 0, to = 0] = domain.split(" ").map(Number);
  return { left, top, right, bottom, xDomain: [from, to] };
}
