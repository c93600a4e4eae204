import { type PathStep, shown, type ValueProblem } from "../schema/index.ts";
import { slipAt } from "./geojson-slip.ts";

interface Place {
  readonly longitude: number;
  readonly latitude: number;
}

/** What is wrong with the coordinates of a LineString. */
export function lineProblems(coordinates: unknown, path: readonly PathStep[]): readonly ValueProblem[] {
  if (!Array.isArray(coordinates) || coordinates.length < 2) {
    const sentence = `a LineString needs at least two positions; read ${shown(coordinates)}`;
    return [slipAt(path, { kind: "coordinates", read: shown(coordinates), allowed: "at least two positions", sentence })];
  }
  return coordinates.flatMap((entry: unknown, index) => {
    const here = [...path, index];
    const problems = positionProblems(entry, here);
    if (index === 0 || problems.some(({ severity }) => severity === "error")) return problems;
    return [...problems, ...legProblems(placeOf(coordinates[index - 1]), placeOf(entry), here)];
  });
}

/** What is wrong with one position. */
export function positionProblems(value: unknown, path: readonly PathStep[]): readonly ValueProblem[] {
  const numbers =
    Array.isArray(value) && value.length >= 2 && value.every((number) => typeof number === "number" && Number.isFinite(number));
  if (!numbers) {
    const sentence = `a position is [longitude, latitude] in degrees, with a height in meters behind them if need be; read ${shown(value)}`;
    return [slipAt(path, { kind: "coordinates", read: shown(value), allowed: "[longitude, latitude]", sentence })];
  }
  const [longitude, latitude] = value as [number, number];
  const problems: ValueProblem[] = [];
  if (Math.abs(longitude) > 180) {
    const sentence = `longitude ${longitude} is out of range; -180 to 180 degrees is allowed`;
    problems.push(slipAt([...path, 0], { kind: "coordinates", read: String(longitude), allowed: "-180 to 180", sentence }));
  }
  if (Math.abs(latitude) > 90) {
    const swapped = Math.abs(latitude) <= 180 && Math.abs(longitude) <= 90 ? "; longitude comes first" : "";
    const sentence = `latitude ${latitude} is out of range; -90 to 90 degrees is allowed${swapped}`;
    problems.push(slipAt([...path, 1], { kind: "coordinates", read: String(latitude), allowed: "-90 to 90", sentence }));
  }
  if (value.length > 3) {
    const sentence = "a position has two or three numbers; those behind the third mean nothing";
    const read = `${value.length} numbers`;
    problems.push(slipAt(path, { kind: "coordinates", read, allowed: "two or three numbers", sentence, severity: "warning" }));
  }
  return problems;
}

function placeOf(value: unknown): Place | undefined {
  if (!Array.isArray(value) || typeof value[0] !== "number" || typeof value[1] !== "number") return undefined;
  return { longitude: value[0], latitude: value[1] };
}

function legProblems(from: Place | undefined, to: Place | undefined, path: readonly PathStep[]): readonly ValueProblem[] {
  if (from === undefined || to === undefined) return [];
  if (Math.abs(to.longitude - from.longitude) > 180) {
    const sentence = "this leg spans more than half the globe in longitude; cut the line where it crosses the 180° meridian";
    return [slipAt(path, { kind: "coordinates", read: String(to.longitude), allowed: "legs of at most 180° of longitude", sentence })];
  }
  if (to.longitude === from.longitude && to.latitude === from.latitude) {
    const sentence = "this position repeats the one before it; the leg has no length";
    return [
      slipAt(path, { kind: "coordinates", read: "the same position again", allowed: "another position", sentence, severity: "warning" }),
    ];
  }
  return [];
}
