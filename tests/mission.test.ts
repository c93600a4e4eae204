// Missions of the demo aircraft at the door: against the other analyses and hand calculations, and what is refused.
import { openProject } from "@wingseed/documents";
import { analyses, type Context, type Outcome, type ProjectView, type Raster, type ReadDocument } from "@wingseed/engine";
import { beforeAll, describe, expect, test } from "vitest";

interface Row {
  readonly time: number;
  readonly phase: string;
  readonly leg: number | null;
  readonly power: number | null;
  readonly groundspeed: number;
  readonly distance: number;
  readonly stateOfCharge: number;
  readonly heightAboveGround: number;
}

interface MissionResult {
  readonly rows: readonly Row[];
  readonly summary: Readonly<Record<string, number | boolean | string | null>>;
  readonly stages: readonly { readonly name: string; readonly energy: number }[];
}

const project = openProject("demo");
const documents: Record<string, ReadDocument> = {};
const rasters: Record<string, Raster> = {};

beforeAll(async () => {
  for (const { path, kind } of await project.list()) {
    const reading = kind === "raster" ? await project.readRaster(path) : await project.readDocument(path);
    if (reading.problems) continue;
    if (kind === "raster") rasters[path] = reading.value as Raster;
    else documents[path] = reading.value as ReadDocument;
  }
});

const context: Context<unknown> = {
  progress: () => {},
  cancelled: () => false,
  partial: () => {},
  analysis: (name) => {
    throw new Error(`asked for ${name} without having said so`);
  },
};

function ask(name: string, inputs: Record<string, unknown>, view: ProjectView): Outcome<unknown> {
  const analysis = analyses.find((entry) => entry.name === name);
  if (analysis === undefined) throw new Error(`no analysis ${name}`);
  return analysis.run(view, analysis.inputs.parse(inputs), context);
}

function answered<Outputs>(name: string, inputs: Record<string, unknown>, view: ProjectView = { documents, rasters }): Outputs {
  const outcome = ask(name, inputs, view);
  if (outcome.problem) throw new Error(`${outcome.problem.kind}: ${outcome.problem.message}`);
  return outcome.outputs as Outputs;
}

const document = (path: string, kind: string, data: unknown): ReadDocument => ({ path, kind, data, written: {}, hash: path });

const line = (coordinates: readonly (readonly [number, number])[]) => ({
  type: "FeatureCollection",
  features: [{ type: "Feature", properties: { name: "line" }, geometry: { type: "LineString", coordinates } }],
});

/** The demo with one mission of its own over even ground: 11 km due north unless told otherwise. */
function withMission(change: Record<string, unknown>, coordinates: readonly (readonly [number, number])[] = northward): ProjectView {
  const mission = {
    format: 1,
    title: "check",
    aircraft: "aircraft/baseline.yaml",
    route: { file: "places/check.geojson", feature: "line" },
    evenGround: 0,
    loading: { blocks: 13, payload: "parts" },
    weather: { wind: { speed: 0, from: 0 } },
    cruise: { airspeed: 22, height: 100, heightDatum: "above-ground" },
    climbRate: 2.5,
    descentRate: 1.5,
    ...change,
  };
  return {
    documents: {
      ...documents,
      "missions/check.yaml": document("missions/check.yaml", "mission", mission),
      "places/check.geojson": document("places/check.geojson", "geojson", line(coordinates)),
    },
    rasters,
  };
}

const northward = [
  [-124.2, -47.6],
  [-124.2, -47.5],
] as const;
const check = { mission: "missions/check.yaml" };

/** Level cruise: seconds, joules and metres. */
function cruiseOf({ rows }: MissionResult) {
  let duration = 0;
  let energy = 0;
  let distance = 0;
  rows.forEach((row, index) => {
    const next = rows[index + 1];
    if (row.phase !== "cruise" || row.power === null || next === undefined) return;
    duration += next.time - row.time;
    energy += row.power * (next.time - row.time);
    distance += next.distance - row.distance;
  });
  return { duration, energy, distance };
}

/** What the speed analysis says of level flight at 22 m/s and 100 m, cheaper mode [W]. */
function levelPower(): number {
  const speeds = answered<{ rows: readonly { airspeed: number; feasible: boolean; electricPower: number | null }[] }>("speed", {
    aircraft: "aircraft/baseline.yaml",
    loading: { blocks: 13, payload: "parts" },
    altitude: 100,
    speeds: [19, 20, 21, 22, 23],
  });
  const powers = speeds.rows.flatMap((row) => (row.airspeed === 22 && row.feasible ? [row.electricPower as number] : []));
  return Math.min(...powers);
}

describe("a mission agrees with what the other analyses say", () => {
  test("still air over even ground at constant speed costs what the speed table says, within 0.1 %", () => {
    const cruise = cruiseOf(answered<MissionResult>("mission", check, withMission({})));
    expect(cruise.duration).toBeGreaterThan(300);
    expect(Math.abs(cruise.energy / cruise.duration / levelPower() - 1)).toBeLessThan(0.001);
    expect(Math.abs(cruise.distance / cruise.duration / 22 - 1)).toBeLessThan(1e-6);
  });

  test("a 10 m/s head wind and a quartering wind cost what the wind triangle by hand says, within 0.5 %", () => {
    const power = levelPower();
    const head = cruiseOf(answered<MissionResult>("mission", { ...check, windSpeed: 10, windFrom: 0 }, withMission({})));
    expect(Math.abs(head.energy / head.distance / (power / (22 - 10)) - 1)).toBeLessThan(0.005);
    // From 060°, course 000°: against the track 10 cos 60° = 5, across it 10 sin 60° = 8.660; √(22² − 75) − 5 = 15.224 m/s.
    const quartering = cruiseOf(answered<MissionResult>("mission", { ...check, windSpeed: 10, windFrom: Math.PI / 3 }, withMission({})));
    expect(Math.abs(quartering.energy / quartering.distance / (power / 15.2237) - 1)).toBeLessThan(0.005);
  });

  test("a hover from full to the reserve lasts what the payload analysis says, within 0.1 %", () => {
    const payload = answered<{ rows: readonly { hoverEndurance: number | null }[] }>("payload", {
      aircraft: "aircraft/baseline.yaml",
      packs: [13],
      payloads: [1.13],
      largestPayload: false,
      altitude: 100,
    });
    const endurance = payload.rows[0]?.hoverEndurance as number;
    // Ground at 99 m and a hover 1 m above it: less than half a second of climb.
    const { rows } = answered<MissionResult>(
      "mission",
      check,
      withMission({ evenGround: 99, tasks: [{ at: 1, hover: 2 * 3600, height: 1, heightDatum: "above-ground" }] }),
    );
    const hover = rows.filter((row) => row.phase === "hover");
    const below = hover.findIndex((row) => row.stateOfCharge < 0.2);
    const before = hover[below - 1] as Row;
    const after = hover[below] as Row;
    const share = (before.stateOfCharge - 0.2) / (before.stateOfCharge - after.stateOfCharge);
    const lasted = before.time + share * (after.time - before.time) - (hover[0] as Row).time;
    expect(Math.abs(lasted / endurance - 1)).toBeLessThan(0.001);
  });

  test("best range is flown at the speed that the payload analysis names", () => {
    const payload = answered<{ rows: readonly { bestRangeSpeed: number | null }[] }>("payload", {
      aircraft: "aircraft/baseline.yaml",
      packs: [13],
      payloads: [1.13],
      largestPayload: false,
      altitude: 100,
    });
    const flown = answered<MissionResult & { conditions: { legAirspeeds: readonly number[] } }>(
      "mission",
      check,
      withMission({ cruise: { speedRule: "best-range", height: 100 } }),
    );
    expect(flown.conditions.legAirspeeds[0]).toBeCloseTo(payload.rows[0]?.bestRangeSpeed as number, 1);
  });
});

describe("the demo's missions", () => {
  test.each(["missions/platform-service.yaml", "missions/survey.yaml"])(
    "%s is flown over its raster, and every face of it is filled",
    (path) => {
      const analysis = analyses.find((entry) => entry.name === "mission");
      const inputs = analysis?.inputs.parse({ mission: path });
      const outcome = analysis?.run({ documents, rasters }, inputs, context);
      expect(outcome?.problem).toBeUndefined();
      const outputs = analysis?.outputs.parse(outcome?.outputs) as MissionResult;
      expect(outputs.summary.completed).toBe(true);
      expect(Math.min(...outputs.rows.filter((row) => row.leg !== null).map((row) => row.heightAboveGround))).toBeGreaterThan(60);
      const figures = analysis?.figures(outputs, inputs) ?? [];
      expect(figures.map((figure) => figure.kind)).toEqual(["map", "profile", "table", "table"]);
      const map = figures.find((figure) => figure.kind === "map");
      expect(map?.relief?.elevation.some((elevation) => elevation !== null && elevation > 20)).toBe(true);
      const { brief, sentence, met } = analysis?.answer(outputs, inputs) ?? { brief: "", sentence: [], met: undefined };
      expect(brief.length).toBeLessThanOrEqual(40);
      expect(JSON.stringify(sentence)).toContain("demo values");
      expect(met).toBe(outputs.summary.feasible);
      const names = (analysis?.limits(outputs, inputs) ?? []).map((limit) => limit.name);
      expect(names).toEqual(expect.arrayContaining(["reserve", "stall margin", "block current", "cut-off voltage", "altitude"]));
    },
  );

  test("says step by step what it needs: project, mission, then aircraft, route and terrain", () => {
    const analysis = analyses.find((entry) => entry.name === "mission");
    const inputs = analysis?.inputs.parse({});
    const view = { documents: {} as Record<string, ReadDocument>, rasters: {} };
    const paths = () => analysis?.needs?.(inputs, view).map((need) => (need.kind === "analysis" ? need.name : need.path));
    expect(paths()).toEqual(["project.yaml"]);
    view.documents["project.yaml"] = documents["project.yaml"] as ReadDocument;
    expect(paths()).toEqual(["project.yaml", "missions/platform-service.yaml"]);
    view.documents["missions/platform-service.yaml"] = documents["missions/platform-service.yaml"] as ReadDocument;
    expect(paths()).toEqual([
      "project.yaml",
      "missions/platform-service.yaml",
      "aircraft/baseline.yaml",
      "places/route-platform.geojson",
      "terrain/elevation.tif",
    ]);
  });
});

describe("below the reserve", () => {
  test("a mission is flown through: not feasible, limit reserve, and all numbers there", () => {
    const { summary } = answered<MissionResult>("mission", { ...check, reserve: { minimumStateOfCharge: 0.95 } }, withMission({}));
    expect(summary).toMatchObject({ feasible: false, limit: "reserve", completed: true });
    for (const key of ["energyUsed", "landingStateOfCharge", "reserveMargin", "duration", "distance", "reserveReachedAt"]) {
      expect(typeof summary[key]).toBe("number");
    }
    expect(summary.reserveMargin as number).toBeCloseTo((summary.landingStateOfCharge as number) - 0.95, 12);
  });
});

describe("what is refused, with the cure", () => {
  const problemOf = (inputs: Record<string, unknown>, view: ProjectView) => {
    const outcome = ask("mission", inputs, view);
    return { kind: outcome.problem?.kind, message: outcome.problem?.message ?? "" };
  };
  const overTerrain = (terrain: string, coordinates: readonly (readonly [number, number])[]) =>
    withMission({ evenGround: undefined, terrain }, coordinates);

  test("a route that leaves the raster: where, and what to do", () => {
    const problem = problemOf(
      check,
      overTerrain("terrain/elevation.tif", [
        [-124.243, -47.516],
        [-120, -47.5],
      ]),
    );
    expect(problem.kind).toBe("route-outside-terrain");
    expect(problem.message).toMatch(/leg 1 of "line", [\d.]+ km after its start, at [\d.]+° S, [\d.]+° W/u);
    expect(problem.message).toContain("covers the whole route");
  });

  test("a hole in the raster under the route", () => {
    const elevation = rasters["terrain/elevation.tif"] as Raster;
    const { width, height, origin, step } = elevation;
    // One missing row of pixels at 47.5° S, which a flight due north must cross.
    const row = Math.round((-47.5 - origin.y) / step.y);
    expect(row).toBeGreaterThan(0);
    expect(row).toBeLessThan(height);
    const hole = Uint8Array.from(elevation.hole).fill(1, row * width, (row + 1) * width);
    const view = overTerrain("terrain/elevation.tif", [
      [-124.2, -47.54],
      [-124.2, -47.46],
    ]);
    const problem = problemOf(check, { ...view, rasters: { "terrain/elevation.tif": { ...elevation, hole } } });
    expect(problem.kind).toBe("terrain-hole");
    expect(problem.message).toContain("Fill the hole or route around it");
  });

  test("a raster whose heights nobody explains", () => {
    const elevation = { ...(rasters["terrain/elevation.tif"] as Raster), heightDatum: "unknown" } as const;
    const view = overTerrain("terrain/elevation.tif", northward);
    const problem = problemOf(check, { ...view, rasters: { "terrain/elevation.tif": elevation } });
    expect(problem.kind).toBe("terrain-height-datum-unknown");
    expect(problem.message).toContain("project.yaml");
  });

  test("a temperature and an offset together", () => {
    expect(problemOf({ ...check, temperature: 280, temperatureOffset: 5 }, withMission({})).kind).toBe("contradicting-inputs");
  });

  test("no terrain, no mission, no route, a wrong feature", () => {
    expect(problemOf(check, withMission({ evenGround: undefined })).kind).toBe("terrain-missing");
    expect(problemOf({ mission: "missions/nowhere.yaml" }, withMission({})).kind).toBe("mission-missing");
    expect(problemOf(check, withMission({ route: { file: "places/nowhere.geojson", feature: "line" } })).kind).toBe("route-missing");
    expect(problemOf(check, withMission({ route: { file: "places/check.geojson", feature: "lane" } })).kind).toBe("route-feature-missing");
  });

  test("too heavy, too many blocks, faster than the aircraft climbs, an unknown payload", () => {
    expect(problemOf({ ...check, loading: { payloadMass: 9 } }, withMission({})).kind).toBe("too-heavy");
    expect(problemOf({ ...check, loading: { blocks: 40 } }, withMission({})).kind).toBe("loading-impossible");
    expect(problemOf(check, withMission({ climbRate: 9 })).kind).toBe("rate-too-fast");
    expect(problemOf({ ...check, loading: { payload: "anvil" } }, withMission({})).kind).toBe("payload-unknown");
  });
});
