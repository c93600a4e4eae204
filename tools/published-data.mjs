// What the engine knows of published data: packages/engine/src/published/published-data.json, made from the folders under
// validation/ together with their tables (node tools/validation-table.mjs).
import { points } from "./validation-folders.mjs";

/** Text of the data file: one check after the other, a series and an error figure in one line each. */
export function publishedText(checks) {
  const lines = [];
  const kept = (_key, value) => {
    const oneLine = value !== null && typeof value === "object" && ("points" in value || "bias" in value || "low" in value);
    return oneLine ? `line ${lines.push(JSON.stringify(value)) - 1}` : value;
  };
  const text = JSON.stringify({ checks: checks.map(published) }, kept, 2);
  return `${text.replace(/"line (\d+)"/g, (_, index) => lines[Number(index)])}\n`;
}

function published(read) {
  const { check, domain, result } = read;
  return {
    check,
    component: domain.component,
    title: domain.title,
    source: result.source,
    reference: domain.reference,
    domain: Object.entries(domain.domain).map(([name, [low, high]]) => ({ name, low, high })),
    series: domain.series.map((series) => ({
      label: series.label,
      x: series.x.field,
      y: series.y.field,
      points: points(read, series)
        .map((pair) => pair.map(short))
        .sort((a, b) => a[0] - b[0]),
    })),
    errors: result.comparisons.map(({ quantity, field, error, all, gated, passed, rows }) => ({
      quantity,
      field: field ?? null,
      unit: error,
      rows: all.rows,
      gatedRows: gated?.rows ?? 0,
      bias: short(all.bias),
      rms: short(all.rms),
      largest: short(all.largest),
      lowest: short(Math.min(...rows.map((row) => rowError(row, error)))),
      highest: short(Math.max(...rows.map((row) => rowError(row, error)))),
      passed,
    })),
  };
}

/** As validation/comparison.ts has it. */
function rowError({ expected, computed }, kind) {
  return kind === "relative" ? computed / expected - 1 : computed - expected;
}

/** Six digits: more than any published figure has, and no noise of the last bits. */
function short(value) {
  return Number(value.toPrecision(6));
}
