import { type Project, problemLine } from "@wingseed/documents";
import type { ProjectDefinition } from "@wingseed/engine";

/** What a face is told about the project that is open. */
export interface ProjectEntry {
  readonly title: string;
  /** True when the project says that its values are invented. */
  readonly demo: boolean;
  readonly aircraft: readonly string[];
  readonly missions: readonly string[];
  readonly problems: readonly { readonly kind: string; readonly message: string; readonly severity: "error" | "warning" }[];
  readonly cautions: readonly string[];
}

/** True of every number that the program shows. */
const standingCautions: readonly string[] = [
  "Preliminary engineering estimates: they approve no flight.",
  "The pilot in command, the operator and the competent authority decide; local rules and licensed practice come first.",
  "Prove it by flight test under controlled conditions before anything is carried over people.",
  "Batteries of high energy and turning blades injure: follow their makers' instructions.",
];

/** Reads the project anew, since its files may have changed. */
export async function projectEntry(project: Project): Promise<ProjectEntry> {
  const [files, problems, own] = await Promise.all([project.list(), project.check(), project.readDocument("project.yaml")]);
  const definition = own.value?.data as ProjectDefinition | undefined;
  const demo = definition?.demo === true;
  const listed = (kind: string, first: readonly string[]) => [
    ...new Set([...first, ...files.filter((file) => file.kind === kind).map(({ path }) => path)]),
  ];
  return {
    title: definition?.title ?? project.folder,
    demo,
    aircraft: listed("aircraft", definition?.aircraft ?? []),
    missions: listed("mission", definition?.missions ?? []),
    problems: problems.map((problem) => ({ ...problem, message: problemLine(problem) })),
    cautions: demo
      ? [...standingCautions, "Every value of this project is invented; its verdicts are about no real aircraft."]
      : standingCautions,
  };
}
