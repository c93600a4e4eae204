import type { Block } from "./blocks.ts";
import type { ChapterSize } from "./chapter-blocks.ts";
import { dossierSections, fullSize, type Section } from "./dossier-blocks.ts";
import type { DossierRequest } from "./dossier-request.ts";
import { type PageLook, type SetSection, type TypesetDocument, typeset } from "./typeset.ts";

interface Layout extends Omit<SetSection, "blocks"> {
  readonly size: ChapterSize;
}

const fewerPictures: ChapterSize = { mostRows: 24, mostWide: 3, mostSmall: { besideWide: 2, alone: 4 }, limits: "words" };
const fewestPictures: ChapterSize = { mostRows: 24, mostWide: 2, mostSmall: { besideWide: 0, alone: 2 }, limits: "words" };
const shortTables: ChapterSize = { mostRows: 12, mostWide: 2, mostSmall: { besideWide: 0, alone: 2 }, limits: "words" };
const onePicture: ChapterSize = { mostRows: 12, mostWide: 1, mostSmall: { besideWide: 0, alone: 1 }, limits: "words" };

/** From roomy to dense: pictures get lower and type smaller before anything is left out. */
const looks: readonly Omit<Layout, "size">[] = [
  { scale: 1, plotHeights: { full: 240, half: 150, map: 460 } },
  { scale: 1, plotHeights: { full: 200, half: 125, map: 400 } },
  { scale: 0.94, plotHeights: { full: 180, half: 110, map: 360 } },
  { scale: 0.88, plotHeights: { full: 150, half: 90, map: 300 } },
  { scale: 0.88, plotHeights: { full: 130, half: 76, map: 240 } },
];
const layouts: readonly Layout[] = [fullSize, fewerPictures, fewestPictures, shortTables, onePicture].flatMap((size) =>
  looks.map((look) => ({ ...look, size })),
);

/**
 * The dossier as a PDF file: identification and cautions, method and validation, then every chapter. The same request
 * gives the same bytes; no clock and no network is asked.
 */
export function dossierPdf(request: DossierRequest): Uint8Array {
  return fittedDossier(request).pdf;
}

/** A section that flows in the usual size; each other in the roomiest layout that fits one page, or else the fewest. */
export function fittedDossier(request: DossierRequest): TypesetDocument {
  const { title, demo } = request.project;
  const footer = `${title}. Estimates, not a permission to fly${demo ? ". Demo values" : ""}. ${request.program.name} ${request.program.version}`;
  const look: PageLook = { title, footer };
  return typeset(
    dossierSections(request).map((section) => fittedSection(section, look)),
    look,
  );
}

/** Sizes of type for a section that flows: a smaller one where that saves a page. */
const flowingScales = [0.94, 0.91, 0.88];
const flowingHeights = { full: 180, half: 110, map: 360 };

function flowingSection(blocks: readonly Block[], look: PageLook): SetSection {
  const sets = flowingScales.map((scale): SetSection => ({ scale, plotHeights: flowingHeights, blocks }));
  const pages = sets.map((set) => typeset([set], look).pages);
  return sets[pages.indexOf(Math.min(...pages))] as SetSection;
}

function fittedSection(section: Section, look: PageLook): SetSection {
  if (section.flowing) return flowingSection(section.blocks(fullSize), look);
  let best: { readonly set: SetSection; readonly pages: number } | undefined;
  for (const { size, ...rest } of layouts) {
    const set: SetSection = { ...rest, blocks: section.blocks(size) };
    const { pages } = typeset([set], look);
    if (pages <= 1) return set;
    if (!best || pages < best.pages) best = { set, pages };
  }
  return best?.set ?? { blocks: [], scale: 1, plotHeights: { full: 0, half: 0, map: 0 } };
}
