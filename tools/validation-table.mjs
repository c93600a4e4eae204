// Writes the table of published checks from the records under validation/: validation/README.md, validation/summary.json and
// the part of README.md between its two markers. With --check it only says whether they are up to date.
import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { references } from "./references.mjs";

const root = new URL("../", import.meta.url);
const start = "<!-- validation:start -->";
const end = "<!-- validation:end -->";

/** One line per compared quantity of every record, in the order of the folder names. */
export function summary() {
  const folder = new URL("validation/", root);
  const checks = readdirSync(folder, { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map((entry) => entry.name)
    .sort();
  const lines = checks.flatMap((check) => {
    const file = new URL(`${check}/result.json`, folder);
    if (!existsSync(file)) throw new Error(`validation/${check} has no result.json: run the validation once with WINGSEED_RECORD=1`);
    const { source, comparisons } = JSON.parse(readFileSync(file, "utf8"));
    return comparisons.map(({ quantity, error, all, gated, tolerance, passed, note }) => ({
      check,
      source,
      quantity,
      rows: all.rows,
      gatedRows: gated?.rows ?? 0,
      bias: shown(all.bias, error, true),
      rms: shown(all.rms, error, false),
      largest: shown(all.largest, error, false),
      tolerance: passed === null ? "reported, not gated" : tolerance,
      // Nothing gated, nothing failed: gatedRows says so.
      passed: passed ?? true,
      note,
      figures: { error, bias: all.bias, rms: all.rms, largest: all.largest },
    }));
  });
  if (lines.length === 0) throw new Error("no published check has a record");
  return lines;
}

/** The table in Markdown. */
export function table(lines) {
  const printed = references(readFileSync(new URL("docs/sources.bib", root), "utf8"));
  const head = ["published source", "quantity", "rows (gated)", "bias", "root mean square", "largest error", "tolerance", "", "remark"];
  const body = lines.map((line) => [
    `[${printed[line.source] ?? line.source}](${line.check}/source.md)`,
    line.quantity,
    `${line.rows} (${line.gatedRows})`,
    line.bias,
    line.rms,
    line.largest,
    line.tolerance,
    line.gatedRows === 0 ? "" : line.passed ? "met" : "NOT met",
    line.note,
  ]);
  const row = (cells) => `| ${cells.join(" | ")} |`;
  return [row(head), row(head.map(() => "---")), ...body.map(row)].join("\n");
}

function shown(value, error, signed) {
  const [factor, unit] = { relative: [100, " %"], rad: [180 / Math.PI, "°"], m: [1, " m"], 1: [1, ""] }[error];
  const size = Math.abs(value * factor);
  if (size < 1e-12) return `0${unit}`;
  const digits = size >= 0.01 ? 2 : 1;
  const text = Number(size.toPrecision(digits)).toFixed(Math.max(0, digits - 1 - Math.floor(Math.log10(size))));
  return `${signed ? (value < 0 ? "−" : "+") : ""}${text}${unit}`;
}

const words = `Bias is the mean error with its sign; all three figures are over all rows, gated or not. Gated rows must stay within the tolerance,
which was settled before the first run and is never widened. Errors are computed less published, relative to published where in
per cent.`;

/** Every generated file with its text. */
export function generated() {
  const lines = summary();
  const markdown = table(lines);
  const files = [
    {
      file: new URL("validation/README.md", root),
      text: `# Published checks

Made by \`node tools/validation-table.mjs\` from the records that the tests keep true; do not edit by hand.

${words}

${markdown}

Each folder holds its source and how the numbers were read (\`source.md\`), the cases (\`cases.csv\`), the tolerance and its reason
(\`tolerance.md\`), the test, and the record (\`result.json\`, written anew with \`WINGSEED_RECORD=1 npx vitest run validation\`).
`,
    },
    { file: new URL("validation/summary.json", root), text: `${JSON.stringify(lines, null, 2)}\n` },
  ];
  const readme = new URL("README.md", root);
  const text = existsSync(readme) ? readFileSync(readme, "utf8") : "";
  const from = text.indexOf(start);
  const to = text.indexOf(end);
  if (from >= 0 && to > from) {
    const inReadme = markdown.replaceAll("](", "](validation/");
    files.push({ file: readme, text: `${text.slice(0, from + start.length)}\n\n${inReadme}\n\n${text.slice(to)}` });
  }
  return files;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const stale = generated().filter(({ file, text }) => !existsSync(file) || readFileSync(file, "utf8") !== text);
  if (process.argv.includes("--check")) {
    for (const { file } of stale) console.error(`${fileURLToPath(file)} is not up to date: run node tools/validation-table.mjs`);
    process.exitCode = stale.length > 0 ? 1 : 0;
  } else {
    for (const { file, text } of stale) writeFileSync(file, text);
    console.log(`${stale.length} files written`);
  }
}
