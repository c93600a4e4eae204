import type { HandleToken, Token } from "@wingseed/engine";
import { type SentencePart, sentenceParts } from "@wingseed/reports/format";
import { Fragment } from "react";
import { words } from "../model/schema.ts";
import type { Origin } from "../model/slip.ts";
import { Reading } from "../reading/reading.tsx";

interface SentenceProps {
  readonly tokens: readonly Token[];
  readonly origin: Origin;
}

/** A sentence whose numbers can be questioned and whose handles lead to the field they change. */
export function Sentence({ tokens, origin }: SentenceProps) {
  return clusters(sentenceParts(tokens, { system: origin.system })).map(({ before, part, after }, index) => (
    // biome-ignore lint/suspicious/noArrayIndexKey: pieces of a sentence have no other name
    <Fragment key={`${index} ${part?.text}`}>
      {part ? (
        <span className="unbroken">
          {before}
          <Piece part={part} origin={origin} />
          {after}
        </span>
      ) : (
        before
      )}
    </Fragment>
  ));
}

interface Cluster {
  readonly before: string;
  readonly part?: SentencePart;
  readonly after: string;
}

/** Keeps a bracket or a full stop on the line of the number that it belongs to. */
function clusters(parts: readonly SentencePart[]): readonly Cluster[] {
  const made: Cluster[] = [];
  for (const part of parts) {
    const last = made.at(-1);
    if (part.token && part.token.kind !== "words") {
      const [, text = "", opening = ""] = /^(.*?)([([“‘]*)$/su.exec(last && !last.part ? last.before : "") ?? [];
      if (last && !last.part) made[made.length - 1] = { before: text, after: "" };
      made.push({ before: opening, part, after: "" });
      continue;
    }
    const [, closing = "", rest = ""] = /^([.,;:!?)\]”’]*)(.*)$/su.exec(part.text) ?? [];
    if (last?.part) {
      made[made.length - 1] = { ...last, after: last.after + closing };
      made.push({ before: rest, after: "" });
    } else if (last) made[made.length - 1] = { before: last.before + part.text, after: "" };
    else made.push({ before: part.text, after: "" });
  }
  return made;
}

function Piece({ part, origin }: { readonly part: SentencePart; readonly origin: Origin }) {
  const { token } = part;
  if (token?.kind === "handle") return <Handle token={token} />;
  if (token?.kind !== "reading") return part.text;
  const { value, quantity, unit, datum, path } = token;
  const more = { ...(unit === undefined ? {} : { unit }), ...(datum === undefined ? {} : { datum }) };
  return <Reading asked={{ value, quantity, name: nameOf(path), ...more }} origin={origin} />;
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
