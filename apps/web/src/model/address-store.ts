import { createStore, type StoreApi } from "zustand/vanilla";
import { type Address, addressText, questionKey, readAddress, withDraft } from "./address.ts";
import type { Drafts } from "./inputs.ts";

/** The browser's address and history, or a stand-in. */
export interface AddressPort {
  read(): string;
  push(fragment: string): void;
  replace(fragment: string): void;
  listen(changed: () => void): void;
}

export interface AddressStore {
  readonly address: Address;
  /** The texts last typed at each question, so that coming back by its link finds them again. */
  readonly remembered: Readonly<Record<string, Drafts>>;
  go(address: Address): void;
  /** Writes one text; a step that `continues` the last one (a key held down) makes no entry of its own in the history. */
  change(path: string, text: string | undefined, continues?: boolean): void;
  /** Writes several texts as one entry. */
  changeAll(texts: Readonly<Record<string, string | undefined>>): void;
}

/** The address as a store: the one place where the state of the view lives. */
export function createAddressStore(port: AddressPort, first: Address): StoreApi<AddressStore> {
  const store = createStore<AddressStore>()((set, read) => {
    const show = (address: Address, write: "push" | "replace") => {
      port[write](addressText(address));
      set(({ remembered }) => ({ address, remembered: { ...remembered, [questionKey(address)]: address.drafts } }));
    };
    return {
      address: readAddress(port.read()) ?? first,
      remembered: {},
      go: (address) => show(address, "push"),
      change: (path, text, continues = false) => show(withDraft(read().address, path, text), continues ? "replace" : "push"),
      changeAll: (texts) =>
        show(
          Object.entries(texts).reduce((address, [path, text]) => withDraft(address, path, text), read().address),
          "push",
        ),
    };
  });
  port.listen(() => {
    const address = readAddress(port.read()) ?? first;
    store.setState(({ remembered }) => ({ address, remembered: { ...remembered, [questionKey(address)]: address.drafts } }));
  });
  return store;
}
