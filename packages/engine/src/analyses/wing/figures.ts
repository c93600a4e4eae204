import { publishedSeries } from "../../published/index.ts";
import type { Axis, Figure, NotablePoint, TableColumn } from "../figures.ts";
import type { WingOutputs, WingRow } from "./output-schema.ts";

const one = (label: string): Axis => ({ label, quantity: "dimensionless" });
const angleAxis: Axis = { label: "Angle of attack", quantity: "angle" };

/** Coefficients over angle, polar, glide over speed, load along the span, and the numbers. */
export function wingFigures(outputs: WingOutputs): readonly Figure[] {
  const rows = [...outputs.rows].sort((a, b) => a.angle - b.angle);
  return [
    overAngle(outputs, rows, "lift", "Lift coefficient", "liftCoefficient", stallPoint(outputs, rows)),
    dragFigure(rows),
    overAngle(outputs, rows, "moment", "Moment coefficient about the quarter chord", "momentCoefficient"),
    polar(outputs, rows),
    ...glideFigures(outputs),
    ...loadFigures(outputs),
    summary(outputs),
    table(rows),
  ];
}

function overAngle(
  { aspectRatio }: WingOutputs,
  rows: readonly WingRow[],
  id: string,
  caption: string,
  name: "liftCoefficient" | "momentCoefficient",
  notable: readonly NotablePoint[] = [],
): Figure {
  return {
    kind: "lines",
    id,
    caption,
    x: angleAxis,
    y: one(caption),
    series: [
      { name: "wing", meaning: "wing", x: rows.map((row) => row.angle), y: rows.map((row) => row[name]) },
      ...publishedSeries("wing", "angle", name, { aspectRatio }),
    ],
    ...(notable.length > 0 ? { notable } : {}),
  };
}

function stallPoint({ stallAngle, largestLift }: WingOutputs, rows: readonly WingRow[]): readonly NotablePoint[] {
  const [first, last] = [rows[0]?.angle ?? 0, rows[rows.length - 1]?.angle ?? 0];
  if (stallAngle === null || largestLift === null || stallAngle < first || stallAngle > last) return [];
  return [{ name: "stall", x: stallAngle, y: largestLift }];
}

function dragFigure(rows: readonly WingRow[]): Figure {
  return {
    kind: "stacked",
    id: "drag",
    caption: "Drag coefficient and its parts",
    x: angleAxis,
    y: one("Drag coefficient"),
    at: rows.map((row) => row.angle),
    layers: [
      { name: "parasite", meaning: "body", values: rows.map((row) => row.parasiteDragCoefficient) },
      { name: "profile", meaning: "wing", values: rows.map((row) => row.profileDragCoefficient) },
      { name: "induced", meaning: "ordered.2", values: rows.map((row) => row.inducedDragCoefficient) },
    ],
  };
}

/** Up to the drag of deep stall, so that the part one flies in can be seen. */
function polar(outputs: WingOutputs, rows: readonly WingRow[]): Figure {
  const largest = 0.25;
  const few = rows.filter((row) => row.dragCoefficient <= largest);
  const shown = few.length > 1 ? few : rows;
  const { bestGlideLift, bestGlideRatio, fitted } = outputs;
  const lifts = fitted ? Array.from({ length: 31 }, (_, i) => fitted.lowestLift + ((fitted.highestLift - fitted.lowestLift) * i) / 30) : [];
  return {
    kind: "lines",
    id: "polar",
    caption: "Lift against drag",
    x: one("Drag coefficient"),
    y: one("Lift coefficient"),
    series: [
      { name: "wing", meaning: "wing", x: shown.map((row) => row.dragCoefficient), y: shown.map((row) => row.liftCoefficient) },
      ...(fitted
        ? [
            {
              name: "fitted parabola",
              meaning: "neutral" as const,
              weight: "thin" as const,
              x: lifts.map((lift) => fitted.zeroLiftDrag + (lift * lift) / (Math.PI * outputs.aspectRatio * fitted.oswaldEfficiency)),
              y: lifts,
            },
          ]
        : []),
    ],
    ...(bestGlideLift !== null && bestGlideRatio !== null && bestGlideRatio > 0
      ? { notable: [{ name: "best glide", x: bestGlideLift / bestGlideRatio, y: bestGlideLift }] }
      : {}),
  };
}

function glideFigures(outputs: WingOutputs): readonly Figure[] {
  const rows = outputs.glide.filter(({ liftToDrag }) => liftToDrag > 1).sort((a, b) => a.airspeed - b.airspeed);
  if (rows.length < 2) return [];
  const { bestGlideSpeed, minimumSink, minimumSinkSpeed, bestGlideAngle, stallSpeed } = outputs;
  const x: Axis = { label: "Airspeed", quantity: "speed" };
  const airspeeds = rows.map((row) => row.airspeed);
  const notable = [
    ...(minimumSink !== null && minimumSinkSpeed !== null ? [{ name: "least sink", x: minimumSinkSpeed, y: minimumSink }] : []),
    ...(bestGlideSpeed !== null && bestGlideAngle !== null
      ? [{ name: "best glide", x: bestGlideSpeed, y: bestGlideSpeed * Math.sin(bestGlideAngle) }]
      : []),
  ];
  const bounds =
    stallSpeed === null
      ? []
      : [{ name: "stall", axis: "x" as const, value: stallSpeed, forbidden: "below" as const, family: "air" as const }];
  return [
    {
      kind: "lines",
      id: "sink",
      caption: "Rate of sink in a steady glide",
      x,
      y: { label: "Rate of sink", quantity: "speed" },
      series: [{ name: "wing", meaning: "wing", x: airspeeds, y: rows.map((row) => row.sinkRate) }],
      notable,
      bounds,
      zeroBased: true,
    },
    {
      kind: "lines",
      id: "power",
      caption: "Thrust power of level flight",
      x,
      y: { label: "Power", quantity: "power" },
      series: [{ name: "wing", meaning: "wing", x: airspeeds, y: rows.map((row) => row.power) }],
      bounds,
      zeroBased: true,
    },
  ];
}

function loadFigures({ loading }: WingOutputs): readonly Figure[] {
  if (loading.length === 0) return [];
  const figure = (
    id: string,
    caption: string,
    y: Axis,
    of: (station: WingOutputs["loading"][number]["stations"][number]) => number,
  ): Figure => ({
    kind: "lines",
    id,
    caption,
    x: one("Place over half span, right positive"),
    y,
    series: loading.map(({ at, stations }, index) => {
      const across = [...stations].sort((a, b) => a.place - b.place);
      return {
        name: at,
        meaning: index === 0 ? ("wing" as const) : ("limit" as const),
        x: across.map((station) => station.place),
        y: across.map(of),
      };
    }),
  });
  return [
    figure("loading", "Load along the span", one("Chord times lift coefficient over mean chord"), (station) => station.loading),
    figure(
      "section-lift",
      "Lift coefficient of the sections along the span",
      one("Lift coefficient"),
      (station) => station.liftCoefficient,
    ),
  ];
}

const column = (label: string, quantity: NonNullable<TableColumn["quantity"]> = "dimensionless"): TableColumn => ({ label, quantity });

function summary(outputs: WingOutputs): Figure {
  return {
    kind: "table",
    id: "summary",
    caption: "What the wing can do",
    columns: [
      column("Aspect ratio"),
      column("Slope of lift per radian"),
      column("Angle without lift", "angle"),
      column("Largest lift"),
      column("Stall angle", "angle"),
      column("Best glide ratio"),
      column("Best glide speed", "speed"),
      column("Least sink", "speed"),
      column("Least sink speed", "speed"),
      column("Stall speed", "speed"),
      column("Span efficiency"),
      column("Fitted drag without lift"),
      column("Fitted Oswald efficiency"),
    ],
    rows: [
      [
        outputs.aspectRatio,
        outputs.liftSlope,
        outputs.zeroLiftAngle,
        outputs.largestLift,
        outputs.stallAngle,
        outputs.bestGlideRatio,
        outputs.bestGlideSpeed,
        outputs.minimumSink,
        outputs.minimumSinkSpeed,
        outputs.stallSpeed,
        outputs.spanEfficiency,
        outputs.fitted?.zeroLiftDrag ?? null,
        outputs.fitted?.oswaldEfficiency ?? null,
      ],
    ],
  };
}

function table(rows: readonly WingRow[]): Figure {
  return {
    kind: "table",
    id: "coefficients",
    caption: "Coefficients",
    columns: [
      column("Angle of attack", "angle"),
      column("Lift"),
      column("Drag"),
      column("Induced"),
      column("Profile"),
      column("Moment"),
      column("Rolling moment"),
      column("Lift over drag"),
      { label: "Made by" },
    ],
    rows: rows.map((row) => [
      row.angle,
      row.liftCoefficient,
      row.dragCoefficient,
      row.inducedDragCoefficient,
      row.profileDragCoefficient,
      row.momentCoefficient,
      row.rollingMomentCoefficient,
      row.liftToDrag,
      row.way,
    ]),
  };
}
