import { element, group, type SvgNode, textElement } from "./node.ts";
import { textWidth } from "./text-width.ts";

/** Sizes [px] of all text in pictures. Nothing is smaller than `small`. */
export const textSize = { axis: 15, label: 15, small: 14 } as const;
const lineHeight = 1.2;
const ascent = 0.88;

/** A rectangle [px] with its upper left corner. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export type TextAnchor = "start" | "middle" | "end";

export interface LabelStyle {
  readonly size?: number;
  readonly fill: string;
  /** Colour of a rim that keeps the text readable over lines. */
  readonly rim?: string;
  readonly weight?: number;
}

/** The box that lines of text need. */
export function textBlock(lines: readonly string[], size: number): { readonly width: number; readonly height: number } {
  const width = lines.reduce((widest, line) => Math.max(widest, textWidth(line, size)), 0);
  return { width, height: lines.length * size * lineHeight };
}

export function boxesOverlap(a: Box, b: Box, gap = 0): boolean {
  return a.x < b.x + b.width + gap && b.x < a.x + a.width + gap && a.y < b.y + b.height + gap && b.y < a.y + a.height + gap;
}

/**
 * Lines of text inside a box. The box is written on the group as `data-label-box` (x y width height), so that a test
 * or a page can see that no two labels lie on each other.
 */
export function label(lines: readonly string[], box: Box, anchor: TextAnchor, style: LabelStyle): SvgNode {
  const size = style.size ?? textSize.label;
  const x = anchor === "start" ? box.x : anchor === "end" ? box.x + box.width : box.x + box.width / 2;
  const rim = style.rim ? { stroke: style.rim, "stroke-width": 3, "stroke-linejoin": "round", "paint-order": "stroke" } : {};
  const children = lines.map((line, index) =>
    textElement("text", { x, y: box.y + size * (ascent + index * lineHeight), "text-anchor": anchor, fill: style.fill, ...rim }, line),
  );
  const text = { "font-size": size, "font-weight": style.weight ?? 500 };
  return group("label", children, { ...text, "data-label-box": boxText(box) });
}

export function boxText(box: Box): string {
  return [box.x, box.y, box.width, box.height].map((value) => value.toFixed(1)).join(" ");
}

/** Every label box of a picture. */
export function labelBoxes(node: SvgNode): readonly { readonly box: Box; readonly text: string }[] {
  const own = node.attributes["data-label-box"];
  const inner = node.children.flatMap(labelBoxes);
  if (typeof own !== "string") return inner;
  const [x = 0, y = 0, width = 0, height = 0] = own.split(" ").map(Number);
  return [{ box: { x, y, width, height }, text: node.children.map((child) => child.text ?? "").join(" ") }, ...inner];
}

/** A thin line from a mark to its label. */
export function leader(from: readonly [number, number], to: readonly [number, number], stroke: string): SvgNode {
  return element("line", { x1: from[0], y1: from[1], x2: to[0], y2: to[1], stroke, "stroke-width": 1 });
}
