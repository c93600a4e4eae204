import type { UnitSystem } from "@wingseed/reports/format";
import { createStore, type StoreApi } from "zustand/vanilla";
import type { AddressStore } from "./address-store.ts";
import type { Catalogue } from "./catalogue.ts";
import type { RunStore } from "./run-store.ts";
import type { SlipContent } from "./slip.ts";

export type ThemeChoice = "system" | "light" | "dark";

/** Where the reader stands on the axis that the pictures of a page share. */
export interface Cursor {
  readonly axis: string;
  /** [SI] */
  readonly x: number;
}

export interface OpenSlip {
  readonly content: SlipContent;
  /** Lower left corner of the number [px of the page]. */
  readonly place: { readonly left: number; readonly bottom: number };
}

/** What belongs to the reader and not to the question. */
export interface ViewStore {
  readonly system: UnitSystem;
  readonly theme: ThemeChoice;
  readonly cursor?: Cursor | undefined;
  readonly slip?: OpenSlip | undefined;
  /** Narrow windows: the column as a sheet, the margin opened. */
  readonly columnOpen: boolean;
  readonly marginOpen: boolean;
  readonly keysOpen: boolean;
}

export interface Session {
  readonly catalogue: Catalogue;
  readonly address: StoreApi<AddressStore>;
  readonly runs: StoreApi<RunStore>;
  readonly view: StoreApi<ViewStore>;
}

export function createViewStore(theme: ThemeChoice, system: UnitSystem): StoreApi<ViewStore> {
  return createStore<ViewStore>()(() => ({ system, theme, columnOpen: false, marginOpen: false, keysOpen: false }));
}
