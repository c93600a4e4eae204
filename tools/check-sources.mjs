// Checks every citation of a tree against docs/sources.bib: each key exists, each entry is used, each citation says where in its
// source or owns up that nobody looked. Fails when it has seen no file, no entry or no citation.
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { pathToFileURL } from "node:url";
import { references } from "./references.mjs";

const bibliography = "docs/sources.bib";

/** Where citations stand, and how each kind of file writes them. */
const kinds = [
  { folders: ["packages", "apps"], file: /\/src\/.*\.tsx?$/, citations: [tagged, listed] },
  { folders: ["packages"], file: /\/src\/.*\.json$/, citations: [field] },
  { folders: ["validation"], file: /\/source\.md$/, citations: [named] },
  { folders: ["validation"], file: /\/result\.json$/, citations: [field] },
];

/** `@source key, place; key, place`: "unchecked" or "from memory" says that nobody had the page open. */
function tagged(text) {
  const parts = [...text.matchAll(/@source ([^\n]*?)(?:\s*\*\/|\n)/g)].flatMap(({ 1: written = "" }) => written.split(/;\s+/));
  return parts.map((part) => {
    const key = /^[a-z0-9][a-z0-9.-]*/.exec(part)?.[0] ?? part;
    const rest = part.slice(key.length);
    const unchecked = /\b(?:unchecked|from memory)\b/.test(rest);
    const place = rest.replace(/\b(?:unchecked|from memory|read)\b/g, "").replace(/[\s,:]+/g, "");
    return { key, unchecked, placed: place !== "" };
  });
}

/** `sources: ["key", …]` of an analysis: the list, not the places. */
function listed(text) {
  return [...text.matchAll(/\bsources: \[([^\]]*)\]/g)].flatMap(({ 1: list = "" }) => keys(list, /"([a-z0-9.-]+)"/g));
}

/** `"source": "key"` of a table or a record. */
function field(text) {
  return keys(text, /"source":\s*"([^"]+)"/g);
}

/** "key `name`" in the words about a published check. */
function named(text) {
  return keys(text, /\bkey\s+`([^`]+)`/g);
}

function keys(text, pattern) {
  return [...text.matchAll(pattern)].map(({ 1: key = "" }) => ({ key, unchecked: false, placed: true }));
}

function filesOf(root, { folders, file }) {
  return folders
    .filter((folder) => existsSync(join(root, folder)))
    .flatMap((folder) => readdirSync(join(root, folder), { recursive: true, encoding: "utf8" }).map((name) => join(folder, name)))
    .filter((path) => file.test(path) && !/\.test\.tsx?$/.test(path) && !/\/(?:node_modules|dist)\//.test(path));
}

/**
 * @param {string} root folder with docs/sources.bib
 * @returns {{ violations: string[], unchecked: string[], files: number, entries: number, citations: number }}
 */
export function checkSources(root) {
  const text = existsSync(join(root, bibliography)) ? readFileSync(join(root, bibliography), "utf8") : "";
  const entries = Object.keys(references(text));
  const files = kinds.flatMap((kind) => filesOf(root, kind).map((path) => ({ path, citations: kind.citations })));
  const cited = files.flatMap(({ path, citations }) => {
    const written = readFileSync(join(root, path), "utf8");
    return citations.flatMap((find) => find(written).map((citation) => ({ ...citation, path })));
  });
  const used = new Set(cited.map(({ key }) => key));
  const twice = [...text.matchAll(/^@\w+\s*\{\s*([^,\s]+)/gm)].map(({ 1: key }) => key).filter((key, i, all) => all.indexOf(key) < i);
  return {
    violations: [
      ...cited.filter(({ key }) => !entries.includes(key)).map(({ key, path }) => `${path}: ${key} is not in ${bibliography}`),
      ...cited
        .filter(({ placed, unchecked }) => !placed && !unchecked)
        .map(({ key, path }) => `${path}: ${key} needs the place in it, or the word "unchecked"`),
      ...entries.filter((key) => !used.has(key)).map((key) => `${bibliography}: nobody cites ${key}`),
      ...twice.map((key) => `${bibliography}: ${key} stands there twice`),
    ],
    unchecked: cited.filter((citation) => citation.unchecked).map(({ key, path }) => `${path}: ${key}`),
    files: files.length,
    entries: entries.length,
    citations: cited.length,
  };
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  const { violations, unchecked, files, entries, citations } = checkSources(resolve("."));
  for (const violation of violations) console.error(violation);
  if (process.argv.includes("--list")) for (const citation of unchecked) console.log(`unchecked: ${citation}`);
  if (files === 0 || entries === 0 || citations === 0) {
    console.error(`The source check saw ${files} files, ${entries} entries and ${citations} citations, so it proves nothing.`);
    process.exit(1);
  }
  console.log(
    `sources: ${citations} citations of ${entries} entries in ${files} files, ${unchecked.length} of them unchecked, ${violations.length} violations`,
  );
  process.exit(violations.length > 0 ? 1 : 0);
}
