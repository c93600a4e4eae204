import { NodeCompiler } from "@myriaddreamin/typst-ts-node-compiler";
import type { Figure } from "@wingseed/engine";
import { drawFigure, lightTheme, svgText } from "../draw/index.ts";
import type { Block, FigureBlock } from "./blocks.ts";
import { tableParts } from "./column-widths.ts";
import { template } from "./template.ts";
import { typefaceCuts } from "./typeface.data.ts";

/** Pictures are drawn this wide [px] and shrunk to the column, which sets their text at about 9 pt. */
const fullWidth = 820;
const halfWidth = 480;
const thirdWidth = 320;
const panelHeight = 104;

export interface PageLook {
  readonly title: string;
  readonly footer: string;
}

/** Blocks that begin on a new page, how large their type is and how high their pictures are. */
export interface SetSection {
  readonly blocks: readonly Block[];
  /** Type over its usual size. */
  readonly scale: number;
  /** Height of plots in full-width and half-width pictures and of maps [px]. */
  readonly plotHeights: { readonly full: number; readonly half: number; readonly map: number };
}

/** The typeset document with its number of pages. */
export interface TypesetDocument {
  readonly pdf: Uint8Array;
  readonly pages: number;
}

/**
 * Sets sections as PDF. The same sections give the same bytes.
 * @throws Error with the typesetter's own words when the layout does not compile: a fault of this program.
 */
export function typeset(sections: readonly SetSection[], look: PageLook): TypesetDocument {
  const files = new Map<string, string>();
  const printed = sections.map((section) => ({
    scale: section.scale,
    blocks: section.blocks.flatMap((block) => printedBlock(block, section, files)),
  }));
  files.set("/data.json", JSON.stringify({ title: look.title, footer: look.footer, sections: printed }));
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

function printedBlock(block: Block, { scale, plotHeights }: SetSection, files: Map<string, string>): readonly unknown[] {
  switch (block.kind) {
    case "figure":
      return [printedFigure(block, { width: fullWidth, plotHeight: fullHeight(block, plotHeights) }, files)];
    case "pair": {
      const size = { width: halfWidth, plotHeight: plotHeights.half };
      return [{ kind: "pair", figures: block.figures.map((figure) => printedFigure(figure, size, files)) }];
    }
    case "panels":
      return [
        {
          kind: "panels",
          figures: block.figures.map(({ caption, figure }) => ({
            caption,
            file: drawnFile(figure, { width: thirdWidth, plotHeight: panelHeight }, files),
          })),
        },
      ];
    case "table":
      return tableParts(block, scale).map((part) => ({ ...part.block, ...part.layout }));
    default:
      return [block];
  }
}

function fullHeight(block: FigureBlock, heights: SetSection["plotHeights"]): number {
  if (block.figure.kind === "map") return heights.map;
  if (block.figure.kind !== "profile") return heights.full;
  // Many panels share the height of six: the picture must not leave its page.
  return heights.half * 0.6 * Math.min(1, 6 / block.figure.panels.length);
}

function printedFigure(
  block: FigureBlock,
  size: { readonly width: number; readonly plotHeight: number },
  files: Map<string, string>,
): unknown {
  return { kind: "figure", caption: block.caption, origin: block.origin, file: drawnFile(block.figure, size, files) };
}

/** Draws a picture into a file of its own and gives its name. */
function drawnFile(figure: Figure, size: { readonly width: number; readonly plotHeight: number }, files: Map<string, string>): string {
  const file = `/figure-${files.size}.svg`;
  files.set(file, svgText(drawFigure(figure, { ...size, theme: { ...lightTheme, ground: lightTheme.surface } })));
  return file;
}
