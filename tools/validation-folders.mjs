// Reads the folders of published checks under validation/: what each must hold, and what is wrong with those that do not.
import { existsSync, readdirSync, readFileSync } from "node:fs";

const needed = ["source.md", "tolerance.md", "domain.json", "cases.csv", "result.json"];
const references = ["measured", "computed", "formula"];

/**
 * Every folder, read; one that is not whole is left out and named.
 * @param {URL} folder the folder validation/, with a slash at its end
 */
export function validationFolders(folder) {
  const whole = [];
  const faults = [];
  const names = readdirSync(folder, { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map((entry) => entry.name)
    .sort();
  for (const check of names) {
    const found = readFolder(new URL(`${check}/`, folder), check);
    if (found.faults.length > 0) faults.push(...found.faults.map((fault) => `validation/${check}: ${fault}`));
    else whole.push(found.read);
  }
  if (whole.length === 0) faults.push("validation: no published check has a record");
  return { checks: whole, faults };
}

function readFolder(folder, check) {
  const missing = needed.filter((name) => !existsSync(new URL(name, folder)));
  if (missing.length > 0)
    return {
      faults: missing.map((name) => `${name} is missing${name === "result.json" ? ": run the check once with WINGSEED_RECORD=1" : ""}`),
    };
  const text = (name) => readFileSync(new URL(name, folder), "utf8");
  try {
    const cases = readTable(text("cases.csv"));
    const result = JSON.parse(text("result.json"));
    const domain = JSON.parse(text("domain.json"));
    const read = { check, domain, cases, result, tolerance: text("tolerance.md") };
    return { faults: [...recordFaults(read), ...domainFaults(read)], read };
  } catch (error) {
    return { faults: [String(error instanceof Error ? error.message : error)] };
  }
}

/** Column name → cells; a cell is a number where it reads as one. */
function readTable(text) {
  const lines = text
    .split("\n")
    .map((line) => line.trim())
    .filter((line) => line !== "" && !line.startsWith("#"));
  const [head = "", ...rows] = lines.map((line) => line.split(","));
  return rows.map((cells) => Object.fromEntries([...head].map((name, i) => [name, cell(cells[i] ?? "")])));
}

function cell(text) {
  return text.trim() !== "" && Number.isFinite(Number(text)) ? Number(text) : text;
}

function recordFaults({ cases, result }) {
  const faults = [];
  if (cases.length === 0) faults.push("cases.csv has no row");
  if (!Array.isArray(result.comparisons) || result.comparisons.length === 0) return [...faults, "result.json has no comparison"];
  for (const { quantity, rows } of result.comparisons)
    if (!Array.isArray(rows) || rows.length === 0)
      faults.push(`result.json keeps no row of "${quantity}": record it again with WINGSEED_RECORD=1`);
  return faults;
}

function domainFaults({ domain, cases }) {
  const faults = [];
  const say = (fault) => faults.push(`domain.json: ${fault}`);
  if (typeof domain.component !== "string" || !/^[a-z][a-z-]*$/.test(domain.component)) say("component must be the name of an analysis");
  if (typeof domain.title !== "string" || domain.title.length === 0 || domain.title.length > 40)
    say("title must be a short name of the source, at most 40 characters");
  if (!references.includes(domain.reference)) say(`reference must be one of ${references.join(", ")}`);
  for (const [name, range] of Object.entries(domain.domain ?? {}))
    if (!Array.isArray(range) || range.length !== 2 || !range.every(Number.isFinite) || range[0] > range[1])
      say(`domain.${name} must be [low, high]`);
  if (typeof domain.domain !== "object" || domain.domain === null) say("domain must be an object of ranges");
  if (!Array.isArray(domain.series)) say("series must be a list; an empty one where nothing is drawn");
  for (const [i, series] of (domain.series ?? []).entries()) {
    if (typeof series.label !== "string") say(`series[${i}].label must be text`);
    for (const axis of ["x", "y"])
      if (typeof series[axis]?.field !== "string" || !(series[axis].column in (cases[0] ?? {})))
        say(`series[${i}].${axis} needs a field and a column of cases.csv`);
    for (const name of Object.keys(series.where ?? {})) if (!(name in (cases[0] ?? {}))) say(`series[${i}].where: no column ${name}`);
    if (faults.length === 0 && points({ domain, cases }, series).length === 0) say(`series[${i}] chooses no row`);
  }
  return faults;
}

/** The rows of a series as [x, y] in SI. */
export function points({ cases }, { x, y, where = {} }) {
  const chosen = cases.filter((row) =>
    Object.entries(where).every(([name, allowed]) =>
      Array.isArray(allowed) ? row[name] >= allowed[0] && row[name] <= allowed[1] : row[name] === allowed,
    ),
  );
  const value = (row, axis) => (typeof row[axis.column] === "number" ? row[axis.column] * (axis.scale ?? 1) + (axis.offset ?? 0) : null);
  return chosen.map((row) => [value(row, x), value(row, y)]).filter(([a, b]) => a !== null && b !== null);
}
