import { useEffect, useRef } from "react";
import { useStore } from "zustand";
import { type Address, questionKey } from "../model/address.ts";
import { nextIdleQuestion } from "../model/idle-questions.ts";
import { addressFrom, benchOf, type Question, questionOf } from "../model/question.ts";
import { askedText, pageState } from "../model/run-store.ts";
import type { Session } from "../model/session.ts";
import { useSession } from "../session-context.ts";

/** Nothing that nobody asked for is computed longer than this [ms]; after that it is asked only by hand. */
const longest = 5000;

/**
 * Keeps the answers in the column up to date: when this page's answer is exact, the questions of the other pages are
 * asked one after the other, those known to be quick first. One that takes long is stopped and from then on left alone;
 * all are put off while this page computes.
 */
export function useIdleBriefs(question: Question): void {
  const session = useSession();
  const runs = useStore(session.runs, (store) => store.runs);
  const slow = useRef(new Set<string>());
  const [main] = question.slots;
  const isExact = pageState(runs[question.key], askedText(main.analysis.name, main.inputs)) === "exact";
  const busy = otherQuestions(session, question).find((other) => runs[other.key]?.running)?.key;
  useEffect(() => {
    if (busy === undefined) return undefined;
    const { stop } = session.runs.getState();
    if (!isExact) return stop(busy);
    const timer = setTimeout(() => {
      slow.current.add(busy);
      stop(busy);
    }, longest);
    return () => clearTimeout(timer);
  }, [session, isExact, busy]);
  useEffect(() => {
    if (!isExact) return;
    const waiting = nextIdleQuestion(otherQuestions(session, question), runs, { longest, slow: slow.current });
    if (waiting) session.runs.getState().ask(waiting.key, waiting.slots[0].analysis.name, waiting.slots[0].inputs);
  }, [session, question, runs, isExact]);
}

function otherQuestions({ catalogue, address }: Session, here: Question): readonly Question[] {
  const { address: from, remembered } = address.getState();
  const pages = catalogue.pages.flatMap((page): Address[] =>
    page.status === "answered" ? [{ place: "page", page: page.id, drafts: {} }] : [],
  );
  const parts = benchOf(catalogue).flatMap(({ address: part }) => (part.place === "page" ? [part] : []));
  return [...pages, ...parts].flatMap((target) => {
    if (questionKey(target) === here.key) return [];
    const question = questionOf(catalogue, addressFrom(catalogue, from, target, remembered));
    return "slots" in question ? [question] : [];
  });
}
