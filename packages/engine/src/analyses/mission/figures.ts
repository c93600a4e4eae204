import type { Figure, MapFigure, ProfileFigure, ProfilePanel, RotorRibbon, TableFigure } from "../figures.ts";
import type { MissionInputs, MissionOutputs, MissionRow } from "./schema.ts";

/** Where the mission goes, what it does over time, and what every leg takes. */
export function missionFigures(outputs: MissionOutputs, _inputs?: MissionInputs): readonly Figure[] {
  return [mapFigure(outputs), profileFigure(outputs), stageTable(outputs), limitTable(outputs)];
}

const degree = Math.PI / 180;
/** Points of a picture; more are not seen. */
const mostPoints = 800;

/** Evenly thinned rows that keep the first, the last, and every change of phase or mode. */
function thinned(rows: readonly MissionRow[]): readonly MissionRow[] {
  const every = Math.max(1, Math.ceil(rows.length / mostPoints));
  return rows.filter((row, index) => {
    const before = rows[index - 1];
    return index % every === 0 || index === rows.length - 1 || before?.phase !== row.phase || before.mode !== row.mode;
  });
}

function mapFigure(outputs: MissionOutputs): MapFigure {
  const { map, conditions } = outputs;
  const flown = thinned(outputs.rows).map((row) => [row.longitude / degree, row.latitude / degree] as const);
  const seen = new Map(map.waypoints.map((place) => [place.name, place]));
  const planned = map.waypoints.map((place) => [place.longitude, place.latitude] as const);
  return {
    kind: "map",
    id: "map",
    caption: `Route of "${outputs.title}" over the ground; wind at 10 m above ground`,
    tracks: [
      ...(outputs.summary.completed ? [] : [{ name: "planned", meaning: "before" as const, points: planned }]),
      { name: "flown", meaning: "track", points: flown },
    ],
    sites: [...seen.values()].map((place) => ({ name: place.name, at: [place.longitude, place.latitude] as const })),
    ...(map.relief ? { relief: map.relief } : {}),
    wind: { speed: conditions.windSpeed, from: conditions.windFrom },
  };
}

function profileFigure(outputs: MissionOutputs): ProfileFigure {
  const rows = thinned(outputs.rows);
  const x = rows.map((row) => row.time);
  const { summary } = outputs;
  const notable = outputs.stages.flatMap((stage, index) => {
    if (stage.what !== "hover" && stage.what !== "on-ground") return [];
    return [{ name: stage.name, x: outputs.stages.slice(0, index).reduce((sum, before) => sum + before.duration, 0) }];
  });
  const reserve = summary.reserveReachedAt === null ? [] : [{ name: "reserve reached", x: summary.reserveReachedAt }];
  const stop = summary.completed ? [] : [{ name: summary.limit ?? "stop", x: summary.duration }];
  return {
    kind: "profile",
    id: "profile",
    caption: "Height, charge, power and speed over the flight",
    x: { label: "time", quantity: "time", unit: "min" },
    panels: [heightPanel(rows, x), chargePanel(outputs, rows, x), powerPanel(rows, x), speedPanel(rows, x)],
    notable: [...notable, ...reserve, ...stop],
    ribbon: ribbon(outputs, rows, x),
  };
}

function heightPanel(rows: readonly MissionRow[], x: readonly number[]): ProfilePanel {
  return {
    y: { label: "height", quantity: "length", datum: "above sea" },
    series: [
      { name: "ground", meaning: "terrain", x, y: rows.map((row) => row.heightAboveSea - row.heightAboveGround) },
      { name: "flown", meaning: "track", x, y: rows.map((row) => row.heightAboveSea) },
    ],
  };
}

function chargePanel(outputs: MissionOutputs, rows: readonly MissionRow[], x: readonly number[]): ProfilePanel {
  const { summary, conditions } = outputs;
  const ends = summary.completed ? {} : { end: { limit: summary.limit ?? "stop", family: bindingFamily(outputs) } };
  return {
    y: { label: "state of charge", quantity: "dimensionless", unit: "%" },
    series: [{ name: "left in the pack", meaning: "battery", x, y: rows.map((row) => row.stateOfCharge), ...ends }],
    bounds: [{ name: "reserve", axis: "y", value: conditions.minimumStateOfCharge, forbidden: "below", family: "rule" }],
    zeroBased: true,
  };
}

function bindingFamily(outputs: MissionOutputs) {
  return outputs.limits.find((limit) => limit.binding)?.family ?? "rule";
}

function powerPanel(rows: readonly MissionRow[], x: readonly number[]): ProfilePanel {
  const driven = rows.map((row) => (row.mode === "clutch-open" ? null : row.power));
  const free = rows.map((row) => (row.mode === "clutch-open" ? row.power : null));
  return {
    y: { label: "electric power", quantity: "power" },
    series: [
      { name: "rotor driven", meaning: "mode.driven", x, y: driven },
      ...(free.some((value) => value !== null) ? [{ name: "rotor free", meaning: "mode.autorotating" as const, x, y: free }] : []),
    ],
    zeroBased: true,
  };
}

function speedPanel(rows: readonly MissionRow[], x: readonly number[]): ProfilePanel {
  return {
    y: { label: "speed", quantity: "speed" },
    series: [
      { name: "airspeed", meaning: "neutral", x, y: rows.map((row) => row.airspeed) },
      { name: "over ground", meaning: "track", x, y: rows.map((row) => row.groundspeed), weight: "thin" },
    ],
    zeroBased: true,
  };
}

/** Rotor shaft power over that of the hover or vertical climb that takes most. */
function ribbon(outputs: MissionOutputs, rows: readonly MissionRow[], x: readonly number[]): RotorRibbon {
  const resting = outputs.rows.filter((row) => row.phase === "hover" || row.phase === "take-off");
  const most = (list: readonly MissionRow[]) => list.reduce((largest, row) => Math.max(largest, row.rotorShaftPower ?? 0), 0);
  const reference = most(resting.length > 0 ? resting : outputs.rows) || 1;
  return {
    x,
    share: rows.map((row) => (row.rotorShaftPower === null ? null : row.rotorShaftPower / reference)),
    free: rows.map((row) => row.mode === "clutch-open"),
  };
}

function stageTable(outputs: MissionOutputs): TableFigure {
  return {
    kind: "table",
    id: "stages",
    caption: "Legs and stops",
    columns: [
      { label: "leg or place" },
      { label: "what" },
      { label: "time", quantity: "time", unit: "min" },
      { label: "distance", quantity: "length", unit: "km" },
      { label: "head wind", quantity: "speed" },
      { label: "speed over ground", quantity: "speed" },
      { label: "energy", quantity: "energy", unit: "Wh" },
      { label: "left", quantity: "dimensionless", unit: "%" },
      { label: "lowest", quantity: "length", datum: "above ground" },
      { label: "rotor free", quantity: "dimensionless", unit: "%" },
    ],
    rows: outputs.stages.map((stage) => [
      stage.name,
      stage.what,
      stage.duration,
      stage.distance,
      stage.meanHeadwind,
      stage.meanGroundspeed,
      stage.energy,
      stage.stateOfChargeAtEnd,
      stage.lowestHeightAboveGround,
      stage.clutchOpenShare,
    ]),
  };
}

function limitTable(outputs: MissionOutputs): TableFigure {
  return {
    kind: "table",
    id: "limits",
    caption: "Largest share of every limit that the flight uses",
    columns: [{ label: "limit" }, { label: "kind" }, { label: "used", quantity: "dimensionless", unit: "%" }, { label: "where" }],
    rows: outputs.limits.map((limit) => [limit.name, limit.family, limit.share, limit.where]),
  };
}
