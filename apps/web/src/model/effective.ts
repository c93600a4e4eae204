import type { UnitSystem } from "@wingseed/reports/format";
import { readableText } from "./field-text.ts";
import { inputPath, valueText } from "./input-words.ts";
import { shownText } from "./inputs.ts";
import type { Question } from "./question.ts";
import type { Run } from "./run-store.ts";
import type { Field } from "./schema.ts";

/** What an input is worth on the page, and whether somebody said so. */
export interface Effective {
  readonly text: string;
  readonly given: boolean;
}

/** The typed or example text of an input, else the value that the run took, else the standard of the schema. */
export function effectiveText(field: Field, question: Question, run: Run | undefined, system: UnitSystem): Effective {
  const typed = shownText(field, question.base, question.drafts);
  if (typed !== "") return { text: field.kind === "quantity" ? readableText(typed, field.quantity) : typed, given: true };
  return { text: standardText(field, run, system), given: false };
}

/** What is taken when nothing is typed; empty when the schema leaves it open. */
export function standardText(field: Field, run: Run | undefined, system: UnitSystem): string {
  const taken = run?.shown?.computed.result.provenance.defaults.find(({ path }) => inputPath(path) === field.path);
  const value = field.standard ?? taken?.value;
  return value === undefined ? "" : valueText(field, value, system);
}
