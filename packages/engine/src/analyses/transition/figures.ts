import type { Axis, Bound, Figure, ProfileFigure, ProfilePanel, RotorRibbon, Series, TableFigure } from "../figures.ts";
import { corridorFigure, corridorTable, holdFigure } from "./corridor-figures.ts";
import type { HistoryRow, TransitionOutputs, WayOutputs } from "./output-schema.ts";
import type { TransitionInputs } from "./schema.ts";
import { energyTable, limitTable, summaryTable } from "./tables.ts";

/** Histories of both ways, the corridor, what holding each speed takes, and the numbers behind. */
export function transitionFigures(outputs: TransitionOutputs, inputs: TransitionInputs): readonly Figure[] {
  const flown = outputs.ways.filter(({ rows }) => rows.length > 1);
  const corridor = outputs.corridor.length > 1 ? [corridorFigure(outputs), holdFigure(outputs)] : [];
  return [
    ...flown.map((way) => history(way, outputs, inputs)),
    ...corridor,
    summaryTable(outputs),
    ...flown.map((way) => limitTable(way)),
    ...(flown.some(({ energy }) => energy) ? [energyTable(outputs)] : []),
    ...(corridor.length > 0 ? [corridorTable(outputs)] : []),
    ...flown.map((way) => historyTable(way, outputs)),
  ];
}

const ids = { "hover to cruise": "out", "cruise to hover": "back" } as const;

function history(way: WayOutputs, outputs: TransitionOutputs, inputs: TransitionInputs): ProfileFigure {
  const { rows, summary } = way;
  const title = way.way === "hover to cruise" ? "From hover to cruise" : "From cruise to hover";
  const opens = way.way === "hover to cruise" ? "clutch opens" : "clutch closes";
  return {
    kind: "profile",
    id: ids[way.way],
    caption: way.flown ? title : `${title}: ${way.refusal ?? "not flown"}`,
    x: { label: "time", quantity: "time", unit: "s" },
    panels: panels(rows, outputs, inputs),
    ...(summary
      ? {
          notable: [
            { name: opens, x: summary.clutchTime },
            { name: "peak power", x: summary.peakTime },
          ],
        }
      : {}),
    ribbon: ribbon(rows, outputs.hoverShaftPower),
  };
}

/** Rotor shaft power over hover's along time. */
function ribbon(rows: readonly HistoryRow[], hover: number | null): RotorRibbon {
  return {
    x: rows.map(({ time }) => time),
    share: rows.map(({ rotorPower }) => (hover ? rotorPower / hover : null)),
    free: rows.map(({ clutch }) => clutch !== "closed"),
  };
}

function panels(rows: readonly HistoryRow[], outputs: TransitionOutputs, { heightBand }: TransitionInputs): readonly ProfilePanel[] {
  const x = rows.map(({ time }) => time);
  const line = (name: string, meaning: Series["meaning"], y: readonly (number | null)[], weight?: "thin"): Series => ({
    name,
    meaning,
    x,
    y,
    ...(weight ? { weight } : {}),
  });
  const column = (of: (row: HistoryRow) => number | null) => rows.map(of);
  const axis = (label: string, quantity: Axis["quantity"], more: Partial<Axis> = {}): Axis => ({ label, quantity, ...more });
  const bound = (name: string, value: number, forbidden: Bound["forbidden"], family: Bound["family"]): Bound => ({
    name,
    axis: "y",
    value,
    forbidden,
    family,
  });
  const driveOf = (row: HistoryRow, match: (id: string) => boolean) =>
    row.drivePowers.reduce((sum, power, i) => sum + (match(outputs.driveLines[i] ?? "") ? power : 0), 0);
  return [
    {
      y: axis("airspeed", "speed"),
      zeroBased: true,
      series: [
        line(
          "airspeed",
          "track",
          column((row) => row.airspeed),
        ),
        line(
          "reference",
          "neutral",
          column((row) => row.wantedAirspeed),
          "thin",
        ),
      ],
    },
    {
      y: axis("height", "length", { datum: "above the start" }),
      series: [
        line(
          "height",
          "track",
          column((row) => row.height),
        ),
      ],
      bounds: bandBounds(rows, heightBand),
    },
    {
      y: axis("attitude", "angle"),
      series: [
        line(
          "pitch",
          "body",
          column((row) => row.pitch),
        ),
        line(
          "roll",
          "neutral",
          column((row) => row.roll),
          "thin",
        ),
      ],
    },
    {
      y: axis("rotor tip speed", "speed"),
      series: [
        line(
          "rotor",
          "rotor",
          column((row) => row.tipSpeed),
        ),
      ],
      bounds: [
        bound("slowest permitted", outputs.tipSpeedMinimum, "below", "strength"),
        bound("fastest permitted", outputs.tipSpeedMaximum, "above", "strength"),
      ],
    },
    {
      y: axis("rotor torque", "torque"),
      series: [
        line(
          "that the drive gives",
          "rotor",
          column((row) => row.driveTorque),
        ),
        line(
          "that the air asks",
          "neutral",
          column((row) => row.rotorTorque),
          "thin",
        ),
      ],
    },
    {
      y: axis("thrust", "force"),
      series: [
        line(
          "rotor",
          "rotor",
          column((row) => row.rotorThrust),
        ),
        ...outputs.propellers.map((id, i) =>
          line(
            id,
            "propellers",
            column((row) => row.thrusts[i] ?? null),
            i === 0 ? undefined : "thin",
          ),
        ),
      ],
    },
    {
      y: axis("collective", "angle"),
      series: [
        line(
          "collective",
          "rotor",
          column((row) => row.collective),
        ),
      ],
    },
    {
      y: axis("electric power", "power"),
      zeroBased: true,
      series: [
        line(
          "all",
          "battery",
          column((row) => row.electricPower),
        ),
        line(
          "trims alone",
          "before",
          column((row) => row.trimmedPower),
          "thin",
        ),
        ...outputs.driveLines.map((id) =>
          line(
            id,
            meaningOf(id, outputs),
            column((row) => driveOf(row, (other) => other === id)),
            "thin",
          ),
        ),
      ],
    },
    {
      y: axis("current of a block", "current"),
      zeroBased: true,
      series: [
        line(
          "one block",
          "battery",
          column((row) => row.blockCurrent),
        ),
      ],
    },
    {
      y: axis("pack voltage", "voltage"),
      series: [
        line(
          "at the terminals",
          "battery",
          column((row) => row.packVoltage),
        ),
      ],
    },
    {
      y: axis("winding", "temperature"),
      series: outputs.driveLines.map((id, i) =>
        line(
          id,
          meaningOf(id, outputs),
          column((row) => row.windings[i] ?? null),
          i === 0 ? undefined : "thin",
        ),
      ),
    },
  ];
}

/** The band is drawn only where the flight comes near it: else it would hide the height. */
function bandBounds(rows: readonly HistoryRow[], band: number): readonly Bound[] {
  const most = Math.max(...rows.map(({ height }) => Math.abs(height)));
  if (most < band / 3) return [];
  return [
    { name: "height band", axis: "y", value: band, forbidden: "above", family: "rule" },
    { name: "height band", axis: "y", value: -band, forbidden: "below", family: "rule" },
  ];
}

function meaningOf(id: string, { propellers }: TransitionOutputs): Series["meaning"] {
  const word = id.replace(/-drive$/, "");
  return propellers.some((propeller) => propeller.startsWith(word)) ? "propellers" : "rotor";
}

/** Rows that are printed at most; all of them are in the outputs. */
const mostRows = 60;

function historyTable({ way, rows: all }: WayOutputs, outputs: TransitionOutputs): TableFigure {
  const every = Math.max(1, Math.ceil(all.length / mostRows));
  const rows = all.filter((_, i) => i % every === 0 || i === all.length - 1);
  return {
    kind: "table",
    id: `${ids[way]}-history`,
    caption: `History, ${way}; rotor share is shaft power over hover's`,
    columns: [
      { label: "time", quantity: "time", unit: "s" },
      { label: "phase" },
      { label: "clutch" },
      { label: "airspeed", quantity: "speed" },
      { label: "height", quantity: "length", datum: "above the start" },
      { label: "distance", quantity: "length" },
      { label: "pitch", quantity: "angle" },
      { label: "tip speed", quantity: "speed" },
      { label: "drive torque", quantity: "torque" },
      { label: "rotor thrust", quantity: "force" },
      { label: "propeller thrust", quantity: "force" },
      { label: "collective", quantity: "angle" },
      { label: "electric power", quantity: "power" },
      { label: "rotor share", quantity: "dimensionless", unit: "%" },
    ],
    rows: rows.map((row) => [
      row.time,
      row.phase,
      row.clutch,
      row.airspeed,
      row.height,
      row.distance,
      row.pitch,
      row.tipSpeed,
      row.driveTorque,
      row.rotorThrust,
      row.thrusts.reduce((sum, thrust) => sum + thrust, 0),
      row.collective,
      row.electricPower,
      outputs.hoverShaftPower ? row.rotorPower / outputs.hoverShaftPower : null,
    ]),
  };
}
