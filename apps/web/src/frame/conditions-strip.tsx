import { useMemo } from "react";
import { conditionsOf } from "../model/conditions.ts";
import type { Question } from "../model/question.ts";
import type { Run } from "../model/run-store.ts";
import { useSession } from "../session-context.ts";
import { ColumnButton } from "./column-button.tsx";
import { ConditionHandle } from "./condition-handle.tsx";

interface ConditionsStripProps {
  readonly question: Question;
  readonly run: Run | undefined;
}

/** Under what conditions the answer holds: each a handle that writes to the address. */
export function ConditionsStrip({ question, run }: ConditionsStripProps) {
  const { catalogue } = useSession();
  const conditions = useMemo(() => conditionsOf(catalogue.analyses, question), [catalogue, question]);
  return (
    <section className="strip" aria-label="Conditions">
      <ColumnButton />
      {conditions.map((condition) =>
        condition.fields.length > 0 ? (
          <ConditionHandle key={condition.role} condition={condition} question={question} run={run} />
        ) : (
          <span key={condition.role} className="unused">
            {condition.label}: not used here
          </span>
        ),
      )}
    </section>
  );
}
