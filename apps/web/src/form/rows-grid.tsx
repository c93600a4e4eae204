import { type ClipboardEvent, useEffect, useId, useState } from "react";
import { shownText } from "../model/inputs.ts";
import { rowsDrafts } from "../model/loaded-file.ts";
import { pastedRows } from "../model/pasted-rows.ts";
import type { Question } from "../model/question.ts";
import { cellText, columnUnit, isCellField, openedVariant, optionsOfCell, wordDrafts } from "../model/rows.ts";
import type { Run } from "../model/run-store.ts";
import type { Field, RowsField } from "../model/schema.ts";
import { isTableText, readTableText } from "../model/table-text.ts";
import { isBare, joined, plain } from "../model/units.ts";
import { useSession, useView } from "../session-context.ts";

interface RowsGridProps {
  readonly field: RowsField;
  readonly rows: readonly (readonly Field[])[];
  readonly question: Question;
  readonly run: Run | undefined;
  /** The rows as they stand now, as values. */
  readonly values: readonly unknown[];
}

/** Rows drawn at once; longer tables show their first ones and are changed as a whole. */
const mostDrawn = 24;

/** A list of groups as a table: a cell for each value, and whole tables pasted from a spreadsheet. */
export function RowsGrid({ field, rows, question, run, values }: RowsGridProps) {
  const { address } = useSession();
  const system = useView((view) => view.system);
  const [refused, refuse] = useState("");
  const columns = field.columns.filter(isCellField);
  const head = useId();
  const write = (next: readonly unknown[]) => address.getState().changeAll(rowsDrafts(field, next, question.drafts));
  const paste = (event: ClipboardEvent, row: number, column: number) => {
    const text = event.clipboardData.getData("text/plain");
    if (!isTableText(text)) return;
    event.preventDefault();
    const pasted = pastedRows({ field, columns, values, table: readTableText(text), at: { row, column } });
    refuse(pasted.slip ?? "");
    if (pasted.rows) write(pasted.rows);
  };
  const invalid = new Map((run?.problems ?? []).flatMap((one) => (one.path === undefined ? [] : [[one.path, one.message] as const])));
  const complaints = [...invalid].filter(([path]) => path.startsWith(`${field.path}.`));
  return (
    <>
      <div className="table-scroll">
        <table className="rows-grid">
          <thead>
            <tr>
              <td />
              {columns.map((column, index) => (
                <th key={column.path} scope="col" id={`${head}-${index}`} title={column.description}>
                  {column.label}
                  {columnUnit(column, system) !== "" && <span className="quiet">, {columnUnit(column, system)}</span>}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.slice(0, mostDrawn).map((cells, row) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: rows are known by their place
              <tr key={row}>
                <th scope="row">
                  <button
                    type="button"
                    className="quiet-button"
                    aria-label={`Remove row ${row + 1}`}
                    title="Remove this row"
                    onClick={() => write(values.filter((_, index) => index !== row))}
                  >
                    ✕
                  </button>
                  {row + 1}
                </th>
                {columns.map((column, index) => {
                  const cell = cells.find((one) => one.path === `${field.path}.${row}.${column.path}`);
                  return (
                    <td key={column.path} onPaste={(event) => paste(event, row, index)}>
                      {cell && (
                        <Cell field={cell} question={question} label={`${column.label}, row ${row + 1}`} invalid={invalid.has(cell.path)} />
                      )}
                    </td>
                  );
                })}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <p className="description">
        A table copied from a spreadsheet can be pasted into any cell; a first line with names says which column is which.
      </p>
      {rows.length > mostDrawn && <p className="description">and {rows.length - mostDrawn} more rows</p>}
      {complaints.map(([path, message]) => (
        <p key={path} className="field-problem">
          {path.slice(field.path.length + 1).replace(/^(\d+)\.?/, (_, index: string) => `row ${Number(index) + 1} `)}: {message}
        </p>
      ))}
      {refused !== "" && (
        <p className="field-problem" role="alert">
          {refused}
        </p>
      )}
    </>
  );
}

interface CellProps {
  readonly field: Field;
  readonly question: Question;
  readonly label: string;
  readonly invalid: boolean;
}

/** Value of the choice that stands for what is written out under the table. */
const openedSign = "~";

/** One value of a row; its unit stands in the head of the column, another one may be typed. */
function Cell({ field, question, label, invalid }: CellProps) {
  const { address } = useSession();
  const system = useView((view) => view.system);
  const text = shownText(field, question.base, question.drafts);
  const shown = cellText(field, text, system);
  const [typed, setTyped] = useState(shown.text);
  useEffect(() => setTyped(shown.text), [shown.text]);
  const change = (next: string) => {
    if (next !== text) address.getState().change(field.path, next);
  };
  const options = optionsOfCell(field);
  const shared = { "aria-label": label, "aria-invalid": invalid || undefined, id: `input-${field.path}` };
  const opened = openedVariant(field, question.base, question.drafts);
  if (options)
    return (
      <select
        {...shared}
        value={opened === undefined ? text : openedSign}
        onChange={(event) => address.getState().changeAll(wordDrafts(field, event.target.value))}
      >
        {(!field.required || text === "") && <option value="" />}
        {opened !== undefined && <option value={openedSign}>{opened}, below</option>}
        {[...new Set([...options, ...(text === "" || opened !== undefined ? [] : [text])])].map((option) => (
          <option key={option}>{option}</option>
        ))}
      </select>
    );
  const commit = () => {
    if (typed === shown.text) return;
    const next = plain(typed);
    change(next !== "" && shown.unit && isBare(next) ? joined(next, shown.unit) : next);
  };
  return (
    <input
      {...shared}
      type="text"
      autoComplete="off"
      spellCheck={false}
      value={typed}
      onChange={(event) => setTyped(event.target.value)}
      onBlur={commit}
      onKeyDown={(event) => event.key === "Enter" && commit()}
    />
  );
}
