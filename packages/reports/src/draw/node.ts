/** One SVG element as plain data: a face maps it to its own elements, a file writes it as text. */
export interface SvgNode {
  readonly tag: string;
  readonly attributes: Readonly<Record<string, string | number>>;
  readonly children: readonly SvgNode[];
  readonly text?: string;
}

/** Makes an element; coordinates are rounded to a hundredth of a pixel so that files stay small and equal. */
export function element(
  tag: string,
  attributes: Readonly<Record<string, string | number | undefined>> = {},
  children: readonly SvgNode[] = [],
): SvgNode {
  const kept: Record<string, string | number> = {};
  for (const [name, value] of Object.entries(attributes)) {
    if (value !== undefined) kept[name] = typeof value === "number" ? pixel(value) : value;
  }
  return { tag, attributes: kept, children };
}

/** An element that holds text. */
export function textElement(tag: string, attributes: Readonly<Record<string, string | number | undefined>>, text: string): SvgNode {
  return { ...element(tag, attributes), text };
}

/** A named group, so that faces and tests find the parts of a picture. */
export function group(part: string, children: readonly SvgNode[], attributes: Readonly<Record<string, string | number>> = {}): SvgNode {
  return element("g", { "data-part": part, ...attributes }, children);
}

export function pixel(value: number): number {
  return Math.round(value * 100) / 100 || 0;
}

/** SVG path commands through points. */
export function pathThrough(points: readonly (readonly [number, number])[], closed = false): string {
  const steps = points.map(([x, y], index) => `${index === 0 ? "M" : "L"}${pixel(x)} ${pixel(y)}`);
  return steps.join("") + (closed ? "Z" : "");
}

/** The picture as SVG text that stands alone. */
export function svgText(node: SvgNode): string {
  const attributes = node.tag === "svg" ? { xmlns: "http://www.w3.org/2000/svg", ...node.attributes } : node.attributes;
  const written = Object.entries(attributes).map(([name, value]) => ` ${name}="${escaped(String(value))}"`);
  const inside = (node.text === undefined ? "" : escaped(node.text)) + node.children.map(svgText).join("");
  return inside === "" ? `<${node.tag}${written.join("")}/>` : `<${node.tag}${written.join("")}>${inside}</${node.tag}>`;
}

function escaped(text: string): string {
  return text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;").replaceAll('"', "&quot;");
}
