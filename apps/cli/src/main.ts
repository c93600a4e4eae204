import { commandLine } from "./command-line.ts";
import { placeOf } from "./place.ts";
import { processStreams } from "./streams.ts";

process.exitCode = await commandLine(process.argv.slice(2), await placeOf(import.meta.url), processStreams());
