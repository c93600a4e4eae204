import type { AnalysisEntry } from "./catalogue.ts";
import { type Drafts, leaves } from "./inputs.ts";
import { type Field, fieldsOf } from "./schema.ts";

/** A condition of the strip: which role, and the field that carries it where the page uses it. */
export interface Condition {
  readonly role: string;
  readonly label: string;
  /** Absent where the page's analysis does not take it. */
  readonly field?: Field;
}

const prefix = "condition.";

/** The conditions that any of the analyses takes, in the order of first appearance, with this page's fields in them. */
export function conditionsOf(analyses: readonly AnalysisEntry[], here: AnalysisEntry): readonly Condition[] {
  const known = new Map<string, Condition>();
  for (const field of conditionFields(here)) {
    if (field.role && !known.has(field.path)) known.set(field.path, { role: field.role, label: field.label, field });
  }
  const roles = new Set([...known.values()].map((condition) => condition.role));
  const elsewhere = analyses.flatMap(conditionFields).filter((field) => field.role && !roles.has(field.role));
  const unused = new Map<string, Condition>();
  for (const field of elsewhere)
    if (field.role && !unused.has(field.role)) unused.set(field.role, { role: field.role, label: roleWord(field.role) });
  return [...[...known.values()].sort((a, b) => order(a.role) - order(b.role)), ...unused.values()];
}

/**
 * The texts that go along when one leaves a question for another: those of inputs that stand for the same condition and
 * are of the same kind there. The rest belongs to the question and stays behind.
 */
export function carried(drafts: Drafts, from: AnalysisEntry, to: AnalysisEntry): Drafts {
  const targets = sharedFields(to);
  const pairs = sharedFields(from).flatMap((field) => {
    const text = drafts[field.path];
    const target = targets.find((one) => one.role === field.role && sameKind(one, field));
    return text !== undefined && target ? [[target.path, text] as const] : [];
  });
  return Object.fromEntries(pairs);
}

/** Texts of a question less those that stand for something the other question also has. */
export function withoutShared(drafts: Drafts, from: AnalysisEntry, to: AnalysisEntry): Drafts {
  const shared = new Set(
    sharedFields(to)
      .filter((field) => sharedFields(from).some((one) => one.role === field.role && sameKind(one, field)))
      .map((field) => field.path),
  );
  return Object.fromEntries(Object.entries(drafts).filter(([path]) => !shared.has(path)));
}

function sharedFields(analysis: AnalysisEntry): readonly Field[] {
  return leaves(fieldsOf(analysis.inputs)).filter((field) => field.role !== undefined);
}

function conditionFields(analysis: AnalysisEntry): readonly Field[] {
  return sharedFields(analysis).filter((field) => field.role?.startsWith(prefix));
}

function sameKind(a: Field, b: Field): boolean {
  return a.kind === "quantity" && b.kind === "quantity" ? a.quantity === b.quantity : a.kind === b.kind;
}

const usualOrder = ["pack", "payload", "altitude", "temperature", "wind", "cells"];

function order(role: string): number {
  const place = usualOrder.indexOf(role.slice(prefix.length));
  return place < 0 ? usualOrder.length : place;
}

function roleWord(role: string): string {
  return role.slice(prefix.length);
}
