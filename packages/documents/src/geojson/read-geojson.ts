import type { DocumentReading, DocumentText } from "../document/index.ts";
import { type DocumentProblem, fileProblem, inReadingOrder, placedProblem } from "../document-problem.ts";
import { readYaml } from "../yaml/index.ts";
import { featureProblems } from "./feature-collection.ts";
import { jsonSlip } from "./json-slip.ts";

/** Reads routes and sites from GeoJSON (RFC 7946), whose data keep their published form. Never throws. */
export function readGeoJson({ file, text, hash }: DocumentText): DocumentReading {
  const data = parsed(text);
  if (data === undefined) return { problems: [syntaxProblem(file, text)], references: [] };
  const { positions, problems: doubled } = readYaml(file, text);
  const found = featureProblems(data.value).map((problem) => placedProblem(file, positions.value(problem.path), problem));
  const problems = inReadingOrder([...doubled, ...found]);
  if (problems.some(({ severity }) => severity === "error")) return { problems, references: [] };
  return { document: { path: file, kind: "geojson", data: data.value, written: {}, hash }, problems, references: [] };
}

function parsed(text: string): { readonly value: unknown } | undefined {
  try {
    return { value: JSON.parse(text) as unknown };
  } catch {
    return undefined;
  }
}

function syntaxProblem(file: string, text: string): DocumentProblem {
  const slip = jsonSlip(text) ?? { offset: 0, read: "text that is no JSON", expected: "JSON" };
  const before = text.slice(0, slip.offset).split("\n");
  const column = (before.at(-1)?.length ?? 0) + 1;
  const message = `this is no JSON: ${slip.expected} is expected; read ${slip.read}`;
  return fileProblem(file, { kind: "syntax", line: before.length, column, read: slip.read, allowed: slip.expected, message });
}
