import { describe, expect, it } from "vitest";
import { type AddressPort, createAddressStore } from "./address-store.ts";

/** A history like the browser's. */
function historyPort(start = "") {
  const entries = [start];
  let place = 0;
  let changed = () => {};
  const port: AddressPort = {
    read: () => entries[place] ?? "",
    push: (fragment) => {
      entries.splice(place + 1, entries.length, fragment);
      place += 1;
    },
    replace: (fragment) => {
      entries[place] = fragment;
    },
    listen: (listener) => {
      changed = listener;
    },
  };
  const back = () => {
    place -= 1;
    changed();
  };
  return { port, entries, back };
}

const first = { place: "page", page: "one", drafts: {} } as const;

describe("the address store", () => {
  it("opens the first question when the address names none, without writing to the history", () => {
    const { port, entries } = historyPort();
    expect(createAddressStore(port, first).getState().address).toEqual(first);
    expect(entries).toEqual([""]);
  });

  it("undoes a typed text by going back", () => {
    const { port, back } = historyPort("#/one");
    const store = createAddressStore(port, first);
    store.getState().change("altitude", "300 m");
    store.getState().change("altitude", "500 m");
    back();
    expect(store.getState().address.drafts).toEqual({ altitude: "300 m" });
    back();
    expect(store.getState().address.drafts).toEqual({});
  });

  it("makes one entry of a key held down", () => {
    const { port, entries } = historyPort("#/one");
    const store = createAddressStore(port, first);
    store.getState().change("altitude", "10 m");
    store.getState().change("altitude", "20 m", true);
    store.getState().change("altitude", "30 m", true);
    expect(entries).toEqual(["#/one", "#/one?altitude=30+m"]);
  });

  it("takes back several texts as one entry and remembers what was typed at each question", () => {
    const { port, entries } = historyPort("#/one?a=1&b=2");
    const store = createAddressStore(port, first);
    store.getState().changeAll({ a: undefined, b: undefined });
    expect(entries.at(-1)).toBe("#/one");
    store.getState().change("a", "3");
    store.getState().go({ place: "page", page: "two", drafts: {} });
    expect(store.getState().remembered["page:one"]).toEqual({ a: "3" });
  });
});
