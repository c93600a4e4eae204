import { createContext, useContext, useMemo } from "react";
import { useStore } from "zustand";
import type { Address } from "./model/address.ts";
import { type NoQuestion, type Question, questionOf } from "./model/question.ts";
import type { Run, RunStore } from "./model/run-store.ts";
import type { Session, ViewStore } from "./model/session.ts";

export const SessionContext = createContext<Session | undefined>(undefined);

export function useSession(): Session {
  const session = useContext(SessionContext);
  if (!session) throw new Error("This part must stand inside a session.");
  return session;
}

export function useAddress(): Address {
  return useStore(useSession().address, (store) => store.address);
}

export function useQuestion(): Question | NoQuestion {
  const { catalogue } = useSession();
  const address = useAddress();
  return useMemo(() => questionOf(catalogue, address), [catalogue, address]);
}

export function useRun(key: string | undefined): Run | undefined {
  return useStore(useSession().runs, (store: RunStore) => (key === undefined ? undefined : store.runs[key]));
}

export function useView<Part>(part: (view: ViewStore) => Part): Part {
  return useStore(useSession().view, part);
}
