import type { Figure } from "@wingseed/engine";
import { drawFigure, figureCsv, lightTheme, svgText } from "@wingseed/reports/draw";
import { saveFile } from "../browser/save-file.ts";
import type { Origin } from "../model/slip.ts";

const exportWidth = 960;

/** The picture and its numbers as files. Made in the page: nothing leaves this machine. */
export function ExportButtons({ figure, origin }: { readonly figure: Figure; readonly origin: Origin }) {
  const name = `${origin.slot.analysis.name}-${figure.id}`;
  const coarse = origin.coarse !== undefined;
  // A coarse result is not handed on as if it were exact.
  if (coarse) return <span className="small quiet">Files when exact</span>;
  return (
    <>
      {figure.kind !== "table" && (
        <button
          type="button"
          className="quiet-button"
          data-key="x"
          onClick={() =>
            saveFile(
              `${name}.svg`,
              "image/svg+xml",
              svgText(drawFigure(figure, { width: exportWidth, theme: lightTheme, system: origin.system })),
            )
          }
        >
          SVG
        </button>
      )}
      <button type="button" className="quiet-button" onClick={() => saveFile(`${name}.csv`, "text/csv", figureCsv(figure))}>
        CSV
      </button>
    </>
  );
}
