import { readFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import type { Analysis, z } from "@wingseed/engine";
import { sha256 } from "./canonical.ts";
import { CannotAsk } from "./problems.ts";
import { suggestions } from "./suggestions.ts";

export type JsonSchema = Readonly<Record<string, unknown>>;

/** The analyses of one registry module, with what the host derives from them. */
export interface Registry {
  readonly url: string;
  readonly analyses: readonly Analysis[];
  /** Of the module's text and of every file that it imports by a relative path. */
  readonly hash: string;
  /** @throws CannotAsk with the nearest names */
  named(name: string): Analysis;
  inputSchema(name: string): JsonSchema;
  outputSchema(name: string): JsonSchema;
}

/**
 * Loads a registry module: it exports `analyses` and `z`, the schema library its schemas were made with.
 *
 * @param url a `file:` URL; code from the network is not run
 */
export async function loadRegistry(url: string): Promise<Registry> {
  if (!url.startsWith("file:")) throw new CannotAsk("registry", `A registry is a file; "${url}" is not. Code from the network is not run.`);
  const { analyses, z: library } = await importRegistry(url);
  const byName = new Map(analyses.map((analysis) => [analysis.name, analysis]));
  if (byName.size !== analyses.length) throw new CannotAsk("registry", `Two analyses of ${url} have the same name.`);
  const hash = await moduleHash(url);

  function named(name: string): Analysis {
    const analysis = byName.get(name);
    if (analysis) return analysis;
    throw new CannotAsk("unknown-analysis", `There is no analysis "${name}".`, suggestions(name, [...byName.keys()]));
  }
  const schemas = new Map<string, JsonSchema>();
  function schema(name: string, side: "input" | "output"): JsonSchema {
    const key = `${side} ${name}`;
    let found = schemas.get(key);
    if (!found) {
      const source = side === "input" ? named(name).inputs : named(name).outputs;
      found = library.toJSONSchema(source, { io: side, unrepresentable: "any" }) as JsonSchema;
      schemas.set(key, found);
    }
    return found;
  }
  return {
    url,
    analyses,
    hash,
    named,
    inputSchema: (name) => schema(name, "input"),
    outputSchema: (name) => schema(name, "output"),
  };
}

async function importRegistry(url: string): Promise<{ analyses: readonly Analysis[]; z: typeof z }> {
  let module: { analyses?: readonly Analysis[]; z?: typeof z };
  try {
    module = await import(/* @vite-ignore */ url);
  } catch (error) {
    throw new CannotAsk("registry", `The registry ${url} cannot be loaded: ${error instanceof Error ? error.message : String(error)}`);
  }
  if (!Array.isArray(module.analyses) || !module.z) {
    throw new CannotAsk("registry", `The registry ${url} must export "analyses" (a list) and "z" (the schema library it uses).`);
  }
  return { analyses: module.analyses, z: module.z };
}

const relativeImport = /(?:\bfrom|\bimport)\s*\(?\s*["'](\.{1,2}\/[^"'\n]+)["']/g;

/** Hash over a module and its relative imports, in the order in which they are met. */
async function moduleHash(url: string): Promise<string> {
  const parts: string[] = [];
  const seen = new Set<string>();
  const waiting = [url];
  for (let next = waiting.shift(); next !== undefined; next = waiting.shift()) {
    if (seen.has(next)) continue;
    seen.add(next);
    const text = await readFile(fileURLToPath(next.replace(/[?#].*$/, "")), "utf8").catch(() => null);
    if (text === null) continue;
    parts.push(sha256(text));
    for (const match of text.matchAll(relativeImport)) if (match[1]) waiting.push(new URL(match[1], next).href);
  }
  return sha256(parts.join("\n"));
}
