import { useCallback } from "react";
import { type Origin, type Questioned, slipOf } from "../model/slip.ts";
import { useSession } from "../session-context.ts";

let opener: HTMLElement | undefined;

/** Opens the slip of a number and remembers where the focus has to return to. */
export function useAskNumber(origin: Origin): (asked: Questioned, from: HTMLElement) => void {
  const { view } = useSession();
  return useCallback(
    (asked, from) => {
      opener = from;
      view.setState({ slip: { content: slipOf(asked, origin), place: placeOf(from) } });
    },
    [view, origin],
  );
}

/** Gives the focus back to the number whose slip was open. */
export function returnFocus(): void {
  opener?.focus();
  opener = undefined;
}

function placeOf(element: HTMLElement): { readonly left: number; readonly bottom: number } {
  const box = element.getBoundingClientRect();
  return { left: box.left + window.scrollX, bottom: box.bottom + window.scrollY };
}
