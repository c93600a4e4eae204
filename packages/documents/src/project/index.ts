export { fileKind, type ListedFile, openProject, type Project, type Reading } from "./open-project.ts";
