import { sentence } from "../format/index.ts";
import type { Block, TableBlock } from "./blocks.ts";
import type { DossierChapter, DossierRequest } from "./dossier-request.ts";

const cautions: readonly Extract<Block, { kind: "caution" }>[] = [
  {
    kind: "caution",
    grade: "stops",
    text: "Nothing in these pages permits a flight. They hold engineering estimates made ahead of flight test. Whether, where and how to fly is decided by the pilot in command, the operator and the authority, under the rules of the place; those rules and licensed practice come before anything printed here.",
  },
  {
    kind: "caution",
    grade: "care",
    text: "Prove the numbers in the air first, step by step, away from people and under controlled conditions, before the aircraft carries anything over anybody.",
  },
  {
    kind: "caution",
    grade: "care",
    text: "High-energy batteries burn and turning blades cut. Handle both as their makers prescribe.",
  },
  {
    kind: "caution",
    grade: "note",
    text: "A number without an interval has an unknown uncertainty. Values recalled rather than read are marked “from memory”, habits of the trade without a published source “common practice”.",
  },
];

/** The first page: what this is about, by what program, from which documents, and the cautions before any result. */
export function identificationBlocks(request: DossierRequest): readonly Block[] {
  const { project } = request;
  const demo: readonly Block[] = project.demo
    ? [
        {
          kind: "caution",
          grade: "care",
          text: "Demo values: aircraft, places and data of this project are invented to show the program. No verdict in it says anything about a real aircraft.",
        },
      ]
    : [];
  const about: readonly Block[] = project.description ? [{ kind: "paragraph", look: "text", text: project.description }] : [];
  return [
    { kind: "title", text: project.title, subtitle: project.revision ? `Performance dossier, ${project.revision}` : "Performance dossier" },
    { kind: "heading", level: 1, text: "Before you read on" },
    ...cautions.slice(0, 1),
    ...demo,
    ...cautions.slice(1),
    { kind: "heading", level: 1, text: "What this describes" },
    ...about,
    ...answerBlocks(request),
    { kind: "heading", level: 1, text: "What it was made from" },
    ...identityBlocks(request),
  ];
}

/** Every question with its answer and the conditions of that, so that the first page already tells what was found. */
function answerBlocks({ chapters, project }: DossierRequest): readonly Block[] {
  if (chapters.length === 0) return [];
  const blocks = chapters.flatMap((chapter): readonly Block[] => [
    { kind: "paragraph", look: "question", text: chapter.meta.question },
    { kind: "paragraph", look: "answer", text: answerText(chapter, project.demo) },
    ...(chapter.conditions ? [{ kind: "paragraph", look: "compact", text: `At: ${chapter.conditions}.` } as const] : []),
  ]);
  return [{ kind: "heading", level: 1, text: "What was asked, and the answers" }, ...blocks];
}

function answerText({ result, view }: DossierChapter, demo: boolean): string {
  const first = view.cases.find((each) => each !== null);
  const problem = result.cases.find((each) => each.problem)?.problem?.message;
  return first ? markedAnswer(sentence(first.answer.sentence), demo) : `No answer: ${problem ?? "no case was asked"}`;
}

/** An answer that rests on invented values says so. */
export function markedAnswer(answer: string, demo: boolean): string {
  return demo && !answer.includes("demo values") ? `${answer} [demo values]` : answer;
}

function identityBlocks({ chapters, program }: DossierRequest): readonly Block[] {
  const provenances = chapters.map(({ result }) => result.provenance);
  const documents = new Map(provenances.flatMap((each) => each.documents.map(({ path, hash }) => [path, hash] as const)));
  const digests = [...new Set(provenances.map((each) => each.registryHash))].map((digest) => ["analyses of the program", digest] as const);
  const runtimes = new Set(provenances.map(({ runtime }) => `V8 ${runtime.v8}, ${runtime.architecture}`));
  const table: TableBlock = {
    kind: "table",
    caption: "Documents and program, with their digests",
    head: ["what", "SHA-256"],
    numeric: [false, false],
    rows: [...[...documents].toSorted(([a], [b]) => (a < b ? -1 : 1)), ...digests],
  };
  const computed = runtimes.size === 0 ? "" : `, computed on ${[...runtimes].join("; ")}`;
  return [
    table,
    {
      kind: "paragraph",
      look: "compact",
      text: `Made by ${program.name} ${program.version}${computed}. The same documents and program give the same bytes of this file.`,
    },
  ];
}
