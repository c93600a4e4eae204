import { offeredPages } from "@wingseed/reports";
import { createServer, dossierPdf, listen, projectEntry } from "@wingseed/server";
import { type ExitStatus, exitStatus, Refused } from "../exit-status.ts";
import type { Place } from "../place.ts";
import { publishedSources, validationSummary } from "../published-sources.ts";
import { withSession } from "../session.ts";
import type { Streams } from "../streams.ts";

export interface StartOptions {
  readonly port: number;
  readonly registry?: string;
  readonly workers?: number;
  readonly cache: boolean;
}

/** Serves the web app until it is told to stop. */
export async function startServer(place: Place, streams: Streams, written: string | undefined, options: StartOptions): Promise<ExitStatus> {
  return withSession(place, { ...options, project: written }, async ({ runner, project }) => {
    const server = createServer({
      runner,
      version: place.version,
      pages: offeredPages(runner.registry.analyses),
      project: () => projectEntry(project),
      dossier: async (signal) => dossierPdf({ runner, project, version: place.version, ...(await publishedSources(place)), signal }),
      validation: () => validationSummary(place),
      webFolder: place.webFolder,
    });
    const address = await listen(server, options.port).catch((error: NodeJS.ErrnoException) => {
      throw new Refused(
        error.code === "EADDRINUSE"
          ? `Port ${options.port} is taken; choose another with --port, or --port 0 for any free one.`
          : error.message,
      );
    });
    streams.out(`Wingseed listens at ${address}\n`);
    streams.err(`Project ${project.folder}. Ctrl-C stops.\n`);
    if (runner.cachePlace.kind === "memory" && options.cache) streams.err(`Results are not kept: ${runner.cachePlace.because}.\n`);
    await untilToldToStop();
    await server.close();
    return exitStatus.done;
  });
}

function untilToldToStop(): Promise<void> {
  return new Promise((done) => {
    for (const signal of ["SIGINT", "SIGTERM"] as const) process.once(signal, () => done());
  });
}
