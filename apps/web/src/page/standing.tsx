import { comparisonFigure, errorText, standingOf, standingSentence, type ValidationRow } from "@wingseed/reports/draw";
import { useMemo, useState } from "react";
import type { Origin } from "../model/slip.ts";
import { Picture } from "../picture/picture.tsx";
import { useSession } from "../session-context.ts";

/** Errors beside the answer; the others are a step away. */
const mostErrors = 4;

interface StandingProps {
  readonly outputs: unknown;
  readonly origin: Origin;
}

/** How far the answer lies from what was compared with published data, and how well that agreed. */
export function Standing({ outputs, origin }: StandingProps) {
  const { validation } = useSession().catalogue;
  const standing = useMemo(() => standingOf(outputs, validation), [outputs, validation]);
  if (!standing) return null;
  const about = standing.comparisons.filter((row) => row.field !== undefined);
  const first = (about.length > 0 ? about : standing.comparisons).slice(0, mostErrors);
  const isOutside = standing.outside.length > 0 || standing.distance === null;
  return (
    <section className="standing" aria-label="Compared with published data" data-outside={isOutside}>
      <p className={isOutside ? "care-words" : ""}>{standingSentence(standing)}</p>
      <Errors caption={`${standing.title ?? ""}: computed less published`} rows={first} />
      <Comparisons rows={standing.comparisons} shown={first} origin={origin} />
    </section>
  );
}

/** Spare columns are left out where the window is narrow. */
const columnClasses = ["words", "number", "number", "number spare", "number", "words spare"];

/** What the nearest check found: errors of computed less published. */
function Errors({ caption, rows }: { readonly caption: string; readonly rows: readonly ValidationRow[] }) {
  if (rows.length === 0) return null;
  return (
    <div className="table-scroll">
      <table>
        <caption>{caption}</caption>
        <thead>
          <tr>
            {["quantity", "bias", "rms", "largest", "rows", "gate"].map((head, index) => (
              <th key={head} scope="col" className={columnClasses[index]}>
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.quantity}>
              <th scope="row" className="words">
                {row.quantity}
              </th>
              <td className="number">{errorText(row.bias)}</td>
              <td className="number">{errorText(row.rms)}</td>
              <td className="number spare">{errorText(row.largest)}</td>
              <td className="number">{row.rows}</td>
              <td className="words spare">{gate(row)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

function gate(row: ValidationRow): string {
  if (row.gatedRows === 0) return "reported only";
  return `${errorText(row.tolerance)}: ${row.passed ? "met" : "not met"}`;
}

interface ComparisonsProps {
  readonly rows: readonly ValidationRow[];
  /** Those whose errors already stand above. */
  readonly shown: readonly ValidationRow[];
  readonly origin: Origin;
}

/** The whole of that comparison with its pictures, folded until it is asked for. */
function Comparisons({ rows, shown, origin }: ComparisonsProps) {
  const [open, setOpen] = useState(false);
  const figures = useMemo(() => rows.flatMap((row) => comparisonFigure(row) ?? []), [rows]);
  const others = rows.filter((row) => !shown.includes(row));
  if (figures.length + others.length === 0) return null;
  const inside = [counted(others.length, "more row"), counted(figures.length, "picture")].filter(Boolean).join(", ");
  return (
    <details className="comparisons" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>
        The whole comparison <span className="quiet">({inside})</span>
      </summary>
      <Errors caption="Further quantities" rows={others} />
      {open && (
        <div className="figures">
          {figures.map((figure) => (
            <Picture key={figure.id} figure={figure} origin={origin} stale={false} size="small" />
          ))}
        </div>
      )}
    </details>
  );
}

function counted(count: number, noun: string): string {
  return count === 0 ? "" : `${count} ${noun}${count === 1 ? "" : "s"}`;
}
