/** Which inputs may stand together: each set is one way to put the question, and what is then worked out. */
export interface GivensSet {
  /** Names of inputs that must all be given. */
  readonly given: readonly string[];
  /** Names of outputs that follow. */
  readonly solved: readonly string[];
}

/**
 * Which set of a table the given inputs make, or one sentence why none fits, naming what is there and what would be allowed.
 *
 * @param names the inputs that the table speaks of; all others are ignored
 */
export function matchingGivens(
  table: readonly GivensSet[],
  names: readonly string[],
  inputs: Readonly<Record<string, unknown>>,
): { readonly set: GivensSet } | { readonly message: string } {
  const given = names.filter((name) => inputs[name] !== undefined);
  const set = table.find((candidate) => candidate.given.length === given.length && candidate.given.every((name) => given.includes(name)));
  if (set) return { set };
  const allowed = nearest(table, given)
    .map((candidate) => candidate.given.join(" + ") || "none of them")
    .join("; or ");
  const read = given.length > 0 ? given.join(" + ") : "none of them";
  return { message: `Given together: ${read}. Allowed: ${allowed}.` };
}

/** The sets that share most with what was given; all of them when nothing was. */
function nearest(table: readonly GivensSet[], given: readonly string[]): readonly GivensSet[] {
  const shared = (set: GivensSet): number => set.given.filter((name) => given.includes(name)).length;
  const distance = (set: GivensSet): number => set.given.length + given.length - 2 * shared(set);
  const least = Math.min(...table.map(distance));
  return given.length === 0 ? table : table.filter((set) => distance(set) <= least + 1);
}
