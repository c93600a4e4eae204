/** Thrown inside a reduction only: the first part that does not fit ends it, with a sentence that names the part. */
export class Unfit extends Error {}

/** The part of a list that has an id. */
export function partCalled<Part extends { readonly id: string }>(kind: string, parts: readonly Part[], id: string): Part {
  const part = parts.find((one) => one.id === id);
  if (part === undefined) throw new Unfit(`There is no ${kind} called ${id}.`);
  return part;
}
