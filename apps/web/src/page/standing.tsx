import {
  comparisonFigure,
  errorText,
  type Standing as Stands,
  standingOf,
  standingSentence,
  type ValidationRow,
} from "@wingseed/reports/draw";
import { useMemo } from "react";
import type { Origin } from "../model/slip.ts";
import { Picture } from "../picture/picture.tsx";
import { useSession } from "../session-context.ts";

interface StandingProps {
  readonly outputs: unknown;
  readonly origin: Origin;
}

/** How far the answer lies from what was compared with published data, and how well that agreed. */
export function Standing({ outputs, origin }: StandingProps) {
  const { validation } = useSession().catalogue;
  const standing = useMemo(() => standingOf(outputs, validation), [outputs, validation]);
  if (!standing) return null;
  const isOutside = standing.outside.length > 0 || standing.distance === null;
  return (
    <section className="standing" aria-label="Compared with published data" data-outside={isOutside}>
      <p className={isOutside ? "care-words" : ""}>{standingSentence(standing)}</p>
      {standing.comparisons.length > 0 && <Errors standing={standing} />}
      <Comparisons rows={standing.comparisons} origin={origin} />
    </section>
  );
}

/** What the nearest check found: errors of computed less published. */
function Errors({ standing }: { readonly standing: Stands }) {
  return (
    <div className="table-scroll">
      <table>
        <caption>{standing.title}: computed less published</caption>
        <thead>
          <tr>
            {["quantity", "bias", "rms", "largest", "rows", "gate"].map((head, index) => (
              <th key={head} scope="col" className={index > 0 && index < 5 ? "number" : "words"}>
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {standing.comparisons.map((row) => (
            <tr key={row.quantity}>
              <th scope="row" className="words">
                {row.quantity}
              </th>
              <td className="number">{errorText(row.bias)}</td>
              <td className="number">{errorText(row.rms)}</td>
              <td className="number">{errorText(row.largest)}</td>
              <td className="number">{row.rows}</td>
              <td className="words">{gate(row)}</td>
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

/** The pictures of that comparison, folded until they are asked for. */
function Comparisons({ rows, origin }: { readonly rows: readonly ValidationRow[]; readonly origin: Origin }) {
  const figures = useMemo(() => rows.flatMap((row) => comparisonFigure(row) ?? []), [rows]);
  if (figures.length === 0) return null;
  return (
    <details className="comparisons">
      <summary>See the comparison ({figures.length === 1 ? "one picture" : `${figures.length} pictures`})</summary>
      <div className="figures">
        {figures.map((figure) => (
          <Picture key={figure.id} figure={figure} origin={origin} stale={false} size="small" />
        ))}
      </div>
    </details>
  );
}
