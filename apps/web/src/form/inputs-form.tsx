import { leaves, valueAt } from "../model/inputs.ts";
import type { Question } from "../model/question.ts";
import type { Run } from "../model/run-store.ts";
import type { Field } from "../model/schema.ts";
import { seldomFields } from "../model/seldom.ts";
import { useSession } from "../session-context.ts";
import { AnyField } from "./any-field.tsx";

interface FormProps {
  readonly question: Question;
  readonly run: Run | undefined;
}

/** The inputs of a question, made from its schema: one column, label above field. */
export function InputsForm({ question, run }: FormProps) {
  const { address } = useSession();
  const touched = Object.keys(question.drafts).length > 0;
  const { fields } = question.slots[0];
  const seldom = seldomFields(fields, question.base);
  const shown = (field: Field) => (
    <AnyField key={field.path} field={field} question={question} run={run} base={valueAt(question.base, field.path)} />
  );
  return (
    <section aria-label="Inputs" data-part="inputs">
      <h2>Inputs</h2>
      <form
        className="inputs"
        onSubmit={(event) => event.preventDefault()}
        aria-label={`Inputs of “${question.title}”`}
        data-inputs={question.slots[0].analysis.name}
      >
        {fields.filter((field) => !seldom.includes(field)).map(shown)}
        {seldom.length > 0 && (
          <details className="more" open={isConcerned(seldom, question, run) || undefined}>
            <summary>
              More inputs <span className="quiet">({leaves(seldom).length}, as standard)</span>
            </summary>
            <div className="inputs">{seldom.map(shown)}</div>
          </details>
        )}
        {touched && (
          <button
            type="button"
            onClick={() => address.getState().changeAll(Object.fromEntries(Object.keys(question.drafts).map((path) => [path, undefined])))}
          >
            Take back all changes
          </button>
        )}
      </form>
    </section>
  );
}

/** True when something was typed into one of these fields or is wrong with it. */
function isConcerned(fields: readonly Field[], question: Question, run: Run | undefined): boolean {
  const paths = [...Object.keys(question.drafts), ...(run?.problems ?? []).flatMap((problem) => problem.path ?? [])];
  return fields.some((field) =>
    paths.some((path) => path === field.path || [".", "~", "#"].some((mark) => path.startsWith(field.path + mark))),
  );
}
