import type { Project } from "@wingseed/documents";
import type { Analysis } from "@wingseed/engine";
import { type JsonSchema, type Registry, suggestions } from "@wingseed/runner";
import { Refused } from "./exit-status.ts";
import { isFolder } from "./session.ts";

/** The inputs of an analysis that name a document of the project, by the kind of document. */
function inputsByKind(schema: JsonSchema): ReadonlyMap<string, string> {
  const properties = (schema.properties ?? {}) as Readonly<Record<string, { role?: unknown }>>;
  return new Map(Object.entries(properties).flatMap(([name, { role }]) => (typeof role === "string" ? [[role, name] as const] : [])));
}

/** "missions/morning-run.yaml" → "morning-run". */
function shortName(path: string): string {
  return path.replace(/^.*\//, "").replace(/\.[^.]+$/, "");
}

export interface NamedDocument {
  /** Input of the analysis. */
  readonly input: string;
  /** Path inside the project. */
  readonly path: string;
}

/**
 * A document that a bare word after the analysis names, by its file name: for an analysis with an input that stands for
 * such a document.
 */
export async function namedDocument(registry: Registry, analysis: Analysis, project: Project, word: string): Promise<NamedDocument> {
  const inputs = inputsByKind(registry.inputSchema(analysis.name));
  const candidates = (await project.list()).flatMap(({ path, kind }) => {
    const input = inputs.get(kind);
    return input === undefined ? [] : [{ input, path }];
  });
  const found = candidates.find(({ path }) => path === word || shortName(path) === word);
  if (found) return found;
  const names = candidates.map(({ path }) => shortName(path));
  const near = suggestions(word, names);
  const hint =
    near.length > 0
      ? `Did you mean ${near.join(" or ")}?`
      : names.length > 0
        ? `It could be ${names.join(", ")}.`
        : `"${analysis.name}" takes none.`;
  throw new Refused(`"${word}" is neither a project folder nor a document that "${analysis.name}" can be asked about. ${hint}`);
}

export interface SortedWords {
  readonly folder?: string;
  /** A file with inputs. */
  readonly inputs?: string;
  readonly names: readonly string[];
}

/** Sorts the words after an analysis into a file with inputs, a project folder and the names of documents. */
export async function sortWords(written: readonly string[]): Promise<SortedWords> {
  const [inputs, ...moreInputs] = written.filter((word) => word.endsWith(".json"));
  if (moreInputs.length > 0) throw new Refused(`One file with inputs at a time; these are several: ${[inputs, ...moreInputs].join(", ")}.`);
  const words = written.filter((word) => word !== inputs);
  const sorted = await Promise.all(words.map(async (word) => ({ word, isProject: (await isFolder(word)) || looksLikeFolder(word) })));
  const [folder, ...others] = sorted.filter(({ isProject }) => isProject).map(({ word }) => word);
  if (others.length > 0) throw new Refused(`One project at a time; these are several: ${[folder, ...others].join(", ")}.`);
  const names = sorted.filter(({ isProject }) => !isProject).map(({ word }) => word);
  return { ...(folder === undefined ? {} : { folder }), ...(inputs === undefined ? {} : { inputs }), names };
}

function looksLikeFolder(word: string): boolean {
  return word.includes("/") && !/\.(yaml|geojson)$/.test(word);
}
