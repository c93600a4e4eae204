import type { Figure } from "@wingseed/engine";

interface Feature {
  readonly type: "Feature";
  readonly properties: Readonly<Record<string, string>>;
  readonly geometry: { readonly type: "Point" | "LineString"; readonly coordinates: unknown };
}

export interface FeatureCollection {
  readonly type: "FeatureCollection";
  readonly features: readonly Feature[];
}

/** Tracks and sites of all maps among the figures, as RFC 7946 GeoJSON; undefined when there is no map. */
export function figuresGeoJson(figures: readonly Figure[]): FeatureCollection | undefined {
  const maps = figures.filter((figure) => figure.kind === "map");
  if (maps.length === 0) return undefined;
  const features = maps.flatMap((map): readonly Feature[] => [
    ...map.tracks.map((track) => ({
      type: "Feature" as const,
      properties: { figure: map.id, name: track.name, meaning: track.meaning },
      geometry: { type: "LineString" as const, coordinates: track.points },
    })),
    ...map.sites.map((site) => ({
      type: "Feature" as const,
      properties: { figure: map.id, name: site.name, meaning: "site", ...(site.note === undefined ? {} : { note: site.note }) },
      geometry: { type: "Point" as const, coordinates: site.at },
    })),
  ]);
  return { type: "FeatureCollection", features };
}
