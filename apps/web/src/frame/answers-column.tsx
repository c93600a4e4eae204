import { type Address, questionKey } from "../model/address.ts";
import { benchOf } from "../model/question.ts";
import { useRun, useSession, useView } from "../session-context.ts";
import { Cautions } from "./cautions.tsx";
import { QuestionLink } from "./question-link.tsx";
import { Switches } from "./switches.tsx";

const headings = ["The aircraft", "The flight", "The proof"] as const;

/** All questions with today's answer under each: the navigation. */
export function AnswersColumn() {
  const { catalogue, view } = useSession();
  const open = useView((state) => state.columnOpen);
  const bench = benchOf(catalogue);
  return (
    <nav
      className="column"
      id="questions"
      aria-label="Questions and answers"
      data-open={open}
      onKeyDown={(event) => event.key === "Escape" && view.setState({ columnOpen: false })}
    >
      <p className="project">
        <strong>{catalogue.project.title}</strong>
        {catalogue.project.demo && <span className="tag">demo values: invented</span>}
      </p>
      {headings.map((heading) => (
        <section key={heading}>
          <h2>{heading}</h2>
          <ul>
            {catalogue.pages
              .filter((page) => page.heading === heading)
              .map((page) => (
                <li key={page.id}>
                  {page.status === "answered" ? (
                    <Answered address={{ place: "page", page: page.id, drafts: {} }} question={page.question} />
                  ) : (
                    <Unanswered question={page.question} />
                  )}
                </li>
              ))}
          </ul>
        </section>
      ))}
      {bench.length > 0 && (
        <section>
          <h2>Bench</h2>
          <ul>
            {bench.map((analysis) => (
              <li key={analysis.name}>
                <Answered address={{ place: "bench", analysis: analysis.name, drafts: {} }} question={analysis.question} />
              </li>
            ))}
          </ul>
        </section>
      )}
      <Cautions />
      <Switches />
    </nav>
  );
}

function Answered({ address, question }: { readonly address: Address; readonly question: string }) {
  const run = useRun(questionKey(address));
  const brief = run?.shown?.computed.view.cases.find((one) => one !== null)?.answer.brief;
  const current = run?.shown?.asked === run?.asked && (run?.problems.length ?? 0) === 0;
  return (
    <QuestionLink to={address} className="question">
      <span>{question}</span>
      {brief && <span className="brief">{current ? brief : `was ${brief}`}</span>}
      {!brief && run && run.problems.length > 0 && <span className="brief">no answer: see why</span>}
    </QuestionLink>
  );
}

function Unanswered({ question }: { readonly question: string }) {
  return (
    <span className="question unanswered">
      <span>{question}</span>
      <span className="brief">not in this version</span>
    </span>
  );
}
