import type { CaseView } from "../model/catalogue.ts";
import { isStale, type Run } from "../model/run-store.ts";
import type { Origin } from "../model/slip.ts";
import { Sentence } from "./sentence.tsx";

interface AnswerProps {
  readonly run: Run | undefined;
  readonly shown: CaseView | undefined;
  readonly origin: Origin | undefined;
  readonly onCompute: () => void;
}

/** The sentence that answers the question; of an earlier question when there is none for this one. */
export function AnswerSentence({ run, shown, origin, onCompute }: AnswerProps) {
  if (!run || !shown || !origin) {
    return (
      <p className="answer quiet">
        {run?.running || !run ? "Computing the first answer." : run.problems.length > 0 ? "" : "Not computed."}
      </p>
    );
  }
  const stale = isStale(run);
  const before = run.shown?.asked !== run.asked;
  return (
    <>
      <p className={`answer${before ? " quiet" : ""}`}>
        {stale && "Before your change: "}
        <Sentence tokens={shown.answer.sentence} origin={origin} />
      </p>
      {origin.coarse !== undefined && <p className="small quiet">Coarse (≈): {origin.coarse}</p>}
      {stale && run.problems.length === 0 && (
        <button type="button" className="compute" onClick={onCompute}>
          Compute
        </button>
      )}
    </>
  );
}
