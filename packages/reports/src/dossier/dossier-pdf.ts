import type { ChapterSize } from "./chapter-blocks.ts";
import { dossierBlocks, fullSize } from "./dossier-blocks.ts";
import type { DossierRequest } from "./dossier-request.ts";
import { type PageLook, type TypesetDocument, typeset } from "./typeset.ts";

/** Pages that the document should not exceed: a reader's first look. Content comes before this. */
const wishedPages = 4;

interface Layout {
  readonly size: ChapterSize;
  readonly plotHeights: PageLook["plotHeights"];
}

/** From roomy to dense; the first that keeps to the wished pages is taken, else the roomiest of those with the fewest. */
const layouts: readonly Layout[] = [
  { size: fullSize, plotHeights: { full: 240, half: 150, map: 420 } },
  { size: { mostRows: 21, mostSmall: { besideWide: 2, alone: 4 }, limits: "table" }, plotHeights: { full: 190, half: 120, map: 360 } },
  { size: { mostRows: 12, mostSmall: { besideWide: 2, alone: 2 }, limits: "words" }, plotHeights: { full: 150, half: 96, map: 300 } },
  { size: { mostRows: 8, mostSmall: { besideWide: 0, alone: 2 }, limits: "words" }, plotHeights: { full: 130, half: 80, map: 260 } },
];

/**
 * The dossier as a PDF file: identification and cautions, method and validation, then every chapter. The same request
 * gives the same bytes; no clock and no network is asked.
 */
export function dossierPdf(request: DossierRequest): Uint8Array {
  return fittedDossier(request).pdf;
}

export function fittedDossier(request: DossierRequest): TypesetDocument {
  const { title, demo } = request.project;
  const footer = `${title}. Estimates, not a permission to fly${demo ? ". Demo values" : ""}. ${request.program.name} ${request.program.version}`;
  let best: TypesetDocument | undefined;
  for (const layout of layouts) {
    const document = typeset(dossierBlocks(request, layout.size), { title, footer, plotHeights: layout.plotHeights });
    if (document.pages <= wishedPages) return document;
    if (!best || document.pages < best.pages) best = document;
  }
  return best as TypesetDocument;
}
