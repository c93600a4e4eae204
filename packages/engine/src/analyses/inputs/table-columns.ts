import { z } from "zod";
import type { QuantityKind } from "../../quantities/index.ts";
import type { TableData } from "./table-data.ts";

/** A column that a table may have. */
interface KnownColumn {
  readonly name: string;
  /** Further names of the trade for the same. */
  readonly others: readonly string[];
  readonly kind: QuantityKind | undefined;
  readonly required: boolean;
}

interface RowNode {
  readonly properties?: Readonly<Record<string, { readonly quantity?: QuantityKind; readonly columnNames?: readonly string[] }>>;
  readonly required?: readonly string[];
}

/** The columns that the schema of a row speaks of. */
export function columnsOf(row: z.ZodType): readonly KnownColumn[] {
  const { properties = {}, required = [] } = z.toJSONSchema(row, { io: "input", unrepresentable: "any" }) as RowNode;
  return Object.entries(properties).map(([name, { quantity, columnNames = [] }]) => ({
    name,
    others: columnNames,
    kind: quantity,
    required: required.includes(name),
  }));
}

interface MatchedColumn {
  readonly name: string;
  readonly kind: QuantityKind | undefined;
  /** Index of the cell in a row of the file. */
  readonly cell: number;
}

type Matched = { readonly columns: readonly MatchedColumn[]; readonly problem?: never } | { readonly problem: string };

/** Which column of a file is which of those known; or sentences about all that do not fit, with their places. */
export function matchedColumns(file: string, data: TableData, known: readonly KnownColumn[]): Matched {
  const complaints: string[] = [];
  const columns: MatchedColumn[] = [];
  for (const [cell, { name, unit, kinds, line, column }] of data.columns.entries()) {
    const complain = (sentence: string) => complaints.push(`${file}:${line}:${column}: ${sentence}`);
    const found = known.find((candidate) => [candidate.name, ...candidate.others].some((one) => plain(one) === plain(name)));
    if (found === undefined) complain(`column "${name}" is not known here; the columns are ${known.map((one) => one.name).join(", ")}`);
    else if (columns.some((one) => one.name === found.name)) complain(`column "${name}" gives ${found.name} a second time`);
    else if (found.kind !== undefined && !kinds.includes(found.kind)) complain(wrongUnit(found.kind, name, unit));
    else columns.push({ name: found.name, kind: found.kind, cell });
  }
  const missing = known.filter((one) => one.required && !data.columns.some(({ name }) => isNamed(one, name)));
  const line = data.columns[0]?.line ?? 1;
  for (const one of missing) complaints.push(`${file}:${line}:1: column "${one.name}" is missing`);
  return complaints.length > 0 ? { problem: complaints.join("\n") } : { columns };
}

function isNamed(column: KnownColumn, name: string): boolean {
  return [column.name, ...column.others].some((one) => plain(one) === plain(name));
}

/** "Lift coefficient", "lift_coefficient" and "liftCoefficient" are one name. */
function plain(name: string): string {
  return name.replaceAll(/[\s_-]/gu, "").toLowerCase();
}

function wrongUnit(kind: QuantityKind, name: string, unit: string | null): string {
  if (kind === "dimensionless") return `column "${name}" is a number without unit; read [${unit ?? ""}]`;
  const example = `"${name} [${exampleUnits[kind] ?? "…"}]"`;
  return unit === null
    ? `column "${name}" needs its unit in square brackets, as in ${example}`
    : `[${unit}] does not measure ${name}; write it as in ${example}`;
}

const exampleUnits: Partial<Record<QuantityKind, string>> = {
  acceleration: "m/s2",
  angle: "deg",
  anglePerTime: "deg/s",
  area: "m2",
  capacity: "Ah",
  current: "A",
  density: "kg/m3",
  dynamicViscosity: "Pa s",
  energy: "Wh",
  energyPerDistance: "Wh/km",
  force: "N",
  forceRate: "N/s",
  heatCapacity: "J/K",
  inertia: "kg m2",
  latitude: "deg",
  length: "m",
  mass: "kg",
  power: "W",
  pressure: "Pa",
  resistance: "mOhm",
  rotationRate: "rpm",
  specificHeat: "J/(kg K)",
  speed: "m/s",
  speedConstant: "rpm/V",
  temperature: "degC",
  temperatureDifference: "K",
  thermalResistance: "K/W",
  time: "s",
  torque: "N m",
  voltage: "V",
};
