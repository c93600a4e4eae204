import { answeredPages } from "../pages.ts";
import type { Block } from "./blocks.ts";
import { type ChapterSize, chapterBlocks, fillsPage } from "./chapter-blocks.ts";
import type { DossierChapter, DossierRequest } from "./dossier-request.ts";
import { identificationBlocks } from "./front-blocks.ts";
import { methodBlocks, publishedBlocks } from "./method-blocks.ts";

/** A part of the document that begins on a page of its own. */
export interface Section {
  /** As much of it as a size allows. */
  blocks(size: ChapterSize): readonly Block[];
  /** True where it takes the pages that it needs; else it is fitted to one page where that can be. */
  readonly flowing?: boolean;
}

export const fullSize: ChapterSize = { mostRows: 24, mostWide: 6, mostSmall: { besideWide: 4, alone: 6 }, limits: "table" };

/** The document in its sections: identification and cautions, method, comparison with published data, then the chapters in order. */
export function dossierSections(request: DossierRequest): readonly Section[] {
  const chapters = orderedChapters(request.chapters);
  const shared = sharedCautions(chapters);
  const ordered = { ...request, chapters };
  const printed = chapterGroups(chapters).map(
    (group): Section => ({
      blocks: (size) => group.flatMap((chapter) => chapterBlocks(chapter, { demo: request.project.demo, size, shared })),
    }),
  );
  return [
    { blocks: () => identificationBlocks(ordered) },
    { blocks: () => methodBlocks(ordered, shared) },
    { blocks: () => publishedBlocks(ordered), flowing: true },
    ...printed,
  ];
}

/** The whole document as blocks, at full size. */
export function dossierBlocks(request: DossierRequest): readonly Block[] {
  return dossierSections(request).flatMap((section) => section.blocks(fullSize));
}

/** Those on pages in the order of the pages, then those that ask for a chapter of their own. */
function orderedChapters(chapters: readonly DossierChapter[]): readonly DossierChapter[] {
  const names = answeredPages().flatMap((page) => page.slots.map((slot) => slot.analysis));
  const onPages = names.flatMap((name) => chapters.filter((chapter) => chapter.meta.name === name));
  const others = chapters.filter((chapter) => !names.includes(chapter.meta.name) && chapter.meta.dossier);
  return [...onPages, ...others];
}

/** Chapters that share a page, and those that have one for themselves. */
function chapterGroups(chapters: readonly DossierChapter[]): readonly (readonly DossierChapter[])[] {
  const groups: DossierChapter[][] = [];
  let open = false;
  for (const chapter of chapters) {
    const alone = chapter.view.cases.some((each) => each !== null && fillsPage(each));
    if (open && !alone) groups.at(-1)?.push(chapter);
    else groups.push([chapter]);
    open = !alone;
  }
  return groups;
}

function sharedCautions(chapters: readonly DossierChapter[]): ReadonlySet<string> {
  const seen = new Map<string, number>();
  for (const { result } of chapters)
    for (const message of new Set(result.warnings.map((each) => each.message))) seen.set(message, (seen.get(message) ?? 0) + 1);
  return new Set([...seen].flatMap(([message, count]) => (count > 1 ? [message] : [])));
}
