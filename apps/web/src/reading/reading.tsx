import { formatReading } from "@wingseed/reports/format";
import type { MouseEvent } from "react";
import type { Origin, Questioned } from "../model/slip.ts";
import { useAskNumber } from "./ask-number.ts";

interface ReadingProps {
  readonly asked: Questioned;
  readonly origin: Origin;
  /** Text to show instead of number and unit (in tables the unit stands in the head). */
  readonly text?: string;
  readonly tabIndex?: number;
}

/** A computed number: opens where it came from. */
export function Reading({ asked, origin, text, tabIndex }: ReadingProps) {
  const ask = useAskNumber(origin);
  const choice = {
    ...(asked.unit === undefined ? {} : { unit: asked.unit }),
    ...(asked.datum === undefined ? {} : { datum: asked.datum }),
  };
  const reading = formatReading(asked.value, asked.quantity, { ...choice, system: origin.system });
  const about = origin.coarse === undefined ? "" : "≈\u202f";
  return (
    <button
      type="button"
      className="reading"
      title={`${asked.name}: where from?`}
      tabIndex={tabIndex}
      onClick={(event: MouseEvent<HTMLButtonElement>) => ask(asked, event.currentTarget)}
    >
      {about}
      {text ?? reading.text}
    </button>
  );
}
