import { rotorGivenNames } from "./givens.ts";

/** Inputs that a sweep may have lists of. */
export const sweepableNames: readonly string[] = [...rotorGivenNames, "heightAboveGround"];

/** Lists of values by the name of the input in whose place they stand. */
type Lists = Readonly<Partial<Record<string, unknown>>> & { readonly combine: "every" | "together" };

interface Sweepable {
  readonly sweep?: Lists | undefined;
}

/** Names of the inputs that a sweep has lists of, in the order in which they are given there. */
export function sweptNames(sweep: Lists | undefined): readonly string[] {
  return Object.keys(sweep ?? {}).filter((name) => sweepableNames.includes(name) && sweep?.[name] !== undefined);
}

function listsOf(sweep: Lists): readonly (readonly [string, readonly number[]])[] {
  return sweptNames(sweep).map((name) => [name, sweep[name] as readonly number[]]);
}

/** How many rows a sweep has, 1 without one; undefined where lists to be taken together differ in length. */
export function rowCount(sweep: Lists | undefined): number | undefined {
  if (!sweep) return 1;
  const lengths = listsOf(sweep).map(([, list]) => list.length);
  if (sweep.combine === "every") return lengths.reduce((product, length) => product * length, 1);
  return lengths.every((length) => length === lengths[0]) ? (lengths[0] ?? 1) : undefined;
}

/** The inputs of every row: those of the whole with one value out of each list. */
export function rotorRowInputs<Inputs extends Sweepable>(inputs: Inputs): readonly Omit<Inputs, "sweep">[] {
  const { sweep, ...single } = inputs;
  if (!sweep) return [single];
  const lists = listsOf(sweep);
  if (sweep.combine === "together")
    return Array.from({ length: rowCount(sweep) ?? 0 }, (_, row) => ({
      ...single,
      ...Object.fromEntries(lists.map(([name, list]) => [name, list[row]])),
    }));
  return lists.reduce<readonly Omit<Inputs, "sweep">[]>(
    (rows, [name, list]) => rows.flatMap((row) => list.map((value) => ({ ...row, [name]: value }))),
    [single],
  );
}
