import { useMemo } from "react";
import { type Condition, conditionsOf } from "../model/conditions.ts";
import { effectiveText } from "../model/effective.ts";
import type { Question } from "../model/question.ts";
import type { Run } from "../model/run-store.ts";
import type { Field } from "../model/schema.ts";
import { useSession } from "../session-context.ts";
import { ConditionHandle } from "./condition-handle.tsx";

interface ConditionsStripProps {
  readonly question: Question;
  readonly run: Run | undefined;
}

/** Under what conditions the answer holds: each a handle that writes to the address. */
export function ConditionsStrip({ question, run }: ConditionsStripProps) {
  const { catalogue, view } = useSession();
  const conditions = useMemo(() => conditionsOf(catalogue.analyses, question.slots[0].analysis), [catalogue, question]);
  const { title } = catalogue.project;
  return (
    <section className="strip" aria-label="Conditions">
      <button
        type="button"
        className="column-button"
        aria-controls="questions"
        onClick={() => {
          view.setState({ columnOpen: true });
          requestAnimationFrame(() => document.querySelector<HTMLElement>("#questions a")?.focus());
        }}
      >
        Questions
      </button>
      <span className="strip-project">{title}</span>
      {oneOfEachRole(conditions, question, run).map((condition) =>
        condition.field ? (
          <ConditionHandle key={condition.field.path} field={condition.field} question={question} run={run} />
        ) : (
          <span key={condition.role} className="unused">
            {condition.label}: not used here
          </span>
        ),
      )}
    </section>
  );
}

/** What was given, and for each role without anything given the first of its inputs that has a value, else the first. */
function oneOfEachRole(conditions: readonly Condition[], question: Question, run: Run | undefined): readonly Condition[] {
  return conditions.filter((condition) => {
    const { field, role } = condition;
    if (!field) return true;
    const same = conditions.filter((one) => one.role === role && one.field).map((one) => one.field as Field);
    const texts = same.map((one) => effectiveText(one, question, run, "si"));
    const here = texts[same.indexOf(field)];
    if (texts.some((text) => text.given)) return here?.given;
    const valued = texts.findIndex((text) => text.text !== "");
    return same.indexOf(field) === Math.max(0, valued);
  });
}
