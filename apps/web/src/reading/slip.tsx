import { useEffect, useRef } from "react";
import type { Line, SlipContent } from "../model/slip.ts";
import { useSession, useView } from "../session-context.ts";
import { returnFocus } from "./ask-number.ts";

/** The open slip, if any: where a number comes from. Stays until it is closed. */
export function Slip() {
  const slip = useView((view) => view.slip);
  const { view } = useSession();
  const box = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (slip) box.current?.focus();
  }, [slip]);
  if (!slip) return null;
  const close = () => {
    view.setState({ slip: undefined });
    returnFocus();
  };
  const left = Math.max(8, Math.min(slip.place.left, window.innerWidth - 432));
  return (
    <div
      ref={box}
      className="slip"
      role="dialog"
      aria-label={`Where ${slip.content.title} comes from`}
      tabIndex={-1}
      style={{ left, top: slip.place.bottom + 8 }}
      onKeyDown={(event) => {
        if (event.key !== "Escape") return;
        event.stopPropagation();
        close();
      }}
    >
      <button type="button" className="slip-close" onClick={close}>
        Close
      </button>
      <SlipBody content={slip.content} />
    </div>
  );
}

function SlipBody({ content }: { readonly content: SlipContent }) {
  return (
    <dl>
      <dt>says</dt>
      <dd>
        <p className="slip-says">{content.says}</p>
        {content.otherUnits.length > 0 && <p className="quiet">{content.otherUnits.join(" · ")}</p>}
        <button type="button" onClick={() => navigator.clipboard.writeText(content.says)}>
          Copy
        </button>
      </dd>
      <dt>how sure</dt>
      <dd>
        {content.coarse === undefined
          ? "no interval: the spread of the inputs is not carried through in this version"
          : `coarse, ${content.coarse}`}
      </dd>
      {content.at.length > 0 && <Lines name="at" lines={content.at} />}
      {content.assumed.length > 0 && <Lines name="not given" lines={content.assumed} />}
      <dt>method</dt>
      <dd>
        {content.method}
        {content.checks.length > 0 && <p className="quiet">Checked in validation/: {content.checks.join(", ")}</p>}
      </dd>
      <dt>sources</dt>
      <dd>{content.sources.length > 0 ? content.sources.join(", ") : "no source"}</dd>
      <dt>from</dt>
      <dd>{content.documents.length > 0 ? <Documents documents={content.documents} /> : "these inputs alone, no document"}</dd>
      <dt>again</dt>
      <dd>
        <code>{content.again}</code>
        <p className="quiet">{content.program}</p>
      </dd>
    </dl>
  );
}

function Lines({ name, lines }: { readonly name: string; readonly lines: readonly Line[] }) {
  return (
    <>
      <dt>{name}</dt>
      <dd>
        <ul>
          {lines.map((line) => (
            <li key={line.name + line.text}>
              {line.name} {line.text}
              {line.because && <span className="quiet"> ({line.because})</span>}
            </li>
          ))}
        </ul>
      </dd>
    </>
  );
}

function Documents({ documents }: Pick<SlipContent, "documents">) {
  return (
    <ul>
      {documents.map((document) => (
        <li key={document.path}>
          <code>{document.path}</code> <span className="quiet">{document.hash.slice(0, 12)}</span>
        </li>
      ))}
    </ul>
  );
}
