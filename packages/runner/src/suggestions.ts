/** The few known names nearest to a mistyped one, by edit distance; empty when nothing is near. */
export function suggestions(wrong: string, known: readonly string[]): readonly string[] {
  const limit = Math.max(2, Math.floor(wrong.length / 3));
  return known
    .map((name) => ({ name, distance: editDistance(wrong.toLowerCase(), name.toLowerCase()) }))
    .filter(({ name, distance }) => distance <= limit || name.toLowerCase().startsWith(wrong.toLowerCase()))
    .sort((a, b) => a.distance - b.distance)
    .slice(0, 3)
    .map(({ name }) => name);
}

function editDistance(a: string, b: string): number {
  let previous = Array.from({ length: b.length + 1 }, (_, column) => column);
  for (let row = 1; row <= a.length; row++) {
    const current = [row];
    for (let column = 1; column <= b.length; column++) {
      const replaced = (previous[column - 1] ?? 0) + (a[row - 1] === b[column - 1] ? 0 : 1);
      current.push(Math.min(replaced, (previous[column] ?? 0) + 1, (current[column - 1] ?? 0) + 1));
    }
    previous = current;
  }
  return previous[b.length] ?? 0;
}
