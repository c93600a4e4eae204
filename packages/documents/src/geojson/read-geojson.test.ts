import { describe, expect, test } from "vitest";
import { problemLine } from "../document-problem.ts";
import { readGeoJson } from "./read-geojson.ts";

const read = (text: string) => readGeoJson({ file: "places/a.geojson", text, hash: "h" });
const lines = (text: string) => read(text).problems.map(problemLine);

const route = `{
  "type": "FeatureCollection",
  "features": [
    {
      "type": "Feature", "id": 1,
      "properties": { "name": "Out" },
      "geometry": { "type": "LineString", "coordinates": [[-124.1, -47.5], [-124.0, -47.4, 30]] }
    },
    {
      "type": "Feature", "id": "p",
      "properties": { "name": "Platform" },
      "geometry": { "type": "Point", "coordinates": [-124.0, -47.4] }
    }
  ]
}
`;

test("routes and sites keep their published form", () => {
  const { document, problems } = read(route);
  expect(problems).toEqual([]);
  expect(document).toEqual({ path: "places/a.geojson", kind: "geojson", data: JSON.parse(route), written: {}, hash: "h" });
});

test("a single feature is a document too", () => {
  const one = '{ "type": "Feature", "properties": { "name": "P" }, "geometry": { "type": "Point", "coordinates": [1, 2] } }';
  expect(read(one).problems).toEqual([]);
});

describe("every problem has its line and column", () => {
  test.each([
    [
      "longitude",
      route.replace("[[-124.1,", "[[-184.1,"),
      ["7:60: features[0].geometry.coordinates[0][0]: longitude -184.1 is out of range; -180 to 180 degrees is allowed"],
    ],
    [
      "latitude",
      route.replace("-47.4] }", "-97.4] }"),
      ["12:62: features[1].geometry.coordinates[1]: latitude -97.4 is out of range; -90 to 90 degrees is allowed"],
    ],
    [
      "swapped",
      route.replace("[-124.0, -47.4] }", "[-47.4, -124.0] }"),
      ["12:61: features[1].geometry.coordinates[1]: latitude -124 is out of range; -90 to 90 degrees is allowed; longitude comes first"],
    ],
    [
      "no numbers",
      route.replace("[-124.0, -47.4] }", '["a", 3] }'),
      [
        "12:53: features[1].geometry.coordinates: a position is [longitude, latitude] in degrees, with a height in meters behind them if need be; read a list of 2 entries",
      ],
    ],
    [
      "one position",
      route.replace(", [-124.0, -47.4, 30]]", "]"),
      ["7:58: features[0].geometry.coordinates: a LineString needs at least two positions; read a list of 1 entry"],
    ],
    [
      "the 180° meridian",
      route.replace("[-124.0, -47.4, 30]", "[170, -47.4]"),
      [
        "7:76: features[0].geometry.coordinates[1]: this leg spans more than half the globe in longitude; cut the line where it crosses the 180° meridian",
      ],
    ],
    [
      "no name",
      route.replace('"name": "Out"', ""),
      ['6:21: features[0].properties: every feature needs a text "name" among its "properties"'],
    ],
    [
      "empty name",
      route.replace('"Out"', '" "'),
      ['6:31: features[0].properties.name: every feature needs a text "name" among its "properties"'],
    ],
    [
      "no properties",
      route.replace('"properties": { "name": "Out" },', ""),
      ['4:5: features[0]: every feature needs a text "name" among its "properties"'],
    ],
    ["double name", route.replace('"Platform"', '"Out"'), ['11:31: features[1].properties.name: feature 1 already has the name "Out"']],
    ["double id", route.replace('"p"', "1"), ["10:32: features[1].id: feature 1 already has the id 1"]],
    ["strange id", route.replace('"p"', "[]"), ['10:32: features[1].id: "id" must be a text or a number; read a list of 0 entries']],
    [
      "polygon",
      route.replace('"Point"', '"Polygon"'),
      ['12:29: features[1].geometry.type: a site has a "Point" and a route a "LineString" as its geometry; read "Polygon"'],
    ],
    [
      "no geometry",
      route.replace(/"geometry": \{ "type": "Point".*\}/u, '"geometry": null'),
      ['12:19: features[1].geometry: a site has a "Point" and a route a "LineString" as its geometry; read null'],
    ],
    ["no feature", route.replace('"Feature", "id": "p"', '"Thing"'), ['10:15: features[1].type: a "Feature" is expected; read "Thing"']],
    [
      "another system",
      route.replace('"features"', '"crs": { "properties": { "name": "EPSG:2056" } }, "features"'),
      ['3:10: crs: GeoJSON is in WGS 84 longitude and latitude and names no other system; read "EPSG:2056"'],
    ],
    ["double key", route.replace('"id": "p"', '"id": "p", "id": "q"'), ["10:37: this key stands twice in the same mapping"]],
    ["no collection", '{ "type": "Topology" }', ['1:11: type: "type" must be "FeatureCollection" or "Feature"; read "Topology"']],
    [
      "no features",
      '{ "type": "FeatureCollection", "features": [] }',
      ['1:44: features: "features" must be a list of at least one feature; read a list of 0 entries'],
    ],
    ["a number", "3", ["1:1: a GeoJSON FeatureCollection is expected; read 3"]],
    ["trailing comma", route.replace('"Out" },', '"Out", },'), ['6:38: this is no JSON: a name in double quotes is expected; read "},"']],
    ["single quotes", route.replace('"Out"', "'Out'"), ["6:31: this is no JSON: a value is expected; read \"'Out' },\""]],
    ["comment", `// a route\n${route}`, ['1:1: this is no JSON: a value is expected; read "// a route"']],
    [
      "cut off",
      route.slice(0, route.indexOf('    {\n      "type": "Feature", "id": "p"')),
      ["9:1: this is no JSON: a value is expected; read the end of the text"],
    ],
    ["two values", "{}{}", ['1:3: this is no JSON: nothing more is expected; read "{}"']],
    ["missing colon", '{"type" 3}', ['1:9: this is no JSON: ":" is expected; read "3}"']],
    ["empty", "", ["1:1: this is no JSON: a value is expected; read the end of the text"]],
  ])("%s", (_, text, expected) => {
    expect(lines(text)).toEqual(expected.map((line) => `places/a.geojson:${line}`));
    expect(read(text).document).toBeUndefined();
  });
});

test("what is odd but usable is a warning", () => {
  const odd = route.replace("[-124.0, -47.4, 30]]", "[-124.1, -47.5], [-124.0, -47.4, 30, 4]]");
  expect(lines(odd)).toEqual([
    "places/a.geojson:7:76: warning: features[0].geometry.coordinates[1]: this position repeats the one before it; the leg has no length",
    "places/a.geojson:7:93: warning: features[0].geometry.coordinates[2]: a position has two or three numbers; those behind the third mean nothing",
  ]);
  expect(read(odd).document).toBeDefined();
});
