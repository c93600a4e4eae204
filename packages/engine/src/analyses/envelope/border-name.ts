/** A limit's name along a line: twins on the two sides of an aircraft are one limit; what was not resolved is told in the tables. */
export function borderName(limit: string): string {
  return limit.replace(/, not resolved beyond$/, "").replace(/^((front|rear|left|right) )+/, "");
}
