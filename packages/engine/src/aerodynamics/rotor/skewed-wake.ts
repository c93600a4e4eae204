/** Where a disc lies as seen from one that makes a wake, in lengths of the latter's radius: along the flow in its plane, across it, above it. */
export interface WakePlace {
  readonly aft: number;
  readonly side: number;
  readonly above: number;
  /** Radius of the disc in the wake over that of the one that makes it [1]. */
  readonly radius: number;
}

/** Points that a mean over a disc is taken at: radius, share of all, and how many around. Exact for the square of the radius. */
const diskPoints = [
  { radius: 0.4597, count: 6, share: 0.5 },
  { radius: 0.8881, count: 6, share: 0.5 },
] as const;
/** Rings along the wake; half of them within this many radii. */
const ringCount = 240;
const halfWay = 1.5;
/** Radius of the vortex core over that of the rotor (own choice): without one, rings at the edge of a disc are infinitely strong. */
const core = 0.03;
/** The wake of a rotor is not followed beyond this angle from its axis [rad]: it would lie in its own plane. */
export const largestSkew = (85 * Math.PI) / 180;

/**
 * Mean velocity down through a disc that another disc's wake makes, over the mean velocity that the wake makes in its own disc [1].
 *
 * The wake is a row of equal vortex rings that starts at the disc and leaves it straight at the skew angle from its axis, without end. Both means are
 * taken at the same sort of points, so that a disc in its own place answers 1. Upwash beside the wake is negative.
 *
 * @param skew angle of the wake from the axis, at most `largestSkew` [rad]
 * @source castles-deleeuw-1954, normal component of the induced velocity near a lifting rotor, from memory
 * @derivation velocity of a vortex ring by complete elliptic integrals, summed along the wake
 */
export function wakeInfluence(place: WakePlace, skew: number): number {
  const own = meanDown({ aft: 0, side: 0, above: 0, radius: 1 }, skew);
  return meanDown(place, skew) / own;
}

function meanDown({ aft, side, above, radius }: WakePlace, skew: number): number {
  const sine = Math.sin(skew);
  const cosine = Math.cos(skew);
  let mean = 0;
  for (const { radius: at, count, share } of diskPoints) {
    for (let k = 0; k < count; k++) {
      const angle = (2 * Math.PI * (k + 0.5)) / count;
      const x = aft + radius * at * Math.cos(angle);
      const y = side + radius * at * Math.sin(angle);
      let sum = 0;
      for (let i = 0; i < ringCount; i++) {
        // s = h t/(1 − t): dense near the disc, out to infinity.
        const t = (i + 0.5) / ringCount;
        const s = (halfWay * t) / (1 - t);
        const width = halfWay / (1 - t) ** 2 / ringCount;
        sum += width * ringDown(Math.hypot(x - s * sine, y), above + s * cosine);
      }
      mean += (share / count) * sum;
    }
  }
  return mean;
}

/** Velocity along the axis of a ring of radius 1 and circulation 1, at a distance from its axis and its plane. */
function ringDown(distance: number, height: number): number {
  const outer = (1 + distance) ** 2 + height * height;
  const inner = (1 - distance) ** 2 + height * height + core * core;
  const { first, second } = ellipticIntegrals(Math.min((4 * distance) / outer, 1 - 1e-12));
  return (first + ((1 - distance * distance - height * height) / inner) * second) / (2 * Math.PI * Math.sqrt(outer));
}

/** Complete elliptic integrals of the first and second kind of parameter m = k², by the arithmetic-geometric mean. */
function ellipticIntegrals(m: number): { readonly first: number; readonly second: number } {
  let a = 1;
  let b = Math.sqrt(1 - m);
  let c = Math.sqrt(m);
  let sum = m / 2;
  let power = 0.5;
  while (Math.abs(c) > 1e-12) {
    const next = (a + b) / 2;
    c = (a - b) / 2;
    b = Math.sqrt(a * b);
    a = next;
    power *= 2;
    sum += power * c * c;
  }
  const first = Math.PI / (2 * a);
  return { first, second: first * (1 - sum) };
}
