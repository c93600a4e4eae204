import type { PageHeading } from "@wingseed/reports/draw";
import { useStore } from "zustand";
import { type Address, questionKey } from "../model/address.ts";
import { addressFrom, benchOf, questionOf } from "../model/question.ts";
import { askedText } from "../model/run-store.ts";
import { useAddress, useRun, useSession, useView } from "../session-context.ts";
import { Cautions } from "./cautions.tsx";
import { QuestionLink } from "./question-link.tsx";
import { Switches } from "./switches.tsx";

const headings: readonly PageHeading[] = ["The aircraft", "The flight", "The proof"];

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
      <div className="column-list">
        <p className="project">
          <strong>{catalogue.project.title}</strong>
          {catalogue.project.demo && <span className="tag">demo values: invented</span>}
        </p>
        {headings.map((heading) => (
          <HeadingSection key={heading} heading={heading} />
        ))}
        {bench.length > 0 && (
          <section>
            <h2>Bench</h2>
            <ul>
              {bench.map(({ name, address }) => (
                <li key={name}>
                  <Answered address={address} question={name} />
                </li>
              ))}
            </ul>
          </section>
        )}
      </div>
      <div className="column-foot">
        <Cautions />
        <Switches />
      </div>
    </nav>
  );
}

/** The questions under one heading: first those with an answer, then those that this version leaves open. */
function HeadingSection({ heading }: { readonly heading: PageHeading }) {
  const pages = useSession().catalogue.pages.filter((page) => page.heading === heading);
  const open = pages.filter((page) => page.status === "not yet");
  return (
    <section>
      <h2>{heading}</h2>
      <ul>
        {pages.map((page) =>
          page.status === "answered" ? (
            <li key={page.id}>
              <Answered address={{ place: "page", page: page.id, drafts: {} }} question={page.question} />
            </li>
          ) : null,
        )}
      </ul>
      {open.length > 0 && (
        <div className="unanswered">
          <p>Not in this version:</p>
          <ul>
            {open.map((page) => (
              <li key={page.id}>{page.question}</li>
            ))}
          </ul>
        </div>
      )}
    </section>
  );
}

function Answered({ address, question }: { readonly address: Address; readonly question: string }) {
  const run = useRun(questionKey(address));
  const brief = run?.shown?.computed.view.cases.find((one) => one !== null)?.answer.brief;
  const now = useAskedNow(address);
  const current = run?.shown?.asked === now && (run?.problems.length ?? 0) === 0;
  return (
    <QuestionLink to={address} className="question">
      <span>{question}</span>
      {brief && <span className="brief">{current ? brief : `was ${brief}`}</span>}
      {!brief && run && run.problems.length > 0 && <span className="brief">no answer: see why</span>}
      {!brief && run?.running && <span className="brief">computing</span>}
    </QuestionLink>
  );
}

/** What another question would be asked under the conditions of this page, as one text. */
function useAskedNow(target: Address): string | undefined {
  const { catalogue, address } = useSession();
  const here = useAddress();
  const remembered = useStore(address, (store) => store.remembered);
  const question = questionOf(catalogue, addressFrom(catalogue, here, target, remembered));
  return "slots" in question ? askedText(question.slots[0].analysis.name, question.slots[0].inputs) : undefined;
}
