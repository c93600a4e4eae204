import { stat } from "node:fs/promises";
import { dirname, resolve } from "node:path";
import { changedProject, openProject, type Project, type ProjectChange } from "@wingseed/documents";
import { CannotAsk, createRunner, type Runner } from "@wingseed/runner";
import { cacheFolder } from "./cache-folder.ts";
import { Refused } from "./exit-status.ts";
import { type Place, registryUrl } from "./place.ts";

export interface SessionOptions {
  /** As written on the command line; the demo when absent. */
  readonly project?: string | undefined;
  readonly registry?: string | undefined;
  readonly workers?: number | undefined;
  /** File with inputs: a table that they name lies beside it or in the working folder. */
  readonly input?: string | undefined;
  /** Values of documents that are others for this question. */
  readonly changes?: readonly ProjectChange[];
  /** False: nothing is kept and nothing kept is used. */
  readonly cache: boolean;
}

/** A runner over a project, as a command uses it. */
export interface Session {
  readonly runner: Runner;
  readonly project: Project;
  readonly isDemo: boolean;
}

/** Opens the project and the runner for some work, and closes them after it, however it ends. */
export async function withSession<Value>(
  place: Place,
  options: SessionOptions,
  work: (session: Session) => Promise<Value>,
): Promise<Value> {
  const folder = await projectFolder(place, options.project);
  const beside = besideInputs(options.input);
  const tableFolders = options.project === undefined ? [...beside, folder] : [folder, ...beside];
  const project = changedProject(openProject(folder, { tableFolders }), options.changes ?? []);
  const runner = await createRunner({
    registryUrl: registryUrl(place, options.registry),
    workerUrl: place.workerUrl,
    workers: options.workers,
    cacheDirectory: options.cache ? await cacheFolder(folder) : null,
    project,
    version: place.version,
  }).catch((error: unknown) => {
    throw error instanceof CannotAsk ? new Refused(error.message) : error;
  });
  try {
    return await work({ runner, project, isDemo: folder === resolve(place.demo) });
  } finally {
    await runner.close();
  }
}

/** Where the paths of tables begin that inputs name: the folder of the file with the inputs, then the working folder. */
function besideInputs(input: string | undefined): readonly string[] {
  const isFile = input !== undefined && input !== "-" && !/^\s*[{[]/.test(input);
  return [...new Set([...(isFile ? [dirname(resolve(input))] : []), process.cwd()])];
}

/** The folder of a project by its argument. */
export async function projectFolder(place: Place, written: string | undefined): Promise<string> {
  if (written === undefined) return resolve(place.demo);
  const folder = resolve(written);
  if (await isFolder(folder)) return folder;
  throw new Refused(`There is no project folder ${written}.`);
}

export async function isFolder(path: string): Promise<boolean> {
  return (await stat(path).catch(() => null))?.isDirectory() === true;
}
