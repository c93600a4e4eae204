import { useSession } from "../session-context.ts";

/** What must be read beside every number. The project may add its own. */
export function Cautions() {
  const { project } = useSession().catalogue;
  return (
    <details className="cautions">
      <summary>Estimates, not an approval to fly</summary>
      <p>
        These are preliminary engineering estimates. They approve no flight: the pilot, the operator and the authority decide, and local
        rules and licensed practice come before anything written here.
      </p>
      <p>
        Prove every figure in flight tests under controlled conditions before people are overflown. Rotating blades and charged batteries
        injure; follow their makers’ instructions.
      </p>
      {project.cautions.map((caution) => (
        <p key={caution}>{caution}</p>
      ))}
      {project.demo && <p>This project is invented; its verdicts rest on demo values.</p>}
    </details>
  );
}
