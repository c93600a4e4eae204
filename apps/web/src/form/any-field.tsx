import { chosenVariant, leaves, rowCount, rowFields, valueAt } from "../model/inputs.ts";
import type { Question } from "../model/question.ts";
import { isGrid, rowValues } from "../model/rows.ts";
import type { Run } from "../model/run-store.ts";
import type { Field, RowsField, VariantsField } from "../model/schema.ts";
import { seldomFields } from "../model/seldom.ts";
import { useSession } from "../session-context.ts";
import { FieldRow } from "./field-row.tsx";
import { RowsGrid } from "./rows-grid.tsx";

interface AnyFieldProps {
  readonly field: Field;
  readonly question: Question;
  readonly run: Run | undefined;
  /** The value that stands at this field's path before anything is typed. */
  readonly base: unknown;
}

interface FieldListProps {
  readonly fields: readonly Field[];
  readonly question: Question;
  readonly run: Run | undefined;
}

/** Fields one below the other, those seldom typed into folded at the end. */
export function FieldList({ fields, question, run }: FieldListProps) {
  const seldom = seldomFields(fields, question.base);
  const shown = (field: Field) => (
    <AnyField key={field.path} field={field} question={question} run={run} base={valueAt(question.base, field.path)} />
  );
  return (
    <>
      {fields.filter((field) => !seldom.includes(field)).map(shown)}
      {seldom.length > 0 && (
        <details className="more" open={isConcerned(seldom, question, run) || undefined}>
          <summary>
            More inputs <span className="quiet">({leaves(seldom).length}, as standard)</span>
          </summary>
          <div className="inputs">{seldom.map(shown)}</div>
        </details>
      )}
    </>
  );
}

/** True when something was typed into one of these fields or is wrong with it. */
function isConcerned(fields: readonly Field[], question: Question, run: Run | undefined): boolean {
  const paths = [...Object.keys(question.drafts), ...(run?.problems ?? []).flatMap((problem) => problem.path ?? [])];
  return fields.some((field) =>
    paths.some((path) => path === field.path || [".", "~", "#"].some((mark) => path.startsWith(field.path + mark))),
  );
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
          <FieldList fields={field.fields} question={question} run={run} />
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

/** An input that can be given in several ways: which way, and then its own fields. */
function VariantFields({ field, question, run, base }: AnyFieldProps & { readonly field: VariantsField }) {
  const { address } = useSession();
  const chosen = chosenVariant(field, base, question.drafts);
  const id = `input-${field.path}`;
  return (
    <fieldset className="group">
      <legend>{field.label}</legend>
      {field.description && <p className="description">{field.description}</p>}
      <div className="field">
        <label htmlFor={id}>Given as</label>
        <select
          id={id}
          value={chosen?.name ?? ""}
          onChange={(event) => address.getState().change(`${field.path}~`, event.target.value || undefined)}
        >
          {!field.required && <option value="">not given</option>}
          {field.variants.map((variant) => (
            <option key={variant.name} value={variant.name}>
              {variant.name}
            </option>
          ))}
        </select>
      </div>
      {chosen && <AnyField field={chosen.field} question={question} run={run} base={base} />}
    </fieldset>
  );
}

/** A list of groups: one after the other, with one more or one less at the end. */
function RowsFields({ field, question, run, base }: AnyFieldProps & { readonly field: RowsField }) {
  const { address } = useSession();
  const count = rowCount(field, base, question.drafts);
  const resize = (next: number) => address.getState().change(`${field.path}#`, String(next));
  return (
    <fieldset className="group">
      <legend>{field.label}</legend>
      {field.description && <p className="description">{field.description}</p>}
      {isGrid(field) && count > 0 ? (
        <RowsGrid
          field={field}
          rows={places(count).map((index) => rowFields(field, index))}
          question={question}
          run={run}
          values={rowValues(field, question.base, question.drafts)}
        />
      ) : (
        places(count).map((index) => (
          <fieldset key={index} className="row-group">
            <legend>
              {index + 1} of {count}
            </legend>
            {rowFields(field, index).map((child) => (
              <AnyField key={child.path} field={child} question={question} run={run} base={valueAt(question.base, child.path)} />
            ))}
          </fieldset>
        ))
      )}
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
