import { type KeyboardEvent, type ReactNode, useEffect, useRef, useState } from "react";
import { FieldRow } from "../form/field-row.tsx";
import { effectiveText } from "../model/effective.ts";
import { shownText } from "../model/inputs.ts";
import type { Question } from "../model/question.ts";
import type { Run } from "../model/run-store.ts";
import type { Field } from "../model/schema.ts";
import { type Pace, stepped } from "../model/steps.ts";
import { useSession, useView } from "../session-context.ts";

interface ConditionHandleProps {
  readonly field: Field;
  readonly question: Question;
  readonly run: Run | undefined;
}

/** One condition: ↑ ↓ change it by a step (Shift ten steps, Alt a tenth), a click opens it for typing. */
export function ConditionHandle({ field, question, run }: ConditionHandleProps) {
  const { address } = useSession();
  const system = useView((view) => view.system);
  const [open, setOpen] = useState(false);
  const button = useRef<HTMLButtonElement>(null);
  const effective = effectiveText(field, question, run, system);
  const step = (direction: 1 | -1, pace: Pace, continues: boolean) => {
    if (field.kind !== "quantity") return setOpen(true);
    const typed = shownText(field, question.base, question.drafts);
    const next = stepped(typed === "" ? effective.text : typed, direction, pace, field);
    if (next === undefined) setOpen(true);
    else address.getState().change(field.path, next, continues);
  };
  const close = () => {
    setOpen(false);
    button.current?.focus();
  };
  return (
    <span className="condition">
      <button
        ref={button}
        type="button"
        className="handle"
        data-condition={field.path}
        aria-expanded={open}
        title={field.description}
        onClick={() => setOpen(!open)}
        onKeyDown={(event) => onArrow(event, step)}
      >
        <span className="handle-name">{field.label}</span>{" "}
        <span className="handle-value">{effective.text === "" ? "standard" : effective.text}</span>
      </button>
      {open && (
        <ConditionPanel onClose={close}>
          {field.kind === "quantity" && (
            <div className="steps">
              <button type="button" aria-label={`Less ${field.label}`} onClick={() => step(-1, "usual", false)}>
                −
              </button>
              <button type="button" aria-label={`More ${field.label}`} onClick={() => step(1, "usual", false)}>
                +
              </button>
            </div>
          )}
          <FieldRow field={field} question={question} run={run} idPrefix="condition-" />
        </ConditionPanel>
      )}
    </span>
  );
}

function ConditionPanel({ onClose, children }: { readonly onClose: () => void; readonly children: ReactNode }) {
  const box = useRef<HTMLFieldSetElement>(null);
  useEffect(() => {
    box.current?.querySelector<HTMLElement>("input, select")?.focus();
  }, []);
  return (
    <fieldset
      ref={box}
      className="condition-panel"
      onKeyDown={(event) => {
        if (event.key !== "Escape") return;
        event.stopPropagation();
        onClose();
      }}
      onBlur={(event) => {
        if (event.relatedTarget instanceof Node && !event.currentTarget.parentElement?.contains(event.relatedTarget)) onClose();
      }}
    >
      <legend className="unseen">Change this condition</legend>
      {children}
      <button type="button" onClick={onClose}>
        Close
      </button>
    </fieldset>
  );
}

function onArrow(event: KeyboardEvent, step: (direction: 1 | -1, pace: Pace, continues: boolean) => void): void {
  if (event.key !== "ArrowUp" && event.key !== "ArrowDown") return;
  event.preventDefault();
  event.stopPropagation();
  step(event.key === "ArrowUp" ? 1 : -1, event.shiftKey ? "coarse" : event.altKey ? "fine" : "usual", event.repeat);
}
