/** JSON Pointer of the first number that is NaN or infinite, or null. Such a number is never let out of the house. */
export function firstNotFinite(value: unknown, pointer = ""): string | null {
  if (typeof value === "number") return Number.isFinite(value) ? null : pointer;
  if (typeof value !== "object" || value === null) return null;
  const entries = Array.isArray(value) ? value.entries() : Object.entries(value);
  for (const [key, item] of entries) {
    const found = firstNotFinite(item, `${pointer}/${key}`);
    if (found !== null) return found;
  }
  return null;
}
