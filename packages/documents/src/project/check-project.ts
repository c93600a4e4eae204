import { stat } from "node:fs/promises";
import type { ProjectDefinition } from "@wingseed/engine";
import type { DocumentReading, PlacedReference } from "../document/index.ts";
import { type DocumentProblem, fileProblem } from "../document-problem.ts";
import { dotted, nearName, pointer } from "../schema/index.ts";
import { type ListedFile, listed, unreadFiles } from "./file-kinds.ts";
import type { RasterReading } from "./project-raster.ts";

interface CheckedProject {
  readonly folder: string;
  readonly files: () => Promise<readonly string[]>;
  readonly document: (path: string) => Promise<DocumentReading>;
  readonly placed: (path: string) => Promise<RasterReading>;
}

/** Every problem of every document: its own, and those that only show when documents are seen together. */
export async function checkProject(project: CheckedProject): Promise<readonly DocumentProblem[]> {
  if (!(await isFolder(project.folder))) {
    const message = `there is no folder ${project.folder}`;
    return [fileProblem("project.yaml", { kind: "missing-file", read: project.folder, allowed: "a folder with a project.yaml", message })];
  }
  const paths = await project.files();
  const files = listed(paths);
  const problems: DocumentProblem[] = [...unreadFiles(paths)];
  if (!files.some(({ kind }) => kind === "project")) problems.push(...(await project.document("project.yaml")).problems);
  const references: (PlacedReference & { readonly file: string })[] = [];
  let definition: ProjectDefinition | undefined;
  for (const { path, kind } of files) {
    if (kind === "raster") {
      problems.push(...(await project.placed(path)).problems);
      continue;
    }
    const reading = await project.document(path);
    problems.push(...reading.problems);
    references.push(...reading.references.map((reference) => ({ ...reference, file: path })));
    if (kind === "project") definition = reading.document?.data as ProjectDefinition | undefined;
  }
  problems.push(...references.flatMap((reference) => referenceProblem(reference, files)));
  if (definition !== undefined) problems.push(...together(definition, files));
  return problems;
}

async function isFolder(folder: string): Promise<boolean> {
  try {
    return (await stat(folder)).isDirectory();
  } catch {
    return false;
  }
}

function referenceProblem(
  reference: PlacedReference & { readonly file: string },
  files: readonly ListedFile[],
): readonly DocumentProblem[] {
  const { target, kind, line, column, path, file } = reference;
  const found = files.find((entry) => entry.path === target);
  if (found?.kind === kind) return [];
  const ofKind = files.filter((entry) => entry.kind === kind).map((entry) => entry.path);
  const near = nearName(target, ofKind);
  const cure =
    near === undefined
      ? `; there ${ofKind.length === 0 ? "is none in this project" : `is ${ofKind.join(", ")}`}`
      : `; did you mean "${near}"?`;
  const sentence =
    found === undefined
      ? `there is no ${inWords(kind)} "${target}"${cure}`
      : `"${target}" is ${withArticle(inWords(found.kind))}, ${withArticle(inWords(kind))} is expected${cure}`;
  const allowed = ofKind.join(", ") || `the path of a file that exists`;
  return [
    fileProblem(file, {
      kind: "missing-file",
      line,
      column,
      pointer: pointer(path),
      read: target,
      allowed,
      message: `${dotted(path)}: ${sentence}`,
    }),
  ];
}

function inWords(kind: string): string {
  return kind === "raster" ? "raster file" : kind === "geojson" ? "GeoJSON file" : `${kind} file`;
}

function withArticle(words: string): string {
  return /^[aeiou]/u.test(words) ? `an ${words}` : `a ${words}`;
}

/** What no document shows alone: files that the project does not name, rasters without a datum. */
function together(definition: ProjectDefinition, files: readonly ListedFile[]): readonly DocumentProblem[] {
  const terrain = (definition.terrain ?? []).map(({ path }) => path);
  const population = (definition.population ?? []).map(({ path }) => path);
  const named = new Set([...definition.aircraft, ...(definition.missions ?? []), ...terrain, ...population]);
  return files.flatMap(({ path, kind }) => {
    if (named.has(path)) return [];
    if (kind === "raster") {
      const message =
        "nobody says what the heights of this raster are measured from; list it under terrain (or population) in project.yaml";
      return [
        fileProblem(path, {
          kind: "height-datum",
          read: "no height datum",
          allowed: "mean-sea-level or ellipsoid, in project.yaml",
          message,
        }),
      ];
    }
    if (kind !== "aircraft" && kind !== "mission") return [];
    const message = `project.yaml does not list this ${kind}, so nothing takes it unless it is named`;
    return [
      fileProblem(path, { kind: "unlisted-file", read: path, allowed: "a path listed in project.yaml", message, severity: "warning" }),
    ];
  });
}
