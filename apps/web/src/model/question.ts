import type { Page, PageSlot } from "@wingseed/reports/draw";
import { type Address, questionKey } from "./address.ts";
import type { AnalysisEntry, Catalogue } from "./catalogue.ts";
import { type Drafts, inputsOf } from "./inputs.ts";
import { type Field, fieldsOf } from "./schema.ts";
import { carried, withoutShared } from "./shared-inputs.ts";

/** One analysis on the page in front of us. */
export interface Slot {
  /** Names its run. */
  readonly key: string;
  readonly analysis: AnalysisEntry;
  /** Figure ids in order, absent for all. */
  readonly figures?: readonly string[];
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
    return {
      key: questionKey(address),
      title: analysis.question,
      base: analysis.example,
      drafts: address.drafts,
      slots: [slot(address, 0, analysis)],
    };
  }
  const page = catalogue.pages.find((one) => one.id === address.page);
  if (!page) return { title: address.page, reason: "There is no page of this name." };
  if (page.status !== "answered") return { title: page.question, reason: "This question is not in this version." };
  const slots = page.slots.flatMap((one, index) => slotOf(catalogue, address, one, index));
  const [main, ...others] = slots;
  if (!main) return { title: page.question, reason: `It needs ${page.needs}.` };
  const next = catalogue.pages.find((one) => one.id === page.next);
  return {
    key: questionKey(address),
    title: page.question,
    base: {},
    drafts: address.drafts,
    slots: [main, ...others],
    ...(next ? { next: { address: { place: "page", page: next.id, drafts: {} }, title: next.question } } : {}),
  };
}

function slotOf(catalogue: Catalogue, address: Address, written: PageSlot, index: number): readonly Slot[] {
  const analysis = entry(catalogue, written.analysis);
  const { figures, small } = written;
  return analysis ? [{ ...slot(address, index, analysis), ...(figures ? { figures } : {}), ...(small ? { small } : {}) }] : [];
}

function slot(address: Address, index: number, analysis: AnalysisEntry): Slot {
  const fields = fieldsOf(analysis.inputs);
  const base = address.place === "bench" ? analysis.example : {};
  const key = index === 0 ? questionKey(address) : `${questionKey(address)}#${index}`;
  return { key, analysis, small: [], fields, inputs: inputsOf(fields, base, address.drafts) };
}

/** The first analysis behind an address, if there is one. */
export function mainAnalysis(catalogue: Catalogue, address: Address): AnalysisEntry | undefined {
  if (address.place === "bench") return entry(catalogue, address.analysis);
  const page: Page | undefined = catalogue.pages.find((one) => one.id === address.page);
  return page?.status === "answered" ? entry(catalogue, page.slots[0].analysis) : undefined;
}

/** The address of another question: what was typed there before, under the conditions that hold here. */
export function addressFrom(catalogue: Catalogue, here: Address, target: Address, remembered: Readonly<Record<string, Drafts>>): Address {
  if (questionKey(here) === questionKey(target)) return here;
  const [from, to] = [mainAnalysis(catalogue, here), mainAnalysis(catalogue, target)];
  const before = remembered[questionKey(target)] ?? target.drafts;
  if (!from || !to) return { ...target, drafts: before };
  return { ...target, drafts: { ...withoutShared(before, from, to), ...carried(here.drafts, from, to) } };
}

/** The analyses that stand on no page. */
export function benchOf(catalogue: Catalogue): readonly AnalysisEntry[] {
  const placed = new Set(catalogue.pages.flatMap((page) => (page.status === "answered" ? page.slots.map((one) => one.analysis) : [])));
  return catalogue.analyses.filter((analysis) => !placed.has(analysis.name));
}

/** Every question that can be opened, in the order of the column. */
export function questionsOf(catalogue: Catalogue): readonly Address[] {
  return [
    ...catalogue.pages.flatMap((page): Address[] => (page.status === "answered" ? [{ place: "page", page: page.id, drafts: {} }] : [])),
    ...benchOf(catalogue).map((analysis): Address => ({ place: "bench", analysis: analysis.name, drafts: {} })),
  ];
}

function entry(catalogue: Catalogue, name: string): AnalysisEntry | undefined {
  return catalogue.analyses.find((analysis) => analysis.name === name);
}
