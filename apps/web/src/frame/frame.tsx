import { useEffect } from "react";
import type { NoQuestion, Question } from "../model/question.ts";
import { QuestionPage } from "../page/question-page.tsx";
import { Slip } from "../reading/slip.tsx";
import { useQuestion, useSession, useView } from "../session-context.ts";
import { AnswersColumn } from "./answers-column.tsx";
import { ColumnButton } from "./column-button.tsx";
import { useIdleBriefs } from "./idle-briefs.ts";
import { useKeys } from "./keys.ts";
import { KeysList } from "./keys-list.tsx";

/** The whole window: answers column, page, margin, and what opens over them. */
export function Frame() {
  const { view } = useSession();
  const question = useQuestion();
  const theme = useView((state) => state.theme);
  const columnOpen = useView((state) => state.columnOpen);
  useKeys();
  useEffect(() => {
    if (theme === "system") delete document.documentElement.dataset.theme;
    else document.documentElement.dataset.theme = theme;
  }, [theme]);
  return (
    <div className="frame">
      <button type="button" className="skip" onClick={skipToPage}>
        To the answer
      </button>
      <AnswersColumn />
      {columnOpen && (
        <button type="button" className="curtain" aria-label="Close the questions" onClick={() => view.setState({ columnOpen: false })} />
      )}
      {"slots" in question ? <Answering question={question} /> : <Missing question={question} />}
      <Slip />
      <KeysList />
    </div>
  );
}

function Answering({ question }: { readonly question: Question }) {
  useIdleBriefs(question);
  return <QuestionPage key={question.key} question={question} />;
}

function Missing({ question }: { readonly question: NoQuestion }) {
  useEffect(() => {
    document.title = `${question.title} · Wingseed`;
  }, [question]);
  return (
    <main className="page" id="page" data-state="empty">
      <div className="strip">
        <ColumnButton />
      </div>
      <div className="page-head">
        <h1>{question.title}</h1>
        <p className="answer quiet">{question.reason} Choose another question in the column.</p>
      </div>
    </main>
  );
}

/** A link cannot do this: the fragment of the address holds the question. */
function skipToPage(): void {
  const heading = document.querySelector<HTMLElement>("#page h1");
  heading?.setAttribute("tabindex", "-1");
  heading?.focus();
}
