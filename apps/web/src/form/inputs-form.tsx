import { valueAt } from "../model/inputs.ts";
import type { Question } from "../model/question.ts";
import type { Run } from "../model/run-store.ts";
import type { Field } from "../model/schema.ts";
import { useSession } from "../session-context.ts";
import { FieldRow } from "./field-row.tsx";
import { RowsFields } from "./rows-fields.tsx";
import { VariantFields } from "./variant-fields.tsx";

interface FormProps {
  readonly question: Question;
  readonly run: Run | undefined;
}

/** The inputs of a question, made from its schema: one column, label above field. */
export function InputsForm({ question, run }: FormProps) {
  const { address } = useSession();
  const touched = Object.keys(question.drafts).length > 0;
  return (
    <section aria-label="Inputs" data-part="inputs">
      <h2>Inputs</h2>
      <form
        className="inputs"
        onSubmit={(event) => event.preventDefault()}
        aria-label={`Inputs of “${question.title}”`}
        data-inputs={question.slots[0].analysis.name}
      >
        {question.slots[0].fields.map((field) => (
          <AnyField key={field.path} field={field} question={question} run={run} base={valueAt(question.base, field.path)} />
        ))}
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

export interface AnyFieldProps extends FormProps {
  readonly field: Field;
  /** The value that stands at this field's path before anything is typed. */
  readonly base: unknown;
}

/** A field of any kind; groups, variants and rows open into their own fields. */
export function AnyField({ field, question, run, base }: AnyFieldProps) {
  switch (field.kind) {
    case "constant":
      return null;
    case "group":
      return (
        <fieldset className="group">
          <legend>{field.label}</legend>
          {field.description && <p className="description">{field.description}</p>}
          {field.fields.map((child) => (
            <AnyField key={child.path} field={child} question={question} run={run} base={valueAt(question.base, child.path)} />
          ))}
        </fieldset>
      );
    case "variants":
      return <VariantFields field={field} question={question} run={run} base={base} />;
    case "rows":
      return <RowsFields field={field} question={question} run={run} base={base} />;
    default:
      return <FieldRow field={field} question={question} run={run} />;
  }
}
