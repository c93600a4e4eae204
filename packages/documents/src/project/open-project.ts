import type { ProjectDefinition, Raster, ReadDocument } from "@wingseed/engine";
import { type DocumentKind, type DocumentReading, type DocumentText, documentKinds, readYamlDocument } from "../document/index.ts";
import { type DocumentProblem, fileProblem, inReadingOrder } from "../document-problem.ts";
import { readGeoJson } from "../geojson/index.ts";
import { largestFile } from "../geotiff/index.ts";
import { readTable } from "../table/index.ts";
import { checkProject } from "./check-project.ts";
import { fileKind, type ListedFile, listed, unknownFile } from "./file-kinds.ts";
import { type FileMark, locate, locateIn, projectFiles, readLocated } from "./project-folder.ts";
import { placedRaster, type RasterFile, type RasterReading, readRasterFile } from "./project-raster.ts";

/** A value with what deserves a look, or every problem that keeps it from being used. */
export type Reading<Value> =
  | { readonly value: Value; readonly warnings: readonly DocumentProblem[]; readonly problems?: never }
  | { readonly problems: readonly DocumentProblem[]; readonly value?: never };

/** A project folder. Reads on demand, reads again only what changed, and never throws for what stands in a file. */
export interface Project {
  readonly folder: string;
  readDocument(path: string): Promise<Reading<ReadDocument>>;
  readRaster(path: string): Promise<Reading<Raster>>;
  /** Every file of the folder that is of a known kind, sorted by path. */
  list(): Promise<readonly ListedFile[]>;
  /** Every problem of every document, in reading order. */
  check(): Promise<readonly DocumentProblem[]>;
}

const largestDocument = 4 * 2 ** 20;
/** Decoded rasters that stay in memory; those read longest ago go first. */
const rastersKept = 4;

export interface ProjectOptions {
  /**
   * Folders in which a table is looked for by its path, first one first; the project's own when absent. For questions that name a
   * table beside their inputs.
   */
  readonly tableFolders?: readonly string[];
}

/** Opens a project folder. Nothing is read yet. */
export function openProject(folder: string, options: ProjectOptions = {}): Project {
  const readings = new Map<string, { readonly mark: FileMark; readonly reading: DocumentReading }>();
  const rasters = new Map<string, { readonly mark: FileMark; readonly file: Promise<RasterFile> }>();

  const document = async (path: string): Promise<DocumentReading> => {
    const reader = readerOf(path);
    if (reader === undefined) return { problems: [unknownFile(path)], references: [] };
    const found = await locateIn(reader === readTable ? (options.tableFolders ?? [folder]) : [folder], path, largestDocument);
    if (found.kind === "problem") return { problems: [found.problem], references: [] };
    const known = readings.get(path);
    if (known !== undefined && sameFile(known.mark, found.mark)) return known.reading;
    const file = await readLocated(path, found.place);
    if (file.kind === "problem") return { problems: [file.problem], references: [] };
    const reading = readText(reader, path, file.bytes, file.hash);
    readings.set(path, { mark: found.mark, reading });
    return reading;
  };

  const raster = async (path: string): Promise<RasterFile> => {
    if (fileKind(path) !== "raster") return { kind: "problem", problem: unknownFile(path) };
    const found = await locate(folder, path, largestFile);
    if (found.kind === "problem") return { kind: "problem", problem: found.problem };
    const known = rasters.get(path);
    if (known !== undefined && sameFile(known.mark, found.mark)) return known.file;
    const file = readLocated(path, found.place).then((read) => readRasterFile(path, read));
    rasters.delete(path);
    rasters.set(path, { mark: found.mark, file });
    if (rasters.size > rastersKept) rasters.delete([...rasters.keys()][0] as string);
    return file;
  };

  const definition = async (): Promise<ProjectDefinition | undefined> =>
    (await document("project.yaml")).document?.data as ProjectDefinition | undefined;
  const placed = async (path: string): Promise<RasterReading> => placedRaster(path, await raster(path), await definition());
  const list = async () => listed(await projectFiles(folder));

  return {
    folder,
    list,
    readDocument: async (path) => {
      const reading = await document(path);
      return reading.document === undefined ? { problems: reading.problems } : { value: reading.document, warnings: reading.problems };
    },
    readRaster: async (path) => {
      const { raster: value, problems } = await placed(path);
      return value === undefined ? { problems } : { value, warnings: problems };
    },
    check: async () => inReadingOrder(await checkProject({ folder, files: () => projectFiles(folder), document, placed })),
  };
}

type TextReader = (text: DocumentText) => DocumentReading;

function readerOf(path: string): TextReader | undefined {
  if (fileKind(path) === "geojson") return readGeoJson;
  if (fileKind(path) === "table") return readTable;
  const kind: DocumentKind | undefined = documentKinds.find(({ pathPattern }) => pathPattern.test(path));
  return kind === undefined ? undefined : (text) => readYamlDocument(kind, text);
}

function readText(read: TextReader, file: string, bytes: Uint8Array, hash: string): DocumentReading {
  try {
    const text = new TextDecoder("utf-8", { fatal: true, ignoreBOM: false }).decode(bytes);
    return read({ file, text, hash });
  } catch {
    const problem = fileProblem(file, {
      kind: "syntax",
      read: "bytes that are no UTF-8",
      allowed: "text in UTF-8",
      message: "the file is no text in UTF-8",
    });
    return { problems: [problem], references: [] };
  }
}

function sameFile(first: FileMark, second: FileMark): boolean {
  return first.size === second.size && first.time === second.time && first.changed === second.changed && first.inode === second.inode;
}
