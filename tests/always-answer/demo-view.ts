import { openProject } from "@wingseed/documents";
import type { ProjectView, Raster, ReadDocument } from "@wingseed/engine";

/** The whole demo, and missions of it that are quick to fly. */
export async function demoView(folder = "demo"): Promise<ProjectView> {
  const project = openProject(folder);
  const documents: Record<string, ReadDocument> = {};
  const rasters: Record<string, Raster> = {};
  for (const { path, kind } of await project.list()) {
    const reading = kind === "raster" ? await project.readRaster(path) : await project.readDocument(path);
    if (reading.problems) throw new Error(reading.problems.map((problem) => problem.message).join("; "));
    if (kind === "raster") rasters[path] = reading.value as Raster;
    else documents[path] = reading.value as ReadDocument;
  }
  return { documents: { ...documents, [shortRoute]: route(), ...shortMissions() }, rasters };
}

const shortRoute = "places/short.geojson";
const document = (path: string, kind: string, data: unknown): ReadDocument => ({ path, kind, data, written: {}, hash: path });

function route(): ReadDocument {
  const coordinates = [
    [-124.2, -47.6],
    [-124.19, -47.59],
    [-124.2, -47.58],
  ];
  const feature = { type: "Feature", properties: { name: "line" }, geometry: { type: "LineString", coordinates } };
  return document(shortRoute, "geojson", { type: "FeatureCollection", features: [feature] });
}

/** Two kilometres over even ground: fast and high, and slow with a hover and a load dropped half way. */
function shortMissions(): Record<string, ReadDocument> {
  const common = {
    format: 1,
    aircraft: "aircraft/baseline.yaml",
    route: { file: shortRoute, feature: "line" },
    evenGround: 0,
    loading: { blocks: 10, payload: "parts" },
    weather: { wind: { speed: 3, from: 1 } },
  };
  const fast = { ...common, title: "fast", cruise: { speedRule: "best-range", height: 300, heightDatum: "above-ground" } };
  const slow = {
    ...common,
    title: "slow",
    cruise: { airspeed: 12, height: 60, heightDatum: "above-ground" },
    tasks: [{ at: 1, hover: 60, height: 20, heightDatum: "above-ground" }],
  };
  return {
    "missions/fast.yaml": document("missions/fast.yaml", "mission", fast),
    "missions/slow.yaml": document("missions/slow.yaml", "mission", slow),
  };
}
