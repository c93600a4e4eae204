import type { Raster, ReadDocument, z } from "@wingseed/engine";

/** One complaint about a document: where, and a sentence with what was read and what is allowed. */
export interface DocumentComplaint {
  readonly file: string;
  readonly line?: number;
  readonly column?: number;
  readonly message: string;
}

export type Reading<Value> =
  | { readonly value: Value; readonly problems?: never }
  | { readonly problems: readonly DocumentComplaint[]; readonly value?: never };

/** Where documents and rasters come from. Paths are relative to the project folder, with forward slashes. */
export interface ProjectSource {
  readonly folder: string;
  readDocument(path: string): Promise<Reading<ReadDocument>>;
  readRaster(path: string): Promise<Reading<Raster>>;
}

/** What reading given inputs brought: SI numbers, or every complaint. */
export interface InputReading {
  readonly inputs: unknown;
  readonly problems: readonly { readonly path: readonly PropertyKey[]; readonly message: string; readonly severity: "error" | "warning" }[];
}

/** Turns numbers written with units into SI by the schema of the inputs; refuses names and units that the schema does not know. */
export type InputReader = (schema: z.ZodType, raw: unknown) => InputReading;
