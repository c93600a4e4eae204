import type { Drafts } from "./inputs.ts";

/** Everything that the address bar holds: which question, and what was asked of it. */
export type Address =
  | {
      readonly place: "page";
      readonly page: string;
      /** The analysis chosen on a page that offers several. */
      readonly part?: string;
      readonly drafts: Drafts;
    }
  | { readonly place: "bench"; readonly analysis: string; readonly drafts: Drafts };

/** The part of an address after `#`. Paths sort by name, so that equal states have equal addresses. */
export function addressText(address: Address): string {
  const names =
    address.place === "page" ? [address.page, ...(address.part === undefined ? [] : [address.part])] : ["ask", address.analysis];
  const route = names.map((name) => `/${encodeURIComponent(name)}`).join("");
  const asked = new URLSearchParams(Object.entries(address.drafts).sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0))).toString();
  return asked === "" ? `#${route}` : `#${route}?${asked}`;
}

/** Reads an address; undefined when it names no question (an empty or foreign fragment). */
export function readAddress(fragment: string): Address | undefined {
  const [route = "", asked = ""] = split(fragment.replace(/^#/, ""));
  const drafts = Object.fromEntries(new URLSearchParams(asked));
  const [, first, second, ...more] = route.split("/").map(decoded);
  if (more.length > 0 || !first) return undefined;
  if (first === "ask") return second ? { place: "bench", analysis: second, drafts } : undefined;
  return { place: "page", page: first, ...(second ? { part: second } : {}), drafts };
}

/** The address of the same question with one text changed; undefined removes it. */
export function withDraft(address: Address, path: string, text: string | undefined): Address {
  const { [path]: _before, ...others } = address.drafts;
  return { ...address, drafts: text === undefined ? others : { ...others, [path]: text } };
}

/** Names the question whatever is asked of it. */
export function questionKey(address: Address): string {
  if (address.place === "bench") return `bench:${address.analysis}`;
  return address.part === undefined ? `page:${address.page}` : `page:${address.page}/${address.part}`;
}

function split(text: string): readonly [string, string] {
  const mark = text.indexOf("?");
  return mark < 0 ? [text, ""] : [text.slice(0, mark), text.slice(mark + 1)];
}

function decoded(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    return part;
  }
}
