import { dossierPdf } from "@wingseed/server";
import { type ExitStatus, exitStatus, Refused } from "../exit-status.ts";
import { interruptible } from "../interrupt.ts";
import { writeWhole } from "../output-file.ts";
import type { Place } from "../place.ts";
import { progressLine } from "../progress-line.ts";
import { publishedSources } from "../published-sources.ts";
import { withSession } from "../session.ts";
import type { Streams } from "../streams.ts";

export interface DossierOptions {
  readonly output: string;
  readonly registry?: string;
  readonly workers?: number;
  readonly cache: boolean;
}

/** Computes what the dossier prints and writes it as one PDF file. */
export async function writeDossier(
  place: Place,
  streams: Streams,
  written: string | undefined,
  options: DossierOptions,
): Promise<ExitStatus> {
  return withSession(place, { ...options, project: written }, async ({ runner, project }) => {
    const line = progressLine(streams);
    const published = await publishedSources(place);
    const pdf = await interruptible((signal) =>
      dossierPdf({ runner, project, version: place.version, ...published, signal, onProgress: line.show }).catch((error: unknown) => {
        if (signal.aborted) throw new Refused("Stopped; no file was written.", exitStatus.noResult);
        throw error;
      }),
    ).finally(line.close);
    await writeWhole(options.output, pdf);
    streams.out(`${options.output}\n`);
    return exitStatus.done;
  });
}
