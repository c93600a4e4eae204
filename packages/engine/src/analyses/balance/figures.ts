import type { Figure, TableFigure } from "../figures.ts";
import { arrangement } from "./arrangement.ts";
import { drawnLimits } from "./centre-limits.ts";
import { loadingDiagram } from "./loading-diagram.ts";
import { loadingOf } from "./loadings.ts";
import type { BalanceOutputs, BalanceRow } from "./output-schema.ts";
import type { BalanceInputs } from "./schema.ts";

/** Arrangement, loading diagram, and the tables behind both. */
export function balanceFigures(outputs: BalanceOutputs, inputs: BalanceInputs): readonly Figure[] {
  return [
    drawing(outputs, inputs),
    loadingDiagram(outputs),
    loadingTable(outputs),
    breakdownTable(outputs),
    inertiaTable(outputs),
    ...(outputs.suspension.length > 0 ? [suspensionTable(outputs)] : []),
    ...(outputs.contributions.length > 0 ? [contributionTable(outputs)] : []),
  ];
}

function shown({ rows, now }: BalanceOutputs): BalanceRow {
  return rows[now] as BalanceRow;
}

function drawing(outputs: BalanceOutputs, { places }: BalanceInputs): Figure {
  const row = shown(outputs);
  const { payload, place, blocks } = row;
  const at = places?.find(({ name }) => name === place);
  return arrangement(outputs.aircraft, loadingOf(outputs.aircraft, { blocks, payload, place, at }), drawnLimits(row));
}

const verdicts: Readonly<Record<BalanceRow["verdict"], string>> = {
  inside: "inside",
  "inside-unsure": "inside, not surely",
  "outside-unsure": "outside, not surely",
  outside: "outside",
};

function loadingTable({ rows }: BalanceOutputs): TableFigure {
  return {
    kind: "table",
    id: "rows",
    caption: "Every pack, payload and place",
    columns: [
      { label: "pack, blocks" },
      { label: "payload" },
      { label: "place" },
      { label: "mass", quantity: "mass" },
      { label: "mass, ±", quantity: "mass" },
      { label: "centre of gravity, forward", quantity: "length", unit: "mm" },
      { label: "forward, ±", quantity: "length", unit: "mm" },
      { label: "below the datum", quantity: "length", unit: "mm" },
      { label: "to the fore limit", quantity: "length", unit: "mm" },
      { label: "to the aft limit", quantity: "length", unit: "mm" },
      { label: "between the limits" },
      { label: "nearest limit" },
    ],
    rows: rows.map((row) => [
      String(row.blocks),
      row.payload,
      row.place,
      row.mass.value,
      row.mass.halfWidth,
      row.centre.x.value,
      row.centre.x.halfWidth,
      row.centre.z.value,
      row.foreMargin,
      row.aftMargin,
      row.tooHeavy ? `${verdicts[row.verdict]}, too heavy` : verdicts[row.verdict],
      `${row.binding}, ${row[row.foreMargin < row.aftMargin ? "fore" : "aft"].from}`,
    ]),
  };
}

function breakdownTable(outputs: BalanceOutputs): TableFigure {
  const { blocks, payload } = shown(outputs);
  return {
    kind: "table",
    id: "breakdown",
    caption: `What ${blocks} blocks with ${payload} weigh, and how far each thing pulls the centre of gravity forward`,
    columns: [
      { label: "item" },
      { label: "mass", quantity: "mass" },
      { label: "share", quantity: "dimensionless", unit: "%" },
      { label: "forward", quantity: "length", unit: "mm" },
      { label: "right", quantity: "length", unit: "mm" },
      { label: "below", quantity: "length", unit: "mm" },
      { label: "pull forward", quantity: "length", unit: "mm" },
    ],
    rows: outputs.breakdown.map(({ item, mass, share, x, y, z, pull }) => [item, mass, share, x, y, z, pull]),
  };
}

function inertiaTable({ rows }: BalanceOutputs): TableFigure {
  return {
    kind: "table",
    id: "inertia",
    caption: "Moments of inertia about the centre of gravity, with the half-width of their 95 % intervals",
    columns: [
      { label: "pack, blocks" },
      { label: "payload" },
      { label: "roll", quantity: "inertia" },
      { label: "roll, ±", quantity: "inertia" },
      { label: "pitch", quantity: "inertia" },
      { label: "pitch, ±", quantity: "inertia" },
      { label: "yaw", quantity: "inertia" },
      { label: "yaw, ±", quantity: "inertia" },
      { label: "product z x", quantity: "inertia" },
    ],
    rows: rows.map(({ blocks, payload, inertia: { x, y, z, product } }) => [
      String(blocks),
      payload,
      x.value,
      x.halfWidth,
      y.value,
      y.halfWidth,
      z.value,
      z.halfWidth,
      product.value,
    ]),
  };
}

function suspensionTable({ suspension }: BalanceOutputs): TableFigure {
  return {
    kind: "table",
    id: "suspension",
    caption: "Angles of the hanging aircraft, measured and from these masses, and the centre of gravity that the measured ones mean",
    columns: [
      { label: "measurement" },
      { label: "pack, blocks" },
      { label: "payload" },
      { label: "measured, nose up", quantity: "angle" },
      { label: "measured, ±", quantity: "angle" },
      { label: "computed, nose up", quantity: "angle" },
      { label: "computed, ±", quantity: "angle" },
      { label: "agrees" },
      { label: "centre by masses", quantity: "length", unit: "mm" },
      { label: "centre by angle", quantity: "length", unit: "mm" },
      { label: "by angle, ±", quantity: "length", unit: "mm" },
      { label: "empty centre by angle", quantity: "length", unit: "mm" },
    ],
    rows: suspension.map((row) => [
      row.id,
      String(row.blocks),
      row.payload ?? "none",
      row.measured.value,
      row.measuredStated ? row.measured.halfWidth : null,
      row.computed.value,
      row.computed.halfWidth,
      row.agrees ? "yes" : row.measuredStated ? "no" : "no, but no interval is stated",
      row.centre.value,
      row.measuredCentre.value,
      row.measuredCentre.halfWidth,
      row.emptyCentre.value,
    ]),
  };
}

function contributionTable(outputs: BalanceOutputs): TableFigure {
  const { blocks, payload } = shown(outputs);
  return {
    kind: "table",
    id: "contributions",
    caption: `What the interval of the centre of gravity comes from, ${blocks} blocks with ${payload}`,
    columns: [{ label: "number of the file" }, { label: "as written" }, { label: "± alone", quantity: "length", unit: "mm" }],
    rows: outputs.contributions.map(({ path, text, halfWidth }) => [path, text, halfWidth]),
  };
}
