import { errorText, type ValidationRow } from "../validation/index.ts";
import type { Block, TableBlock } from "./blocks.ts";

/** How the program compares with published data: one table, what fell outside, and the remarks in one paragraph. */
export function validationBlocks(rows: readonly ValidationRow[], markOf: (source: string) => string): readonly Block[] {
  if (rows.length === 0) return [{ kind: "caution", grade: "care", text: "No comparison with published data was handed to this dossier." }];
  const failed = rows.filter((row) => row.gatedRows > 0 && !row.passed);
  const notes = noteItems(rows);
  return [
    comparisonTable(rows, markOf),
    ...failed.map((row): Block => ({ kind: "caution", grade: "care", text: `${row.check}, ${row.quantity}: outside its tolerance.` })),
    ...(notes.length === 0 ? [] : [{ kind: "paragraph", look: "compact", lead: "Remarks", text: `${notes.join("; ")}.` } as const]),
  ];
}

function comparisonTable(rows: readonly ValidationRow[], markOf: (source: string) => string): TableBlock {
  return {
    kind: "table",
    caption:
      "Computed minus published. The tolerance was set before the comparison and judges the rows under “judged”; the others are only reported.",
    head: ["quantity", "rows", "judged", "bias", "root mean square", "largest", "tolerance", "within"],
    numeric: [false, true, true, true, true, true, false, false],
    rows: rows.flatMap((row, index) => [...checkHeading(row, rows[index - 1], markOf), comparedRow(row)]),
  };
}

/** The check with its source, over its rows. */
function checkHeading(row: ValidationRow, before: ValidationRow | undefined, markOf: (source: string) => string): readonly string[][] {
  return before?.check === row.check && before.source === row.source ? [] : [[`${row.check} ${markOf(row.source)}`]];
}

function comparedRow(row: ValidationRow): readonly string[] {
  return [
    row.quantity,
    String(row.rows),
    String(row.gatedRows),
    errorText(row.bias),
    errorText(row.rms),
    errorText(row.largest),
    row.gatedRows > 0 ? errorText(row.tolerance) : "none",
    verdict(row),
  ];
}

/** A row that decides nothing has not passed anything. */
function verdict(row: ValidationRow): string {
  if (row.gatedRows === 0) return "reported, not gated";
  return row.passed ? "yes" : "no";
}

/** Notes, said once where all rows of a check bear the same. */
function noteItems(rows: readonly ValidationRow[]): readonly string[] {
  const items = rows.flatMap((row) => {
    if (!row.note) return [];
    const sameCheck = rows.filter((other) => other.check === row.check);
    const shared = sameCheck.length > 1 && sameCheck.every((other) => other.note === row.note);
    return [`${shared ? row.check : `${row.check}, ${row.quantity}`}: ${row.note}`];
  });
  return [...new Set(items)];
}
