import type { Answer, Limit } from "@wingseed/engine";
import { limitWord } from "@wingseed/reports/format";

/** This many limits stand open. */
const longest = 6;

/** Every limit as the share of it that is used, longest first, with a tick at the limit itself. */
export function LimitsLadder({ limits, answer }: { readonly limits: readonly Limit[]; readonly answer: Answer }) {
  const ordered = [...limits].sort((a, b) => Number(b.binding) - Number(a.binding) || b.share - a.share);
  const scale = Math.max(1, ...limits.map((limit) => limit.share));
  return (
    <section aria-label="What limits it">
      <h2 id="limits" tabIndex={-1}>
        What limits it
      </h2>
      <Rungs limits={ordered.slice(0, longest)} scale={scale} answer={answer} />
      {ordered.length > longest && (
        <details>
          <summary>{ordered.length - longest} more, less used</summary>
          <Rungs limits={ordered.slice(longest)} scale={scale} answer={answer} />
        </details>
      )}
    </section>
  );
}

interface RungsProps {
  readonly limits: readonly Limit[];
  readonly scale: number;
  readonly answer: Answer;
}

function Rungs({ limits, scale, answer }: RungsProps) {
  return (
    <ul className="ladder">
      {limits.map((limit) => (
        <li key={limit.name + limit.where} data-binding={limit.binding}>
          <span className="ladder-name">
            {limit.name}
            {limit.binding && <strong> {limitWord(limit, answer)}</strong>}
          </span>
          <span className="ladder-share">{Math.round(limit.share * 100)} %</span>
          <span className="ladder-bar" aria-hidden="true">
            <span style={{ width: `${(Math.max(0, limit.share) / scale) * 100}%` }} />
            <i style={{ left: `${100 / scale}%` }} />
          </span>
          <span className="ladder-where">{limit.where}</span>
        </li>
      ))}
    </ul>
  );
}
