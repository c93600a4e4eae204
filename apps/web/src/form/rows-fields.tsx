import { rowCount, rowFields, valueAt } from "../model/inputs.ts";
import type { RowsField } from "../model/schema.ts";
import { useSession } from "../session-context.ts";
import { AnyField, type AnyFieldProps } from "./inputs-form.tsx";

/** A list of groups: one after the other, with one more or one less at the end. */
export function RowsFields({ field, question, run, base }: AnyFieldProps & { readonly field: RowsField }) {
  const { address } = useSession();
  const count = rowCount(field, base, question.drafts);
  const resize = (next: number) => address.getState().change(`${field.path}#`, String(next));
  return (
    <fieldset className="group">
      <legend>{field.label}</legend>
      {field.description && <p className="description">{field.description}</p>}
      {places(count).map((index) => (
        <fieldset key={index} className="row-group">
          <legend>
            {index + 1} of {count}
          </legend>
          {rowFields(field, index).map((child) => (
            <AnyField key={child.path} field={child} question={question} run={run} base={valueAt(question.base, child.path)} />
          ))}
        </fieldset>
      ))}
      <div className="steps">
        <button type="button" onClick={() => resize(count + 1)}>
          One more
        </button>
        {count > 0 && (
          <button type="button" onClick={() => resize(count - 1)}>
            Without the last
          </button>
        )}
      </div>
    </fieldset>
  );
}

function places(count: number): readonly number[] {
  return Array.from({ length: count }, (_, index) => index);
}
