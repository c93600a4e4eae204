export { changedProject, type ProjectChange } from "./changed-project.ts";
export type { ListedFile } from "./file-kinds.ts";
export { openProject, type Project, type Reading } from "./open-project.ts";
