import { publishedSeries } from "../../published/index.ts";
import type { Figure, NotablePoint } from "../figures.ts";
import { sectionShape } from "../inputs/section-shape.ts";
import type { SectionInputs, SectionOutputs } from "./schema.ts";

type Row = SectionOutputs["rows"][number];
type Coefficient = "liftCoefficient" | "dragCoefficient" | "momentCoefficient";

/** Coefficients over angle and against each other, with published points, and the numbers one asks for first. */
export function sectionFigures(outputs: SectionOutputs, inputs: SectionInputs): readonly Figure[] {
  const rows = [...outputs.rows].sort((a, b) => a.angle - b.angle);
  const shape = sectionShape(inputs.section);
  const at = { reynoldsNumber: outputs.reynoldsNumber, machNumber: outputs.machNumber, ...shape };
  const published = (x: "angle" | Coefficient, y: Coefficient) => (shape ? publishedSeries("section", x, y, at) : []);
  const over = (id: string, caption: string, name: Coefficient, notable: readonly NotablePoint[] = []): Figure => ({
    kind: "lines",
    id,
    caption,
    x: { label: "Angle of attack", quantity: "angle" },
    y: { label: caption, quantity: "dimensionless" },
    series: [
      { name: "computed", meaning: "wing", x: rows.map((row) => row.angle), y: rows.map((row) => row[name]) },
      ...published("angle", name)
        .map((series) => within(series, rows[0]?.angle, rows[rows.length - 1]?.angle))
        .filter(({ x }) => x.length > 0),
    ],
    ...(notable.length > 0 ? { notable } : {}),
  });
  return [
    over("lift", "Lift coefficient", "liftCoefficient", stallPoint(outputs, rows)),
    over("drag", "Drag coefficient", "dragCoefficient"),
    over("moment", "Moment coefficient about the quarter chord", "momentCoefficient"),
    polar(outputs, rows, published("dragCoefficient", "liftCoefficient")),
    characteristics(outputs),
    table(outputs),
  ];
}

/** Published points that the picture shows. */
function within<Points extends { readonly x: readonly number[]; readonly y: readonly number[] }>(
  series: Points,
  low = 0,
  high = 0,
): Points {
  const kept = series.x.map((x, i) => [x, series.y[i] ?? 0] as const).filter(([x]) => x >= low && x <= high);
  return { ...series, x: kept.map(([x]) => x), y: kept.map(([, y]) => y) };
}

function stallPoint({ stallAngle, largestLift }: SectionOutputs, rows: readonly Row[]): readonly NotablePoint[] {
  const last = rows[rows.length - 1]?.angle ?? 0;
  const first = rows[0]?.angle ?? 0;
  if (stallAngle === null || largestLift === null || stallAngle > last || stallAngle < first) return [];
  return [{ name: "stall", x: stallAngle, y: largestLift }];
}

/** Up to the drag of deep stall, so that the part one flies in can be seen. */
function polar(outputs: SectionOutputs, rows: readonly Row[], published: ReturnType<typeof publishedSeries>): Figure {
  const largestShown = 0.15;
  const shown = rows.some((row) => row.dragCoefficient <= largestShown) ? rows.filter((row) => row.dragCoefficient <= largestShown) : rows;
  const highest = Math.max(...shown.map((row) => row.dragCoefficient));
  const { bestLiftToDrag, bestLiftToDragAngle } = outputs;
  const best = shown.find((row) => bestLiftToDragAngle !== null && Math.abs(row.angle - bestLiftToDragAngle) < 0.005);
  return {
    kind: "lines",
    id: "polar",
    caption: "Lift against drag",
    x: { label: "Drag coefficient", quantity: "dimensionless" },
    y: { label: "Lift coefficient", quantity: "dimensionless" },
    series: [
      { name: "computed", meaning: "wing", x: shown.map((row) => row.dragCoefficient), y: shown.map((row) => row.liftCoefficient) },
      ...published.map((series) => within(series, 0, highest)).filter(({ x }) => x.length > 0),
    ],
    ...(best && bestLiftToDrag !== null
      ? { notable: [{ name: "best lift over drag", x: best.dragCoefficient, y: best.liftCoefficient }] }
      : {}),
  };
}

function characteristics(outputs: SectionOutputs): Figure {
  const one = (label: string) => ({ label, quantity: "dimensionless" }) as const;
  const angle = (label: string) => ({ label, quantity: "angle" }) as const;
  return {
    kind: "table",
    id: "characteristics",
    caption: "What the section can do here",
    columns: [
      one("Reynolds number"),
      one("Mach number"),
      one("Largest lift"),
      angle("Stall angle"),
      one("Best lift over drag"),
      angle("Angle of best lift over drag"),
      one("Least drag"),
      angle("Angle without lift"),
      one("Slope of lift per radian"),
    ],
    rows: [
      [
        outputs.reynoldsNumber,
        outputs.machNumber,
        outputs.largestLift,
        outputs.stallAngle,
        outputs.bestLiftToDrag,
        outputs.bestLiftToDragAngle,
        outputs.leastDrag,
        outputs.zeroLiftAngle,
        outputs.liftSlope,
      ],
    ],
  };
}

function table({ rows }: SectionOutputs): Figure {
  return {
    kind: "table",
    id: "coefficients",
    caption: "Coefficients",
    columns: [
      { label: "Angle of attack", quantity: "angle" },
      { label: "Lift", quantity: "dimensionless" },
      { label: "Drag", quantity: "dimensionless" },
      { label: "Moment", quantity: "dimensionless" },
      { label: "Lift over drag", quantity: "dimensionless" },
    ],
    rows: rows.map((row) => [row.angle, row.liftCoefficient, row.dragCoefficient, row.momentCoefficient, row.liftToDrag]),
  };
}
