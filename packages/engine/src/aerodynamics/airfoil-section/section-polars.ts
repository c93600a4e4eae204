import type { SectionPolar } from "./section-definition.ts";

/** One row of a section's table. */
export interface SectionRow {
  /** [rad]. */
  readonly angle: number;
  readonly reynoldsNumber?: number | undefined;
  readonly machNumber?: number | undefined;
  readonly liftCoefficient: number;
  readonly dragCoefficient: number;
  readonly momentCoefficient?: number | undefined;
}

type SortedPolars =
  | { readonly polars: readonly SectionPolar[]; readonly remarks: readonly string[]; readonly slip?: never }
  | { readonly slip: string };

const degree = Math.PI / 180;
const fewestAngles = 3;
const largestReynoldsNumbers = 40;
/** A wider step than this between two angles below stall is worth a word [rad]. */
const wideStep = 10 * degree;
const usualRange = 30 * degree;
const symmetricLift = 1e-6;

/**
 * Rows sorted into polars, by rising Reynolds and Mach number; or what is wrong with them, with the place. Angles rise within a
 * polar; polars need not share their angles. Remarks say what is missing in the table and how it is filled.
 */
export function sectionPolars(rows: readonly SectionRow[], place: (index: number) => string): SortedPolars {
  const groups = new Map<string, { row: SectionRow; index: number }[]>();
  const mixed = mixedColumn(rows, place);
  if (mixed !== undefined) return { slip: mixed };
  for (const [index, row] of rows.entries()) {
    const key = `${row.reynoldsNumber ?? 0} ${row.machNumber ?? 0}`;
    const group = groups.get(key) ?? [];
    const before = group[group.length - 1];
    if (before && row.angle <= before.row.angle) return { slip: orderSlip(row, before.row, place(index), place(before.index)) };
    group.push({ row, index });
    groups.set(key, group);
  }
  const polars: SectionPolar[] = [];
  for (const group of groups.values()) {
    const [one] = group;
    if (!one) continue;
    if (group.length < fewestAngles)
      return { slip: `${place(one.index)}: ${conditionOf(one.row)} has ${group.length} angles; at least ${fewestAngles} are needed` };
    polars.push(polarOf(group.map(({ row }) => row)));
  }
  if (polars.length > largestReynoldsNumbers)
    return { slip: `the table has ${polars.length} pairs of Reynolds and Mach number; at most ${largestReynoldsNumbers} are read` };
  const mirrored = polars.map(mirroredPolar);
  const halves = mirrored.some((polar, i) => polar !== polars[i]);
  polars.splice(0, polars.length, ...mirrored);
  polars.sort((a, b) => a.reynoldsNumber - b.reynoldsNumber || a.machNumber - b.machNumber);
  const half = halves ? ["the table begins at 0 degrees without lift: the section is taken as symmetric."] : [];
  return { polars, remarks: [...half, ...remarksOn(polars)] };
}

/** A polar from 0 degrees on whose lift and moment vanish there is half of a symmetric one. */
function mirroredPolar(polar: SectionPolar): SectionPolar {
  const { angles, lift, drag, moment } = polar;
  if (angles[0] !== 0 || Math.abs(lift[0] ?? 1) > symmetricLift || Math.abs(moment?.[0] ?? 0) > symmetricLift) return polar;
  const whole = (values: readonly number[], sign: 1 | -1): readonly number[] => [
    ...values
      .slice(1)
      .reverse()
      .map((value) => sign * value),
    ...values,
  ];
  return {
    ...polar,
    angles: whole(angles, -1),
    lift: whole(lift, -1),
    drag: whole(drag, 1),
    ...(moment ? { moment: whole(moment, -1) } : {}),
  };
}

/** A column that some rows fill and others leave out says nothing about the others. */
function mixedColumn(rows: readonly SectionRow[], place: (index: number) => string): string | undefined {
  for (const name of ["reynoldsNumber", "machNumber", "momentCoefficient"] as const) {
    const without = rows.findIndex((row) => row[name] === undefined);
    if (without >= 0 && rows.some((row) => row[name] !== undefined))
      return `${place(without)}: ${name} is missing here, other rows have it`;
  }
  return undefined;
}

function orderSlip(row: SectionRow, before: SectionRow, here: string, there: string): string {
  const angle = (row.angle / degree).toFixed(3);
  const reason = row.angle === before.angle ? `stands already at ${there}` : `follows ${(before.angle / degree).toFixed(3)}`;
  return `${here}: angle ${angle} degrees of ${conditionOf(row)} ${reason}; angles rise within one Reynolds and Mach number, each once`;
}

function conditionOf({
  reynoldsNumber,
  machNumber,
}: {
  readonly reynoldsNumber?: number | undefined;
  readonly machNumber?: number | undefined;
}): string {
  const parts = [
    ...(reynoldsNumber ? [`Reynolds number ${reynoldsNumber}`] : []),
    ...(machNumber !== undefined && machNumber !== 0 ? [`Mach ${machNumber}`] : []),
  ];
  return parts.length === 0 ? "the table" : parts.join(", ");
}

function polarOf(rows: readonly SectionRow[]): SectionPolar {
  const moments = rows.flatMap((row) => (row.momentCoefficient === undefined ? [] : [row.momentCoefficient]));
  return {
    reynoldsNumber: rows[0]?.reynoldsNumber ?? 0,
    machNumber: rows[0]?.machNumber ?? 0,
    angles: rows.map((row) => row.angle),
    lift: rows.map((row) => row.liftCoefficient),
    drag: rows.map((row) => row.dragCoefficient),
    ...(moments.length === rows.length ? { moment: moments } : {}),
  };
}

function remarksOn(polars: readonly SectionPolar[]): readonly string[] {
  const lows = polars.map((polar) => polar.angles[0] ?? 0);
  const highs = polars.map((polar) => polar.angles[polar.angles.length - 1] ?? 0);
  const [low, high] = [Math.max(...lows), Math.min(...highs)];
  const remarks: string[] = [];
  if (high - low < 2 * Math.PI - 1 * degree) {
    const range = `${(low / degree).toFixed(1)} to ${(high / degree).toFixed(1)} degrees`;
    remarks.push(`angles beyond ${range} are not in the table; there the flow is taken as separated, as measured on a 15 % section.`);
  }
  const rising = polars.filter((polar) => polar.lift.indexOf(Math.max(...polar.lift)) === polar.lift.length - 1);
  if (rising.length > 0)
    remarks.push(
      `lift still grows at the last angle (${rising.map(conditionOf).join("; ")}): the stall is not in the table and is taken to begin there.`,
    );
  remarks.push(...unevenGrid(polars));
  for (const polar of polars) {
    const wide = polar.angles.findIndex((angle, i) => {
      const next = polar.angles[i + 1] ?? angle;
      return next - angle > wideStep && Math.max(Math.abs(angle), Math.abs(next)) < usualRange;
    });
    if (wide < 0) continue;
    const [from, to] = [polar.angles[wide] ?? 0, polar.angles[wide + 1] ?? 0];
    remarks.push(
      `${conditionOf(polar)}: nothing between ${(from / degree).toFixed(1)} and ${(to / degree).toFixed(1)} degrees; a smooth curve runs across.`,
    );
  }
  return remarks;
}

/** Mach numbers of the table that do not all have the same Reynolds numbers. */
function unevenGrid(polars: readonly SectionPolar[]): readonly string[] {
  const machs = [...new Set(polars.map((polar) => polar.machNumber))].sort((a, b) => a - b);
  const numbers = (mach: number): string =>
    polars
      .filter((polar) => polar.machNumber === mach)
      .map((polar) => polar.reynoldsNumber)
      .join(", ");
  const odd = machs.find((mach) => numbers(mach) !== numbers(machs[0] ?? 0));
  if (odd === undefined) return [];
  return [
    `the Reynolds numbers at Mach ${machs[0]} (${numbers(machs[0] ?? 0)}) and at Mach ${odd} (${numbers(odd)}) are not the same; where one is missing, what lies between its neighbours or the nearest is used.`,
  ];
}
