import type { SvgNode } from "@wingseed/reports/draw";

const namespace = "http://www.w3.org/2000/svg";

/** Drawn data as elements of the page. */
export function svgElement(node: SvgNode): SVGElement {
  const made = document.createElementNS(namespace, node.tag);
  for (const [name, value] of Object.entries(node.attributes)) made.setAttribute(name, String(value));
  if (node.text !== undefined) made.append(node.text);
  made.append(...node.children.map(svgElement));
  return made;
}
