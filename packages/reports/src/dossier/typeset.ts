import { NodeCompiler } from "@myriaddreamin/typst-ts-node-compiler";
import { drawFigure, lightTheme, svgText } from "../draw/index.ts";
import type { Block, FigureBlock } from "./blocks.ts";
import { columnWidths } from "./column-widths.ts";
import { template } from "./template.ts";
import { typefaceCuts } from "./typeface.data.ts";

/** Pictures are drawn this wide [px] and shrunk to the column, which sets their text at about 9 pt. */
const fullWidth = 820;
const halfWidth = 480;

export interface PageLook {
  readonly title: string;
  readonly footer: string;
  /** Height of plots in full-width and half-width pictures [px]. */
  readonly plotHeights: { readonly full: number; readonly half: number; readonly map: number };
}

/** The typeset document with its number of pages. */
export interface TypesetDocument {
  readonly pdf: Uint8Array;
  readonly pages: number;
}

/**
 * Sets blocks as PDF. The same blocks give the same bytes.
 * @throws Error with the typesetter's own words when the layout does not compile: a fault of this program.
 */
export function typeset(blocks: readonly Block[], look: PageLook): TypesetDocument {
  const files = new Map<string, string>();
  const printed = blocks.map((block) => printedBlock(block, look, files));
  files.set("/data.json", JSON.stringify({ title: look.title, footer: look.footer, blocks: printed }));
  files.set("/main.typ", template);
  const fontBlobs = typefaceCuts.map((cut) => Buffer.from(cut, "base64"));
  const compiler = NodeCompiler.create({ workspace: "/", fontArgs: [{ fontBlobs }] });
  for (const [path, text] of files) compiler.mapShadow(path, Buffer.from(text));
  const compiled = compiler.compile({ mainFilePath: "/main.typ" });
  const document = compiled.result;
  if (compiled.hasError() || !document) throw new Error(`The dossier could not be typeset: ${diagnostics(compiled, compiler)}`);
  const pdf = compiler.pdf(document, { creationTimestamp: 0 });
  return { pdf: new Uint8Array(pdf), pages: document.numOfPages };
}

function diagnostics(compiled: ReturnType<NodeCompiler["compile"]>, compiler: NodeCompiler): string {
  const error = compiled.takeDiagnostics();
  const found = error ? compiler.fetchDiagnostics(error) : [];
  return found.map((each: { readonly message?: string }) => each.message ?? JSON.stringify(each)).join("; ") || "no reason given";
}

function printedBlock(block: Block, look: PageLook, files: Map<string, string>): unknown {
  switch (block.kind) {
    case "figure":
      return printedFigure(block, { width: fullWidth, plotHeight: fullHeight(block, look) }, files);
    case "pair":
      return {
        kind: "pair",
        figures: block.figures.map((figure) => printedFigure(figure, { width: halfWidth, plotHeight: look.plotHeights.half }, files)),
      };
    case "table":
      return { ...block, columns: columnWidths(block) };
    default:
      return block;
  }
}

function fullHeight(block: FigureBlock, look: PageLook): number {
  if (block.figure.kind === "map") return look.plotHeights.map;
  return block.figure.kind === "profile" ? look.plotHeights.half * 0.6 : look.plotHeights.full;
}

function printedFigure(
  block: FigureBlock,
  size: { readonly width: number; readonly plotHeight: number },
  files: Map<string, string>,
): unknown {
  const file = `/figure-${files.size}.svg`;
  files.set(file, svgText(drawFigure(block.figure, { ...size, theme: { ...lightTheme, ground: lightTheme.surface } })));
  return { kind: "figure", caption: block.caption, origin: block.origin, file };
}
