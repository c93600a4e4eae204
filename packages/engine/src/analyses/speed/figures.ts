import type { Figure, Gap, NotablePoint, RotorRibbon, Series } from "../figures.ts";
import type { SpeedOutputs, SpeedRow } from "./schema.ts";
import { wholeColumns, wholeFigures } from "./whole-figures.ts";

const speedAxis = { label: "airspeed", quantity: "speed" } as const;

type Mode = SpeedRow["mode"];

function modeRows(outputs: SpeedOutputs, mode: Mode): SpeedRow[] {
  return outputs.rows.filter((row) => row.mode === mode);
}

/** The cheaper feasible row at each airspeed. */
function cheaperRows(outputs: SpeedOutputs): (SpeedRow | undefined)[] {
  const open = modeRows(outputs, "clutch-open");
  return modeRows(outputs, "clutch-closed").map((closed, i) => {
    const other = open[i];
    const candidates = [closed, other].filter((row): row is SpeedRow => row?.feasible === true);
    return candidates.sort((a, b) => (a.electricPower as number) - (b.electricPower as number))[0];
  });
}

/** Pictures of the speed answer: the power stack with the other mode, and what the rotor and wing do. */
export function speedFigures(outputs: SpeedOutputs): readonly Figure[] {
  const whole = wholeFigures(outputs, cheaperRows(outputs), levelGaps(outputs));
  return [powerStack(outputs), ...whole, ...smallPanels(outputs), glideLine(outputs), summaryTable(outputs), rowTable(outputs)];
}

function powerStack(outputs: SpeedOutputs): Figure {
  const at = modeRows(outputs, "clutch-closed").map((row) => row.airspeed);
  const cheaper = cheaperRows(outputs);
  const part = (value: (row: SpeedRow) => number | null) => cheaper.map((row) => (row ? value(row) : null));
  const losses = (row: SpeedRow) => (row.driveLosses as number) + (row.propellerLosses as number);
  return {
    kind: "stacked",
    id: "power",
    caption: "Electric power of level flight by where it goes, in the cheaper rotor mode; lines show each mode alone",
    x: speedAxis,
    y: { label: "electric power", quantity: "power" },
    at,
    layers: [
      { name: "avionics", meaning: "avionics", values: part((row) => row.avionicsPower) },
      { name: "rotor shaft", meaning: "rotor", values: part((row) => row.rotorShaftPower) },
      { name: "propeller shafts", meaning: "propellers", values: part((row) => row.propellerShaftPower) },
      { name: "motor, controller, gear", meaning: "losses", values: part(losses) },
    ],
    overlays: (["clutch-closed", "clutch-open"] as const).map((mode) => modeSeries(outputs, mode)),
    notable: notablePoints(outputs),
    gaps: levelGaps(outputs),
    ribbon: ribbon(outputs),
  };
}

function modeSeries(outputs: SpeedOutputs, mode: Mode): Series {
  const rows = modeRows(outputs, mode);
  return {
    name: mode === "clutch-closed" ? "all of it, clutch closed" : "all of it, clutch open",
    meaning: mode === "clutch-closed" ? "mode.driven" : "mode.autorotating",
    x: rows.map((row) => row.airspeed),
    y: rows.map((row) => row.electricPower),
  };
}

function notablePoints(outputs: SpeedOutputs): NotablePoint[] {
  const { summary } = outputs;
  const points: NotablePoint[] = [];
  if (summary.minimumPowerSpeed !== null && summary.minimumPower !== null) {
    points.push({ name: "least power", x: summary.minimumPowerSpeed, y: summary.minimumPower });
  }
  if (summary.bestRangeSpeed !== null && summary.bestRangeEnergy !== null) {
    points.push({ name: "best range", x: summary.bestRangeSpeed, y: summary.bestRangeEnergy * summary.bestRangeSpeed });
  }
  const lowest = modeRows(outputs, "clutch-open").find((row) => row.feasible);
  if (summary.lowestAutorotatingSpeed !== null && lowest) {
    points.push({
      name: "lowest autorotating",
      x: summary.lowestAutorotatingSpeed,
      y: lowest.electricPower as number,
      meaning: "mode.autorotating",
    });
  }
  return points;
}

/** Stretches of airspeed without level flight, with what stops it at their first speed. */
function levelGaps(outputs: SpeedOutputs): Gap[] {
  const closed = modeRows(outputs, "clutch-closed");
  const reasons = cheaperRows(outputs).map((row, i) => (row ? null : `no level flight: ${closed[i]?.limit ?? "no equilibrium"}`));
  return stretches(
    closed.map((row) => row.airspeed),
    reasons,
  );
}

function stretches(at: readonly number[], reasons: readonly (string | null)[]): Gap[] {
  const found: { from: number; to: number; reason: string }[] = [];
  reasons.forEach((reason, i) => {
    if (reason === null) return;
    const last = found[found.length - 1];
    const here = at[i] as number;
    if (last && last.to === at[i - 1]) last.to = here;
    else found.push({ from: here, to: here, reason });
  });
  return found;
}

function ribbon(outputs: SpeedOutputs): RotorRibbon {
  const rows = cheaperRows(outputs);
  const hover = outputs.rows.find((row) => row.airspeed === 0 && row.mode === "clutch-closed")?.rotorShaftPower;
  const reference = hover ?? Math.max(1, ...outputs.rows.map((row) => row.rotorShaftPower ?? 0));
  return {
    x: modeRows(outputs, "clutch-closed").map((row) => row.airspeed),
    share: rows.map((row) => (row ? (row.rotorShaftPower as number) / reference : null)),
    free: rows.map((row) => row?.mode === "clutch-open"),
  };
}

function smallPanels(outputs: SpeedOutputs): Figure[] {
  const rows = cheaperRows(outputs);
  // The reason stands in the main picture.
  const gaps = levelGaps(outputs).map((gap) => ({ ...gap, reason: "no level flight" }));
  const x = modeRows(outputs, "clutch-closed").map((row) => row.airspeed);
  const line = (name: string, meaning: Series["meaning"], value: (row: SpeedRow) => number | null): Series => ({
    name,
    meaning,
    x,
    y: rows.map((row) => (row ? value(row) : null)),
  });
  return [
    {
      kind: "lines",
      id: "lift-shares",
      caption: "Who carries the weight, in the cheaper mode",
      x: speedAxis,
      y: { label: "lift over weight", quantity: "dimensionless", unit: "%" },
      series: [line("rotor", "rotor", (row) => row.rotorLiftShare), line("wing", "wing", (row) => row.wingLiftShare)],
      gaps,
    },
    {
      kind: "lines",
      id: "rotor-speed",
      caption: "Rotor speed, in the cheaper mode",
      x: speedAxis,
      y: { label: "rotor speed", quantity: "rotationRate" },
      series: [line("rotor speed", "rotor", (row) => row.rotorRotationRate)],
      gaps,
      zeroBased: true,
    },
    {
      kind: "lines",
      id: "stall-margin",
      caption: "Largest steady thrust over trimmed thrust, in the cheaper mode",
      x: speedAxis,
      y: { label: "stall margin", quantity: "dimensionless" },
      series: [line("stall margin", "rotor", (row) => row.stallMargin)],
      gaps,
    },
    {
      kind: "lines",
      id: "energy-per-distance",
      caption: "Energy per distance in still air, in the cheaper mode",
      x: speedAxis,
      y: { label: "energy per distance", quantity: "energyPerDistance" },
      series: [line("energy per distance", "neutral", (row) => (row.airspeed >= 5 ? row.energyPerDistance : null))],
      gaps,
      zeroBased: true,
    },
  ];
}

function glideLine(outputs: SpeedOutputs): Figure {
  return {
    kind: "lines",
    id: "glide",
    caption: "Least sink without power, rotor turning free and propellers stopped",
    x: speedAxis,
    y: { label: "sink rate", quantity: "speed" },
    series: [
      {
        name: "sink rate",
        meaning: "mode.autorotating",
        x: outputs.glide.map((point) => point.airspeed),
        y: outputs.glide.map((point) => point.sinkRate),
      },
    ],
    gaps: stretches(
      outputs.glide.map((point) => point.airspeed),
      outputs.glide.map((point) => (point.sinkRate === null ? `no steady glide: ${point.limit ?? "no equilibrium"}` : null)),
    ),
    zeroBased: true,
  };
}

function summaryTable(outputs: SpeedOutputs): Figure {
  const s = outputs.summary;
  const line = (
    what: string,
    value: number | null,
    unit: "power" | "speed" | "other",
    note: string | null,
  ): readonly (number | string | null)[] => [what, unit === "speed" ? value : null, unit === "power" ? value : null, note];
  return {
    kind: "table",
    id: "summary",
    caption: "Speeds and powers that matter",
    columns: [{ label: "" }, { label: "speed", quantity: "speed" }, { label: "electric power", quantity: "power" }, { label: "note" }],
    rows: [
      line("hover", s.hoverPower, "power", null),
      ["least power", s.minimumPowerSpeed, s.minimumPower, s.minimumPowerMode === "clutch-open" ? "clutch open" : "clutch closed"],
      [
        "best range",
        s.bestRangeSpeed,
        s.bestRangeEnergy !== null && s.bestRangeSpeed !== null ? s.bestRangeEnergy * s.bestRangeSpeed : null,
        null,
      ],
      line("lowest autorotating", s.lowestAutorotatingSpeed, "speed", s.lowestAutorotatingLimit),
      line("highest", s.maximumSpeed, "speed", s.maximumSpeedLimit),
      line("best glide", s.bestGlideSpeed, "speed", s.bestGlideRatio === null ? null : `glide ratio ${s.bestGlideRatio.toPrecision(3)}`),
      line("least sink", s.minimumSinkSpeed, "speed", s.minimumSink === null ? null : `sinks ${s.minimumSink.toPrecision(3)} m/s`),
      line("vertical autorotation", s.verticalAutorotationSpeed, "speed", s.verticalAutorotationLimit),
    ],
  };
}

function rowTable(outputs: SpeedOutputs): Figure {
  const whole = wholeColumns(outputs);
  return {
    kind: "table",
    id: "rows",
    caption: "Every speed in both rotor modes",
    columns: [
      { label: "airspeed", quantity: "speed" },
      { label: "mode" },
      { label: "electric power", quantity: "power" },
      { label: "rotor shaft", quantity: "power" },
      { label: "rotor speed", quantity: "rotationRate" },
      { label: "rotor lift", quantity: "dimensionless", unit: "%" },
      { label: "wing lift", quantity: "dimensionless", unit: "%" },
      { label: "stall margin", quantity: "dimensionless" },
      { label: "energy per distance", quantity: "energyPerDistance" },
      ...whole.map(({ column }) => column),
      { label: "limit" },
    ],
    rows: outputs.rows.map((row) => [
      row.airspeed,
      row.mode === "clutch-closed" ? "clutch closed" : "clutch open",
      row.electricPower,
      row.rotorShaftPower,
      row.rotorRotationRate,
      row.rotorLiftShare,
      row.wingLiftShare,
      row.stallMargin,
      row.energyPerDistance,
      ...whole.map(({ cell }) => cell(row)),
      row.feasible ? row.limit : `no level flight: ${row.limit}`,
    ]),
  };
}
