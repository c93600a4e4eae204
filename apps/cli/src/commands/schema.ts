import { join } from "node:path";
import { documentKinds, documentSchema, schemaFolder, writeSchemas } from "@wingseed/documents";
import { type JsonSchema, loadRegistry, suggestions } from "@wingseed/runner";
import { resultSchema } from "@wingseed/server";
import { type ExitStatus, exitStatus, Refused } from "../exit-status.ts";
import type { Place } from "../place.ts";
import { projectFolder } from "../session.ts";
import type { Streams } from "../streams.ts";

/** Writes the schemas of all documents into a project, where the first line of a document finds them. */
export async function writeProjectSchemas(place: Place, streams: Streams, written: string | undefined): Promise<ExitStatus> {
  const folder = await projectFolder(place, written);
  for (const path of await writeSchemas(join(folder, schemaFolder))) streams.out(`${path}\n`);
  return exitStatus.done;
}

/** The JSON Schema of a kind of document, or of what an analysis takes or gives; without a name, what there is. */
export async function showSchema(place: Place, streams: Streams, name: string | undefined): Promise<ExitStatus> {
  const registry = await loadRegistry(place.registryUrl);
  const known = new Map<string, () => JsonSchema>([
    ...documentKinds.map(({ kind }) => [kind, () => documentSchema(kind) as JsonSchema] as const),
    ["result", () => resultSchema({})],
    ...registry.analyses.flatMap((analysis) => [
      [`inputs:${analysis.name}`, () => registry.inputSchema(analysis.name)] as const,
      [`result:${analysis.name}`, () => resultSchema(registry.outputSchema(analysis.name))] as const,
    ]),
  ]);
  if (name === undefined) {
    streams.out(`${[...known.keys()].join("\n")}\n`);
    return exitStatus.done;
  }
  const schema = known.get(name);
  if (!schema) {
    const near = suggestions(name, [...known.keys()]);
    throw new Refused(
      `There is no schema "${name}". ${near.length > 0 ? `Did you mean ${near.join(" or ")}?` : `There are: ${[...known.keys()].join(", ")}.`}`,
    );
  }
  streams.out(`${JSON.stringify(schema(), null, 2)}\n`);
  return exitStatus.done;
}
