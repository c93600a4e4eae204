import { axisReading, type PlotPlace } from "@wingseed/reports/draw";
import { formatReading, type UnitSystem } from "@wingseed/reports/format";
import { type KeyboardEvent, type PointerEvent, useMemo } from "react";
import { lineReadings, nearestIndex, type Readable } from "../model/cursor.ts";
import { askedOf, type Origin } from "../model/slip.ts";
import { Reading } from "../reading/reading.tsx";
import { useSession, useView } from "../session-context.ts";

interface CursorPadProps {
  readonly readable: Readable;
  readonly place: PlotPlace;
  readonly system: UnitSystem;
}

/** Lies over the plot and moves the cursor by pointer or arrow keys; all pictures over the same axis follow. */
export function CursorPad({ readable, place, system }: CursorPadProps) {
  const { view } = useSession();
  const index = useCursorIndex(readable);
  const { axis, places, figure } = readable;
  const width = place.right - place.left;
  const [from, to] = place.xDomain;
  const x = index === undefined ? undefined : places[index];
  const set = (next: number) => {
    const at = places[Math.min(places.length - 1, Math.max(0, next))];
    if (at !== undefined && at !== x) view.setState({ cursor: { axis: axis.label, x: at } });
  };
  const onPointer = (event: PointerEvent<HTMLDivElement>) => {
    const share = (event.clientX - event.currentTarget.getBoundingClientRect().left) / width;
    set(nearestIndex(places, from + share * (to - from)));
  };
  return (
    <div
      className="cursor-pad"
      role="slider"
      tabIndex={0}
      aria-label={`Cursor over ${axis.label}: ${figure.caption}`}
      aria-valuemin={0}
      aria-valuemax={places.length - 1}
      aria-valuenow={index ?? 0}
      aria-valuetext={x === undefined ? "nothing read yet" : spoken(readable, x, system)}
      style={{ left: place.left, top: place.top, width, height: place.bottom - place.top }}
      onPointerMove={onPointer}
      onPointerDown={onPointer}
      onKeyDown={(event) => {
        const next = placeByKey(event, index, places.length);
        if (next === undefined) return;
        event.preventDefault();
        set(next);
      }}
    >
      {x !== undefined && <div className="cursor-line" style={{ left: ((x - from) / (to - from)) * width }} />}
    </div>
  );
}

function placeByKey(event: KeyboardEvent, index: number | undefined, count: number): number | undefined {
  if (event.altKey) return undefined;
  const jump = event.shiftKey ? 10 : 1;
  switch (event.key) {
    case "ArrowLeft":
      return (index ?? count) - jump;
    case "ArrowRight":
      return (index ?? -1) + jump;
    case "Home":
      return 0;
    case "End":
      return count - 1;
    default:
      return undefined;
  }
}

/** The values of every line where the cursor stands, in a row that keeps its place. */
export function CursorRow({ readable, origin, hint }: { readonly readable: Readable; readonly origin: Origin; readonly hint: boolean }) {
  const index = useCursorIndex(readable);
  const x = index === undefined ? undefined : readable.places[index];
  const { axis, figure } = readable;
  const readings = useMemo(() => (x === undefined ? [] : lineReadings(figure, x, origin.system)), [figure, x, origin.system]);
  if (x === undefined)
    return <p className="cursor-row quiet">{hint && "Point at the picture, or reach it with Tab, and read values with ← →."}</p>;
  const at = axisReading(x, axis, origin.system).text;
  return (
    <dl className="cursor-row">
      <div>
        <dt>{axis.label}</dt>
        <dd>{at}</dd>
      </div>
      {readings.map(({ column, value }) => (
        <div key={`${column.label} ${column.quantity}`}>
          <dt>{column.label}</dt>
          <dd>{value === null ? "–" : <Reading asked={{ ...askedOf(column), value, row: [`${axis.label} ${at}`] }} origin={origin} />}</dd>
        </div>
      ))}
    </dl>
  );
}

function useCursorIndex({ axis, places }: Readable): number | undefined {
  const cursor = useView((view) => view.cursor);
  return cursor?.axis === axis.label ? nearestIndex(places, cursor.x) : undefined;
}

function spoken({ figure, axis }: Readable, x: number, system: UnitSystem): string {
  const values = lineReadings(figure, x, system).flatMap(({ column, value }) => {
    if (value === null) return [];
    const { quantity, name, ...choice } = askedOf(column);
    return [`${name} ${formatReading(value, quantity, { ...choice, system }).spoken}`];
  });
  return [`${axis.label} ${axisReading(x, axis, system).spoken}`, ...values].join(", ");
}
