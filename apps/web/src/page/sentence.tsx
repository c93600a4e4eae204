import type { HandleToken, Token } from "@wingseed/engine";
import { sentenceParts } from "@wingseed/reports/format";
import { words } from "../model/schema.ts";
import type { Origin } from "../model/slip.ts";
import { Reading } from "../reading/reading.tsx";

interface SentenceProps {
  readonly tokens: readonly Token[];
  readonly origin: Origin;
}

/** A sentence whose numbers can be questioned and whose handles lead to the field they change. */
export function Sentence({ tokens, origin }: SentenceProps) {
  const parts = sentenceParts(tokens, { system: origin.system });
  return parts.map((part, index) => {
    const key = `${index} ${part.text}`;
    const token = part.token;
    if (token?.kind === "reading") {
      const { value, quantity, unit, datum, path } = token;
      const more = { ...(unit === undefined ? {} : { unit }), ...(datum === undefined ? {} : { datum }) };
      return <Reading key={key} asked={{ value, quantity, name: nameOf(path), ...more }} origin={origin} />;
    }
    if (token?.kind === "handle") return <Handle key={key} token={token} />;
    return <span key={key}>{part.text}</span>;
  });
}

function Handle({ token }: { readonly token: HandleToken }) {
  const target = token.target.replace(/^\//, "").replaceAll("/", ".");
  return (
    <button type="button" className="handle" onClick={() => document.getElementById(`input-${target}`)?.focus()}>
      {token.text}
    </button>
  );
}

/** "/summary/hoverPower" as "hover power". */
function nameOf(path: string): string {
  const parts = path.split("/").filter((part) => part !== "" && !/^\d+$/.test(part));
  return words(parts.at(-1) ?? "value");
}
