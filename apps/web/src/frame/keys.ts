import { useEffect } from "react";
import { saveChoice } from "../browser/choices.ts";
import { addressText, questionKey } from "../model/address.ts";
import { addressFrom, questionOf, questionsOf } from "../model/question.ts";
import type { Session } from "../model/session.ts";
import { useSession } from "../session-context.ts";

interface Key {
  readonly key: string;
  readonly does: string;
  act(session: Session): void;
}

/** The keys that act outside fields. What is listed is what there is. */
export const keys: readonly Key[] = [
  { key: "c", does: "conditions", act: () => focus(".strip .handle") },
  { key: "w", does: "where a number comes from", act: openReading },
  { key: "t", does: "data table of the picture", act: () => press('[data-key="t"]') },
  { key: "l", does: "limits", act: goToLimits },
  { key: "x", does: "export the picture", act: () => press('[data-key="x"]') },
  { key: "r", does: "compute", act: computeAgain },
  { key: ".", does: "stop", act: stop },
  { key: "u", does: "units, metric or aviation", act: switchUnits },
  { key: "?", does: "this list", act: ({ view }) => view.setState(({ keysOpen }) => ({ keysOpen: !keysOpen })) },
];

/** Listens for the keys for as long as the frame stands. */
export function useKeys(): void {
  const session = useSession();
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (event.altKey && (event.key === "ArrowUp" || event.key === "ArrowDown")) {
        event.preventDefault();
        goToNeighbour(session, event.key === "ArrowDown" ? 1 : -1);
        return;
      }
      if (event.ctrlKey || event.metaKey || event.altKey || event.defaultPrevented || inField(event.target)) return;
      const key = keys.find((one) => one.key === event.key);
      if (!key) return;
      event.preventDefault();
      key.act(session);
    };
    addEventListener("keydown", onKey);
    return () => removeEventListener("keydown", onKey);
  }, [session]);
}

function inField(target: EventTarget | null): boolean {
  return target instanceof HTMLElement && target.closest("input, select, textarea, [contenteditable]") !== null;
}

function focus(selector: string): void {
  document.querySelector<HTMLElement>(selector)?.focus();
}

/** Presses a tool of the picture that holds the focus, else of the first. */
function press(selector: string): void {
  const picture = document.activeElement?.closest("[data-picture]") ?? document.querySelector("[data-picture]");
  picture?.querySelector<HTMLElement>(selector)?.click();
}

function openReading(): void {
  const focused = document.activeElement?.closest<HTMLElement>(".reading");
  (focused ?? document.querySelector<HTMLElement>(".answer .reading"))?.click();
}

function goToLimits({ view }: Session): void {
  view.setState({ marginOpen: true });
  requestAnimationFrame(() => focus("#limits"));
}

function mainSlot({ catalogue, address }: Session) {
  const question = questionOf(catalogue, address.getState().address);
  return "slots" in question ? question.slots[0] : undefined;
}

function computeAgain(session: Session): void {
  const slot = mainSlot(session);
  if (slot) session.runs.getState().ask(slot.key, slot.analysis.name, slot.inputs, true);
}

function stop(session: Session): void {
  const slot = mainSlot(session);
  if (slot) session.runs.getState().stop(slot.key);
}

function switchUnits({ view }: Session): void {
  const system = view.getState().system === "si" ? "aviation" : "si";
  view.setState({ system });
  saveChoice("units", system);
}

function goToNeighbour({ catalogue, address }: Session, step: 1 | -1): void {
  const questions = questionsOf(catalogue);
  const { address: here, remembered, go } = address.getState();
  const place = questions.findIndex((question) => addressText({ ...question, drafts: {} }) === addressText({ ...here, drafts: {} }));
  const next = questions[place + step];
  if (next && questionKey(next) !== questionKey(here)) go(addressFrom(catalogue, here, next, remembered));
}
