import { chosenVariant, leaves, rowCount, rowFields, valueAt } from "../model/inputs.ts";
import type { Question } from "../model/question.ts";
import { isGrid, opensBeside, rowValues } from "../model/rows.ts";
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
          <GroupProblems field={field} run={run} />
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
  const id = variantId(field.path);
  return (
    <fieldset className="group">
      <legend>{field.label}</legend>
      {field.description && <p className="description">{field.description}</p>}
      {(!chosen || silent.includes(chosen.field.kind)) && <GroupProblems field={field} run={run} />}
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

/** Fields that show no problem of their own. */
const silent: readonly Field["kind"][] = ["constant", "variants"];

/** What is wrong with a group as a whole, as when two of its inputs do not go together. */
function GroupProblems({ field, run }: { readonly field: Field; readonly run: Run | undefined }) {
  const own = (run?.problems ?? []).filter((problem) => problem.path === field.path);
  if (own.length === 0) return null;
  return (
    <p className="field-problem" id={`input-${field.path}`} tabIndex={-1}>
      {own.map((problem) => problem.message).join(" ")}
    </p>
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
      <GroupProblems field={field} run={run} />
      {isGrid(field) && count > 0 ? (
        <>
          <RowsGrid
            field={field}
            rows={places(count).map((index) => rowFields(field, index))}
            question={question}
            run={run}
            values={rowValues(field, question.base, question.drafts)}
          />
          <RowsBeside field={field} count={count} question={question} run={run} />
        </>
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

/** Rows whose further inputs are drawn at most. */
const mostBeside = 24;

/** What a row may have besides its cells, as a section of its own: under the table, one row after the other. */
function RowsBeside({ field, count, question, run }: Omit<AnyFieldProps, "base" | "field"> & { field: RowsField; count: number }) {
  const columns = field.columns.filter(opensBeside);
  if (columns.length === 0) return null;
  const opened = places(Math.min(count, mostBeside)).map((index) => rowFields(field, index).filter(opensBeside));
  const given = opened.filter((fields) => isGiven(fields, question)).length;
  return (
    <details className="more" open={isConcerned(opened.flat(), question, run) || undefined}>
      <summary>
        {columns.map((column) => column.label).join(", ")} of single rows <span className="quiet">({given} given)</span>
      </summary>
      <div className="inputs">
        {opened.map((fields, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: rows are known by their place
          <fieldset key={index} className="row-group">
            <legend>Row {index + 1}</legend>
            {fields.map((child) => (
              <AnyField key={child.path} field={child} question={question} run={run} base={valueAt(question.base, child.path)} />
            ))}
          </fieldset>
        ))}
        {count > mostBeside && <p className="description">and {count - mostBeside} more rows</p>}
      </div>
    </details>
  );
}

function isGiven(fields: readonly Field[], { base, drafts }: Question): boolean {
  const isUnder = (path: string, field: Field) => path === field.path || path.startsWith(`${field.path}.`) || path === `${field.path}~`;
  return fields.some(
    (field) =>
      valueAt(base, field.path) !== undefined || Object.entries(drafts).some(([path, text]) => text !== "" && isUnder(path, field)),
  );
}

/** Id of the control that says in which of several ways an input is given. */
function variantId(path: string): string {
  return `input-${path}~`;
}

function places(count: number): readonly number[] {
  return Array.from({ length: count }, (_, index) => index);
}
