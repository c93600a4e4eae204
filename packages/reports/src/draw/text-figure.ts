import type { TextFigure } from "@wingseed/engine";
import { sentence } from "../format/index.ts";
import type { DrawContext } from "./context.ts";
import { label, textBlock } from "./label.ts";
import type { SvgNode } from "./node.ts";
import { picture } from "./picture.ts";
import { wrapText } from "./text-width.ts";

const size = 17;
const measure = 560;

/** Paragraphs as a picture: for files that must stand alone; pages print the words themselves. */
export function drawText(figure: TextFigure, context: DrawContext): SvgNode {
  let top = 2;
  const parts = figure.paragraphs.map((tokens) => {
    const lines = wrapText(sentence(tokens, { system: context.system }), size, Math.min(measure, context.width - 4));
    const block = textBlock(lines, size);
    const node = label(lines, { x: 0, y: top, ...block }, "start", { size, fill: context.paint("ink"), weight: 450 });
    top += block.height + size * 0.6;
    return node;
  });
  return picture(figure, top, parts, context);
}
