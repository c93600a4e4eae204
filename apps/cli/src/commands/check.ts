import { openProject, problemLine } from "@wingseed/documents";
import { type ExitStatus, exitStatus } from "../exit-status.ts";
import type { Place } from "../place.ts";
import { projectFolder } from "../session.ts";
import type { Streams } from "../streams.ts";

/** Every problem of every document, one a line, in reading order. */
export async function checkProject(
  place: Place,
  streams: Streams,
  written: string | undefined,
  format: "table" | "json",
): Promise<ExitStatus> {
  const project = openProject(await projectFolder(place, written));
  const [problems, files] = await Promise.all([project.check(), project.list()]);
  const errors = problems.filter(({ severity }) => severity === "error").length;
  if (format === "json") streams.out(`${JSON.stringify(problems, null, 2)}\n`);
  else streams.out(problems.map((problem) => `${problemLine(problem)}\n`).join(""));
  const warnings = problems.length - errors;
  streams.err(`${count(files.length, "document")}, ${count(errors, "problem")}${warnings > 0 ? `, ${count(warnings, "warning")}` : ""}\n`);
  return errors > 0 ? exitStatus.usage : exitStatus.done;
}

function count(number: number, noun: string): string {
  return `${number} ${noun}${number === 1 ? "" : "s"}`;
}
