import { createHash } from "node:crypto";
import type { ProjectDefinition, Raster } from "@wingseed/engine";
import { type DocumentProblem, fileProblem } from "../document-problem.ts";
import { type DecodedRaster, readGeoTiff } from "../geotiff/index.ts";
import type { readLocated } from "./project-folder.ts";

export type RasterFile =
  | { readonly kind: "raster"; readonly raster: DecodedRaster; readonly hash: string }
  | { readonly kind: "problem"; readonly problem: DocumentProblem };

export interface RasterReading {
  /** Absent when an error keeps it from being used. */
  readonly raster?: Raster;
  readonly problems: readonly DocumentProblem[];
}

/** Decodes a raster file, without what the project says about it. */
export async function readRasterFile(path: string, file: Awaited<ReturnType<typeof readLocated>>): Promise<RasterFile> {
  if (file.kind === "problem") return file;
  const raster = await readGeoTiff(file.bytes);
  if (raster.kind === "raster") return { kind: "raster", raster, hash: file.hash };
  const { code, read, allowed, message } = raster;
  return { kind: "problem", problem: fileProblem(path, { kind: code, read, allowed, message }) };
}

/**
 * A raster with what the project says its heights are measured from. Its hash covers that too, so that a result made with it
 * is made again when the project changes its mind.
 */
export function placedRaster(path: string, file: RasterFile, project: ProjectDefinition | undefined): RasterReading {
  if (file.kind === "problem") return { problems: [file.problem] };
  const { grid, cautions, statedDatum } = file.raster;
  const problems = cautions.map((message) =>
    fileProblem(path, { kind: "raster", read: message, allowed: "a nodata value", message, severity: "warning" }),
  );
  const entry = project?.terrain?.find((terrain) => terrain.path === path);
  const heightDatum = entry?.heightDatum ?? "unknown";
  if (entry !== undefined && statedDatum !== undefined && statedDatum !== heightDatum) {
    const message = `the raster says that its heights are measured from ${inWords(statedDatum)}, project.yaml says ${inWords(entry.heightDatum)}; one of them is wrong`;
    return { problems: [...problems, fileProblem(path, { kind: "height-datum", read: statedDatum, allowed: entry.heightDatum, message })] };
  }
  const undulation = entry?.geoidUndulation === undefined ? {} : { geoidUndulation: entry.geoidUndulation };
  const hash = createHash("sha256")
    .update(JSON.stringify([file.hash, heightDatum, undulation]))
    .digest("hex");
  return { raster: { path, ...grid, heightDatum, ...undulation, hash }, problems };
}

function inWords(datum: "mean-sea-level" | "ellipsoid"): string {
  return datum === "ellipsoid" ? "the ellipsoid" : "mean sea level";
}
