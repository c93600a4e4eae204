import { publishedSeries } from "../../published/index.ts";
import type { Bound, Figure, LinesFigure, ProfileFigure, ProfilePanel, Series, TableFigure } from "../figures.ts";
import type { BatteryOutputs, BatteryRow } from "./output-schema.ts";
import type { BatteryInputs } from "./schema.ts";

/** Points of a picture; more are not seen. */
const mostPoints = 800;
const mostBlockLines = 4;

/** What the pack does over time and over charge, when limits are passed, and what becomes of each block. */
export function batteryFigures(outputs: BatteryOutputs, { cell }: Pick<BatteryInputs, "cell">): readonly Figure[] {
  return [
    overTime(outputs),
    overCharge(outputs, cell === "reference-nca"),
    limitTable(outputs),
    energyTable(outputs),
    blockTable(outputs),
    ...heldTable(outputs),
  ];
}

function thinned(rows: readonly BatteryRow[]): readonly BatteryRow[] {
  const every = Math.max(1, Math.ceil(rows.length / mostPoints));
  return rows.filter((row, index) => {
    const before = rows[index - 1];
    const jump = before !== undefined && Math.abs(row.current - before.current) > 0.02 * Math.max(row.current, before.current);
    return index % every === 0 || index === rows.length - 1 || (jump && rows.length < 20 * mostPoints);
  });
}

function overTime(outputs: BatteryOutputs): ProfileFigure {
  const rows = thinned(outputs.rows);
  const x = rows.map((row) => row.time);
  const { conditions, dip } = outputs;
  const line = (name: string, of: (row: BatteryRow) => number, meaning: Series["meaning"] = "battery"): Series => ({
    name,
    meaning,
    x,
    y: rows.map(of),
  });
  const passed = outputs.timeToLimits.flatMap(({ name, time }) => (time === null ? [] : [{ name, x: time }]));
  return {
    kind: "profile",
    id: "over-time",
    caption: "Voltage, current, temperature and charge over time",
    x: { label: "time", quantity: "time", unit: "min" },
    panels: [
      {
        y: { label: "voltage", quantity: "voltage" },
        series: [
          line("at the terminals", (row) => row.voltage),
          { ...line("at rest", (row) => row.openCircuitVoltage, "neutral"), weight: "thin" },
        ],
        bounds: [{ name: "cut-off", axis: "y", value: conditions.cutoffVoltage, forbidden: "below", family: "power" }],
      },
      {
        y: { label: "current of a block", quantity: "current" },
        series: blockLines(outputs, rows, x),
        bounds: currentBounds(outputs),
        zeroBased: true,
      },
      {
        y: { label: "temperature", quantity: "temperature", unit: "degC" },
        series: [line("hottest block", (row) => row.temperature)],
        bounds: temperatureBounds(outputs),
      },
      chargePanel(outputs, rows, x),
    ],
    notable: [...passed, ...(dip ? [{ name: "dip", x: dip.time }] : [])],
  };
}

function chargePanel({ bounds }: BatteryOutputs, rows: readonly BatteryRow[], x: readonly number[]): ProfilePanel {
  const kept = bounds.lowestStateOfCharge;
  return {
    y: { label: "state of charge", quantity: "dimensionless", unit: "%" },
    series: [{ name: "left", meaning: "battery", x, y: rows.map((row) => row.stateOfCharge) }],
    bounds: kept === null ? [] : [{ name: "to be kept", axis: "y", value: kept, forbidden: "below", family: "rule" }],
    zeroBased: true,
  };
}

/** One line per block where blocks differ, the ones with most and least current first; else one for all. */
function blockLines(outputs: BatteryOutputs, rows: readonly BatteryRow[], x: readonly number[]): readonly Series[] {
  const onBus = outputs.blocks.filter(({ isolated }) => !isolated);
  const distinct = onBus.filter((block, index) => onBus.findIndex((other) => alike(other, block)) === index);
  return distinct
    .toSorted((a, b) => b.largestCurrent - a.largestCurrent)
    .slice(0, mostBlockLines)
    .map(({ block }, index) => ({
      name: distinct.length === 1 ? "each block" : `block ${block}`,
      meaning: (["ordered.1", "ordered.2", "ordered.3", "ordered.4"] as const)[index] ?? "ordered.4",
      x,
      y: rows.map((row) => row.blockCurrents[block - 1] ?? 0),
    }));
}

function alike(a: BatteryOutputs["blocks"][number], b: BatteryOutputs["blocks"][number]): boolean {
  return a.largestCurrent === b.largestCurrent && a.stateOfCharge === b.stateOfCharge && a.temperature === b.temperature;
}

/** A current limit far above what flows would flatten the picture. */
function currentBounds({ bounds, largestBlockCurrent }: BatteryOutputs): readonly Bound[] {
  const bound = (name: string, value: number | null): readonly Bound[] =>
    value === null || value > 2 * largestBlockCurrent ? [] : [{ name, axis: "y", value, forbidden: "above", family: "power" }];
  return [...bound("continuous", bounds.continuousCurrent), ...bound("short time", bounds.shortTimeCurrent)];
}

function temperatureBounds({ bounds, highestTemperature, lowestTemperature }: BatteryOutputs): readonly Bound[] {
  const near = 25;
  const found: Bound[] = [];
  if (bounds.temperatureMaximum !== null && bounds.temperatureMaximum < highestTemperature + near)
    found.push({ name: "hottest", axis: "y", value: bounds.temperatureMaximum, forbidden: "above", family: "strength" });
  if (bounds.temperatureMinimum !== null && bounds.temperatureMinimum > lowestTemperature - near)
    found.push({ name: "coldest", axis: "y", value: bounds.temperatureMinimum, forbidden: "below", family: "strength" });
  return found;
}

/** What a measured voltage at rest stands for: no current, and a built-in curve that does not change with temperature. */
const atRest = { temperature: 298.15, rate: 0 };

/** Voltage of one cell over state of charge; beside the built-in cell that was measured, its voltages at rest. */
function overCharge({ rows, conditions, endedBy, notDeliverable }: BatteryOutputs, published: boolean): LinesFigure {
  const shown = thinned(rows);
  const x = shown.map((row) => row.stateOfCharge);
  const perCell = (of: (row: BatteryRow) => number) => shown.map((row) => of(row) / conditions.series);
  return {
    kind: "lines",
    id: "over-charge",
    caption: "Voltage of a cell over state of charge",
    x: { label: "state of charge", quantity: "dimensionless", unit: "%" },
    y: { label: "voltage of a cell", quantity: "voltage" },
    series: [
      {
        name: "under load",
        meaning: "battery",
        x,
        y: perCell((row) => row.voltage),
        ...(notDeliverable ? { end: { limit: endedBy, family: "power" as const } } : {}),
      },
      { name: "at rest", meaning: "neutral", x, y: perCell((row) => row.openCircuitVoltage), weight: "thin" },
      ...(published ? publishedSeries("battery", "stateOfCharge", "openCircuitVoltage", atRest) : []),
    ],
    bounds: [{ name: "cut-off", axis: "y", value: conditions.cutoffVoltage / conditions.series, forbidden: "below", family: "power" }],
  };
}

function limitTable({ timeToLimits }: BatteryOutputs): TableFigure {
  return {
    kind: "table",
    id: "limits",
    caption: "Time to each limit",
    columns: [{ label: "limit" }, { label: "time", quantity: "time", unit: "min" }, { label: "why" }, { label: "ends the run" }],
    rows: timeToLimits.map(({ name, time, reason, endsRun }) => [name, time, reason, endsRun]),
  };
}

function energyTable({ energyOut, losses, energyLost, capacityDelivered, meanVoltage }: BatteryOutputs): TableFigure {
  const energy = (label: string) => ({ label, quantity: "energy", unit: "Wh" }) as const;
  return {
    kind: "table",
    id: "energy",
    caption: "Where the energy goes",
    columns: [
      energy("out"),
      energy("lost"),
      energy("ohmic"),
      energy("relaxation"),
      energy("diffusion"),
      energy("isolators"),
      energy("wiring"),
      { label: "charge out", quantity: "capacity", unit: "Ah" },
      { label: "mean voltage", quantity: "voltage" },
    ],
    rows: [
      [
        energyOut,
        energyLost,
        losses.ohmic,
        losses.relaxation,
        losses.diffusion,
        losses.isolators,
        losses.wiring,
        capacityDelivered,
        meanVoltage,
      ],
    ],
  };
}

function blockTable({ blocks }: BatteryOutputs): TableFigure {
  return {
    kind: "table",
    id: "blocks",
    caption: "Each block at the end",
    columns: [
      { label: "block" },
      { label: "on the bus" },
      { label: "state of charge", quantity: "dimensionless", unit: "%" },
      { label: "temperature", quantity: "temperature", unit: "degC" },
      { label: "largest current", quantity: "current" },
    ],
    rows: blocks.map(({ block, isolated, stateOfCharge, temperature, largestCurrent }) => [
      String(block),
      !isolated,
      stateOfCharge,
      temperature,
      largestCurrent,
    ]),
  };
}

function heldTable({ notDeliverable }: BatteryOutputs): readonly TableFigure[] {
  if (!notDeliverable) return [];
  const { largestPower, largestPowerDuration, sustained } = notDeliverable;
  return [
    {
      kind: "table",
      id: "still-deliverable",
      caption: "What can still be held from there",
      columns: [
        { label: "for", quantity: "time" },
        { label: "power", quantity: "power" },
      ],
      rows: [[largestPowerDuration, largestPower], ...sustained.map(({ duration, power }) => [duration, power])],
    },
  ];
}
