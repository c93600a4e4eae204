import type { Raster, ReadDocument } from "@wingseed/engine";

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
