import { useSession } from "../session-context.ts";

/** What must be read beside every number, at the foot of the column on every page. */
export function Cautions() {
  const { cautions } = useSession().catalogue.project;
  return (
    <details className="cautions">
      <summary>Estimates, not an approval to fly</summary>
      {cautions.map((caution) => (
        <p key={caution}>{caution}</p>
      ))}
    </details>
  );
}
