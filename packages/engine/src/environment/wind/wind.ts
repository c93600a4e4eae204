/** How wind speed changes with height above ground. `uniform` unless somebody chose otherwise. */
export type WindProfile =
  | { readonly kind: "uniform" }
  | { readonly kind: "power-law"; readonly exponent: number }
  | { readonly kind: "logarithmic"; readonly roughnessLength: number };

/** Mean wind as weather reports give it. */
export interface Wind {
  /** Speed at 10 m above ground [m/s]. */
  readonly speed: number;
  /** Direction it blows FROM [rad], clockwise from true north. */
  readonly fromDirection: number;
  readonly profile: WindProfile;
}

/** Wind velocity as a vector [m/s], blowing TOWARD. */
export interface WindVelocity {
  readonly north: number;
  readonly east: number;
}

/** Height above ground at which reported wind speeds hold [m] (common practice of weather reports). */
const reportedWindHeight = 10;

/**
 * Mean wind speed [m/s] at a height above ground [m].
 *
 *     uniform       U(z) = U₁₀
 *     power law     U(z) = U₁₀ (z / 10 m)^α
 *     logarithmic   U(z) = U₁₀ ln(z/z₀) / ln(10 m/z₀), zero below z₀
 *
 * The two profiles describe the surface layer over even ground in neutral air; beyond about 100 m, behind ridges and near
 * buildings they are extrapolation.
 *
 * @source pvlib-windspeed, notes, power law equation; wflo-windspeed-log, details
 */
export function windSpeedAt(wind: Wind, heightAboveGround: number): number {
  const height = Math.max(heightAboveGround, 0);
  switch (wind.profile.kind) {
    case "uniform":
      return wind.speed;
    case "power-law":
      return wind.speed * (height / reportedWindHeight) ** wind.profile.exponent;
    case "logarithmic": {
      const roughness = wind.profile.roughnessLength;
      return height <= roughness ? 0 : (wind.speed * Math.log(height / roughness)) / Math.log(reportedWindHeight / roughness);
    }
  }
}

/** Wind velocity [m/s] at a height above ground [m]: the report says from, the vector says toward. */
export function windVelocityAt(wind: Wind, heightAboveGround: number): WindVelocity {
  const speed = windSpeedAt(wind, heightAboveGround);
  return { north: -speed * Math.cos(wind.fromDirection), east: -speed * Math.sin(wind.fromDirection) };
}
