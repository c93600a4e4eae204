import { type KeyboardEvent, type ReactNode, useEffect, useRef, useState } from "react";
import { FieldRow } from "../form/field-row.tsx";
import { type Condition, conditionText, steppedField } from "../model/conditions.ts";
import { effectiveText } from "../model/effective.ts";
import { shownText } from "../model/inputs.ts";
import type { Question } from "../model/question.ts";
import type { Run } from "../model/run-store.ts";
import { type Pace, stepped } from "../model/steps.ts";
import { useSession, useView } from "../session-context.ts";

interface ConditionHandleProps {
  readonly condition: Condition;
  readonly question: Question;
  readonly run: Run | undefined;
}

/** One condition: ↑ ↓ change it by a step (Shift ten steps, Alt a tenth), a click opens its inputs. */
export function ConditionHandle({ condition, question, run }: ConditionHandleProps) {
  const { address } = useSession();
  const system = useView((view) => view.system);
  const [open, setOpen] = useState(false);
  const button = useRef<HTMLButtonElement>(null);
  const field = steppedField(condition, question, run);
  const step = (direction: 1 | -1, pace: Pace, continues: boolean) => {
    if (!field) return setOpen(true);
    const typed = shownText(field, question.base, question.drafts);
    const next = stepped(typed === "" ? effectiveText(field, question, run, system).text : typed, direction, pace, field);
    if (next !== undefined) address.getState().change(field.path, next, continues);
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
        data-condition={condition.role}
        aria-expanded={open}
        onClick={() => setOpen(!open)}
        onKeyDown={(event) => onArrow(event, step)}
      >
        <span className="handle-name">{condition.label}</span>{" "}
        <span className="handle-value">{conditionText(condition, question, run, system)}</span>
      </button>
      {open && (
        <ConditionPanel label={condition.label} onClose={close} onLeave={() => setOpen(false)}>
          {field && <StepButtons label={field.label} onStep={(direction) => step(direction, "usual", false)} />}
          {condition.fields.map((one) => (
            <FieldRow key={one.path} field={one} question={question} run={run} idPrefix="condition-" />
          ))}
        </ConditionPanel>
      )}
    </span>
  );
}

function StepButtons({ label, onStep }: { readonly label: string; readonly onStep: (direction: 1 | -1) => void }) {
  return (
    <div className="steps">
      <button type="button" aria-label={`Less ${label}`} onClick={() => onStep(-1)}>
        −
      </button>
      <button type="button" aria-label={`More ${label}`} onClick={() => onStep(1)}>
        +
      </button>
    </div>
  );
}

interface ConditionPanelProps {
  readonly label: string;
  readonly onClose: () => void;
  /** The reader has gone elsewhere: the focus stays there. */
  readonly onLeave: () => void;
  readonly children: ReactNode;
}

function ConditionPanel({ label, onClose, onLeave, children }: ConditionPanelProps) {
  const box = useRef<HTMLFieldSetElement>(null);
  useEffect(() => {
    box.current?.querySelector<HTMLElement>("input, select")?.focus();
  }, []);
  useEffect(() => {
    const leave = ({ target }: Event) => {
      if (target instanceof Node && !box.current?.parentElement?.contains(target)) onLeave();
    };
    addEventListener("pointerdown", leave);
    addEventListener("focusin", leave);
    return () => {
      removeEventListener("pointerdown", leave);
      removeEventListener("focusin", leave);
    };
  }, [onLeave]);
  return (
    <fieldset
      ref={box}
      className="condition-panel"
      onKeyDown={(event) => {
        if (event.key !== "Escape") return;
        event.stopPropagation();
        onClose();
      }}
    >
      <legend className="unseen">{label}</legend>
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
