import { changedDocument, type DocumentChange, documentKinds } from "../document/index.ts";
import { fileProblem } from "../document-problem.ts";
import type { Project } from "./open-project.ts";

/** Another value for one place of one document of a project. */
export interface ProjectChange extends DocumentChange {
  /** Path of the document inside the project. */
  readonly file: string;
}

/** A project in which some values are others, for a question: the files stay as they are, and every reading remarks its changes. */
export function changedProject(project: Project, changes: readonly ProjectChange[]): Project {
  if (changes.length === 0) return project;
  return {
    ...project,
    readDocument: async (path) => {
      const reading = await project.readDocument(path);
      const own = changes.filter(({ file }) => file === path);
      if (own.length === 0 || reading.problems) return reading;
      const kind = documentKinds.find(({ pathPattern }) => pathPattern.test(path));
      if (kind === undefined) {
        const message = `values of ${path} cannot be changed for a question; those of aircraft, missions and the project can`;
        return { problems: [fileProblem(path, { kind: "not-allowed", read: path, allowed: "a YAML document", message })] };
      }
      const changed = changedDocument(kind, reading.value, own);
      if (changed.kind === "problems") return { problems: changed.problems };
      return { value: changed.document, warnings: [...reading.warnings, ...changed.remarks] };
    },
  };
}
