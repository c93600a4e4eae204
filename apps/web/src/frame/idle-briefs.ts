import { useEffect } from "react";
import { useStore } from "zustand";
import { type Address, questionKey } from "../model/address.ts";
import { addressFrom, type Question, questionOf } from "../model/question.ts";
import { askedText, pageState } from "../model/run-store.ts";
import type { Session } from "../model/session.ts";
import { useSession } from "../session-context.ts";

/** A question that took longer [ms] is asked only by hand. */
const longest = 5000;

/**
 * Keeps the answers in the column up to date: when this page's answer is exact, the quick questions of the other pages are
 * asked one after the other: those known to be quick, and those that were when last asked. Slow ones are never started
 * unasked.
 */
export function useIdleBriefs(question: Question): void {
  const session = useSession();
  const runs = useStore(session.runs, (store) => store.runs);
  useEffect(() => {
    if (pageState(runs[question.key], askedText(question.slots[0].analysis.name, question.slots[0].inputs)) !== "exact") return;
    const others = quickQuestions(session, question);
    if (others.some((other) => runs[other.key]?.running)) return;
    const { ask } = session.runs.getState();
    const waiting = others.find(({ key, slots: [slot] }) => runs[key]?.asked !== askedText(slot.analysis.name, slot.inputs));
    if (waiting) ask(waiting.key, waiting.slots[0].analysis.name, waiting.slots[0].inputs);
  }, [session, question, runs]);
}

function quickQuestions({ catalogue, address, runs }: Session, here: Question): readonly Question[] {
  const { address: from, remembered } = address.getState();
  return catalogue.pages.flatMap((page) => {
    if (page.status !== "answered") return [];
    const target: Address = { place: "page", page: page.id, drafts: {} };
    if (questionKey(target) === here.key) return [];
    const question = questionOf(catalogue, addressFrom(catalogue, from, target, remembered));
    if (!("slots" in question)) return [];
    const took = runs.getState().runs[question.key]?.took;
    return question.slots[0].analysis.quick || (took !== undefined && took < longest) ? [question] : [];
  });
}
