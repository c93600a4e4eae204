import type { ReactNode } from "react";

export type Grade = "stops" | "care" | "note";

const gradeWords: Readonly<Record<Grade, string>> = { stops: "Stops", care: "Care", note: "Note" };

/** The sign of a grade: full, half or empty square. */
export function GradeSign({ grade }: { readonly grade: Grade }) {
  const filled = grade === "stops" ? 10 : grade === "care" ? 5 : 0;
  return (
    <svg className={`sign ${grade}`} width="12" height="12" viewBox="0 0 12 12" aria-hidden="true">
      <rect x="1" y="1" width="10" height="10" fill="none" stroke="currentColor" strokeWidth="1.5" />
      {filled > 0 && <rect x="1" y="1" width={filled} height="10" fill="currentColor" />}
    </svg>
  );
}

/** One thing to know before an answer is used: sign, word, sentence. */
export function Caution({ grade, children }: { readonly grade: Grade; readonly children: ReactNode }) {
  return (
    <div className={`caution ${grade}`}>
      <GradeSign grade={grade} />
      <div>
        <strong>{gradeWords[grade]}</strong> {children}
      </div>
    </div>
  );
}
