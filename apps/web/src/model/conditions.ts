import type { UnitSystem } from "@wingseed/reports/format";
import type { AnalysisEntry } from "./catalogue.ts";
import { effectiveText } from "./effective.ts";
import { leavesInUse } from "./inputs.ts";
import type { Question } from "./question.ts";
import type { Run } from "./run-store.ts";
import { type Field, type QuantityField, sentenceCase } from "./schema.ts";
import { sharedFields } from "./shared-inputs.ts";

/** A condition of the strip: one role and the inputs that stand for it on this page; none where the page does not use it. */
export interface Condition {
  readonly role: string;
  readonly label: string;
  readonly fields: readonly Field[];
}

const prefix = "condition.";
const usualOrder = ["pack", "payload", "altitude", "temperature", "wind", "cells"];

/** The conditions that any of the analyses takes, in the usual order, those of this page first. */
export function conditionsOf(analyses: readonly AnalysisEntry[], { slots: [slot], base, drafts }: Question): readonly Condition[] {
  const used = new Set(leavesInUse(slot.fields, base, drafts).map((field) => field.path));
  const fields = conditionFields(slot.analysis).filter((field) => used.has(field.path));
  const roles = new Set([slot.analysis, ...analyses].flatMap(conditionFields).flatMap((field) => field.role ?? []));
  const conditions = [...roles]
    .sort((a, b) => order(a) - order(b))
    .map((role) => ({ role, label: sentenceCase(role.slice(prefix.length)), fields: fields.filter((field) => field.role === role) }));
  return [...conditions.filter((one) => one.fields.length > 0), ...conditions.filter((one) => one.fields.length === 0)];
}

/** What a condition is worth: what was given, else the first value that is taken without it, else that it is left open. */
export function conditionText(condition: Condition, question: Question, run: Run | undefined, system: UnitSystem): string {
  const worth = condition.fields.map((field) => ({ field, ...effectiveText(field, question, run, system) }));
  const given = worth.filter((one) => one.given);
  const told = given.length > 0 ? given : worth.filter((one) => one.text !== "").slice(0, 1);
  if (told.length > 0)
    return told
      .map(({ field, text }) => (isPlainNumber(field) && condition.fields[0] !== field ? `${field.label.toLowerCase()} ${text}` : text))
      .join(" · ");
  return question.slots[0].fields.some((field) => field.role === "mission") ? "as the mission says" : "standard";
}

/** The input of a condition that a step changes: the first number given, else the first that has a value. */
export function steppedField(condition: Condition, question: Question, run: Run | undefined): QuantityField | undefined {
  const numbers = condition.fields.filter((field) => field.kind === "quantity");
  const worth = numbers.map((field) => ({ field, ...effectiveText(field, question, run, "si") }));
  return (worth.find((one) => one.given) ?? worth.find((one) => one.text !== ""))?.field;
}

function conditionFields(analysis: AnalysisEntry): readonly Field[] {
  return sharedFields(analysis).filter((field) => field.role?.startsWith(prefix));
}

function isPlainNumber(field: Field): boolean {
  return field.kind === "quantity" && field.quantity === "dimensionless";
}

function order(role: string): number {
  const place = usualOrder.indexOf(role.slice(prefix.length));
  return place < 0 ? usualOrder.length : place;
}
