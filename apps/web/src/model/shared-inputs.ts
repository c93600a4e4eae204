import type { AnalysisEntry } from "./catalogue.ts";
import { type Drafts, leaves } from "./inputs.ts";
import { type Field, fieldsOf } from "./schema.ts";

/**
 * The texts that go along when one leaves a question for another: those of inputs that stand for the same condition and
 * are of the same kind there. The rest belongs to the question and stays behind.
 */
export function carried(drafts: Drafts, from: AnalysisEntry, to: AnalysisEntry): Drafts {
  const texts = sharedPairs(from, to).flatMap(([source, target]) => {
    const text = drafts[source.path];
    return text === undefined ? [] : [[target.path, text] as const];
  });
  return Object.fromEntries(texts);
}

/** Texts of a question less those that stand for something the other question also has. */
export function withoutShared(drafts: Drafts, from: AnalysisEntry, to: AnalysisEntry): Drafts {
  const shared = new Set(sharedPairs(from, to).map(([, target]) => target.path));
  return Object.fromEntries(Object.entries(drafts).filter(([path]) => !shared.has(path)));
}

/** Inputs of two analyses that stand for the same: of equal path where there is one, else the first of the kind. */
function sharedPairs(from: AnalysisEntry, to: AnalysisEntry): readonly (readonly [Field, Field])[] {
  const targets = sharedFields(to);
  return sharedFields(from).flatMap((source) => {
    const alike = targets.filter((target) => target.role === source.role && sameKind(source, target));
    const target =
      alike.find((one) => one.path === source.path) ?? alike.find((one) => !sharedFields(from).some((other) => other.path === one.path));
    return target ? [[source, target] as const] : [];
  });
}

/** The inputs that stand for something other questions may also have: those with a role. */
export function sharedFields(analysis: AnalysisEntry): readonly Field[] {
  return leaves(fieldsOf(analysis.inputs)).filter((field) => field.role !== undefined);
}

function sameKind(a: Field, b: Field): boolean {
  return a.kind === "quantity" && b.kind === "quantity" ? a.quantity === b.quantity : a.kind === b.kind;
}
