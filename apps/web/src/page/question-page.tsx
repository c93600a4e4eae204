import { type ReactNode, useEffect, useMemo, useState } from "react";
import { ConditionsStrip } from "../frame/conditions-strip.tsx";
import { Margin } from "../frame/margin.tsx";
import { QuestionLink } from "../frame/question-link.tsx";
import type { CaseView } from "../model/catalogue.ts";
import type { Question, Slot } from "../model/question.ts";
import { askedText, pageState, type Run } from "../model/run-store.ts";
import { command, type Origin } from "../model/slip.ts";
import { Figures } from "../picture/figures.tsx";
import { useRun, useSession, useView } from "../session-context.ts";
import { AnswerSentence } from "./answer.tsx";
import { PartChooser } from "./part-chooser.tsx";
import { PartSource } from "./part-source.tsx";
import { Problems } from "./problems.tsx";
import { ProgressLine } from "./progress-line.tsx";
import { Standing } from "./standing.tsx";

/** One question with its answer, pictures, tables and margin. */
export function QuestionPage({ question }: { readonly question: Question }) {
  const { runs } = useSession();
  const main = question.slots[0];
  const run = useRun(main.key);
  const shown = useShown(main, run);
  const state = pageState(run, askedText(main.analysis.name, main.inputs));
  useEffect(() => {
    for (const slot of question.slots) runs.getState().ask(slot.key, slot.analysis.name, slot.inputs);
    document.title = `${question.title} · Wingseed`;
  }, [question, runs]);
  const again = () => runs.getState().ask(main.key, main.analysis.name, main.inputs, true);
  return (
    <main
      className="page"
      id="page"
      data-state={state}
      data-question={question.key}
      data-bench={question.bench !== undefined}
      aria-busy={run?.running ?? false}
    >
      <ConditionsStrip question={question} run={run} />
      <div className="page-head">
        {question.bench && <PartChooser bench={question.bench} />}
        <h1>{question.title}</h1>
        {question.bench && <PartSource question={question} />}
        {run?.running && <ProgressLine progress={run.progress} onStop={() => runs.getState().stop(main.key)} />}
        <div className="answer-block">
          {run && run.problems.length > 0 && <Problems problems={run.problems} onAgain={again} />}
          <AnswerSentence run={run} shown={shown.view} origin={shown.origin} onCompute={again} />
          {shown.choice}
        </div>
        {shown.origin && <Standing outputs={shown.outputs} origin={shown.origin} />}
        <p className="unseen" role="status">
          {state === "exact" ? (shown.view?.answer.brief ?? "") : ""}
        </p>
      </div>
      <Margin question={question} run={run} shown={shown.view} />
      <div className="pictures">
        <SlotPictures slot={main} />
        {question.slots.slice(1).map((slot) => (
          <SlotPictures key={slot.key} slot={slot} />
        ))}
        {question.next && (
          <p className="next">
            Next: <QuestionLink to={question.next.address}>{question.next.title}</QuestionLink>
          </p>
        )}
        <PrintedFoot slot={main} run={run} />
      </div>
    </main>
  );
}

/** On paper only: how to compute it again, by what program, and what must be read beside it. */
function PrintedFoot({ slot, run }: { readonly slot: Slot; readonly run: Run | undefined }) {
  const { cautions } = useSession().catalogue.project;
  const provenance = run?.shown?.computed.result.provenance;
  return (
    <div className="print-only">
      <code>{command(slot.analysis.name, slot.inputs)}</code>
      {provenance && (
        <p>
          {provenance.program.name} {provenance.program.version}, registry {provenance.registryHash.slice(0, 12)};{" "}
          {provenance.documents.map((document) => `${document.path} ${document.hash.slice(0, 12)}`).join(", ")}
        </p>
      )}
      <p>{cautions.join(" ")}</p>
    </div>
  );
}

/** The pictures of one slot, in the order that the page wants. */
function SlotPictures({ slot }: { readonly slot: Slot }) {
  const run = useRun(slot.key);
  const { view, origin } = useShown(slot, run);
  if (!run || !view || !origin) return null;
  const wanted = slot.figures ? slot.figures.flatMap((id) => view.figures.find((figure) => figure.id === id) ?? []) : view.figures;
  const first = slot.first.flatMap((id) => wanted.find((figure) => figure.id === id) ?? []);
  const figures = [...first, ...wanted.filter((figure) => !first.includes(figure))];
  const before = run.shown?.asked !== run.asked;
  return <Figures figures={figures} small={slot.small} origin={origin} stale={before && !run.running} />;
}

interface ShownCase {
  readonly view: CaseView | undefined;
  readonly origin: Origin | undefined;
  readonly outputs: unknown;
  readonly choice: ReactNode;
}

/** The case in front of the reader: the first with an answer, or the one chosen where there are several. */
function useShown(slot: Slot, run: Run | undefined): ShownCase {
  const system = useView((view) => view.system);
  const [chosen, choose] = useState(0);
  const shown = run?.shown;
  const cases = shown?.computed.view.cases ?? [];
  const index = cases[chosen] ? chosen : cases.findIndex((one) => one !== null);
  const origin = useMemo(
    (): Origin | undefined =>
      shown && {
        slot,
        inputs: shown.inputs,
        result: shown.computed.result,
        system,
        ...(shown.grade === "coarse" ? { coarse: shown.statedError ?? "first picture" } : {}),
      },
    [shown, slot, system],
  );
  return {
    view: cases[index] ?? undefined,
    origin,
    outputs: shown?.computed.result.cases[index]?.outputs,
    choice: cases.length > 1 ? <CaseChoice count={cases.length} index={index} onChoose={choose} /> : null,
  };
}

function CaseChoice({
  count,
  index,
  onChoose,
}: {
  readonly count: number;
  readonly index: number;
  readonly onChoose: (index: number) => void;
}) {
  return (
    <label className="small">
      Case{" "}
      <select value={index} onChange={(event) => onChoose(Number(event.target.value))}>
        {Array.from({ length: count }, (_, each) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: cases are known by their place
          <option key={each} value={each}>
            {each + 1}
          </option>
        ))}
      </select>{" "}
      of {count}
    </label>
  );
}
