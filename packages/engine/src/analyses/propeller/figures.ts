import { publishedSeries } from "../../published/index.ts";
import type { Figure, LinesFigure, Series } from "../figures.ts";
import type { PropellerOutputs, PropellerRow } from "./output-schema.ts";

/** Coefficients over advance ratio with published points, what acts along the blade, and the rows. */
export function propellerFigures(outputs: PropellerOutputs): readonly Figure[] {
  const { curve, spanwise } = outputs;
  const curves =
    curve.advanceRatio.length > 1
      ? [overAdvanceRatio(outputs, "ct"), overAdvanceRatio(outputs, "cp"), overAdvanceRatio(outputs, "efficiency")]
      : [];
  const along = spanwise.radiusFraction.length > 1 ? [loading(outputs), angles(outputs), flow(outputs)] : [];
  return [forces(outputs.rows), flowScale(outputs.rows), ...curves, ...along];
}

/** Rows asked for make a line of their own from so many on. */
const fewestPoints = 6;

const captions = {
  ct: "Thrust coefficient over advance ratio, C_T = T/(ρ n² D⁴)",
  cp: "Power coefficient over advance ratio, C_P = P/(ρ n³ D⁵)",
  efficiency: "Efficiency over advance ratio, η = J C_T/C_P",
} as const;
const labels = { ct: "Thrust coefficient", cp: "Power coefficient", efficiency: "Efficiency" } as const;

function overAdvanceRatio(outputs: PropellerOutputs, field: "ct" | "cp" | "efficiency"): LinesFigure {
  const { curve, rows } = outputs;
  const asked = rows
    .filter((row) => row.state === "normal" && row[field] !== null && row.inflowAngle === 0)
    .toSorted((a, b) => (a.advanceRatio ?? 0) - (b.advanceRatio ?? 0));
  const points: Series[] =
    asked.length >= fewestPoints
      ? [
          {
            name: "points asked for",
            meaning: "neutral",
            weight: "thin",
            x: asked.map((row) => row.advanceRatio ?? 0),
            y: asked.map((row) => row[field]),
          },
        ]
      : [];
  return {
    kind: "lines",
    id: `${field}-over-advance-ratio`,
    caption: captions[field],
    x: { label: "Advance ratio", quantity: "dimensionless" },
    y: { label: labels[field], quantity: "dimensionless" },
    series: [
      { name: "computed", meaning: "propellers", x: curve.advanceRatio, y: curve[field] },
      ...points,
      ...(outputs.domain.nearest === null
        ? []
        : publishedSeries("propeller", "advanceRatio", field, coordinatesOf(rows.find((row) => row.state !== "none")))),
    ],
    ...(field === "efficiency" && outputs.peakEfficiency !== null && outputs.peakEfficiencyAdvanceRatio !== null
      ? { notable: [{ name: "best efficiency", x: outputs.peakEfficiencyAdvanceRatio, y: outputs.peakEfficiency }] }
      : {}),
  };
}

/** Where a row stands among published checks. */
export function coordinatesOf(row: PropellerRow | undefined): Readonly<Record<string, number | null>> {
  return row
    ? { advanceRatio: row.advanceRatio, reynoldsNumber: row.reynoldsNumber, tipMach: row.tipMach, inflowAngle: Math.abs(row.inflowAngle) }
    : {};
}

function loading({ spanwise }: PropellerOutputs): Figure {
  return {
    kind: "lines",
    id: "spanwise-loading",
    caption: "Thrust and power coefficient per radius fraction, first turning point",
    x: { label: "Radius fraction", quantity: "dimensionless" },
    y: { label: "Coefficient per radius fraction", quantity: "dimensionless" },
    series: [
      { name: "thrust", meaning: "propellers", x: spanwise.radiusFraction, y: spanwise.thrust },
      { name: "power", meaning: "losses", x: spanwise.radiusFraction, y: spanwise.torque },
    ],
  };
}

function angles({ spanwise }: PropellerOutputs): Figure {
  return {
    kind: "lines",
    id: "angle-of-attack",
    caption: "Angle of attack along the blade, first turning point",
    x: { label: "Radius fraction", quantity: "dimensionless" },
    y: { label: "Angle of attack", quantity: "angle" },
    series: [{ name: "mean over the turn", meaning: "ordered.1", x: spanwise.radiusFraction, y: spanwise.angleOfAttack }],
  };
}

function flow({ spanwise }: PropellerOutputs): Figure {
  return {
    kind: "lines",
    id: "induced-velocity",
    caption: "Induced velocity along the blade, first turning point",
    x: { label: "Radius fraction", quantity: "dimensionless" },
    y: { label: "Velocity", quantity: "speed" },
    series: [
      { name: "through the disc", meaning: "ordered.1", x: spanwise.radiusFraction, y: spanwise.inducedVelocity },
      { name: "around the shaft", meaning: "ordered.3", x: spanwise.radiusFraction, y: spanwise.swirlVelocity },
    ],
  };
}

/** Rows as asked for; the columns of oblique flow and of states only where there is something in them. */
function forces(rows: readonly PropellerRow[]): Figure {
  const one = (label: string) => ({ label, quantity: "dimensionless" }) as const;
  const oblique = rows.some((row) => row.inflowAngle !== 0);
  const states = rows.some((row) => row.state !== "normal");
  return {
    kind: "table",
    id: "forces",
    caption: "Coefficients, forces and power",
    columns: [
      { label: "Rotation rate", quantity: "rotationRate" },
      { label: "Airspeed", quantity: "speed" },
      ...(oblique ? [{ label: "Inflow angle", quantity: "angle" } as const] : []),
      ...(states ? [{ label: "State" }] : []),
      { label: "Thrust", quantity: "force" },
      { label: "Torque", quantity: "torque" },
      { label: "Power", quantity: "power" },
      one("Advance ratio"),
      one("C_T"),
      one("C_P"),
      one("Efficiency"),
      one("Figure of merit"),
      ...(oblique
        ? [{ label: "Normal force", quantity: "force" } as const, { label: "Pitching moment", quantity: "torque" } as const]
        : []),
    ],
    rows: rows.map((row) => [
      row.rotationRate,
      row.airspeed,
      ...(oblique ? [row.inflowAngle] : []),
      ...(states ? [row.state === "freeWheeling" ? "free-wheeling" : row.state] : []),
      row.thrust,
      row.torque,
      row.power,
      row.advanceRatio,
      row.ct,
      row.cp,
      row.efficiency,
      row.figureOfMerit,
      ...(oblique ? [row.normalForce, row.pitchingMoment] : []),
    ]),
  };
}

function flowScale(rows: readonly PropellerRow[]): Figure {
  const one = (label: string) => ({ label, quantity: "dimensionless" }) as const;
  return {
    kind: "table",
    id: "flow-scale",
    caption: "Scale of the flow",
    columns: [one("Advance ratio"), one("Reynolds number"), one("Tip Mach number")],
    rows: rows.map((row) => [row.advanceRatio, row.reynoldsNumber, row.tipMach]),
  };
}
