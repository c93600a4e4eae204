// Writes the table of published checks from the records under validation/: validation/README.md, validation/summary.json, the
// data file of the engine and the part of README.md between its two markers. With --check it only says whether they are up to
// date. A folder that is not whole is left out, named, and makes the exit status 1.
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { publishedText } from "./published-data.mjs";
import { references } from "./references.mjs";
import { validationFolders } from "./validation-folders.mjs";

const root = new URL("../", import.meta.url);
const start = "<!-- validation:start -->";
const end = "<!-- validation:end -->";

/** One line per compared quantity of every record, in the order of the folder names. */
export function summary(checks) {
  return checks.flatMap(({ check, domain, result, tolerance: words }) =>
    result.comparisons.map(({ quantity, error, all, gated, tolerance, passed, note, reason, field, quantityKind, along, rows }) => ({
      check,
      title: domain.title,
      component: domain.component,
      reference: domain.reference,
      source: result.source,
      quantity,
      rows: all.rows,
      gatedRows: gated?.rows ?? 0,
      bias: shown(all.bias, error, true),
      rms: shown(all.rms, error, false),
      largest: shown(all.largest, error, false),
      tolerance: passed === null ? "reported, not gated" : tolerance,
      // Nothing gated, nothing failed: gatedRows says so.
      passed: passed ?? true,
      reason: reason ?? reasonIn(words, quantity),
      note,
      figures: { error, bias: all.bias, rms: all.rms, largest: all.largest },
      picture: {
        quantity: quantityKind,
        along,
        rows: rows.map((row) => [row.along ?? null, row.expected, row.computed, ...(row.bounds ?? [])].map(digits)),
      },
      ...(field === undefined ? {} : { field }),
    })),
  );
}

/** Enough digits for a picture, and none that differ between processors. */
function digits(value) {
  return value === null ? null : Number(value.toPrecision(6));
}

/** Why a tolerance is what it is, from tolerance.md: the last column of its table, or else its first paragraph. */
export function reasonIn(text, quantity) {
  const lines = text.split("\n");
  const cells = lines
    .filter((line) => line.startsWith("|"))
    .map((line) =>
      line
        .slice(1, -1)
        .split("|")
        .map((cell) => cell.trim()),
    );
  const [head = [], , ...rows] = cells;
  const [named, why] = [head.indexOf("quantity"), head.indexOf("reason")];
  const reasons = rows.filter((row) => named >= 0 && why >= 0 && row[named] === quantity).map((row) => row[why]);
  if (reasons.some((reason) => reason !== "")) return [...new Set(reasons.filter((reason) => reason !== ""))].join("; ");
  if (rows.length > 0) return "";
  const paragraph = text.split(/\n\s*\n/).find((part) => part.trim() !== "" && !part.trim().startsWith("#"));
  return (paragraph ?? "").replaceAll("|", "/").replace(/\s+/g, " ").trim();
}

/** Said beside every source whose numbers nobody measured. */
const referenceWord = { measured: "", computed: " (computed, not measured)", formula: " (formula, not measured)" };

/** Every comparison in Markdown, one table per source, sources by component. */
export function table(lines) {
  const printed = references(readFileSync(new URL("docs/sources.bib", root), "utf8"));
  const head = ["quantity", "rows (gated)", "bias", "root mean square", "largest error", "gate", "", "reason", "remark"];
  return byCheck(lines)
    .map(([first, ...more]) => {
      const body = [first, ...more].map((line) => [
        line.quantity,
        `${line.rows} (${line.gatedRows})`,
        line.bias,
        line.rms,
        line.largest,
        line.tolerance,
        verdict(line),
        line.reason,
        line.note,
      ]);
      const cited = `[${printed[first.source] ?? first.source}](${first.check}/source.md)${referenceWord[first.reference]}`;
      return [`### ${first.component}: ${first.title}`, "", cited, "", ...markdownTable(head, body), ""].join("\n");
    })
    .join("\n");
}

/** One row per source, for the README: how much was compared, and what is missed. */
export function shortTable(lines) {
  const head = ["component", "source", "rows", "gates met", "largest root mean square, all rows of gated quantities", "missed"];
  const body = byCheck(lines).map((of) => {
    const gated = of.filter((line) => line.gatedRows > 0);
    const relative = gated.filter((line) => line.figures.error === "relative");
    const worst = relative.reduce((high, line) => (high && high.figures.rms >= line.figures.rms ? high : line), undefined);
    return [
      of[0].component,
      `[${of[0].title}](validation/${of[0].check}/source.md)${referenceWord[of[0].reference]}`,
      String(of.reduce((sum, line) => sum + line.rows, 0)),
      gated.length === 0 ? "none gated" : `${gated.filter((line) => line.passed).length} of ${gated.length}`,
      worst ? `${worst.rms}, ${worst.quantity}` : "",
      gated
        .filter((line) => !line.passed)
        .map((line) => line.quantity)
        .join("; "),
    ];
  });
  return markdownTable(head, body).join("\n");
}

const verdict = (line) => (line.gatedRows === 0 ? "" : line.passed ? "met" : "NOT met");

function byCheck(lines) {
  const groups = [...new Set(lines.map((line) => line.check))].map((check) => lines.filter((line) => line.check === check));
  return groups.sort((a, b) => a[0].component.localeCompare(b[0].component) || a[0].check.localeCompare(b[0].check));
}

function markdownTable(head, body) {
  const row = (cells) => `| ${cells.join(" | ")} |`;
  return [row(head), row(head.map(() => "---")), ...body.map(row)];
}

function shown(value, error, signed) {
  const [factor, unit] = {
    relative: [100, " %"],
    rad: [180 / Math.PI, "°"],
    m: [1, " m"],
    1: [1, ""],
    V: [1, " V"],
    K: [1, " K"],
    s: [1, " s"],
    A: [1, " A"],
  }[error];
  const size = Math.abs(value * factor);
  // Less than a millionth is the noise of the arithmetic.
  if (size < 1e-6) return `0${unit}`;
  const digits = size >= 0.01 ? 2 : 1;
  const text = Number(size.toPrecision(digits)).toFixed(Math.max(0, digits - 1 - Math.floor(Math.log10(size))));
  return `${signed ? (value < 0 ? "−" : "+") : ""}${text}${unit}`;
}

const words = `Bias is the mean error with its sign; all three figures are over all rows, gated or not. Gated rows must stay within the tolerance,
which is never widened, and was settled before the first run unless the page of its folder says otherwise; a gate that is known to be missed
stands as missed. Errors are computed less published, relative to published where in
per cent. Sources marked as computed or as formula are regressions: they hold the arithmetic, not the model.`;

/** Every generated file with its text, and what is wrong with the folders that are left out of them. */
export function generated() {
  const { checks, faults } = validationFolders(new URL("validation/", root));
  const lines = summary(checks);
  const markdown = table(lines);
  const files = [
    {
      file: new URL("validation/README.md", root),
      text: `# Published checks

Made by \`node tools/validation-table.mjs\` from the records that the tests keep true; do not edit by hand.

${words}

${markdown}

Each folder holds its source and how the numbers were read (\`source.md\`), the cases (\`cases.csv\`), the tolerance and its reason
(\`tolerance.md\`), the range it covers and the points that pictures show (\`domain.json\`), the test, and the record (\`result.json\`, written anew with \`WINGSEED_RECORD=1 npx vitest run validation\`).
`,
    },
    { file: new URL("validation/summary.json", root), text: `[\n${lines.map((line) => JSON.stringify(line)).join(",\n")}\n]\n` },
    { file: new URL("packages/engine/src/published/published-data.json", root), text: publishedText(checks) },
  ];
  const readme = new URL("README.md", root);
  const text = existsSync(readme) ? readFileSync(readme, "utf8") : "";
  const from = text.indexOf(start);
  const to = text.indexOf(end);
  if (from >= 0 && to > from) {
    files.push({ file: readme, text: `${text.slice(0, from + start.length)}\n\n${shortTable(lines)}\n\n${text.slice(to)}` });
  }
  return { files, faults };
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const { files, faults } = generated();
  const stale = files.filter(({ file, text }) => !existsSync(file) || readFileSync(file, "utf8") !== text);
  for (const fault of faults) console.error(fault);
  if (process.argv.includes("--check")) {
    for (const { file } of stale) console.error(`${fileURLToPath(file)} is not up to date: run node tools/validation-table.mjs`);
  } else {
    for (const { file, text } of stale) writeFileSync(file, text);
    console.log(`${stale.length} files written${faults.length > 0 ? ", without the folders named above" : ""}`);
  }
  const wrong = faults.length > 0 || (process.argv.includes("--check") && stale.length > 0);
  process.exitCode = wrong ? 1 : 0;
}
