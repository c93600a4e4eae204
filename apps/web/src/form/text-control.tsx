import type { UnitSystem } from "@wingseed/reports/format";
import { useEffect, useState } from "react";
import type { Field, QuantityField } from "../model/schema.ts";
import { type FieldUnit, fieldUnit, isBare, joined, plain, splitText } from "../model/units.ts";

interface TextControlProps {
  readonly id: string;
  readonly "aria-describedby": string | undefined;
  readonly "aria-invalid": boolean | undefined;
  readonly field: Field;
  readonly text: string;
  readonly standard: string;
  readonly system: UnitSystem;
  readonly onCommit: (text: string) => void;
}

/** A typed input; the unit stands at its right end, and a typed unit takes its place. */
export function TextControl({ field, text, standard, system, onCommit, ...shared }: TextControlProps) {
  const quantity = field.kind === "quantity" ? field : undefined;
  const split = quantity ? splitText(text, quantity.quantity, system) : undefined;
  const shown = split && text !== "" ? split.number : text;
  const unit = quantity ? unitFor(quantity, text, standard, system) : undefined;
  const [typed, setTyped] = useState(shown);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a new text with the same number still replaces what was typed
  useEffect(() => setTyped(shown), [shown, text]);
  const commit = () => {
    const next = plain(typed);
    onCommit(next !== "" && unit && isBare(next) ? joined(next, unit) : next);
  };
  const hasOwnUnit = unit !== undefined && typed !== "" && !isBare(typed);
  return (
    <div className="control">
      <input
        {...shared}
        type="text"
        autoComplete="off"
        spellCheck={false}
        value={typed}
        onChange={(event) => setTyped(event.target.value)}
        onBlur={commit}
        onKeyDown={(event) => {
          if (event.key === "Enter") commit();
          if (event.key === "Escape" && typed !== shown) {
            event.stopPropagation();
            setTyped(shown);
          }
        }}
      />
      {unit && !hasOwnUnit && unit.symbol !== "" && <span className="unit">{unit.symbol}</span>}
    </div>
  );
}

function unitFor(field: QuantityField, text: string, standard: string, system: UnitSystem): FieldUnit {
  const stated = [text, standard].filter((one) => one !== "").map((one) => splitText(one, field.quantity, system));
  return stated.find((one) => one !== undefined)?.unit ?? fieldUnit(field.quantity, 0, system);
}
