import type { Question } from "../model/question.ts";
import type { Run } from "../model/run-store.ts";
import { useSession } from "../session-context.ts";
import { FieldList } from "./any-field.tsx";

interface FormProps {
  readonly question: Question;
  readonly run: Run | undefined;
}

/** The inputs of a question, made from its schema: one column, label above field. */
export function InputsForm({ question, run }: FormProps) {
  const { address } = useSession();
  const touched = Object.keys(question.drafts).length > 0;
  const { fields } = question.slots[0];
  return (
    <section aria-label="Inputs" data-part="inputs">
      <h2>Inputs</h2>
      <form
        className="inputs"
        onSubmit={(event) => event.preventDefault()}
        aria-label={`Inputs of “${question.title}”`}
        data-inputs={question.slots[0].analysis.name}
      >
        <FieldList fields={fields} question={question} run={run} />
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
