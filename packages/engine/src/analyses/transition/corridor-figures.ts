import type { Border, Gap, LinesFigure, NotablePoint, Region, Series, TableFigure } from "../figures.ts";
import type { CorridorModeOutputs, CorridorRow, TransitionOutputs } from "./output-schema.ts";

type Mode = "closed" | "open";
const names = { closed: "clutch closed", open: "clutch open" } as const;
const meanings = { closed: "mode.driven", open: "mode.autorotating" } as const;

/** Airspeeds and rotor speeds in which each mode flies level, with what ends it, and the ways of both transitions through it. */
export function corridorFigure(outputs: TransitionOutputs): LinesFigure {
  const stretches = (["closed", "open"] as const).flatMap((mode) => stretchesOf(outputs.corridor, mode).map((rows) => ({ mode, rows })));
  return {
    kind: "lines",
    id: "corridor",
    caption: "Level flight by airspeed and rotor speed: where the areas lie over one another both modes meet",
    plane: true,
    x: { label: "airspeed", quantity: "speed" },
    y: { label: "rotor tip speed", quantity: "speed" },
    series: outputs.ways.filter(({ rows }) => rows.length > 1).map(pathOf),
    regions: stretches.map(({ mode, rows }) => region(mode, rows)),
    borders: stretches.flatMap(({ mode, rows }) => [
      ...edges(mode, rows, "slowest"),
      ...edges(mode, rows, "fastest"),
      ...sides(mode, rows, outputs.corridor),
    ]),
    bounds: [
      { name: "slowest permitted rotor", axis: "y", value: outputs.tipSpeedMinimum, forbidden: "below", family: "strength" },
      { name: "fastest permitted rotor", axis: "y", value: outputs.tipSpeedMaximum, forbidden: "above", family: "strength" },
    ],
    notable: clutchPoints(outputs),
  };
}

/** Runs of airspeeds in which a mode flies. */
function stretchesOf(corridor: readonly CorridorRow[], mode: Mode): readonly (readonly CorridorRow[])[] {
  const runs: CorridorRow[][] = [];
  corridor.forEach((row, i) => {
    if (!row[mode].slowest || !row[mode].fastest) return;
    const before = corridor[i - 1];
    const run = runs.at(-1);
    if (run && before?.[mode].slowest) run.push(row);
    else runs.push([row]);
  });
  return runs.filter((run) => run.length > 1);
}

const speedAt = (flight: CorridorModeOutputs, side: "slowest" | "fastest"): number => flight[side]?.tipSpeed ?? 0;

function region(mode: Mode, rows: readonly CorridorRow[]): Region {
  const back = rows.toReversed();
  return {
    name: names[mode],
    meaning: meanings[mode],
    x: [...rows, ...back].map(({ airspeed }) => airspeed),
    y: [...rows.map((row) => speedAt(row[mode], "fastest")), ...back.map((row) => speedAt(row[mode], "slowest"))],
  };
}

/** What the rotor itself permits is a line across the picture, not a border of one mode. */
const permitted = "rotor speed range";

/** One border per run of the same limit; the stretch between two belongs to the one that is not the rotor's own. */
function edges(mode: Mode, rows: readonly CorridorRow[], side: "slowest" | "fastest"): readonly Border[] {
  const runs: { limit: string; family: Border["family"]; rows: CorridorRow[] }[] = [];
  for (const row of rows) {
    const end = row[mode][side];
    if (!end) continue;
    const run = runs.at(-1);
    if (run?.limit === end.limit) {
      run.rows.push(row);
      continue;
    }
    const joint = run?.rows.at(-1);
    if (run && end.limit === permitted) run.rows.push(row);
    runs.push({ limit: end.limit, family: end.family, rows: joint && end.limit !== permitted ? [joint, row] : [row] });
  }
  return runs
    .filter((run) => run.limit !== permitted && run.rows.length > 1)
    .map((run) => ({
      name: `${names[mode]}: ${run.limit}`,
      family: run.family,
      forbidden: side === "fastest" ? "left" : "right",
      x: run.rows.map(({ airspeed }) => airspeed),
      y: run.rows.map((row) => speedAt(row[mode], side)),
    }));
}

/** The slow and the fast end of a run, where the next airspeed does not fly. */
function sides(mode: Mode, rows: readonly CorridorRow[], corridor: readonly CorridorRow[]): readonly Border[] {
  const [first, last] = [rows[0], rows.at(-1)];
  const border = (row: CorridorRow | undefined, beyond: CorridorRow | undefined, forbidden: Border["forbidden"]): Border[] =>
    row && beyond?.[mode].limit
      ? [
          {
            name: `${names[mode]}: ${beyond[mode].limit}`,
            family: beyond[mode].family ?? "air",
            forbidden,
            x: [row.airspeed, row.airspeed],
            y: [speedAt(row[mode], "slowest"), speedAt(row[mode], "fastest")],
          },
        ]
      : [];
  const at = (row: CorridorRow | undefined, step: number) => (row ? corridor[corridor.indexOf(row) + step] : undefined);
  return [...border(first, at(first, -1), "left"), ...border(last, at(last, 1), "right")];
}

function pathOf({ way, rows }: TransitionOutputs["ways"][number]): Series {
  return {
    name: way,
    meaning: "track",
    x: rows.map(({ airspeed }) => airspeed),
    y: rows.map(({ tipSpeed }) => tipSpeed),
    ...(way === "hover to cruise" ? {} : { weight: "thin" as const }),
  };
}

function clutchPoints({ ways }: TransitionOutputs): readonly NotablePoint[] {
  return ways.flatMap(({ way, summary }) =>
    summary
      ? [
          {
            name: way === "hover to cruise" ? "clutch opens" : "clutch closes",
            x: summary.clutchAirspeed,
            y: summary.clutchTipSpeed,
          },
        ]
      : [],
  );
}

/** What holding each speed takes in either mode. */
export function holdFigure({ corridor, hoverShaftPower, meetSpeed, closedPower, openPower }: TransitionOutputs): LinesFigure {
  const x = corridor.map(({ airspeed }) => airspeed);
  const line = (mode: Mode): Series => ({
    name: names[mode],
    meaning: meanings[mode],
    x,
    y: corridor.map((row) => row[mode].electricPower),
  });
  const meet = meetSpeed !== null && closedPower !== null && openPower !== null;
  return {
    kind: "lines",
    id: "hold",
    caption: "Holding a speed: electric power of level flight in either mode",
    x: { label: "airspeed", quantity: "speed" },
    y: { label: "electric power", quantity: "power" },
    zeroBased: true,
    series: [line("closed"), line("open")],
    ...(meet ? { notable: [{ name: "clutch opens and closes", x: meetSpeed, y: Math.min(closedPower, openPower) }] } : {}),
    gaps: gapsOf(corridor),
    ribbon: {
      x,
      share: corridor.map(({ hold, closed }) => (hold === "not" ? null : hold === "clutch open" ? 0 : shareOf(closed, hoverShaftPower))),
      free: corridor.map(({ hold }) => hold === "clutch open"),
    },
  };
}

function shareOf({ shaftPower }: CorridorModeOutputs, hover: number | null): number | null {
  return shaftPower === null || !hover ? null : shaftPower / hover;
}

function gapsOf(corridor: readonly CorridorRow[]): readonly Gap[] {
  return corridor.flatMap((row, i): Gap[] => {
    if (row.hold !== "not") return [];
    const [before, after] = [corridor[i - 1]?.airspeed ?? row.airspeed, corridor[i + 1]?.airspeed ?? row.airspeed];
    const reason = `clutch closed: ${row.closed.limit ?? "does not fly"}; clutch open: ${row.open.limit ?? "does not fly"}`;
    return [{ from: (before + row.airspeed) / 2, to: (after + row.airspeed) / 2, reason }];
  });
}

export function corridorTable({ corridor }: TransitionOutputs): TableFigure {
  return {
    kind: "table",
    id: "corridor-numbers",
    caption: "Rotor speeds of level flight, what ends them, and how each airspeed is held",
    columns: [
      { label: "airspeed", quantity: "speed" },
      { label: "closed, slowest", quantity: "speed" },
      { label: "ended by" },
      { label: "closed, fastest", quantity: "speed" },
      { label: "ended by" },
      { label: "open, slowest", quantity: "speed" },
      { label: "ended by" },
      { label: "open, fastest", quantity: "speed" },
      { label: "ended by" },
      { label: "both from", quantity: "speed" },
      { label: "both to", quantity: "speed" },
      { label: "held" },
      { label: "power", quantity: "power" },
    ],
    rows: corridor.map((row) => [
      row.airspeed,
      ...modeCells(row.closed),
      ...modeCells(row.open),
      row.sharedSlowest,
      row.sharedFastest,
      row.hold === "not" ? "cannot be held" : row.hold,
      row.holdPower,
    ]),
  };
}

function modeCells({ slowest, fastest, limit }: CorridorModeOutputs): readonly (number | string | null)[] {
  return [slowest?.tipSpeed ?? null, slowest?.limit ?? limit, fastest?.tipSpeed ?? null, fastest?.limit ?? limit];
}
