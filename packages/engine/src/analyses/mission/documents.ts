import { z } from "zod";
import { degreesOf } from "../../environment/geodesy/index.ts";
import { evenGround, type Terrain, terrainFromRaster } from "../../environment/terrain/index.ts";
import { type MissionDefinition, missionDefinition, type Route, readRoute } from "../../mission/index.ts";
import type { Need, Problem, ProjectView } from "../contract.ts";
import { type Assumed, isProblem, projectFile } from "../inputs/flight-conditions.ts";
import { entryAt } from "../inputs/project-definition.ts";
import type { MissionInputs } from "./schema.ts";

const projectShape = z.looseObject({
  aircraft: z.array(z.string()).optional(),
  missions: z.array(z.string()).optional(),
  demo: z.boolean().optional(),
});

function projectLists(project: ProjectView): z.infer<typeof projectShape> {
  const read = projectShape.safeParse(project.documents[projectFile]?.data);
  return read.success ? read.data : {};
}

/** The project, then the mission it names, then the aircraft, route and terrain that the mission names. */
export function missionNeeds(inputs: MissionInputs, available: ProjectView): Need[] {
  const lists = projectLists(available);
  const needs: Need[] = [{ kind: "document", path: projectFile }];
  const path = inputs.mission ?? lists.missions?.[0];
  if (path === undefined) return needs;
  needs.push({ kind: "document", path });
  const read = missionDefinition.safeParse(entryAt(available.documents, path)?.data);
  if (!read.success) return needs;
  const mission = read.data;
  const aircraft = inputs.aircraft ?? mission.aircraft ?? lists.aircraft?.[0];
  if (aircraft !== undefined) needs.push({ kind: "document", path: aircraft });
  needs.push({ kind: "document", path: mission.route.file });
  if (mission.terrain !== undefined) needs.push({ kind: "raster", path: mission.terrain });
  return needs;
}

/** What the project says about this flight. */
export interface MissionDocuments {
  readonly mission: MissionDefinition;
  readonly missionPath: string;
  /** The aircraft to fly, when the inputs or the mission name one. */
  readonly aircraftPath: string | undefined;
  readonly route: Route;
  readonly terrain: Terrain;
  readonly demo: boolean;
  readonly assumed: Assumed;
}

/** Reads everything that a mission stands on, or says what is missing and how to mend it. */
export function missionDocuments(project: ProjectView, inputs: MissionInputs): MissionDocuments | Problem {
  const lists = projectLists(project);
  const path = inputs.mission ?? lists.missions?.[0];
  if (path === undefined) {
    return {
      kind: "mission-missing",
      message: "No mission is named: project.yaml lists none and the input mission is absent. Name one, for example missions/first.yaml.",
    };
  }
  const document = entryAt(project.documents, path);
  if (document === undefined) {
    const listed = lists.missions?.length ? `; it lists ${lists.missions.join(", ")}` : "";
    return { kind: "mission-missing", message: `The mission file ${path} is not in the project${listed}.` };
  }
  const read = missionDefinition.safeParse(document.data);
  if (!read.success) {
    const first = read.error.issues[0];
    return {
      kind: "mission-invalid",
      message: `${path} is not a usable mission file: ${first?.path.join(".")}: ${first?.message}. Run wingseed check for every problem with its line.`,
    };
  }
  const mission = read.data;
  const route = missionRoute(project, mission);
  if (isProblem(route)) return route;
  const terrain = missionTerrain(project, mission, path);
  if (isProblem(terrain)) return terrain;
  const assumed = inputs.mission === undefined ? [{ path: "/mission", value: path, because: "the project's first mission" }] : [];
  const aircraftPath = inputs.aircraft ?? mission.aircraft;
  return { mission, missionPath: path, aircraftPath, route, terrain, demo: lists.demo === true, assumed };
}

function missionRoute(project: ProjectView, mission: MissionDefinition): Route | Problem {
  const { file, feature } = mission.route;
  const document = entryAt(project.documents, file);
  if (document === undefined) return { kind: "route-missing", message: `The route file ${file} is not in the project.` };
  const reading = readRoute(document.data, file, feature);
  return reading.kind === "route" ? reading.route : { kind: `route-${reading.because}`, message: reading.message };
}

function missionTerrain(project: ProjectView, mission: MissionDefinition, path: string): Terrain | Problem {
  if (mission.evenGround !== undefined) return evenGround(mission.evenGround);
  if (mission.terrain === undefined) {
    return {
      kind: "terrain-missing",
      message: `${path} names no terrain. Give terrain (an elevation raster under the route), or evenGround with one elevation.`,
    };
  }
  const raster = entryAt(project.rasters, mission.terrain);
  if (raster === undefined) {
    return { kind: "terrain-missing", message: `The elevation raster ${mission.terrain} is not in the project.` };
  }
  const found = terrainFromRaster(raster);
  return found.kind === "terrain" ? found.terrain : { kind: `terrain-${found.because}`, message: found.message };
}

/** Says where a leg has no ground under it, and the cure. */
export function groundProblem(
  { mission }: MissionDocuments,
  leg: number,
  {
    because,
    at,
    distance,
  }: {
    readonly because: "outside" | "hole";
    readonly at: { readonly latitude: number; readonly longitude: number };
    readonly distance: number;
  },
): Problem {
  const [longitude, latitude] = degreesOf(at);
  const place = `${Math.abs(latitude).toFixed(5)}° ${latitude < 0 ? "S" : "N"}, ${Math.abs(longitude).toFixed(5)}° ${longitude < 0 ? "W" : "E"}`;
  const where = `leg ${leg} of "${mission.route.feature}", ${(distance / 1000).toFixed(2)} km after its start, at ${place}`;
  return because === "outside"
    ? {
        kind: "route-outside-terrain",
        message: `The route leaves the elevation raster ${mission.terrain}: ${where}. Use a raster that covers the whole route, or move the waypoint.`,
        leg,
        latitude,
        longitude,
      }
    : {
        kind: "terrain-hole",
        message: `The elevation raster ${mission.terrain} has no value under the route: ${where}. Fill the hole or route around it.`,
        leg,
        latitude,
        longitude,
      };
}
