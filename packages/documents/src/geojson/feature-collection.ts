import { type PathStep, pointer, shown, type ValueProblem } from "../schema/index.ts";
import { lineProblems, positionProblems } from "./feature-coordinates.ts";
import { isMembers, type Members, memberPlace, slipAt } from "./geojson-slip.ts";

/**
 * Everything wrong with a GeoJSON document of routes (lines with a name) and sites (points with a name).
 *
 * @source rfc-7946, sections 3 and 4: objects, positions, coordinate reference system
 */
export function featureProblems(document: unknown): readonly ValueProblem[] {
  if (!isMembers(document)) {
    const sentence = `a GeoJSON FeatureCollection is expected; read ${shown(document)}`;
    return [slipAt([], { kind: "wrong-type", read: shown(document), allowed: "a FeatureCollection", sentence })];
  }
  const listed = listedFeatures(document);
  const own = listed.features.flatMap(({ value, path }) => featureOwnProblems(value, path));
  return [...referenceSystemProblems(document), ...listed.problems, ...own, ...doubles(listed.features)];
}

interface PlacedFeature {
  readonly value: unknown;
  readonly path: readonly PathStep[];
}

function listedFeatures(document: Members): { readonly features: readonly PlacedFeature[]; readonly problems: readonly ValueProblem[] } {
  const { type, features } = document;
  if (type === "Feature") return { features: [{ value: document, path: [] }], problems: [] };
  if (type !== "FeatureCollection") {
    const sentence = `"type" must be "FeatureCollection" or "Feature"; read ${shown(type)}`;
    const allowed = '"FeatureCollection" or "Feature"';
    return {
      features: [],
      problems: [slipAt(memberPlace([], "type", type), { kind: "not-allowed", read: shown(type), allowed, sentence })],
    };
  }
  if (!Array.isArray(features) || features.length === 0) {
    const sentence = `"features" must be a list of at least one feature; read ${shown(features)}`;
    const place = memberPlace([], "features", features);
    return {
      features: [],
      problems: [slipAt(place, { kind: "wrong-type", read: shown(features), allowed: "a list of features", sentence })],
    };
  }
  return { features: features.map((value: unknown, index) => ({ value, path: ["features", index] })), problems: [] };
}

function featureOwnProblems(value: unknown, path: readonly PathStep[]): readonly ValueProblem[] {
  if (!isMembers(value) || value.type !== "Feature") {
    const type = isMembers(value) ? value.type : value;
    const place = isMembers(value) ? memberPlace(path, "type", type) : path;
    return [
      slipAt(place, {
        kind: "not-allowed",
        read: shown(type),
        allowed: '"Feature"',
        sentence: `a "Feature" is expected; read ${shown(type)}`,
      }),
    ];
  }
  return [
    ...nameProblems(value, path),
    ...idProblems(value, path),
    ...geometryProblems(value.geometry, memberPlace(path, "geometry", value.geometry)),
  ];
}

function geometryProblems(geometry: unknown, path: readonly PathStep[]): readonly ValueProblem[] {
  const { type, coordinates } = isMembers(geometry) ? geometry : { type: geometry, coordinates: undefined };
  const place = memberPlace(path, "coordinates", coordinates);
  if (isMembers(geometry) && type === "Point") return positionProblems(coordinates, place);
  if (isMembers(geometry) && type === "LineString") return lineProblems(coordinates, place);
  const sentence = `a site has a "Point" and a route a "LineString" as its geometry; read ${shown(type)}`;
  const where = isMembers(geometry) ? memberPlace(path, "type", type) : path;
  return [slipAt(where, { kind: "not-allowed", read: shown(type), allowed: '"Point" or "LineString"', sentence })];
}

/** A feature is called by its name; without one nothing can refer to it. */
function nameProblems({ properties }: Members, path: readonly PathStep[]): readonly ValueProblem[] {
  const name = isMembers(properties) ? properties.name : undefined;
  if (typeof name === "string" && name.trim() !== "") return [];
  const holder = memberPlace(path, "properties", properties ?? undefined);
  const sentence = 'every feature needs a text "name" among its "properties"';
  return [slipAt(memberPlace(holder, "name", name), { kind: "missing-key", read: shown(name), allowed: "a text", sentence })];
}

function idProblems({ id }: Members, path: readonly PathStep[]): readonly ValueProblem[] {
  if (id === undefined || typeof id === "string" || typeof id === "number") return [];
  const sentence = `"id" must be a text or a number; read ${shown(id)}`;
  return [slipAt([...path, "id"], { kind: "wrong-type", read: shown(id), allowed: "a text or a number", sentence })];
}

function doubles(features: readonly PlacedFeature[]): readonly ValueProblem[] {
  const seen = new Map<string, number>();
  return features.flatMap(({ value, path }, index) => {
    if (!isMembers(value)) return [];
    const name = isMembers(value.properties) ? value.properties.name : undefined;
    const words = [
      { what: "name", word: name, place: [...path, "properties", "name"] },
      { what: "id", word: value.id, place: [...path, "id"] },
    ];
    return words.flatMap(({ what, word, place }) => {
      if (typeof word !== "string" && typeof word !== "number") return [];
      const key = pointer([what, String(word)]);
      const first = seen.get(key);
      if (first === undefined) seen.set(key, index);
      if (first === undefined) return [];
      const sentence = `feature ${first + 1} already has the ${what} ${shown(word)}`;
      return [slipAt(place, { kind: "duplicate-name", read: shown(word), allowed: `a ${what} of its own`, sentence })];
    });
  });
}

/** The standard knows one reference system; an older member that names another would shift every place. */
function referenceSystemProblems({ crs }: Members): readonly ValueProblem[] {
  const name = isMembers(crs) && isMembers(crs.properties) ? crs.properties.name : undefined;
  if (crs === undefined || name === "urn:ogc:def:crs:OGC:1.3:CRS84" || name === "urn:ogc:def:crs:OGC::CRS84") return [];
  const sentence = `GeoJSON is in WGS 84 longitude and latitude and names no other system; read ${shown(name)}`;
  return [slipAt(["crs"], { kind: "coordinates", read: shown(name), allowed: "WGS 84 longitude and latitude", sentence })];
}
