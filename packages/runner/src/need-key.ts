import { canonicalJson } from "./canonical.ts";

/** The name under which the outcome of a declared analysis is handed over. */
export function needKey(name: string, inputs: unknown): string {
  return `${name} ${canonicalJson(inputs)}`;
}
