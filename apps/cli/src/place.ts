import { readFile } from "node:fs/promises";
import { join, resolve } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";

/** The parts of the installed program, beside the bundle that runs. */
export interface Place {
  readonly root: string;
  readonly version: string;
  readonly registryUrl: string;
  readonly workerUrl: string;
  readonly webFolder: string;
  readonly demo: string;
  readonly validationFile: string;
  readonly referencesFile: string;
}

/** @param bundleUrl address of the running bundle, which lies in `dist` */
export async function placeOf(bundleUrl: string): Promise<Place> {
  const root = fileURLToPath(new URL("..", bundleUrl));
  const { version } = JSON.parse(await readFile(join(root, "package.json"), "utf8")) as { version: string };
  const built = (name: string) => join(root, "dist", name);
  return {
    root,
    version,
    registryUrl: pathToFileURL(built("registry.mjs")).href,
    workerUrl: pathToFileURL(built("worker.mjs")).href,
    webFolder: built("web"),
    demo: join(root, "demo"),
    validationFile: built("validation.json"),
    referencesFile: built("references.json"),
  };
}

/** Address of the registry to use: the one written on the command line as a path or an address, else the house's own. */
export function registryUrl(place: Place, written: string | undefined): string {
  if (written === undefined) return place.registryUrl;
  return /^[a-z][a-z0-9+.-]+:/i.test(written) ? written : pathToFileURL(resolve(written)).href;
}
