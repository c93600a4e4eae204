import { type AircraftDefinition, type Loading, massProperties, type Place } from "../../aircraft/index.ts";
import { batteryOutlines, gearOutlines, groundOutlines, payloadOutlines } from "../drawings/load-outlines.ts";
import { airframeOutlines, asPoint, kindName, partName } from "../drawings/part-outlines.ts";
import type { SceneBound, SceneDetail, SceneDimension, SceneFigure, SceneMark, ScenePoint } from "../figures.ts";

const centreName = "centre of gravity";

/** Where the centre of gravity may lie along the body [m forward of the datum], if not where the file says. */
export interface CentreLimits {
  readonly forward: number;
  readonly aft: number;
  /** Where the limits come from, in words. */
  readonly source?: string;
}

/**
 * General arrangement as it is loaded: from the left, from ahead and from above at one scale, with every part of the
 * file by its own size, the centre of gravity between its limits, and the main lengths.
 */
export function arrangement(aircraft: AircraftDefinition, loading: Loading, limits: CentreLimits = fileLimits(aircraft)): SceneFigure {
  const centre = massProperties(aircraft, loading).centre;
  const lines = [
    ...groundOutlines(aircraft),
    ...gearOutlines(aircraft),
    ...airframeOutlines(aircraft),
    ...batteryOutlines(aircraft, loading.blocks),
    ...payloadOutlines(aircraft, loading),
  ];
  const bay: readonly SceneMark[] =
    loading.payloadSize || loading.payloadMass === 0
      ? []
      : [{ name: "payload", meaning: "avionics", shape: "point", at: asPoint(loading.payloadPlace ?? aircraft.payloadBay) }];
  const bounds: readonly SceneBound[] = [
    { name: "fore limit", axis: "x", value: limits.forward, forbidden: "above", family: "control", mark: centreName },
    { name: "aft limit", axis: "x", value: limits.aft, forbidden: "below", family: "control", mark: centreName },
  ];
  return {
    kind: "scene",
    id: "arrangement",
    caption: `General arrangement with ${loading.blocks} battery blocks, drawn from the aircraft file; ticks bound the centre of gravity`,
    lines,
    marks: [{ name: centreName, meaning: "neutral", shape: "centre", at: asPoint(centre) }, ...bay],
    bounds,
    detail: detail(aircraft, loading, centre, limits),
    dimensions: dimensions(
      aircraft,
      lines.flatMap((line) => line.points),
    ),
  };
}

function fileLimits({ limits }: AircraftDefinition): CentreLimits {
  return { forward: limits.centreOfGravityForward, aft: limits.centreOfGravityAft };
}

/** Bay, payload and centre of gravity between its limits, from the left. */
function detail(
  { battery: { bay, blockSize }, payloadBay }: AircraftDefinition,
  loading: Loading,
  centre: Place,
  limits: CentreLimits,
): SceneDetail {
  const { payloadPlace = payloadBay, payloadSize } = loading;
  const xs = [
    bay.front,
    bay.back,
    limits.forward,
    limits.aft,
    centre.x,
    payloadPlace.x - (payloadSize?.x ?? 0) / 2,
    payloadPlace.x + (payloadSize?.x ?? 0) / 2,
  ];
  const zs = [
    bay.z - (blockSize?.z ?? 0) / 2,
    bay.z + (blockSize?.z ?? 0) / 2,
    centre.z,
    payloadPlace.z - (payloadSize?.z ?? 0) / 2,
    payloadPlace.z + (payloadSize?.z ?? 0) / 2,
  ];
  const [left, right, top, low] = [Math.max(...xs), Math.min(...xs), Math.min(...zs), Math.max(...zs)];
  const margin = 0.2 * Math.max(left - right, low - top);
  return {
    name: "bay and centre of gravity, larger",
    view: "left",
    from: [left + margin, 0, top - margin],
    to: [right - margin, 0, low + margin],
  };
}

/** Length and height over everything, the largest rotor, the widest surface, the largest propeller. */
function dimensions(aircraft: AircraftDefinition, points: readonly ScenePoint[]): readonly SceneDimension[] {
  const [xs, zs] = [points.map((point) => point[0]), points.map((point) => point[2])];
  const [front, back, top, low] = [Math.max(...xs), Math.min(...xs), Math.min(...zs), Math.max(...zs)];
  const rotor = aircraft.rotors.toSorted((a, b) => b.radius - a.radius)[0];
  const surface = aircraft.surfaces.filter((each) => Math.abs(Math.cos(each.dihedral)) > 0.7).toSorted((a, b) => b.span - a.span)[0];
  const propeller = aircraft.propellers
    .filter((each) => Math.abs(Math.cos(each.axis.up)) > 0.7)
    .toSorted((a, b) => b.diameter - a.diameter)[0];
  const found: SceneDimension[] = [
    { name: "length over all", view: "left", from: [front, 0, low], to: [back, 0, low] },
    { name: "height", view: "left", from: [back, 0, top], to: [back, 0, low] },
  ];
  if (surface) {
    const { x, y, z } = surface.place;
    const half = (surface.span / 2) * Math.cos(surface.dihedral);
    found.push({ name: `${partName(surface.id)} span`, view: "ahead", from: [x, y - half, z], to: [x, y + half, z] });
  }
  if (propeller) {
    const { x, y, z } = propeller.place;
    found.push({
      name: "propeller diameter",
      view: "ahead",
      from: [x, y, z - propeller.diameter / 2],
      to: [x, y, z + propeller.diameter / 2],
    });
  }
  if (rotor) {
    const { x, y, z } = rotor.hub;
    found.push({
      name: `${kindName(rotor.id, "rotor")} diameter`,
      view: "above",
      from: [x, y + rotor.radius, z],
      to: [x, y - rotor.radius, z],
    });
  }
  return found;
}
