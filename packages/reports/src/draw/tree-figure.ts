import type { TreeFigure, TreeNode } from "@wingseed/engine";
import type { DrawContext } from "./context.ts";
import { label, textBlock, textSize } from "./label.ts";
import { element, group, type SvgNode } from "./node.ts";
import { picture } from "./picture.ts";
import { wrapText } from "./text-width.ts";

const indent = 26;
const rowGap = 8;

/** A tree that reads down the page: children stand indented under their parent, joined by right-angled lines. */
export function drawTree(figure: TreeFigure, context: DrawContext): SvgNode {
  const drawn = branch(figure.root, 0, 2, context);
  return picture(figure, drawn.bottom + 4, drawn.parts, context);
}

interface Branch {
  readonly parts: readonly SvgNode[];
  readonly bottom: number;
  /** Height of the node's first line, where its connection ends. */
  readonly joint: number;
}

function branch(node: TreeNode, level: number, top: number, context: DrawContext): Branch {
  const x = level * indent + 2;
  const room = Math.max(80, context.width - x - 4);
  const name = wrapText(node.label, textSize.label, room);
  const note = node.note === undefined ? [] : wrapText(node.note, textSize.small, room);
  const nameBlock = textBlock(name, textSize.label);
  const noteBlock = textBlock(note, textSize.small);
  const parts: SvgNode[] = [label(name, { x, y: top, ...nameBlock }, "start", { fill: context.paint("ink") })];
  if (note.length > 0) {
    const box = { x, y: top + nameBlock.height, ...noteBlock };
    parts.push(label(note, box, "start", { size: textSize.small, fill: context.paint("ink-2") }));
  }
  let bottom = top + nameBlock.height + noteBlock.height + rowGap;
  const stemTop = bottom - rowGap + 1;
  for (const child of node.children ?? []) {
    const below = branch(child, level + 1, bottom, context);
    parts.push(elbow(x + 7, stemTop, below.joint, x + indent - 4, context), ...below.parts);
    bottom = below.bottom;
  }
  return { parts: [group("branch", parts)], bottom, joint: top + textSize.label * 0.6 };
}

function elbow(x: number, top: number, joint: number, right: number, context: DrawContext): SvgNode {
  return element("path", { d: `M${x} ${top}V${joint}H${right}`, fill: "none", stroke: context.paint("control-edge"), "stroke-width": 1 });
}
