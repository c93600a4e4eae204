import type { Token } from "@wingseed/engine";
import type { UnitSystem } from "./display-unit.ts";
import { formatReading } from "./reading.ts";

/** A piece of a sentence: what to print, what to say, and the token it came from (none for the spaces between). */
export interface SentencePart {
  readonly text: string;
  readonly spoken: string;
  readonly token?: Token;
}

/** Cuts a sentence into pieces, with a space between two tokens where the writing needs one. */
export function sentenceParts(tokens: readonly Token[], options: { readonly system?: UnitSystem } = {}): readonly SentencePart[] {
  const parts: SentencePart[] = [];
  for (const token of tokens) {
    const part = partOf(token, options.system ?? "si");
    const before = parts.at(-1)?.text ?? "";
    if (before !== "" && part.text !== "" && needsSpace(before, part.text)) parts.push({ text: " ", spoken: " " });
    parts.push(part);
  }
  return parts;
}

/** A sentence as plain text. */
export function sentence(tokens: readonly Token[], options: { readonly system?: UnitSystem } = {}): string {
  return sentenceParts(tokens, options)
    .map((part) => part.text)
    .join("");
}

/** A sentence for a voice. */
export function spokenSentence(tokens: readonly Token[], options: { readonly system?: UnitSystem } = {}): string {
  return sentenceParts(tokens, options)
    .map((part) => part.spoken)
    .join("");
}

function partOf(token: Token, system: UnitSystem): SentencePart {
  if (token.kind !== "reading") return { text: token.text, spoken: token.text, token };
  const choice = {
    ...(token.unit === undefined ? {} : { unit: token.unit }),
    ...(token.datum === undefined ? {} : { datum: token.datum }),
  };
  const { text, spoken } = formatReading(token.value, token.quantity, { ...choice, system });
  return { text, spoken, token };
}

function needsSpace(before: string, after: string): boolean {
  return !/[\s(“‘[]$/u.test(before) && !/^[\s,.;:!?)”’\]]/u.test(after);
}
