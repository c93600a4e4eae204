import { InputsForm } from "../form/inputs-form.tsx";
import type { CaseView } from "../model/catalogue.ts";
import { leaves } from "../model/inputs.ts";
import type { Question } from "../model/question.ts";
import type { Run } from "../model/run-store.ts";
import { Caution } from "../page/caution.tsx";
import { useSession, useView } from "../session-context.ts";
import { LimitsLadder } from "./limits-ladder.tsx";

interface MarginProps {
  readonly question: Question;
  readonly run: Run | undefined;
  readonly shown: CaseView | undefined;
}

/** Limits, cautions and inputs of the question: a column where there is room, else one line that opens. */
export function Margin({ question, run, shown }: MarginProps) {
  const { view, catalogue } = useSession();
  const open = useView((state) => state.marginOpen);
  const limits = shown?.limits ?? [];
  const warnings = run?.shown?.computed.result.warnings ?? [];
  const binding = limits.find((limit) => limit.binding) ?? [...limits].sort((a, b) => b.share - a.share)[0];
  const cautions = warnings.length + (catalogue.project.demo ? 1 : 0);
  const inputs = leaves(question.slots[0].fields).length;
  const line = [
    ...(binding ? [`${binding.name} ${Math.round(binding.share * 100)} %`] : []),
    ...(cautions > 0 ? [counted(cautions, "caution")] : []),
    counted(inputs, "input"),
  ].join(" · ");
  return (
    <aside className="margin" aria-label="Limits, cautions and inputs" data-open={open}>
      <button
        type="button"
        className="margin-line"
        aria-expanded={open}
        aria-controls="margin"
        onClick={() => view.setState({ marginOpen: !open })}
      >
        {line}
      </button>
      <div className="margin-body" id="margin">
        {shown && limits.length > 0 && <LimitsLadder limits={limits} answer={shown.answer} />}
        {cautions > 0 && (
          <section aria-label="Cautions">
            <h2>Take care ({cautions})</h2>
            {catalogue.project.demo && <Caution grade="note">Demo values: aircraft and places are invented.</Caution>}
            {warnings.map((warning) => (
              <Caution key={warning.kind + warning.message} grade={warning.grade}>
                {warning.message}
              </Caution>
            ))}
          </section>
        )}
        <InputsForm question={question} run={run} />
      </div>
    </aside>
  );
}

function counted(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? "" : "s"}`;
}
