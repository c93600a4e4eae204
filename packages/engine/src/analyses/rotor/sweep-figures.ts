import { publishedChecks, publishedSeries } from "../../published/index.ts";
import type { QuantityKind } from "../../quantities/index.ts";
import type { Figure, Gap, LinesFigure, Series } from "../figures.ts";
import { domainCoordinates } from "./domain-coordinates.ts";
import type { RotorOutputs, RotorRow } from "./output-schema.ts";

type Field = Exclude<keyof RotorRow, "state" | "problem">;

const fields: Partial<Readonly<Record<Field, { readonly label: string; readonly quantity: QuantityKind }>>> = {
  heightAboveGround: { label: "Height above ground", quantity: "length" },
  airspeed: { label: "Airspeed", quantity: "speed" },
  airspeedBandLow: { label: "Airspeed, by errors from", quantity: "speed" },
  airspeedBandHigh: { label: "Airspeed, by errors to", quantity: "speed" },
  centrifugalForce: { label: "Centrifugal force of a blade", quantity: "force" },
  advanceRatio: { label: "Advance ratio", quantity: "dimensionless" },
  climbRate: { label: "Climb rate", quantity: "speed" },
  shaftAngle: { label: "Shaft angle", quantity: "angle" },
  discAngle: { label: "Disc angle", quantity: "angle" },
  rotationRate: { label: "Rotation rate", quantity: "rotationRate" },
  tipSpeed: { label: "Tip speed", quantity: "speed" },
  collective: { label: "Collective", quantity: "angle" },
  thrust: { label: "Thrust", quantity: "force" },
  ct: { label: "Thrust coefficient", quantity: "dimensionless" },
  lift: { label: "Lift", quantity: "force" },
  torque: { label: "Torque", quantity: "torque" },
  power: { label: "Shaft power", quantity: "power" },
  cq: { label: "Torque coefficient", quantity: "dimensionless" },
  liftToDrag: { label: "Lift over drag", quantity: "dimensionless" },
  figureOfMerit: { label: "Figure of merit", quantity: "dimensionless" },
  axialRatio: { label: "Axial speed over induced velocity in hover", quantity: "dimensionless" },
  inducedRatio: { label: "Induced velocity over that in hover", quantity: "dimensionless" },
};

/** What is drawn over the swept input, where it was found and not held. */
const drawn: readonly Field[] = [
  "thrust",
  "power",
  "liftToDrag",
  "collective",
  "shaftAngle",
  "rotationRate",
  "airspeed",
  "figureOfMerit",
  "ct",
  "cq",
];
/** Pairs of outputs that some measurement of a rotor was compared in, each once. */
const measuredPairs: readonly (readonly [Field, Field])[] = publishedChecks
  .filter((check) => check.component === "rotor" && check.reference === "measured")
  .flatMap((check) => check.series.map(({ x, y }) => [x as Field, y as Field] as const))
  .filter(([x, y]) => fields[x] && fields[y])
  .filter(([x, y], index, all) => all.findIndex((other) => other[0] === x && other[1] === y) === index);

/** Curves over the first swept input, one line for each combination of the others, and every row in a table. */
export function rotorSweepFigures(outputs: RotorOutputs, together: boolean): readonly Figure[] {
  const [across, ...others] = outputs.swept.map(fieldOf);
  if (across === undefined) return [];
  const families = together ? [] : others;
  const curves = drawn.flatMap((field) => (field === across || others.includes(field) ? [] : curve(outputs, across, families, field)));
  const crossed = measuredPairs.flatMap(([x, field]) => (x === across || !runsOn(outputs, x) ? [] : curve(outputs, x, families, field)));
  return [...curves, ...crossed, table(outputs)];
}

/** Whether an output goes one way along the sweep, so that others can be drawn over it. */
function runsOn({ rows }: RotorOutputs, field: Field): boolean {
  const values = rows.flatMap((row) => (row[field] === null ? [] : [row[field]]));
  const way = Math.sign((values.at(-1) ?? 0) - (values[0] ?? 0));
  return values.length > 1 && values.every((value, i) => i === 0 || Math.sign(value - (values[i - 1] ?? 0)) === way);
}

function fieldOf(input: string): Field {
  return input === "shaftTorque" ? "torque" : (input as Field);
}

function curve(outputs: RotorOutputs, across: Field, others: readonly Field[], field: Field): readonly LinesFigure[] {
  const x = fields[across];
  const y = fields[field];
  const values = outputs.rows.flatMap((row) => (row[field] === null ? [] : [row[field]]));
  const [first = 0] = values;
  // A value that stays what it was held at says nothing.
  const level = values.every((value) => Math.abs(value - first) <= 1e-9 * Math.abs(first));
  if (!x || !y || values.length < 2 || level) return [];
  const measured = publishedSeries("rotor", across, field, domainCoordinates(outputs));
  return [
    {
      kind: "lines",
      id: `sweep-${field}-over-${across}`,
      caption: `${y.label} over ${x.label.toLowerCase()}`,
      x,
      y,
      series: [...lines(outputs, across, others, field), ...measured],
      gaps: gaps(outputs.rows, across),
    },
  ];
}

function lines({ rows }: RotorOutputs, across: Field, others: readonly Field[], field: Field): readonly Series[] {
  const families = new Map<string, RotorRow[]>();
  for (const row of rows) {
    const key = others.map((name) => `${fields[name]?.label.toLowerCase()} ${(row[name] ?? 0).toPrecision(3)}`).join(", ");
    families.set(key, [...(families.get(key) ?? []), row]);
  }
  return [...families].map(([name, family], index): Series => {
    const sorted = family.filter((row) => row[across] !== null).sort((a, b) => (a[across] ?? 0) - (b[across] ?? 0));
    return {
      name: name === "" ? "computed" : name,
      meaning: families.size === 1 ? "rotor" : (`ordered.${(index % 4) + 1}` as Series["meaning"]),
      x: sorted.map((row) => row[across] ?? 0),
      y: sorted.map((row) => row[field]),
    };
  });
}

/** Stretches around rows without a solution, halfway to their neighbours. */
function gaps(rows: readonly RotorRow[], across: Field): readonly Gap[] {
  const places = [...new Set(rows.flatMap((row) => (row[across] === null ? [] : [row[across]])))].sort((a, b) => a - b);
  return places.flatMap((place, index) => {
    const there = rows.filter((row) => row[across] === place);
    const reason = there[0]?.problem;
    if (!reason || there.some((row) => row.problem === null)) return [];
    return [{ from: (place + (places[index - 1] ?? place)) / 2, to: (place + (places[index + 1] ?? place)) / 2, reason }];
  });
}

const columns: readonly Field[] = [
  "airspeed",
  "shaftAngle",
  "rotationRate",
  "collective",
  "thrust",
  "power",
  "ct",
  "cq",
  "liftToDrag",
  "advanceRatio",
];

/** Columns that stand only where some row has a number. */
const optionalColumns: readonly Field[] = ["airspeedBandLow", "airspeedBandHigh", "centrifugalForce"];

function table({ rows, swept }: RotorOutputs): Figure {
  const present = optionalColumns.filter((name) => rows.some((row) => row[name] !== null));
  const names = [...new Set([...swept.map(fieldOf), ...columns, ...present])];
  return {
    kind: "table",
    id: "sweep",
    caption: "Every point of the sweep",
    columns: [
      ...names.map((name) => ({ label: fields[name]?.label ?? name, quantity: fields[name]?.quantity ?? ("dimensionless" as const) })),
      { label: "State" },
      { label: "No solution because" },
    ],
    rows: rows.map((row) => [...names.map((name) => row[name]), row.state, row.problem]),
  };
}

/** One point among the measured points of the nearest check. */
export function besideMeasurements(outputs: RotorOutputs): readonly Figure[] {
  if (outputs.swept.length > 0) return [];
  const at = domainCoordinates(outputs);
  const figures = measuredPairs.flatMap(([across, field]): LinesFigure[] => {
    const [x, y] = [fields[across], fields[field]];
    const [here, value] = [outputs[across], outputs[field]];
    const series = publishedSeries("rotor", across, field, at);
    if (!x || !y || here === null || value === null || series.length === 0) return [];
    return [
      {
        kind: "lines",
        id: "measured",
        caption: `This point among measurements: ${y.label.toLowerCase()} over ${x.label.toLowerCase()}`,
        x,
        y,
        series,
        notable: [{ name: "this point", x: here, y: value, meaning: "rotor" }],
      },
    ];
  });
  // Which fields were measured differs from check to check; the page that places the pictures knows them by their order.
  return figures.slice(0, 2).map((figure, index) => ({ ...figure, id: `measured-${index + 1}` }));
}
