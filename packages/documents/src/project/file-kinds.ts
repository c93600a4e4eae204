import { documentKinds } from "../document/index.ts";
import { type DocumentProblem, fileProblem } from "../document-problem.ts";

export interface ListedFile {
  readonly path: string;
  /** Kind of document, `geojson` or `raster`. */
  readonly kind: string;
}

/**
 * The kind of file that a path inside a project is, or undefined when projects have no such file. A table is read wherever it is
 * named; of itself it is one in `tables/` only.
 */
export function fileKind(path: string): string | undefined {
  if (/^places\/[^/]+\.geojson$/u.test(path)) return "geojson";
  if (/^terrain\/[^/]+\.tiff?$/u.test(path)) return "raster";
  if (/\.csv$/iu.test(path)) return "table";
  return documentKinds.find(({ pathPattern }) => pathPattern.test(path))?.kind;
}

export function listed(paths: readonly string[]): readonly ListedFile[] {
  return paths.flatMap((path) => {
    const kind = fileKind(path);
    return kind === undefined || (kind === "table" && !path.startsWith("tables/")) ? [] : [{ path, kind }];
  });
}

const places = [...documentKinds.map(({ place }) => place), "places/*.geojson", "terrain/*.tif", "tables/*.csv"].join(", ");

/** Says that a path is no file of a project. */
export function unknownFile(path: string): DocumentProblem {
  const message = `${path} is no document of a project; they lie at ${places}`;
  return fileProblem(path, { kind: "missing-file", read: path, allowed: places, message });
}

/** Warns of files whose names look like documents but that nothing reads. */
export function unreadFiles(paths: readonly string[]): readonly DocumentProblem[] {
  const looksLikeDocument = /^(?:[^/]+|(?:aircraft|missions|places|terrain)\/[^/]+)\.(?:ya?ml|json|geojson|tiff?)$/iu;
  return paths
    .filter((path) => looksLikeDocument.test(path) && fileKind(path) === undefined)
    .map((path) => {
      const problem = unknownFile(path);
      return { ...problem, kind: "unlisted-file", severity: "warning", message: `this file is not read: ${problem.message}` };
    });
}
