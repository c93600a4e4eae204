import { publishedSeries } from "../../published/index.ts";
import type { Axis, Figure, LinesFigure, Series, TableColumn } from "../figures.ts";
import type { MotorOutputs, MotorRow } from "./output-schema.ts";
import type { MotorInputs } from "./schema.ts";

const currentAxis: Axis = { label: "Motor current", quantity: "current" };
type Curve = MotorOutputs["curve"][number];

/** Curves at full throttle with the points in them, where power goes, temperatures over time, and the numbers. */
export function motorFigures(outputs: MotorOutputs, inputs: MotorInputs): readonly Figure[] {
  return [
    efficiencyFigure(outputs),
    overCurrent(outputs, "power", "Power at full throttle", { label: "Power", quantity: "power" }, [
      { name: "electric", meaning: "battery", of: (point) => point.electricPower },
      { name: "shaft", meaning: "propellers", of: (point) => point.shaftPower },
    ]),
    overCurrent(outputs, "rate", "Rate of the shaft at full throttle", { label: "Rotation rate", quantity: "rotationRate" }, [
      { name: "shaft", meaning: "propellers", of: (point) => point.rotationRate },
    ]),
    overCurrent(outputs, "torque", "Torque of the shaft at full throttle", { label: "Torque", quantity: "torque" }, [
      { name: "shaft", meaning: "propellers", of: (point) => point.torque },
    ]),
    ...shareFigure(outputs, inputs),
    ...heatingFigure(outputs),
    ...lossesFigure(outputs),
    rowsTable(outputs),
    lossesTable(outputs),
    ratingsTable(outputs),
  ];
}

interface Line {
  readonly name: string;
  readonly meaning: Series["meaning"];
  readonly of: (point: Curve) => number;
}

function overCurrent({ curve, given }: MotorOutputs, id: string, caption: string, y: Axis, lines: readonly Line[]): LinesFigure {
  const most = curve[curve.length - 1]?.current ?? 0;
  return {
    kind: "lines",
    id,
    caption,
    x: currentAxis,
    y,
    series: lines.map(({ name, meaning, of }) => ({ name, meaning, x: curve.map((point) => point.current), y: curve.map(of) })),
    ...(given.currentMaximum !== null && given.currentMaximum <= 1.2 * most
      ? { bounds: [{ name: "motor current", axis: "x", value: given.currentMaximum, forbidden: "above", family: "power" }] }
      : {}),
    zeroBased: true,
  };
}

function efficiencyFigure(outputs: MotorOutputs): Figure {
  const { curve, rows, bestEfficiency } = outputs;
  const shown = rows.filter((row) => row.current !== null && row.efficiency !== null).sort((a, b) => (a.current ?? 0) - (b.current ?? 0));
  return {
    kind: "lines",
    id: "efficiency",
    caption: "Efficiency from supply to shaft",
    x: currentAxis,
    y: { label: "Efficiency", quantity: "dimensionless" },
    series: [
      { name: "full throttle", meaning: "propellers", x: curve.map((point) => point.current), y: curve.map((point) => point.efficiency) },
      ...(shown.length > 1
        ? [
            {
              name: "points asked",
              meaning: "ordered.2" as const,
              weight: "thin" as const,
              x: shown.map((row) => row.current ?? 0),
              y: shown.map((row) => row.efficiency),
            },
          ]
        : []),
    ],
    ...(bestEfficiency && bestEfficiency.efficiency !== null
      ? { notable: [{ name: "best", x: bestEfficiency.current, y: bestEfficiency.efficiency }] }
      : {}),
    zeroBased: true,
  };
}

/** Efficiency over the share of the stall current, with published points where the no-load share is about that of theirs. */
function shareFigure({ curve, stallCurrent, noLoad }: MotorOutputs, { motor }: MotorInputs): readonly Figure[] {
  const plain = "speedConstant" in motor && motor.gear.length === 0 && motor.controller.proportionalLoss === 0;
  if (!plain || !noLoad || stallCurrent <= 0) return [];
  const noLoadShare = noLoad.current / stallCurrent;
  const published = publishedSeries("motor", "currentShare", "efficiency", { noLoadShare });
  return [
    {
      kind: "lines",
      id: "efficiency-share",
      caption: "Efficiency over the share of the current that holds the shaft",
      x: { label: "Current over stall current", quantity: "dimensionless" },
      y: { label: "Efficiency", quantity: "dimensionless" },
      series: [
        {
          name: "this motor",
          meaning: "propellers",
          x: curve.map((point) => point.current / stallCurrent),
          y: curve.map((point) => point.efficiency),
        },
        ...published,
      ],
      zeroBased: true,
    },
  ];
}

const mostLines = 4;
const ordered = ["ordered.1", "ordered.2", "ordered.3", "ordered.4"] as const;

function heatingFigure({ rows, given }: MotorOutputs): readonly Figure[] {
  const heated = rows.map((row, index) => ({ row, index })).filter(({ row }) => row.history.length > 1);
  if (heated.length === 0) return [];
  const every = Math.max(1, Math.ceil(heated.length / mostLines));
  const shown = heated.filter((_, at) => at % every === 0).slice(0, mostLines);
  return [
    {
      kind: "lines",
      id: "heating",
      caption: "Temperature of the winding from the start",
      x: { label: "Time", quantity: "time", unit: "min" },
      y: { label: "Winding", quantity: "temperature" },
      series: shown.map(({ row, index }, at) => ({
        name: `point ${index + 1}`,
        meaning: ordered[at] ?? "neutral",
        x: row.history.map((sample) => sample.time),
        y: row.history.map((sample) => sample.winding),
        ...(row.timeToLimit === null ? {} : { end: { limit: "winding temperature", family: "power" as const } }),
      })),
      ...(given.temperatureMaximum === null
        ? {}
        : {
            bounds: [
              {
                name: "winding limit",
                axis: "y" as const,
                value: given.temperatureMaximum,
                forbidden: "above" as const,
                family: "power" as const,
              },
            ],
          }),
    },
  ];
}

function lossesFigure({ rows }: MotorOutputs): readonly Figure[] {
  const at = rows
    .filter((row) => row.problem === null && row.mode === "motor")
    .sort((a, b) => (a.rotationRate ?? 0) - (b.rotationRate ?? 0));
  if (at.length < 2) return [];
  const layer = (name: string, meaning: Series["meaning"], of: (row: MotorRow) => number | null) => ({ name, meaning, values: at.map(of) });
  return [
    {
      kind: "stacked",
      id: "losses",
      caption: "Where electric power goes",
      x: { label: "Point, by rising rate", quantity: "dimensionless" },
      y: { label: "Power", quantity: "power" },
      at: at.map((_, i) => i + 1),
      layers: [
        layer("shaft", "propellers", (row) => row.shaftPower),
        layer("copper", "ordered.1", (row) => row.copperLoss),
        layer("turning", "ordered.2", (row) => row.noLoadLoss),
        layer("controller", "ordered.3", (row) => row.controllerLoss),
        layer("gear", "ordered.4", (row) => row.gearLoss),
      ],
    },
  ];
}

const column = (label: string, quantity: NonNullable<TableColumn["quantity"]>, unit?: string): TableColumn => ({
  label,
  quantity,
  ...(unit === undefined ? {} : { unit }),
});

function rowsTable({ rows }: MotorOutputs): Figure {
  return {
    kind: "table",
    id: "points",
    caption: "Points",
    columns: [
      column("Current", "current"),
      column("Rotation rate", "rotationRate"),
      column("Torque", "torque"),
      column("Shaft power", "power"),
      column("Electric power", "power"),
      column("Efficiency", "dimensionless"),
      column("Winding in the long run", "temperature"),
      column("Time to its limit", "time", "min"),
    ],
    rows: rows.map((row) => [
      row.current,
      row.rotationRate,
      row.torque,
      row.shaftPower,
      row.electricPower,
      row.efficiency,
      row.steadyTemperature,
      row.timeToLimit,
    ]),
  };
}

function lossesTable({ rows }: MotorOutputs): Figure {
  return {
    kind: "table",
    id: "point-losses",
    caption: "What is lost at each point",
    columns: [
      column("Current", "current"),
      column("Duty", "dimensionless"),
      column("Copper", "power"),
      column("Turning", "power"),
      column("Controller", "power"),
      column("Gear", "power"),
      { label: "Remark" },
    ],
    rows: rows.map((row) => [
      row.current,
      row.duty,
      row.copperLoss,
      row.noLoadLoss,
      row.controllerLoss,
      row.gearLoss,
      row.problem ?? row.heating ?? "",
    ]),
  };
}

function ratingsTable(outputs: MotorOutputs): Figure {
  const line = (name: string, state: MotorOutputs["continuous"] | MotorOutputs["bestEfficiency"], remark: string) =>
    state
      ? [name, state.current, state.rotationRate, state.torque, state.shaftPower, state.electricPower, state.efficiency, remark]
      : [name, null, null, null, null, null, null, remark];
  const by = (rating: MotorOutputs["continuous"]): string =>
    rating ? `limited by ${rating.limitedBy}` : "no thermal data, or none bearable";
  return {
    kind: "table",
    id: "ratings",
    caption: "What it can do at full throttle",
    columns: [
      { label: "State" },
      column("Current", "current"),
      column("Rotation rate", "rotationRate"),
      column("Torque", "torque"),
      column("Shaft power", "power"),
      column("Electric power", "power"),
      column("Efficiency", "dimensionless"),
      { label: "Remark" },
    ],
    rows: [
      line("no load", outputs.noLoad, ""),
      line("best efficiency", outputs.bestEfficiency, ""),
      line("for ever", outputs.continuous, by(outputs.continuous)),
      line("for the short time", outputs.shortTime, by(outputs.shortTime)),
    ],
  };
}
