import type { Project } from "@wingseed/documents";

/** What a run may read of a project. */
export type ProjectSource = Pick<Project, "folder" | "readDocument" | "readRaster">;
