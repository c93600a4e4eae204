import { type Coordinates, checksByDistance } from "./domain-distance.ts";
import type { PublishedCheck, PublishedError } from "./published-check.ts";

/** Points for a picture; can stand among the series of a figure. */
export interface PublishedSeries {
  readonly name: string;
  readonly meaning: "measured" | "neutral";
  readonly weight: "thin";
  readonly x: readonly number[];
  readonly y: readonly number[];
}

/**
 * Published points of the nearest check that has any for these two output fields, named with their source; what was not
 * measured is neutral. Empty when no check of the component has such points, or only in other states: points of a hover test
 * say nothing beside an answer in forward flight.
 */
export function publishedSeries(
  component: string,
  xField: string,
  yField: string,
  at: Coordinates = {},
  checks?: readonly PublishedCheck[],
): readonly PublishedSeries[] {
  const shows = ({ series }: PublishedCheck) => series.some(({ x, y }) => x === xField && y === yField);
  const nearest = checksByDistance(component, at, checks).find(({ check, comparable }) => comparable && shows(check))?.check;
  if (!nearest) return [];
  return nearest.series
    .filter(({ x, y }) => x === xField && y === yField)
    .map(({ label, points }) => ({
      name: `${label}, ${nearest.title}`,
      meaning: nearest.reference === "measured" ? "measured" : "neutral",
      weight: "thin",
      x: points.map(([x = 0]) => x),
      y: points.map(([, y = 0]) => y),
    }));
}

/** Errors of the nearest check, with the source they come from. */
export interface NearestErrors {
  readonly check: string;
  readonly title: string;
  readonly source: string;
  readonly reference: PublishedCheck["reference"];
  readonly errors: readonly PublishedError[];
}

/** What the comparison of the nearest check gave; with a field, of the nearest that compares this output field. */
export function publishedErrors(
  component: string,
  at: Coordinates = {},
  field?: string,
  checks?: readonly PublishedCheck[],
): NearestErrors | null {
  const about = ({ errors }: PublishedCheck) => errors.filter((error) => field === undefined || error.field === field);
  const nearest = checksByDistance(component, at, checks).find(({ check }) => about(check).length > 0)?.check;
  if (!nearest) return null;
  const { check, title, source, reference } = nearest;
  return { check, title, source, reference, errors: about(nearest) };
}
