/** The known name that a slip of the keyboard most likely meant, or undefined when none is near. */
export function nearName(written: string, known: readonly string[]): string | undefined {
  const lower = written.toLowerCase().slice(0, 64);
  let best: { readonly name: string; readonly distance: number } | undefined;
  for (const name of known) {
    const distance = editDistance(lower, name.toLowerCase());
    const near = distance <= Math.max(1, Math.floor(Math.min(lower.length, name.length) / 3));
    if (near && (best === undefined || distance < best.distance)) best = { name, distance };
  }
  return best?.name;
}

/** Insertions, deletions, replacements and swaps of neighbors that turn one text into the other. */
function editDistance(first: string, second: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: second.length + 1 }, (_, index) => index);
  for (let row = 1; row <= first.length; row++) {
    const current = [row];
    for (let column = 1; column <= second.length; column++) {
      const same = first[row - 1] === second[column - 1];
      let cost = Math.min((last[column] ?? 0) + 1, (current[column - 1] ?? 0) + 1, (last[column - 1] ?? 0) + (same ? 0 : 1));
      const swapped = row > 1 && column > 1 && first[row - 1] === second[column - 2] && first[row - 2] === second[column - 1];
      if (swapped) cost = Math.min(cost, (beforeLast[column - 2] ?? 0) + 1);
      current.push(cost);
    }
    beforeLast = last;
    last = current;
  }
  return last[second.length] ?? 0;
}
