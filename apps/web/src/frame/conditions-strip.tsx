import { useMemo } from "react";
import { conditionsOf } from "../model/conditions.ts";
import type { Question } from "../model/question.ts";
import type { Run } from "../model/run-store.ts";
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
      {conditions.map((condition) =>
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
