/** Says what does not go together, at its place in the file. */
export type Complain = (path: readonly (string | number)[], message: string) => void;

/** Complains of every id that stands in lists of one name space a second time. */
export function uniqueIds(lists: Readonly<Record<string, readonly { readonly id: string }[]>>, complain: Complain): void {
  const known = new Map<string, string>();
  for (const [list, entries] of Object.entries(lists)) {
    entries.forEach(({ id }, index) => {
      const first = known.get(id);
      if (first === undefined) known.set(id, `${list}[${index}]`);
      else complain([list, index, "id"], `"${id}" is the name of ${first} already`);
    });
  }
}

/** What an unknown name is told: "there is no rotor called x; there is main". */
export function unknown(kind: string, name: string, known: readonly string[]): string {
  const few = known.length === 0 ? "there is none" : `there ${known.length === 1 ? "is" : "are"} ${known.join(", ")}`;
  return `there is no ${kind} called "${name}"; ${few}`;
}
