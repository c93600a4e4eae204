import { CannotAsk } from "@wingseed/runner";
import { registryAt } from "./commands/list.ts";
import { Refused } from "./exit-status.ts";
import type { Place } from "./place.ts";

/**
 * The words of a command line that begin with the name of an analysis, as the command that asks it: `NAME …` is
 * `run NAME …`. The names are those of the registry, also of one that the words name themselves.
 *
 * @throws Refused where the first word is neither a command nor an analysis
 */
export async function withAnalysisCommand(place: Place, words: readonly string[], commands: readonly string[]): Promise<readonly string[]> {
  const [first] = words;
  if (first === undefined || first.startsWith("-") || commands.includes(first)) return words;
  const registry = await registryAt(place, writtenRegistry(words));
  try {
    registry.named(first);
  } catch (error) {
    if (!(error instanceof CannotAsk)) throw error;
    const near = error.suggestions.length > 0 ? ` Did you mean ${error.suggestions.join(" or ")}?` : "";
    throw new Refused(
      `"${first}" is neither a command nor an analysis.${near} The commands are ${commands.join(", ")}; \`wingseed list\` names the analyses.`,
    );
  }
  return ["run", ...words];
}

function writtenRegistry(words: readonly string[]): string | undefined {
  const joined = words.find((word) => word.startsWith("--registry="));
  const at = words.indexOf("--registry");
  return joined?.slice("--registry=".length) ?? (at < 0 ? undefined : words[at + 1]);
}
