import { type SmoothCurve, smoothCurve } from "./smooth-curve.ts";

/** One measured point. Either every row of a table has a level or none has. */
export interface PropellerMapRow {
  /** J [1]. */
  readonly advanceRatio: number;
  readonly ct: number;
  readonly cp: number;
  /** Rotation rate [rad/s] or Reynolds number at 0.75 R [1] at which it was measured. */
  readonly level?: number | undefined;
}

interface Curve {
  readonly level: number;
  readonly ct: SmoothCurve;
  readonly cp: SmoothCurve;
}

/** Coefficients at rest over the logarithm of the level. */
type Standing = Pick<Curve, "ct" | "cp">;

/** Measured coefficients over advance ratio, and over rotation rate or Reynolds number. */
export interface PropellerMap {
  /** Rising in level; each with two points or more. Empty when everything was measured at one advance ratio. */
  readonly curves: readonly Curve[];
  /** Undefined when only the curves know it. */
  readonly standing: Standing | undefined;
  readonly levelled: boolean;
  readonly lowestLevel: number;
  readonly highestLevel: number;
}

/** Levels this close are one curve. */
const sameLevel = 1.02;
/** How far beyond the last point, in widths of the measured range, a curve may be continued. */
const furthestBeyond = 0.25;
const atRest = 1e-9;

type MapReading = { readonly map: PropellerMap; readonly remarks: readonly string[]; readonly slip?: never } | { readonly slip: string };

/** A map from its rows in any order; or what is wrong with them, with the place. */
export function propellerMap(rows: readonly PropellerMapRow[], place: (index: number) => string): MapReading {
  const without = rows.findIndex((row) => row.level === undefined);
  const levelled = rows.some((row) => row.level !== undefined);
  if (levelled && without >= 0)
    return { slip: `${place(without)}: the level (rotation rate or Reynolds number) is missing here, other rows have it` };
  const groups: { level: number; members: { row: PropellerMapRow; index: number }[] }[] = [];
  const sorted = rows.map((row, index) => ({ row, index })).toSorted((a, b) => (a.row.level ?? 1) - (b.row.level ?? 1));
  for (const member of sorted) {
    const level = member.row.level ?? 1;
    const group = groups[groups.length - 1];
    if (group && level <= group.level * sameLevel) group.members.push(member);
    else groups.push({ level, members: [member] });
  }
  for (const { members } of groups) {
    members.sort((a, b) => a.row.advanceRatio - b.row.advanceRatio);
    const twice = members.findIndex(({ row }, i) => row.advanceRatio - (members[i - 1]?.row.advanceRatio ?? -1) < 1e-6);
    if (twice >= 0)
      return {
        slip: `${place(members[twice]?.index ?? 0)}: advance ratio ${members[twice]?.row.advanceRatio} stands already at ${place(members[twice - 1]?.index ?? 0)}`,
      };
  }
  const single = groups.filter(({ members }) => members.length === 1 && (members[0]?.row.advanceRatio ?? 1) <= atRest);
  const lost = groups.find(({ members }) => members.length === 1 && (members[0]?.row.advanceRatio ?? 1) > atRest);
  if (lost) return { slip: `${place(lost.members[0]?.index ?? 0)}: the only row at its level; a curve needs two advance ratios` };
  const standing = single.length > 0 ? standingCurve(groups) : undefined;
  const curves = groups
    .filter(({ members }) => members.length > 1)
    .map(({ level, members }) =>
      curveOf(
        level,
        members.map(({ row }) => row),
        standing,
      ),
    );
  const levels = groups.flatMap(({ members }) => members.map(({ row }) => row.level ?? 1));
  const map: PropellerMap = {
    curves,
    standing,
    levelled,
    lowestLevel: Math.min(...levels),
    highestLevel: Math.max(...levels),
  };
  return { map, remarks: wideGaps(curves, groups) };
}

/** A curve over advance ratio; where rest was measured at more levels, it begins there. */
function curveOf(level: number, rows: readonly PropellerMapRow[], standing: Standing | undefined): Curve {
  const own = standing ? rows.filter((row) => row.advanceRatio > atRest) : rows;
  const at = Math.log(level);
  const xs = [...(standing ? [0] : []), ...own.map((row) => row.advanceRatio)];
  const through = (of: "ct" | "cp"): SmoothCurve =>
    smoothCurve(xs, [...(standing ? [standing[of].at(at)] : []), ...own.map((row) => row[of])]);
  return { level, ct: through("ct"), cp: through("cp") };
}

/** At rest, over the logarithm of the level, from every group that has a row there. */
function standingCurve(groups: readonly { readonly members: readonly { readonly row: PropellerMapRow }[] }[]): Standing {
  const found = groups.flatMap(({ members }) => {
    const first = members[0]?.row;
    return first && first.advanceRatio <= atRest ? [{ x: Math.log(first.level ?? 1), ct: first.ct, cp: first.cp }] : [];
  });
  const xs = found.map(({ x }) => x);
  return {
    ct: smoothCurve(
      xs,
      found.map(({ ct }) => ct),
    ),
    cp: smoothCurve(
      xs,
      found.map(({ cp }) => cp),
    ),
  };
}

const wideGap = 0.25;

function wideGaps(
  curves: readonly Curve[],
  groups: readonly { readonly level: number; readonly members: readonly { readonly row: PropellerMapRow }[] }[],
): readonly string[] {
  const found = groups.flatMap(({ members }) =>
    members.flatMap(({ row }, i) => {
      const before = members[i - 1]?.row.advanceRatio ?? row.advanceRatio;
      return row.advanceRatio - before > wideGap
        ? [`nothing between advance ratio ${before} and ${row.advanceRatio}; a smooth curve runs across`]
        : [];
    }),
  );
  return curves.length === 0 ? [] : [...new Set(found)];
}

export type MapPoint =
  | { readonly kind: "read"; readonly ct: number; readonly cp: number; readonly extrapolated: readonly string[] }
  | { readonly kind: "outside"; readonly reason: string };

/**
 * Coefficients at an advance ratio and a level. Inside the table as measured; between levels straight in the logarithm; beyond its
 * levels those of the nearest; beyond its advance ratios straight on for a quarter of their range, each named.
 *
 * What was measured at rest only, at levels without a curve of their own, shifts the nearest curves by their difference at rest,
 * fading in proportion towards the end of the curve (own choice).
 *
 * @derivation interpolation
 */
export function mapCoefficients(map: PropellerMap, advanceRatio: number, level: number): MapPoint {
  const extrapolated: string[] = [];
  const { curves, standing } = map;
  const at = Math.log(Math.min(Math.max(level, map.lowestLevel), map.highestLevel));
  if (map.levelled && (level < map.lowestLevel / sameLevel || level > map.highestLevel * sameLevel))
    extrapolated.push(
      level < map.lowestLevel
        ? "below the lowest rate or Reynolds number of the table"
        : "above the highest rate or Reynolds number of the table",
    );
  if (curves.length === 0) {
    if (!standing || advanceRatio > atRest) return { kind: "outside", reason: "the table has no row at an advance ratio above zero" };
    return { kind: "read", ct: standing.ct.at(at), cp: standing.cp.at(at), extrapolated };
  }
  if (standing && advanceRatio <= atRest) return { kind: "read", ct: standing.ct.at(at), cp: standing.cp.at(at), extrapolated };
  const covering = curves.filter(({ ct }) => advanceRatio >= ct.low && advanceRatio <= ct.high);
  const usable = covering.length > 0 ? covering : nearestCurves(curves, advanceRatio);
  if (covering.length === 0) {
    const low = Math.min(...curves.map(({ ct }) => ct.low));
    const high = Math.max(...curves.map(({ ct }) => ct.high));
    const beyond = Math.max(low - advanceRatio, advanceRatio - high) / Math.max(high - low, 1e-9);
    if (beyond > furthestBeyond) return { kind: "outside", reason: `the table ends at advance ratio ${advanceRatio > high ? high : low}` };
    extrapolated.push(`advance ratio outside the table's ${low} to ${high}`);
  }
  const own = between(usable, at, advanceRatio);
  if (!standing) return { kind: "read", ...own, extrapolated };
  const rest = between(usable, at, 0);
  const fading = Math.max(1 - advanceRatio / Math.max(...usable.map(({ ct }) => ct.high)), 0);
  return {
    kind: "read",
    ct: own.ct + fading * (standing.ct.at(at) - rest.ct),
    cp: own.cp + fading * (standing.cp.at(at) - rest.cp),
    extrapolated,
  };
}

/** The curves that end nearest to an advance ratio which none of them covers. */
function nearestCurves(curves: readonly Curve[], advanceRatio: number): readonly Curve[] {
  const away = ({ ct }: Curve): number => Math.max(ct.low - advanceRatio, advanceRatio - ct.high);
  const least = Math.min(...curves.map(away));
  return curves.filter((curve) => away(curve) <= least + 1e-6);
}

function between(curves: readonly Curve[], at: number, advanceRatio: number): { readonly ct: number; readonly cp: number } {
  const above = curves.findIndex(({ level }) => Math.log(level) >= at);
  const upper = curves[above < 0 ? curves.length - 1 : above] as Curve;
  const lower = (above <= 0 ? upper : curves[above - 1]) as Curve;
  const width = Math.log(upper.level) - Math.log(lower.level);
  const share = width > 0 ? Math.min((at - Math.log(lower.level)) / width, 1) : 0;
  const blend = (of: (curve: Curve) => SmoothCurve): number => {
    const low = of(lower).at(advanceRatio);
    return low + share * (of(upper).at(advanceRatio) - low);
  };
  return { ct: blend(({ ct }) => ct), cp: blend(({ cp }) => cp) };
}
