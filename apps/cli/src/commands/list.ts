import { type AnsweredPage, answeredPages, benchParts, notYet, offeredPages, unplacedAnalyses } from "@wingseed/reports";
import { CannotAsk, loadRegistry, type Registry } from "@wingseed/runner";
import { type ExitStatus, exitStatus, Refused } from "../exit-status.ts";
import { type Place, registryUrl } from "../place.ts";
import type { Streams } from "../streams.ts";

/** The registry of the house, or the one in a file. */
export function registryAt(place: Place, written: string | undefined): Promise<Registry> {
  return loadRegistry(registryUrl(place, written)).catch((error: unknown) => {
    throw error instanceof CannotAsk ? new Refused(error.message) : error;
  });
}

/** Every analysis with its question. */
export async function listAnalyses(registry: Registry, streams: Streams, format: "table" | "json"): Promise<ExitStatus> {
  const entries = registry.analyses.map(({ name, question }) => ({ name, question }));
  if (format === "json") streams.out(`${JSON.stringify(entries, null, 2)}\n`);
  else streams.out(entries.map((entry) => `${entry.name.padEnd(widest(entries))}  ${entry.question}\n`).join(""));
  return exitStatus.done;
}

/** What `wingseed` alone prints: the questions, each with the command that answers it. */
export async function showQuestions(place: Place, streams: Streams): Promise<ExitStatus> {
  const registry = await loadRegistry(place.registryUrl);
  const known = new Set(registry.analyses.map(({ name }) => name));
  const asked = answeredPages().filter((page) => known.has(analysisOf(page)));
  const questions = asked.map((page) => ({ name: page.question, question: command(analysisOf(page)) }));
  const parts = benchParts(registry.analyses).map(({ name, analysis }) => ({ name, question: `${command(analysis)} --example` }));
  const others = unplacedAnalyses(registry.analyses).map(({ name, question }) => ({
    name: question,
    question: `${command(name)} --example`,
  }));
  const bench = [...parts, ...others];
  const all = [...questions, ...bench, ...otherCommands];
  const width = widest(all);
  const isNarrow = width + 4 + Math.max(...all.map(({ question }) => question.length)) > streams.width;
  const line = ({ name, question }: Line) => (isNarrow ? `  ${name}\n      ${question}\n` : `  ${name.padEnd(width)}  ${question}\n`);
  const lines = (entries: readonly Line[]) => entries.map(line).join("");
  const later = offeredPages(registry.analyses)
    .filter(({ status }) => status === "not yet")
    .map(({ question }) => `  ${question}\n`);
  const text = [`Wingseed ${place.version}`, lines(questions), `Parts on the bench\n${lines(bench)}`, `Also\n${lines(otherCommands)}`];
  streams.out(`${text.join("\n")}\n`);
  streams.out(`Asked of every design, but ${notYet}\n${later.join("")}`);
  return exitStatus.done;
}

interface Line {
  readonly name: string;
  readonly question: string;
}

const otherCommands: readonly Line[] = [
  { name: "See it in the browser", question: "wingseed start [PROJECT]" },
  { name: "Is every document of the project right?", question: "wingseed check [PROJECT]" },
  { name: "A document to hand over", question: "wingseed dossier [PROJECT]" },
  { name: "What may stand in a document?", question: "wingseed schema DOCUMENT" },
];

function analysisOf(page: AnsweredPage): string {
  return page.slots[0].analysis;
}

function command(name: string): string {
  return `wingseed run ${name}`;
}

function widest(entries: readonly Line[]): number {
  return Math.max(0, ...entries.map(({ name }) => name.length));
}
