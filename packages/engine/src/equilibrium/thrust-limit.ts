/** Thrust coefficient at a collective [rad]; undefined where inflow and flapping could not be solved. */
export type ThrustAtCollective = (collective: number) => number | undefined;

const degree = Math.PI / 180;
const coarseStep = degree;
const fineStep = 0.25 * degree;
/** How far above the knee a maximum is still looked for. */
const window = 1.5 * degree;
const highestRise = 34 * degree;
/** No stall is looked for below this much pitch above the start: slow stretches of the ring state are not stall. */
const lowestKnee = 9 * degree;
/** Share of the steepest slope below which thrust no longer answers to collective. */
const kneeShare = 0.25;

/**
 * Largest steady thrust coefficient over collective, marching up from `from` [rad]: the first maximum. Where the stall of the
 * retreating side comes so gradually that thrust only stops answering (advancing fast, or descending steeply), it is the
 * largest thrust within 1.5 degrees above the point where the slope has fallen to a quarter of its steepest: what lies beyond is
 * the stalled branch, which rises again slowly and is not flown. The largest thrust seen when no knee is found; NaN when nothing could be solved.
 *
 * @derivation our own definition; the first maximum where there is one, continuous with it where there is none
 */
export function thrustLimit(thrust: ThrustAtCollective, from: number): number {
  const { knee, seen } = kneeCollective(thrust, from);
  if (knee === undefined) return seen;
  let largest = Number.NEGATIVE_INFINITY;
  let before = Number.NEGATIVE_INFINITY;
  let atBefore = knee;
  for (let collective = knee - coarseStep; collective <= knee + window + 1e-12; collective += fineStep) {
    const here = thrust(collective);
    if (here === undefined) continue;
    if (here < before && before === largest) return vertex(thrust, atBefore, before);
    if (here > largest) largest = here;
    before = here;
    atBefore = collective;
  }
  return largest;
}

/** First collective at which the slope has fallen to a quarter of the steepest before it, linear between steps. */
function kneeCollective(thrust: ThrustAtCollective, from: number): { readonly knee?: number; readonly seen: number } {
  let steepest = 0;
  let seen = Number.NaN;
  let lastSlope = 0;
  let before = thrust(from);
  for (let collective = from + coarseStep; collective < from + highestRise; collective += coarseStep) {
    const here = thrust(collective);
    if (here !== undefined && !(here < seen)) seen = here;
    if (here === undefined || before === undefined) {
      before = here;
      continue;
    }
    const slope = here - before;
    const middle = collective - coarseStep / 2;
    if (collective - from > lowestKnee && here > 0 && steepest > 0 && slope < kneeShare * steepest) {
      const share = lastSlope > slope ? (lastSlope - kneeShare * steepest) / (lastSlope - slope) : 1;
      return { knee: middle - coarseStep * (1 - Math.min(1, Math.max(0, share))), seen };
    }
    if (slope > steepest) steepest = slope;
    lastSlope = slope;
    before = here;
  }
  return { seen };
}

/** Top of the parabola through the best of the fine steps and its neighbours. */
function vertex(thrust: ThrustAtCollective, at: number, value: number): number {
  const left = thrust(at - fineStep);
  const right = thrust(at + fineStep);
  if (left === undefined || right === undefined) return value;
  const curvature = left + right - 2 * value;
  return curvature < 0 ? value - (right - left) ** 2 / (8 * curvature) : value;
}
