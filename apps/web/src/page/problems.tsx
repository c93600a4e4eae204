import type { RunProblem } from "../model/catalogue.ts";
import { Caution } from "./caution.tsx";

interface ProblemsProps {
  readonly problems: readonly RunProblem[];
  readonly onAgain: () => void;
}

/** Why there is no answer, each reason in its own words. */
export function Problems({ problems, onAgain }: ProblemsProps) {
  return (
    <div className="problems" role="alert">
      {problems.map((problem) => (
        <Caution key={`${problem.path} ${problem.message}`} grade="stops">
          {problem.path ? (
            <>
              <a href={`#input-${problem.path}`} onClick={(event) => focusInput(event, problem.path)}>
                {problem.path}
              </a>
              {": "}
            </>
          ) : null}
          <span className="written">{problem.message}</span>
        </Caution>
      ))}
      {problems.some((problem) => problem.kind === "server-gone") && (
        <button type="button" onClick={onAgain}>
          Ask again
        </button>
      )}
    </div>
  );
}

function focusInput(event: { preventDefault(): void }, path: string | undefined): void {
  // The fragment of the address holds the question: leave it alone.
  event.preventDefault();
  const place = [`input-${path}`, `input-${path}~`].map((id) => document.getElementById(id)).find((element) => element !== null);
  // A field folded away cannot be stepped to before it is opened.
  for (let fold = place?.closest("details"); fold; fold = fold.parentElement?.closest("details")) fold.open = true;
  place?.focus();
}
