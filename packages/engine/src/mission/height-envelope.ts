/** How fast height may change over each piece of a path [m/s], both not negative. */
export interface RateAllowance {
  readonly climb: ArrayLike<number>;
  readonly descent: ArrayLike<number>;
}

/**
 * Lowest heights [m] that are nowhere below the required ones and change no faster than allowed: what a flight keeps when
 * it must never be lower than asked. It climbs before high ground and descends after it.
 *
 *     h_i ≥ h_{i+1} − climb_i Δt_i        (swept backward)
 *     h_{i+1} ≥ h_i − descent_i Δt_i      (swept forward)
 *
 * @derivation Each inequality chain is a lower bound of every height that meets it; the two sweeps take the largest bound.
 * @param required Heights at the cuts of the path [m].
 * @param duration Time over each piece [s], one fewer than heights.
 */
export function rateLimitedEnvelope(required: ArrayLike<number>, duration: ArrayLike<number>, allowance: RateAllowance): Float64Array {
  const heights = Float64Array.from(required);
  for (let piece = heights.length - 2; piece >= 0; piece--) {
    const least = (heights[piece + 1] as number) - (allowance.climb[piece] as number) * (duration[piece] as number);
    if (least > (heights[piece] as number)) heights[piece] = least;
  }
  for (let piece = 0; piece < heights.length - 1; piece++) {
    const least = (heights[piece] as number) - (allowance.descent[piece] as number) * (duration[piece] as number);
    if (least > (heights[piece + 1] as number)) heights[piece + 1] = least;
  }
  return heights;
}
