import { CannotAsk } from "@wingseed/runner";
import { askedCases, sortedSettings } from "../asked-cases.ts";
import { type ExitStatus, Refused, statusOf } from "../exit-status.ts";
import { type Format, resultText } from "../formats.ts";
import { interruptible } from "../interrupt.ts";
import { namedDocument, sortWords } from "../named-document.ts";
import { writeWhole } from "../output-file.ts";
import type { Place } from "../place.ts";
import { progressLine } from "../progress-line.ts";
import { publishedSources } from "../published-sources.ts";
import { type Session, withSession } from "../session.ts";
import type { Streams } from "../streams.ts";

export interface RunOptions {
  readonly set?: readonly string[];
  readonly sweep?: readonly string[];
  readonly input?: string;
  readonly example?: boolean;
  readonly format: Format;
  readonly figure?: string;
  readonly output?: string;
  readonly registry?: string;
  readonly workers?: number;
  readonly cache: boolean;
}

/** Asks one analysis, writes its result. */
export async function runAnalysis(
  place: Place,
  streams: Streams,
  name: string,
  words: readonly string[],
  written: RunOptions,
): Promise<ExitStatus> {
  const { folder, inputs, names } = await sortWords(words);
  if (inputs !== undefined && written.input !== undefined) throw new Refused(`Inputs come from ${inputs} or from --input, not from both.`);
  const options = inputs === undefined ? written : { ...written, input: inputs };
  const settings = sortedSettings(options.set ?? []);
  return withSession(place, { ...options, project: folder, changes: settings.changes }, async (session) => {
    const { runner } = session;
    const analysis = namedAnalysis(session, name);
    const documents = await Promise.all(names.map((word) => namedDocument(runner.registry, analysis, session.project, word)));
    const set = [...documents.map(({ input, path }) => `inputs.${input}=${path}`), ...settings.inputs];
    const cases = await askedCases(analysis, { input: options.input, example: options.example, set, sweep: options.sweep ?? [] });
    const line = progressLine(streams);
    const result = await interruptible((signal) => runner.run({ analysis: name, cases, signal, onProgress: line.show })).finally(
      line.close,
    );
    const view = runner.view(result);
    const { content, remarks } = resultText({ runner, analysis, result, view }, options.format, {
      figure: options.figure,
      streams,
      toFile: options.output !== undefined,
      validation: (await publishedSources(place)).validation,
    });
    if (options.output === undefined) streams.out(content);
    else await writeWhole(options.output, content);
    streams.err(remarks);
    if (runner.cachePlace.kind === "memory" && options.cache) streams.err(`Results are not kept: ${runner.cachePlace.because}.\n`);
    const isBare = options.input === undefined && !options.example && set.length === 0;
    if (isBare && result.cases[0]?.problem?.kind === "invalid-inputs") streams.err("With --example it is asked with sample inputs.\n");
    const refusals = new Set(result.cases.flatMap(({ problem }) => (problem ? [problem.message] : [])));
    if (options.format !== "table") for (const message of refusals) streams.err(`${message}\n`);
    return statusOf(result, view);
  });
}

function namedAnalysis({ runner }: Session, name: string) {
  try {
    return runner.registry.named(name);
  } catch (error) {
    if (!(error instanceof CannotAsk)) throw error;
    const near = error.suggestions.length > 0 ? ` Did you mean ${error.suggestions.join(" or ")}?` : " `wingseed list` names them all.";
    throw new Refused(error.message + near);
  }
}
