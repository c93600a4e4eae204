import lowReynolds from "./data/low-reynolds.json" with { type: "json" };

/** Reynolds numbers at which the law by thickness and camber is tabulated, rising. */
export const scalingReynoldsNumbers: readonly number[] = [1e4, 2e4, 4e4, 8e4, 1.6e5, 3.6e5, 1e6, 2e6, 5e6, 1e7];

/**
 * Drag coefficient at zero lift of a smooth section [1].
 *
 *     c_d0 = c_d0,15(Re) · F(t)/F(0.15)      F(t) = 1 + 2 t + 60 t⁴
 *
 * Straight in ln c_d over ln Re between the source's values, and on above the highest (exponent 0.08); below the lowest the
 * nearest. F is the usual form factor of a section,
 * from memory.
 *
 * @source sheldahl-klimas-1981, section tables; hoerner-1965, from memory
 */
export function smoothZeroLiftDrag(reynolds: number, thickness: number): number {
  const points = lowReynolds.zeroLiftDrag.map((point) => [Math.log(point.reynolds), Math.log(point.drag)] as const);
  return (
    (Math.exp(continued(points, Math.max(Math.log(reynolds), points[0]?.[0] ?? 0))) * formFactor(thickness)) /
    formFactor(lowReynolds.thickness)
  );
}

function formFactor(thickness: number): number {
  return 1 + 2 * thickness + 60 * thickness ** 4;
}

/**
 * How far laminar flow leaves the section before it turns turbulent [1]: 0 from a Reynolds number of 100 000 on, 1 at 40 000,
 * straight in ln Re and never above 1.75.
 *
 * @derivation chosen, from memory
 */
export function laminarSeparation(reynolds: number): number {
  const { upperReynolds, lowerReynolds, largestShare } = lowReynolds.laminar;
  return Math.min(Math.max(Math.log(upperReynolds / reynolds) / Math.log(upperReynolds / lowerReynolds), 0), largestShare);
}

/**
 * What camber adds to the drag of the smooth section at its design lift, as a factor [1].
 *
 * Mean lines bring bubbles with them where the flow is laminar: 1 + 6 f at a Reynolds number of 100 000, a fifth of that from a
 * million on, and a further 5 f times `laminarSeparation` below. From memory of thin arched sections.
 *
 * @derivation chosen, from memory
 */
export function camberDragFactor(reynolds: number, camber: number): number {
  const laminar = Math.min(Math.max(1 - 0.8 * Math.log10(reynolds / 1e5), 0.2), 1);
  return 1 + (lowReynolds.chosen.camberDrag * laminar + lowReynolds.laminar.camberDrag * laminarSeparation(reynolds)) * camber;
}

/**
 * Largest lift coefficient of a symmetric section [1].
 *
 * The source's 15 % section, straight in c_l over ln Re and continued so, counts fully from 12 % thickness on; a thin plate
 * reaches much the same at every Reynolds number (from memory), and between the two runs a straight line.
 *
 * @source sheldahl-klimas-1981, section tables
 */
export function symmetricLargestLift(reynolds: number, thickness: number): number {
  const points = lowReynolds.largestLift.map((point) => [Math.log(point.reynolds), point.lift] as const);
  const { thinPlateLargestLift, fullThickness } = lowReynolds.chosen;
  const share = Math.min(thickness / fullThickness, 1);
  return share * continued(points, Math.log(reynolds)) + (1 - share) * thinPlateLargestLift;
}

type Point = readonly [x: number, y: number];

/** Straight between points and on beyond them. */
function continued(points: readonly Point[], x: number): number {
  const above = points.findIndex((point) => point[0] >= x);
  const upper = Math.max(above < 0 ? points.length - 1 : above, 1);
  const [low, high] = [points[upper - 1], points[upper]];
  if (!low || !high) throw new Error("a line needs two points");
  return low[1] + ((high[1] - low[1]) * (x - low[0])) / (high[0] - low[0]);
}
