import type { Figure, Gap, LinesFigure, Series, TableColumn } from "../figures.ts";
import type { SpeedOutputs, SpeedRow } from "./schema.ts";

const speedAxis = { label: "airspeed", quantity: "speed" } as const;
type Cell = number | null;

/** What six components tell beside the power: what the schedule costs, and how the aircraft lies in the air. Empty without them. */
export function wholeFigures(outputs: SpeedOutputs, cheaper: readonly (SpeedRow | undefined)[], gaps: readonly Gap[]): readonly Figure[] {
  const short = gaps.map((gap) => ({ ...gap, reason: "no level flight" }));
  return [...schedule(outputs, short), ...attitude(outputs, cheaper, short)];
}

function schedule({ rows }: SpeedOutputs, gaps: readonly Gap[]): readonly LinesFigure[] {
  if (rows.every((row) => row.schedulePower === null)) return [];
  const lines = (["clutch-closed", "clutch-open"] as const).flatMap((mode): readonly Series[] => {
    const own = rows.filter((row) => row.mode === mode);
    const words = mode === "clutch-closed" ? "clutch closed" : "clutch open";
    const line = (name: string, value: (row: SpeedRow) => Cell) =>
      ({
        name: `${name}, ${words}`,
        meaning: mode === "clutch-closed" ? "mode.driven" : "mode.autorotating",
        x: own.map((row) => row.airspeed),
        y: own.map(value),
      }) as const;
    return [line("least", (row) => row.electricPower), { ...line("on schedule", (row) => row.schedulePower), weight: "thin" }];
  });
  return [
    {
      kind: "lines",
      id: "schedule",
      caption: "Electric power with the controls where they cost least, and where the schedule puts them",
      x: speedAxis,
      y: { label: "electric power", quantity: "power" },
      series: lines,
      gaps,
      zeroBased: true,
    },
  ];
}

function attitude({ rows }: SpeedOutputs, cheaper: readonly (SpeedRow | undefined)[], gaps: readonly Gap[]): readonly LinesFigure[] {
  if (rows.every((row) => row.roll === null)) return [];
  const x = rows.filter((row) => row.mode === "clutch-closed").map((row) => row.airspeed);
  const line = (name: string, meaning: Series["meaning"], value: (row: SpeedRow) => Cell): Series => ({
    name,
    meaning,
    x,
    y: cheaper.map((row) => (row ? value(row) : null)),
  });
  return [
    {
      kind: "lines",
      id: "attitude",
      caption: "How it lies in the air, in the cheaper mode: bank right side down, sideslip air from the right",
      x: speedAxis,
      y: { label: "angle", quantity: "angle" },
      series: [
        line("nose up", "ordered.3", (row) => row.pitch),
        line("bank", "ordered.2", (row) => row.roll),
        line("sideslip", "ordered.1", (row) => row.sideslip),
      ],
      gaps,
    },
  ];
}

/** Columns of the table of speeds that only six components fill, and their cells of a row. */
export function wholeColumns({ rows }: SpeedOutputs): readonly { readonly column: TableColumn; readonly cell: (row: SpeedRow) => Cell }[] {
  const all = [
    { column: { label: "on schedule", quantity: "power" }, cell: (row: SpeedRow) => row.schedulePower },
    { column: { label: "nose up", quantity: "angle" }, cell: (row: SpeedRow) => row.pitch },
    { column: { label: "bank", quantity: "angle" }, cell: (row: SpeedRow) => row.roll },
    { column: { label: "sideslip", quantity: "angle" }, cell: (row: SpeedRow) => row.sideslip },
  ] as const;
  return all.filter(({ cell }) => rows.some((row) => cell(row) !== null));
}
