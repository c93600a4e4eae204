import type { ReactNode } from "react";
import { useStore } from "zustand";
import { type Address, addressText, questionKey } from "../model/address.ts";
import { addressFrom } from "../model/question.ts";
import { useAddress, useSession } from "../session-context.ts";

interface QuestionLinkProps {
  readonly to: Address;
  readonly children: ReactNode;
  readonly className?: string;
}

/** A link to another question that takes along the conditions of this one. */
export function QuestionLink({ to, children, className }: QuestionLinkProps) {
  const { catalogue, address, view } = useSession();
  const here = useAddress();
  const remembered = useStore(address, (store) => store.remembered);
  const target = addressFrom(catalogue, here, to, remembered);
  const current = questionKey(here) === questionKey(to);
  return (
    <a
      href={addressText(target)}
      className={className}
      aria-current={current ? "page" : undefined}
      onClick={() => view.setState({ columnOpen: false, slip: undefined })}
    >
      {children}
    </a>
  );
}
