import { aircraftDefinition, missionDefinition, projectDefinition, type z } from "@wingseed/engine";
import { addedInFormat2, aircraftFormat2 } from "../migration/index.ts";

/** A kind of document in a project folder: where it lies and what may stand in it. */
export interface DocumentKind {
  readonly kind: string;
  /** Which paths inside the project are of this kind. */
  readonly pathPattern: RegExp;
  /** The same for people. */
  readonly place: string;
  readonly schema: z.ZodType;
  /** From format n to n + 1, at index n − 1; the current format is one more than their number. */
  readonly migrations: readonly Migration[];
  /** What a migration adds that was not written, in a sentence; at the index of the migration. */
  readonly added?: readonly string[];
}

/** Turns a document of one format, as plain values with text units, into the next format. */
export type Migration = (document: Readonly<Record<string, unknown>>) => Readonly<Record<string, unknown>>;

export const documentKinds: readonly DocumentKind[] = [
  { kind: "project", pathPattern: /^project\.yaml$/u, place: "project.yaml", schema: projectDefinition, migrations: [] },
  {
    kind: "aircraft",
    pathPattern: /^aircraft\/[^/]+\.yaml$/u,
    place: "aircraft/*.yaml",
    schema: aircraftDefinition,
    migrations: [aircraftFormat2],
    added: [addedInFormat2],
  },
  { kind: "mission", pathPattern: /^missions\/[^/]+\.yaml$/u, place: "missions/*.yaml", schema: missionDefinition, migrations: [] },
];

/** The newest format of a kind of document. */
export function currentFormat(kind: Pick<DocumentKind, "migrations">): number {
  return kind.migrations.length + 1;
}
