import { z } from "zod";
import { type GeodeticPosition, geodesicSegment, positionFromDegrees } from "../environment/geodesy/index.ts";

/** A named point of the route file. */
export interface RouteSite {
  readonly name: string;
  readonly position: GeodeticPosition;
}

/** A corner of the route, in the order of flight. */
export interface Waypoint {
  /** Counted from 1. */
  readonly number: number;
  /** Name of the point that lies on it, when there is one. */
  readonly name?: string;
  readonly position: GeodeticPosition;
}

export interface Route {
  readonly name: string;
  readonly waypoints: readonly Waypoint[];
  readonly sites: readonly RouteSite[];
  /** True when the file gives heights of its own, which are not flown. */
  readonly hasHeights: boolean;
}

export type RouteReading =
  | { readonly kind: "route"; readonly route: Route }
  | {
      readonly kind: "refused";
      readonly because: "not-a-route-file" | "feature-missing" | "not-a-line" | "too-short";
      readonly message: string;
    };

const coordinate = z
  .array(z.number())
  .min(2)
  .refine(([longitude, latitude]) => Math.abs(longitude as number) <= 360 && Math.abs(latitude as number) <= 90);
const named = z.looseObject({ name: z.string().optional() }).nullable().optional();
const feature = z.looseObject({
  id: z.union([z.string(), z.number()]).optional(),
  properties: named,
  geometry: z.looseObject({ type: z.string(), coordinates: z.unknown().optional() }).nullable(),
});
const collection = z.union([
  z.looseObject({ type: z.literal("FeatureCollection"), features: z.array(feature) }),
  feature.extend({ type: z.literal("Feature") }).transform((only) => ({ features: [only] })),
]);

/** A point this close to a waypoint gives it its name [m]. */
const nameReach = 30;
/** Shorter legs are taken for a corner drawn twice [m]. */
const shortestLeg = 0.5;

/**
 * The line named `featureName` of a GeoJSON document as a route, with the names of points that lie on its corners.
 *
 * @source rfc-7946, section 3.1.1, unchecked: positions are longitude, latitude, optional height
 */
export function readRoute(document: unknown, file: string, featureName: string): RouteReading {
  const refuse = (because: "not-a-route-file" | "feature-missing" | "not-a-line" | "too-short", message: string): RouteReading => ({
    kind: "refused",
    because,
    message,
  });
  const parsed = collection.safeParse(document);
  if (!parsed.success) return refuse("not-a-route-file", `${file} is not a GeoJSON Feature or FeatureCollection.`);
  const { features } = parsed.data;
  const names = features.map((entry) => entry.properties?.name ?? (entry.id === undefined ? undefined : String(entry.id)));
  const found = features.find((entry, index) => names[index] === featureName || String(entry.id) === featureName);
  if (found === undefined) {
    const lines = names.filter((name, index) => name !== undefined && features[index]?.geometry?.type === "LineString");
    return refuse("feature-missing", `${file} has no feature named "${featureName}"; its lines are: ${lines.join(", ") || "none"}.`);
  }
  const line = z.array(coordinate).safeParse(found.geometry?.coordinates);
  if (found.geometry?.type !== "LineString" || !line.success) {
    return refuse(
      "not-a-line",
      `"${featureName}" in ${file} must be a LineString of longitude and latitude, got ${found.geometry?.type ?? "no geometry"}.`,
    );
  }
  const sites = features.flatMap((entry, index) => {
    const at = coordinate.safeParse(entry.geometry?.coordinates);
    const name = names[index];
    return entry.geometry?.type === "Point" && at.success && name !== undefined ? [{ name, position: positionFromDegrees(at.data) }] : [];
  });
  const waypoints = corners(line.data.map(positionFromDegrees), sites);
  if (waypoints.length < 2) return refuse("too-short", `"${featureName}" in ${file} has fewer than two different places.`);
  return { kind: "route", route: { name: featureName, waypoints, sites, hasHeights: line.data.some((at) => at.length > 2) } };
}

function corners(positions: readonly GeodeticPosition[], sites: readonly RouteSite[]): readonly Waypoint[] {
  const waypoints: Waypoint[] = [];
  for (const position of positions) {
    const last = waypoints.at(-1);
    if (last !== undefined && geodesicSegment(last.position, position).length < shortestLeg) continue;
    const site = sites.find((entry) => geodesicSegment(entry.position, position).length < nameReach);
    waypoints.push({ number: waypoints.length + 1, position, ...(site === undefined ? {} : { name: site.name }) });
  }
  return waypoints;
}

export type WaypointChoice = { readonly kind: "waypoint"; readonly index: number } | { readonly kind: "refused"; readonly message: string };

/** The waypoint that a task means, by number from 1 or by name; index counted from 0. A name that fits twice is refused. */
export function waypointNamed(route: Route, at: number | string): WaypointChoice {
  if (typeof at === "number") {
    return at <= route.waypoints.length
      ? { kind: "waypoint", index: at - 1 }
      : { kind: "refused", message: `waypoint ${at} does not exist; ${route.name} has ${route.waypoints.length}` };
  }
  const fitting = route.waypoints.filter((waypoint) => waypoint.name === at);
  if (fitting.length > 1) {
    return { kind: "refused", message: `"${at}" fits waypoints ${fitting.map((entry) => entry.number).join(" and ")}; give the number` };
  }
  const only = fitting[0];
  if (only !== undefined) return { kind: "waypoint", index: only.number - 1 };
  const known = [...new Set(route.waypoints.flatMap((entry) => (entry.name === undefined ? [] : [entry.name])))];
  return { kind: "refused", message: `no waypoint of ${route.name} is named "${at}"; named ones are: ${known.join(", ") || "none"}` };
}
