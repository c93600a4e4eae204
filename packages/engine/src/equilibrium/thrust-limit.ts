/** Thrust coefficient at a collective [rad]; undefined where inflow and flapping could not be solved. */
export type ThrustAtCollective = (collective: number) => number | undefined;

/** The largest steady thrust coefficient [1] and the collective that gives it [rad]: more collective is stalled flight. */
export interface ThrustLimit {
  readonly thrust: number;
  readonly collective: number;
}

/** Where a search begins and what it does not take for stall. */
export interface ThrustSearch {
  /** First collective, below stall [rad]. */
  readonly from: number;
  /** No stall is looked for within this much pitch above it [rad]. */
  readonly lowestKnee: number;
  /** Nor below this thrust coefficient [1]: in the ring state thrust answers slowly to collective without any stall. */
  readonly lowestThrust: number;
}

const degree = Math.PI / 180;
const coarseStep = 1.5 * degree;
const fineStep = 0.5 * degree;
/** A fall by this share within one fine step is a change of branch, not the rounding of a maximum. */
const jump = 0.03;
const edgeTolerance = 0.04 * degree;
/** How far above the knee a maximum is still looked for. */
const window = 1.5 * degree;
const highestRise = 34 * degree;
/** Share of the steepest slope below which thrust no longer answers to collective. */
const kneeShare = 0.25;

/**
 * Largest steady thrust coefficient over collective, marching up from `from` [rad]: the first maximum. Where the stall of the
 * retreating side comes so gradually that thrust only stops answering (advancing fast, or descending steeply), it is the
 * largest thrust within 1.5 degrees above the point where the slope has fallen to a quarter of its steepest: what lies beyond is
 * the stalled branch, which rises again slowly and is not flown. Below `lowestThrust` no stall is looked for: in the ring state
 * thrust answers slowly to collective without any. The largest thrust seen when no knee is found; NaN when nothing could be solved.
 *
 * @derivation our own definition; the first maximum where there is one, continuous with it where there is none
 */
export function thrustLimit(thrust: ThrustAtCollective, search: ThrustSearch): ThrustLimit {
  const { from } = search;
  const { knee, seen } = kneeCollective(thrust, search);
  if (knee === undefined) return seen;
  // From the last coarse step that was surely below stall: a start too near the edge may land beyond it.
  const start = from + coarseStep * Math.max(0, Math.floor((knee - from) / coarseStep) - 1);
  let largest: ThrustLimit = { thrust: Number.NEGATIVE_INFINITY, collective: start };
  let before = Number.NEGATIVE_INFINITY;
  let atBefore = start;
  for (let collective = start; collective <= knee + window + 1e-12; collective += fineStep) {
    const here = thrust(collective);
    // Past a fold nothing steady is found at all: the same as a fall.
    if (here === undefined) {
      if (Number.isFinite(before)) return edge(thrust, atBefore, collective, before);
      continue;
    }
    if (here < before && before === largest.thrust) {
      return here < before * (1 - jump) ? edge(thrust, atBefore, collective, before) : vertex(thrust, atBefore, before);
    }
    if (here > largest.thrust) largest = { thrust: here, collective };
    before = here;
    atBefore = collective;
  }
  return largest;
}

/** First collective at which the slope has fallen to a quarter of the steepest before it, linear between steps. */
function kneeCollective(
  thrust: ThrustAtCollective,
  { from, lowestKnee, lowestThrust }: ThrustSearch,
): { readonly knee?: number; readonly seen: ThrustLimit } {
  let steepest = 0;
  let seen: ThrustLimit = { thrust: Number.NaN, collective: from };
  let lastSlope = 0;
  let before = thrust(from);
  for (let collective = from + coarseStep; collective < from + highestRise; collective += coarseStep) {
    const here = thrust(collective);
    if (here !== undefined && !(here < seen.thrust)) seen = { thrust: here, collective };
    if (here === undefined && before !== undefined && before > lowestThrust && collective - from > lowestKnee)
      return { knee: collective, seen };
    if (here === undefined || before === undefined) {
      before = here;
      continue;
    }
    const slope = here - before;
    const middle = collective - coarseStep / 2;
    if (collective - from > lowestKnee && here > lowestThrust && steepest > 0 && slope < kneeShare * steepest) {
      const share = lastSlope > slope ? (lastSlope - kneeShare * steepest) / (lastSlope - slope) : 1;
      return { knee: middle - coarseStep * (1 - Math.min(1, Math.max(0, share))), seen };
    }
    if (slope > steepest) steepest = slope;
    lastSlope = slope;
    before = here;
  }
  return { seen };
}

/** Largest thrust before a fall onto the stalled branch between two collectives. */
function edge(thrust: ThrustAtCollective, before: number, beyond: number, value: number): ThrustLimit {
  let low = before;
  let high = beyond;
  let largest: ThrustLimit = { thrust: value, collective: before };
  while (high - low > edgeTolerance) {
    const middle = (low + high) / 2;
    const here = thrust(middle);
    if (here === undefined || here < largest.thrust * (1 - jump)) high = middle;
    else {
      low = middle;
      if (here > largest.thrust) largest = { thrust: here, collective: middle };
    }
  }
  return largest;
}

/** Top of the parabola through the best of the fine steps and its neighbours. */
function vertex(thrust: ThrustAtCollective, at: number, value: number): ThrustLimit {
  const left = thrust(at - fineStep);
  const right = thrust(at + fineStep);
  if (left === undefined || right === undefined) return { thrust: value, collective: at };
  const curvature = left + right - 2 * value;
  if (curvature >= 0) return { thrust: value, collective: at };
  const slope = (right - left) / 2;
  return { thrust: value - slope ** 2 / (2 * curvature), collective: at - (fineStep * slope) / curvature };
}
