import { QuestionLink } from "../frame/question-link.tsx";
import type { Bench } from "../model/question.ts";

/** The parts on the bench: one is in front of us, the others a step away. */
export function PartChooser({ bench }: { readonly bench: Bench }) {
  return (
    <nav className="parts" aria-label={bench.title}>
      <ul>
        {bench.parts.map((part) => (
          <li key={part.analysis}>
            <QuestionLink to={part.address} className="part">
              {part.name}
            </QuestionLink>
          </li>
        ))}
      </ul>
    </nav>
  );
}
