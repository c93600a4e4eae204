import type { Figure, Limit, TableFigure } from "@wingseed/engine";
import { fixedText, formatColumn, limitWord, sentence } from "../format/index.ts";
import { mainTable } from "../terminal/index.ts";
import type { CaseView } from "../view.ts";
import type { Block, FigureBlock, TableBlock } from "./blocks.ts";
import type { DossierChapter } from "./dossier-request.ts";
import { caseHash, figureOrigin } from "./figure-origin.ts";
import { markedAnswer } from "./front-blocks.ts";

/** How much of a chapter is printed. */
export interface ChapterSize {
  /** Rows of a table at most; longer ones are thinned evenly and say so. */
  readonly mostRows: number;
  /** Wide pictures that are printed. */
  readonly mostWide: number;
  /** Narrow pictures that are printed, two beside each other, in a chapter with and without a wide one. */
  readonly mostSmall: { readonly besideWide: number; readonly alone: number };
  /** Limits as a table, or as one sentence where room is short. */
  readonly limits: "table" | "words";
}

/** What a chapter must know of the whole document. */
export interface ChapterSurroundings {
  readonly demo: boolean;
  readonly size: ChapterSize;
  /** Messages of cautions that several chapters bear: printed once, before the chapters. */
  readonly shared: ReadonlySet<string>;
}

/** An analysis as a chapter: its question, and for every case the answer, pictures, table, limits and cautions. */
export function chapterBlocks(chapter: DossierChapter, around: ChapterSurroundings): readonly Block[] {
  const { demo, size, shared } = around;
  const { meta, result, view } = chapter;
  const blocks: Block[] = [{ kind: "heading", level: 1, text: meta.question }];
  result.cases.forEach((each, index) => {
    if (result.cases.length > 1) blocks.push({ kind: "heading", level: 2, text: `Case ${index + 1}` });
    const shown = view.cases[index];
    if (each.problem) {
      blocks.push({ kind: "caution", grade: "stops", text: `No answer: ${each.problem.message}` });
      blocks.push(small(`${meta.name}, inputs ${figureOrigin(result, index, "").inputs}; digest ${caseHash(result, each.inputs)}.`));
    } else if (shown) blocks.push(...caseBlocks(chapter, index, shown, demo, size));
  });
  return [...blocks, ...remarks(chapter, shared, blocks)];
}

function caseBlocks(chapter: DossierChapter, index: number, view: CaseView, demo: boolean, size: ChapterSize): readonly Block[] {
  const blocks: Block[] = [{ kind: "paragraph", look: "answer", text: markedAnswer(sentence(view.answer.sentence), demo) }];
  const pictures = view.figures.filter((figure) => figure.kind !== "table" && figure.kind !== "text");
  const printed = pictures.map((figure) => figureBlock(chapter, index, figure));
  const wide = printed.filter((block) => needsWidth(block.figure)).slice(0, size.mostWide);
  const narrow = printed
    .filter((block) => !needsWidth(block.figure))
    .slice(0, wide.length > 0 ? size.mostSmall.besideWide : size.mostSmall.alone);
  blocks.push(...wide, ...pairs(narrow));
  for (const figure of view.figures)
    if (figure.kind === "text")
      blocks.push(...figure.paragraphs.map((tokens) => ({ kind: "paragraph", look: "text", text: sentence(tokens) }) as const));
  const table = mainTable(view.figures.filter((figure) => figure.kind === "table"));
  if (table) blocks.push(tableBlock(table, hasMap(view) ? Math.max(legRows, size.mostRows) : size.mostRows));
  if (view.limits.length > 0) blocks.push(size.limits === "table" ? limitTable(view) : limitWords(view));
  return blocks;
}

/** Rows kept of a table beside a map: the legs of a flight are not thinned. */
const legRows = 24;

export function hasMap(view: CaseView): boolean {
  return view.figures.some((figure) => figure.kind === "map");
}

/** A chapter with a map, a drawing or a course in time has a page for itself. */
export function fillsPage(view: CaseView): boolean {
  return view.figures.some((figure) => figure.kind === "map" || figure.kind === "scene" || figure.kind === "profile");
}

function figureBlock(chapter: DossierChapter, index: number, figure: Figure): FigureBlock {
  return { kind: "figure", caption: figure.caption, figure, origin: figureOrigin(chapter.result, index, figure.id) };
}

/** Maps, profiles, drawings and planes full of names say nothing at half width. */
function needsWidth(figure: Figure): boolean {
  if (figure.kind === "lines") return figure.plane === true;
  return figure.kind === "map" || figure.kind === "profile" || figure.kind === "scene" || figure.kind === "stacked";
}

function pairs(blocks: readonly FigureBlock[]): readonly Block[] {
  const found: Block[] = [];
  for (let start = 0; start < blocks.length; start += 2) found.push({ kind: "pair", figures: blocks.slice(start, start + 2) });
  return found;
}

/** A table figure as a printed table. */
export function tableBlock(table: TableFigure, mostRows: number): TableBlock {
  const stride = Math.max(1, Math.ceil(table.rows.length / mostRows));
  const rows = table.rows.filter((_, index) => index % stride === 0);
  const columns = table.columns.map((column, index) =>
    formatColumn(
      column,
      rows.map((row) => row[index] ?? null),
    ),
  );
  const note = stride === 1 ? {} : { note: `${rows.length} of ${table.rows.length} rows: one in ${stride}.` };
  return {
    kind: "table",
    caption: table.caption,
    head: columns.map((column) => column.head),
    numeric: columns.map((column) => column.numeric),
    rows: rows.map((_, row) => columns.map((column) => column.cells[row] ?? "")),
    ...note,
  };
}

function limitTable({ limits, answer }: CaseView): TableBlock {
  const { shown, rest } = mostUsed(limits, 8);
  return {
    kind: "table",
    caption: "Limits and the share of each that is used",
    head: ["limit", "family", "used, %", "where", ""],
    numeric: [false, false, true, false, false],
    rows: shown.map((limit) => [limit.name, limit.family, fixedText(limit.share * 100, 0), limit.where, limitWord(limit, answer)]),
    ...(rest === "" ? {} : { note: rest }),
  };
}

function limitWords({ limits, answer }: CaseView): Block {
  const { shown, rest } = mostUsed(limits, 5);
  const words = shown.map((limit) => {
    const word = limitWord(limit, answer);
    return `${limit.name} ${fixedText(limit.share * 100, 0)}\u00a0% ${limit.where}${word === "" ? "" : ` (${word})`}`;
  });
  return { kind: "paragraph", look: "note", lead: "Limits used", text: `${[...words, ...(rest === "" ? [] : [rest])].join("; ")}.` };
}

/** The limits used most, and words for the others. */
function mostUsed(limits: readonly Limit[], most: number): { readonly shown: readonly Limit[]; readonly rest: string } {
  const sorted = limits.toSorted((a, b) => b.share - a.share);
  const next = sorted[most];
  return {
    shown: sorted.slice(0, most),
    rest: next ? `and ${sorted.length - most} more, ${fixedText(next.share * 100, 0)} % or less` : "",
  };
}

/** Cautions about this answer alone; a last line points at those about several answers and at what is not printed. */
function remarks(chapter: DossierChapter, shared: ReadonlySet<string>, printed: readonly Block[]): readonly Block[] {
  const { meta, result } = chapter;
  const own = result.warnings.filter(({ message }) => !shared.has(message));
  const cautions = own.map(({ grade, message }): Block => ({ kind: "caution", grade, text: message }));
  const others = result.warnings.length - own.length;
  const pointers = [
    ...(others === 0 ? [] : [`${others === 1 ? "One caution" : `${others} cautions`} about several answers, among them this one: page 2.`]),
    ...(leavesOut(chapter, printed) ? [`Further pictures and tables: wingseed run ${meta.name} --format json.`] : []),
  ];
  return pointers.length === 0 ? cautions : [...cautions, small(pointers.join(" "))];
}

function leavesOut({ view }: DossierChapter, printed: readonly Block[]): boolean {
  const captions = new Set(printed.flatMap(captionsOf));
  return view.cases.some((each) => each?.figures.some((figure) => figure.kind !== "text" && !captions.has(figure.caption)));
}

function captionsOf(block: Block): readonly string[] {
  if (block.kind === "pair") return block.figures.map((figure) => figure.caption);
  return block.kind === "figure" || block.kind === "table" ? [block.caption] : [];
}

function small(text: string): Block {
  return { kind: "paragraph", look: "small", text };
}
