import { sentence, significantText } from "../format/index.ts";
import type { Block, TableBlock } from "./blocks.ts";
import type { DossierRequest, ValidationRow } from "./dossier-request.ts";

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
  const { project, program } = request;
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
    ...answerTable(request),
    ...identityTables(request),
    {
      kind: "paragraph",
      look: "small",
      text: `Made by ${program.name} ${program.version}. The same documents and program give the same bytes of this file.`,
    },
    { kind: "page-break" },
  ];
}

/** Every question with its answer, so that the first page already tells what was found. */
function answerTable({ chapters, project }: DossierRequest): readonly Block[] {
  if (chapters.length === 0) return [];
  const rows = chapters.map(({ meta, result, view }) => {
    const first = view.cases.find((each) => each !== null);
    const problem = result.cases.find((each) => each.problem)?.problem?.message;
    const answer = first ? sentence(first.answer.sentence) : `No answer: ${problem ?? "no case was asked"}`;
    return [meta.question, project.demo && first && !answer.includes("demo values") ? `${answer} [demo values]` : answer];
  });
  return [{ kind: "table", caption: "Answers", head: ["question", "answer"], numeric: [false, false], rows }];
}

function identityTables(request: DossierRequest): readonly Block[] {
  const documents = new Map(
    request.chapters.flatMap(({ result }) => result.provenance.documents.map((each) => [each.path, each.hash] as const)),
  );
  const paths = [...documents.keys()].toSorted();
  const code = [...new Set(request.chapters.map(({ result }) => result.provenance.registryHash))];
  const runtime = [
    ...new Set(request.chapters.map(({ result: { provenance } }) => `V8 ${provenance.runtime.v8}, ${provenance.runtime.architecture}`)),
  ];
  const table = (caption: string, head: readonly string[], rows: readonly (readonly string[])[]): TableBlock => ({
    kind: "table",
    caption,
    head,
    numeric: head.map(() => false),
    rows,
  });
  return [
    table(
      "Documents that the results depend on, with their digests",
      ["document", "SHA-256"],
      paths.map((path) => [path, documents.get(path) ?? ""]),
    ),
    table(
      "Program",
      ["item", "value"],
      [
        ["version", `${request.program.name} ${request.program.version}`],
        ["digest of the analyses", code.join(", ")],
        ["computed on", runtime.join("; ")],
      ],
    ),
  ];
}

/** The second page: how it is computed and how well that agrees with published data. */
export function methodBlocks(request: DossierRequest, shared: ReadonlySet<string>): readonly Block[] {
  const methods = request.chapters.map(({ meta }) => meta);
  const keys = [...new Set(methods.flatMap(({ method }) => method.sources))];
  return [
    { kind: "heading", level: 1, text: "How it is computed" },
    ...methods.map(
      ({ name, method }): Block => ({ kind: "paragraph", look: "text", text: `${name}: ${method.summary}${checkWords(method.checks)}` }),
    ),
    { kind: "heading", level: 1, text: "How well that agrees with published data" },
    ...validationTables(request.validation),
    ...sharedCautionBlocks(request, shared),
    ...filledBlocks(request),
    ...(keys.length === 0 ? [] : [{ kind: "heading", level: 2, text: "Sources" } as const]),
    ...keys.map((key): Block => ({ kind: "citation", key, text: request.references?.[key] ?? key })),
    { kind: "page-break" },
  ];
}

/** Cautions that several answers bear, with the answers they are about. */
function sharedCautionBlocks({ chapters }: DossierRequest, shared: ReadonlySet<string>): readonly Block[] {
  const found = new Map<string, { readonly grade: "care" | "note"; readonly names: string[] }>();
  for (const { meta, result } of chapters)
    for (const { grade, message } of result.warnings) {
      if (!shared.has(message)) continue;
      const entry = found.get(message) ?? { grade, names: [] };
      if (!entry.names.includes(meta.name)) entry.names.push(meta.name);
      found.set(message, entry);
    }
  if (found.size === 0) return [];
  const blocks = [...found].map(
    ([message, { grade, names }]): Block => ({ kind: "caution", grade, text: `${message} (${names.join(", ")})` }),
  );
  return [{ kind: "heading", level: 2, text: "Cautions about several answers" }, ...blocks];
}

/** What was taken without being asked for, by analysis and reason. */
function filledBlocks({ chapters }: DossierRequest): readonly Block[] {
  const lines = chapters.flatMap(({ meta, result }): readonly Block[] => {
    const byReason = new Map<string, string[]>();
    for (const { path, value, because } of result.provenance.defaults) {
      const name = path.replace(/^\//, "").replaceAll("/", ".");
      byReason.set(because, [...(byReason.get(because) ?? []), `${name} ${shortValue(value)}`]);
    }
    const reasons = [...byReason].map(([because, items]) => `${because}: ${items.join(", ")}`);
    return reasons.length === 0 ? [] : [{ kind: "paragraph", look: "small", text: `${meta.name}: ${reasons.join("; ")}.` }];
  });
  return lines.length === 0 ? [] : [{ kind: "heading", level: 2, text: "Taken because nobody gave them, in SI" }, ...lines];
}

/** A value in words; of a long list its ends and its length. */
function shortValue(value: unknown): string {
  if (Array.isArray(value) && value.length > 8) return `[${value[0]}, ${value[1]}, … ${value.at(-1)}] (${value.length} values)`;
  return typeof value === "string" ? value : JSON.stringify(value);
}

function checkWords(checks: readonly string[]): string {
  return checks.length === 0 ? " No published check covers it yet." : ` Held against: ${checks.join(", ")}.`;
}

function validationTables(rows: readonly ValidationRow[]): readonly Block[] {
  if (rows.length === 0) return [{ kind: "caution", grade: "care", text: "No comparison with published data was handed to this dossier." }];
  const failed = rows.filter((row) => !row.passed);
  const notes = [...new Set(rows.flatMap((row) => (row.note ? [`${row.check}, ${row.quantity}: ${row.note}`] : [])))];
  return [
    {
      kind: "table",
      caption: "Computed minus published; the tolerance was set before the comparison and applies to the rows that decide",
      head: ["check", "source", "quantity", "rows", "decide", "bias", "root mean square", "largest", "tolerance", "within"],
      numeric: [false, false, false, true, true, true, true, true, true, false],
      rows: rows.map((row) => [
        row.check,
        row.source,
        row.quantity,
        String(row.rows),
        String(row.gatedRows),
        errorText(row.bias),
        errorText(row.rms),
        errorText(row.largest),
        errorText(row.tolerance),
        row.passed ? "yes" : "no",
      ]),
    },
    ...failed.map((row): Block => ({ kind: "caution", grade: "care", text: `${row.check}, ${row.quantity}: outside its tolerance.` })),
    ...notes.map((text): Block => ({ kind: "paragraph", look: "small", text })),
  ];
}

function errorText(value: number | string): string {
  return typeof value === "number" ? significantText(value, 3) : value;
}
