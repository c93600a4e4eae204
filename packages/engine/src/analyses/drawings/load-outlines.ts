import { type AircraftDefinition, blockPlace, type Loading } from "../../aircraft/index.ts";
import type { SceneLine, ScenePoint } from "../figures.ts";
import { boxOutlines } from "./solid-outlines.ts";

/** Blocks in their places of the bay, empty places thin; blocks of unknown size are strokes along the bay. */
export function batteryOutlines({ battery }: AircraftDefinition, blocks: number): readonly SceneLine[] {
  const { bay } = battery;
  const pitch = (bay.front - bay.back) / bay.places;
  const size = battery.blockSize ?? { x: 0.8 * pitch, y: 0, z: 0 };
  const places = Array.from({ length: Math.max(bay.places, blocks) }, (_, index) => index);
  return places.flatMap((index): readonly SceneLine[] => {
    const filled = index < blocks;
    const name = filled ? "battery blocks" : "empty battery places";
    const lines = boxOutlines({ name, meaning: "battery", weight: filled ? "full" : "thin" }, blockPlace(bay, index), size);
    // From ahead the blocks stand behind each other.
    return index === 0 ? lines : lines.filter((line) => !line.views?.includes("ahead"));
  });
}

/** The payload where it sits; nothing when its size is not known. */
export function payloadOutlines(aircraft: AircraftDefinition, loading: Loading): readonly SceneLine[] {
  if (!loading.payloadSize || loading.payloadMass === 0) return [];
  return boxOutlines({ name: "payload", meaning: "avionics" }, loading.payloadPlace ?? aircraft.payloadBay, loading.payloadSize);
}

/** Legs from what is above them down to the ground. */
export function gearOutlines({ landingGear, bodies }: AircraftDefinition): readonly SceneLine[] {
  if (landingGear.length === 0) return [];
  const hull = bodies.flatMap((body) => body.hulls).toSorted((a, b) => b.size.x * b.size.z - a.size.x * a.size.z)[0];
  const legs = landingGear.map(({ place: { x, y, z } }): SceneLine => {
    const top: ScenePoint = hull
      ? [hull.centre.x + 0.7 * (x - hull.centre.x), hull.centre.y + 0.3 * (y - hull.centre.y), hull.centre.z + 0.4 * hull.size.z]
      : [x, y, z - 0.1];
    return { name: "landing gear", meaning: "body", weight: "thin", points: [top, [x, y, z]] };
  });
  return legs;
}

/** The line on which the gear stands, a little longer than the stance. */
export function groundOutlines({ landingGear }: AircraftDefinition): readonly SceneLine[] {
  if (landingGear.length === 0) return [];
  const places = landingGear.map((point) => point.place);
  const z = Math.max(...places.map((place) => place.z));
  const span = (values: readonly number[]) => [Math.min(...values) - 0.15, Math.max(...values) + 0.15] as const;
  const [xs, ys] = [span(places.map((place) => place.x)), span(places.map((place) => place.y))];
  const ground = { name: "ground", meaning: "neutral", weight: "thin" } as const;
  return [
    { ...ground, views: ["left"], points: xs.map((x): ScenePoint => [x, 0, z]) },
    { ...ground, views: ["ahead", "behind"], points: ys.map((y): ScenePoint => [0, y, z]) },
  ];
}
