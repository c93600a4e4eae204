import { chosenVariant, type Drafts, valueAt } from "./inputs.ts";
import type { Question } from "./question.ts";
import type { Field, VariantsField } from "./schema.ts";
import { loadedCases, wholeSign } from "./written-base.ts";

/** Where the part on the bench comes from. */
export type PartSource = "example" | "project" | "file";

/** The input that may be taken from an aircraft file of the project, and how it is then given. */
export interface ProjectChoice {
  readonly field: VariantsField;
  readonly variant: VariantsField["variants"][number];
  /** Dotted path of the aircraft file's name. */
  readonly path: string;
}

/** The first input that can be given as an aircraft file, undefined where none can. */
export function projectChoice(fields: readonly Field[]): ProjectChoice | undefined {
  for (const field of fields) {
    if (field.kind === "group") {
      const inner = projectChoice(field.fields);
      if (inner) return inner;
    }
    if (field.kind !== "variants") continue;
    for (const variant of field.variants) {
      const named = variant.field.kind === "group" ? variant.field.fields.find((one) => one.reference === "aircraft") : undefined;
      if (named) return { field, variant, path: named.path };
    }
  }
  return undefined;
}

/** Where the part in the form comes from now. */
export function partSource(question: Question): PartSource {
  const choice = projectChoice(question.slots[0].fields);
  if (choice && chosenVariant(choice.field, valueAt(question.base, choice.field.path), question.drafts) === choice.variant)
    return "project";
  return loadedCases(question.drafts) ? "file" : "example";
}

/**
 * What the example says beside its own part and need not be said: a load curve, points. They fit that part and no other, so
 * they are left to their standards when the part changes; what was typed stays.
 */
export function leftToStandard(
  fields: readonly Field[],
  choice: ProjectChoice,
  { base, drafts }: Pick<Question, "base" | "drafts">,
): Drafts {
  if (loadedCases(drafts)) return {};
  const isTyped = ({ path }: Field) => Object.keys(drafts).some((key) => key.startsWith(path) && /^[.~#=]/.test(key.slice(path.length)));
  const beside = fields.filter((field) => !field.required && field.path !== choice.field.path && !isTyped(field));
  const told = beside.filter((field) => valueAt(base, field.path) !== undefined);
  const unsaid: Record<string, string> = {};
  for (const { kind, path } of told) {
    if (kind === "variants") unsaid[`${path}~`] = "";
    else if (kind === "rows") unsaid[`${path}#`] = "0";
  }
  return unsaid;
}

/** The texts by which the part comes from an aircraft file, the rest as it is. */
export function fromProject(choice: ProjectChoice, aircraft: string, drafts: Drafts): Drafts {
  const { [`${choice.field.path}${wholeSign}`]: _whole, ...kept } = drafts;
  const others = Object.entries(kept).filter(([path]) => !path.startsWith(`${choice.field.path}.`));
  return { ...Object.fromEntries(others), [`${choice.field.path}~`]: choice.variant.name, [choice.path]: aircraft };
}
