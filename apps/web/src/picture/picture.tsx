import type { Figure } from "@wingseed/engine";
import { drawFigure, figureTable, plotPlace } from "@wingseed/reports/draw";
import { type RefObject, useEffect, useId, useLayoutEffect, useMemo, useRef, useState } from "react";
import { readableFigure } from "../model/cursor.ts";
import type { Origin } from "../model/slip.ts";
import { CursorPad, CursorRow } from "./cursor.tsx";
import { DataTable } from "./data-table.tsx";
import { ExportButtons } from "./export-buttons.tsx";
import { svgElement } from "./svg-element.ts";

interface PictureProps {
  readonly figure: Figure;
  readonly origin: Origin;
  readonly stale: boolean;
  /** The main picture is the highest; small ones stand two by two where there is room. */
  readonly size: "main" | "wide" | "small";
}

/** One picture: drawn anew for each width, read by a cursor, with its numbers and files a key away. */
export function Picture({ figure, origin, stale, size }: PictureProps) {
  const [host, width] = useWidth();
  const [tableShown, showTable] = useState(false);
  const coarse = origin.coarse !== undefined;
  const drawn = useMemo(
    () =>
      width === undefined
        ? undefined
        : drawFigure(figure, {
            width,
            system: origin.system,
            grade: coarse ? "coarse" : "exact",
            stale,
            ...plotHeight(figure, size),
          }),
    [figure, width, origin.system, coarse, stale, size],
  );
  const canvas = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    if (drawn) canvas.current?.replaceChildren(svgElement(drawn));
  }, [drawn]);
  const readable = useMemo(() => readableFigure(figure), [figure]);
  const table = useMemo(() => (tableShown ? figureTable(figure) : undefined), [figure, tableShown]);
  const place = drawn && plotPlace(drawn);
  const tableId = useId();
  return (
    <figure className={size === "small" ? "picture" : "picture wide-picture"} data-picture={figure.id}>
      <figcaption>{figure.caption}</figcaption>
      <div className="canvas" ref={host}>
        <div ref={canvas} />
        {readable && place && <CursorPad readable={readable} place={place} system={origin.system} />}
      </div>
      {readable && <CursorRow readable={readable} origin={origin} hint={size === "main"} />}
      <div className="picture-tools">
        <button
          type="button"
          className="quiet-button"
          data-key="t"
          aria-expanded={tableShown}
          aria-controls={tableId}
          onClick={() => showTable(!tableShown)}
        >
          {tableShown ? "Hide data table" : "Data table"}
        </button>
        <ExportButtons figure={figure} origin={origin} />
      </div>
      <div id={tableId}>{table && <DataTable table={table} origin={origin} />}</div>
    </figure>
  );
}

/** Heights of plots that are not the main picture [px]; planes and courses keep their own. */
function plotHeight(figure: Figure, size: PictureProps["size"]): { readonly plotHeight?: number } {
  const keepsOwn = size === "main" || figure.kind === "profile" || (figure.kind === "lines" && figure.plane === true && size === "wide");
  return keepsOwn ? {} : { plotHeight: size === "wide" ? 200 : 160 };
}

/** Width of an element [whole px], followed as it changes. */
function useWidth(): readonly [RefObject<HTMLDivElement | null>, number | undefined] {
  const element = useRef<HTMLDivElement>(null);
  const [width, setWidth] = useState<number>();
  useEffect(() => {
    const box = element.current;
    if (!box) return undefined;
    const observer = new ResizeObserver(([entry]) => {
      if (entry) setWidth(Math.max(240, Math.floor(entry.contentRect.width)));
    });
    observer.observe(box);
    return () => observer.disconnect();
  }, []);
  return [element, width];
}
