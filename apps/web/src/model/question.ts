import type { BenchPage, BenchPart, Page, PageSlot } from "@wingseed/reports/draw";
import { type Address, questionKey } from "./address.ts";
import type { AnalysisEntry, Catalogue } from "./catalogue.ts";
import { type Drafts, inputsOf, leavesInUse } from "./inputs.ts";
import { type Field, fieldsOf } from "./schema.ts";
import { carried, withoutShared } from "./shared-inputs.ts";
import { writtenBase } from "./written-base.ts";

/** One analysis on the page in front of us. */
export interface Slot {
  /** Names its run. */
  readonly key: string;
  readonly analysis: AnalysisEntry;
  /** Figure ids in order, absent for all. */
  readonly figures?: readonly string[];
  /** Ids of figures that come before the others. */
  readonly first: readonly string[];
  /** Ids of figures that stand two by two where there is room. */
  readonly small: readonly string[];
  readonly fields: readonly Field[];
  readonly inputs: Record<string, unknown>;
}

/** What an address asks, ready to be run and shown. */
export interface Question {
  readonly key: string;
  readonly title: string;
  /** Values that stand in the form before anything is typed. */
  readonly base: unknown;
  readonly drafts: Drafts;
  readonly slots: readonly [Slot, ...Slot[]];
  readonly next?: { readonly address: Address; readonly title: string };
  /** Present on a page on which one of several parts is chosen. */
  readonly bench?: Bench;
}

/** The parts of a page that offers several, and the one in front of us. */
export interface Bench {
  readonly title: string;
  readonly chosen: string;
  readonly parts: readonly { readonly analysis: string; readonly name: string; readonly address: Address }[];
}

/** An address that has no answer here, and why. */
export interface NoQuestion {
  readonly title: string;
  readonly reason: string;
}

export function questionOf(catalogue: Catalogue, address: Address): Question | NoQuestion {
  if (address.place === "bench") {
    const analysis = entry(catalogue, address.analysis);
    if (!analysis) return { title: address.analysis, reason: "No analysis of this name is in the registry." };
    return { ...partQuestion(address, analysis), key: questionKey(address) };
  }
  const page = catalogue.pages.find((one) => one.id === address.page);
  if (!page) return { title: address.page, reason: "There is no page of this name." };
  if (page.status === "bench") return benchQuestion(catalogue, address, page);
  if (address.part !== undefined) return { title: page.question, reason: `The page has no part “${address.part}”.` };
  if (page.status !== "answered") return { title: page.question, reason: "This question is not in this version." };
  const slots = page.slots.flatMap((one, index) => slotOf(catalogue, address, one, index));
  const [main, ...others] = slots;
  if (!main) return { title: page.question, reason: `It needs ${page.needs}.` };
  const next = catalogue.pages.find((one) => one.id === page.next);
  return {
    key: questionKey(address),
    title: page.question,
    base: writtenBase({}, address.drafts),
    drafts: address.drafts,
    slots: [main, ...others],
    ...(next ? { next: { address: { place: "page", page: next.id, drafts: {} }, title: next.question } } : {}),
  };
}

/** One analysis alone, beginning with its example or with what a file brought. */
function partQuestion(address: Address, analysis: AnalysisEntry): Question {
  const base = writtenBase(analysis.example, address.drafts);
  return { key: "", title: analysis.question, base, drafts: address.drafts, slots: [slot(address, 0, analysis, base)] };
}

function benchQuestion(catalogue: Catalogue, address: Address & { readonly place: "page" }, page: BenchPage): Question | NoQuestion {
  const parts = page.parts.flatMap((part) => {
    const analysis = entry(catalogue, part.analysis);
    return analysis ? [{ part, analysis }] : [];
  });
  const chosen = address.part === undefined ? parts[0] : parts.find(({ part }) => part.analysis === address.part);
  if (!chosen) return { title: page.question, reason: "There is no such part on the bench." };
  const question = partQuestion(address, chosen.analysis);
  const { figures, first = [], small = [] } = chosen.part;
  const main = { ...question.slots[0], key: partKey(page, chosen.part), first, small, ...(figures ? { figures } : {}) };
  return {
    ...question,
    key: main.key,
    slots: [main],
    bench: {
      title: page.question,
      chosen: chosen.part.name,
      parts: parts.map(({ part }) => ({ analysis: part.analysis, name: part.name, address: partAddress(page, part) })),
    },
  };
}

function partAddress(page: BenchPage, part: BenchPart): Address {
  return { place: "page", page: page.id, part: part.analysis, drafts: {} };
}

function partKey(page: BenchPage, part: BenchPart): string {
  return questionKey(partAddress(page, part));
}

function slotOf(catalogue: Catalogue, address: Address, written: PageSlot, index: number): readonly Slot[] {
  const analysis = entry(catalogue, written.analysis);
  const { figures, first = [], small = [] } = written;
  return analysis
    ? [{ ...slot(address, index, analysis, writtenBase({}, address.drafts)), first, small, ...(figures ? { figures } : {}) }]
    : [];
}

function slot(address: Address, index: number, analysis: AnalysisEntry, base: unknown): Slot {
  const fields = fieldsOf(analysis.inputs);
  const key = index === 0 ? questionKey(address) : `${questionKey(address)}#${index}`;
  return { key, analysis, first: [], small: [], fields, inputs: inputsOf(fields, base, address.drafts) };
}

/** The first analysis behind an address, if there is one. */
export function mainAnalysis(catalogue: Catalogue, address: Address): AnalysisEntry | undefined {
  if (address.place === "bench") return entry(catalogue, address.analysis);
  const page: Page | undefined = catalogue.pages.find((one) => one.id === address.page);
  if (page?.status === "answered") return entry(catalogue, page.slots[0].analysis);
  if (page?.status !== "bench") return undefined;
  return entry(catalogue, address.part ?? page.parts.find((part) => entry(catalogue, part.analysis))?.analysis ?? "");
}

/** The address of another question: what was typed there before, under the conditions that hold here. */
export function addressFrom(catalogue: Catalogue, here: Address, target: Address, remembered: Readonly<Record<string, Drafts>>): Address {
  if (questionKey(here) === questionKey(target)) return here;
  const [from, to] = [mainAnalysis(catalogue, here), mainAnalysis(catalogue, target)];
  const before = remembered[questionKey(target)] ?? target.drafts;
  if (!from || !to) return { ...target, drafts: before };
  const own = withoutShared(before, from, to);
  const brought = Object.entries(carried(here.drafts, from, to)).filter(([path]) => isInUse(catalogue, { ...target, drafts: own }, path));
  return { ...target, drafts: { ...own, ...Object.fromEntries(brought) } };
}

/** True where an input belongs to the way in which a question is asked now. */
function isInUse(catalogue: Catalogue, target: Address, path: string): boolean {
  const question = questionOf(catalogue, target);
  if (!("slots" in question)) return true;
  return leavesInUse(question.slots[0].fields, question.base, question.drafts).some((field) => field.path === path);
}

/** What is asked of a part alone: the parts of bench pages, then the analyses that stand on no page. */
export function benchOf(catalogue: Catalogue): readonly { readonly name: string; readonly address: Address }[] {
  const parts = catalogue.pages.flatMap((page) => {
    if (page.status !== "bench") return [];
    const there = page.parts.filter((part) => entry(catalogue, part.analysis));
    return there.map((part) => ({ name: part.name, address: partAddress(page, part) }));
  });
  const placed = new Set(
    catalogue.pages.flatMap((page) => {
      if (page.status === "answered") return page.slots.map((one) => one.analysis);
      return page.status === "bench" ? page.parts.map((one) => one.analysis) : [];
    }),
  );
  const loose = catalogue.analyses.filter((analysis) => !placed.has(analysis.name));
  return [
    ...parts,
    ...loose.map(({ name, question }) => ({ name: question, address: { place: "bench", analysis: name, drafts: {} } as const })),
  ];
}

/** Every question that can be opened, in the order of the column. */
export function questionsOf(catalogue: Catalogue): readonly Address[] {
  return [
    ...catalogue.pages.flatMap((page): Address[] => (page.status === "answered" ? [{ place: "page", page: page.id, drafts: {} }] : [])),
    ...benchOf(catalogue).map(({ address }) => address),
  ];
}

function entry(catalogue: Catalogue, name: string): AnalysisEntry | undefined {
  return catalogue.analyses.find((analysis) => analysis.name === name);
}
