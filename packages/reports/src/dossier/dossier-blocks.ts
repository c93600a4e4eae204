import { answeredPages } from "../pages.ts";
import type { Block } from "./blocks.ts";
import { type ChapterSize, chapterBlocks, hasMap } from "./chapter-blocks.ts";
import type { DossierChapter, DossierRequest } from "./dossier-request.ts";
import { identificationBlocks, methodBlocks } from "./front-blocks.ts";

export const fullSize: ChapterSize = { mostRows: 24, mostSmall: { besideWide: 4, alone: 6 }, limits: "table" };

/** The whole document as blocks: identification and cautions, method and validation, then the chapters in order. */
export function dossierBlocks(request: DossierRequest, size: ChapterSize = fullSize): readonly Block[] {
  const chapters = orderedChapters(request.chapters);
  const shared = sharedCautions(chapters);
  const parts = chapters.flatMap((chapter, index): readonly Block[] => {
    const printed = chapterBlocks(chapter, { demo: request.project.demo, size, shared });
    return index > 0 && startsPage(chapter) ? [{ kind: "page-break" }, ...printed] : printed;
  });
  const ordered = { ...request, chapters };
  return [...identificationBlocks(ordered), ...methodBlocks(ordered, shared), ...parts];
}

/** Those on pages in the order of the pages, then those that ask for a chapter of their own. */
export function orderedChapters(chapters: readonly DossierChapter[]): readonly DossierChapter[] {
  const names = answeredPages().flatMap((page) => page.slots.map((slot) => slot.analysis));
  const onPages = names.flatMap((name) => chapters.filter((chapter) => chapter.meta.name === name));
  const others = chapters.filter((chapter) => !names.includes(chapter.meta.name) && chapter.meta.dossier);
  return [...onPages, ...others];
}

/** A map wants a page of its own. */
function startsPage(chapter: DossierChapter): boolean {
  return chapter.view.cases.some((each) => each !== null && hasMap(each));
}

function sharedCautions(chapters: readonly DossierChapter[]): ReadonlySet<string> {
  const seen = new Map<string, number>();
  for (const { result } of chapters)
    for (const message of new Set(result.warnings.map((each) => each.message))) seen.set(message, (seen.get(message) ?? 0) + 1);
  return new Set([...seen].flatMap(([message, count]) => (count > 1 ? [message] : [])));
}
