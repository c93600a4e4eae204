import type { Figure } from "@wingseed/engine";
import type { Origin } from "../model/slip.ts";
import { Sentence } from "../page/sentence.tsx";
import { DataTable } from "./data-table.tsx";
import { Picture } from "./picture.tsx";
import { UprightTable } from "./upright-table.tsx";

/** One row of this many values reads better as names and values. */
const uprightColumns = 5;

interface FiguresProps {
  readonly figures: readonly Figure[];
  /** Ids of those that stand two by two where there is room. */
  readonly small: readonly string[];
  readonly origin: Origin;
  readonly stale: boolean;
}

/** The pictures and tables of an answer, the first picture as wide as the page. */
export function Figures({ figures, small, origin, stale }: FiguresProps) {
  const main = figures.find((figure) => figure.kind !== "table" && figure.kind !== "text");
  return (
    <div className="figures" data-stale={stale}>
      {figures.map((figure) => {
        const isSmall = small.includes(figure.id);
        if (figure.kind === "table" && figure.rows.length === 1 && figure.columns.length >= uprightColumns)
          return <UprightTable key={figure.id} table={figure} origin={origin} />;
        if (figure.kind === "table") return <DataTable key={figure.id} table={figure} origin={origin} small={isSmall} />;
        if (figure.kind === "text") {
          return (
            <section key={figure.id} className="figure-text" aria-label={figure.caption}>
              {figure.paragraphs.map((paragraph, index) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: paragraphs have no other name
                <p key={index}>
                  <Sentence tokens={paragraph} origin={origin} />
                </p>
              ))}
            </section>
          );
        }
        return (
          <Picture
            key={figure.id}
            figure={figure}
            origin={origin}
            stale={stale}
            size={figure === main ? "main" : isSmall ? "small" : "wide"}
          />
        );
      })}
    </div>
  );
}
