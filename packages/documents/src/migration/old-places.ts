import type { PathStep } from "../schema/index.ts";

type Mapping = Readonly<Record<string, unknown>>;

/** For a place in a document that was brought up to date: where what stands there was written. */
export type OldPlace = (path: readonly PathStep[]) => readonly PathStep[];

/** A path in place of a value: whatever a migration does not read but only moves keeps it. */
class Trace {
  readonly path: readonly PathStep[];
  constructor(path: readonly PathStep[]) {
    this.path = path;
  }
}

/** Follows every value through a migration, by sending paths through it in their place. */
export function oldPlaces(document: Mapping, migrate: (document: Mapping) => Mapping): OldPlace {
  const moved = migrate(traced(document, []) as Mapping);
  return (path) => {
    let at: unknown = moved;
    let depth = 0;
    for (; depth < path.length && isContainer(at); depth++) at = Reflect.get(at, path[depth] as PathStep);
    const origin = originOf(at, path.slice(0, depth));
    return origin === undefined ? nearest(moved, path) : [...origin, ...path.slice(depth)];
  };
}

function traced(value: unknown, path: readonly PathStep[]): unknown {
  if (Array.isArray(value)) return value.map((item, index) => traced(item, [...path, index]));
  if (isContainer(value)) return Object.fromEntries(Object.entries(value).map(([key, item]) => [key, traced(item, [...path, key])]));
  return new Trace(path);
}

function isContainer(value: unknown): value is object {
  return typeof value === "object" && value !== null && !(value instanceof Trace);
}

/** Where a value was; of a mapping that is put together, where its first entry that was written stood. */
function originOf(value: unknown, path: readonly PathStep[]): readonly PathStep[] | undefined {
  if (value instanceof Trace) return value.path;
  if (!isContainer(value)) return undefined;
  for (const [key, item] of Object.entries(value)) {
    const inner = originOf(item, [...path, key]);
    if (inner === undefined) continue;
    const last = inner.at(-1);
    return last !== undefined && String(last) === key ? inner.slice(0, -1) : inner;
  }
  return undefined;
}

/** What is missing or was added stands with the nearest mapping around it. */
function nearest(moved: Mapping, path: readonly PathStep[]): readonly PathStep[] {
  for (let length = path.length - 1; length > 0; length--) {
    let at: unknown = moved;
    for (const step of path.slice(0, length)) at = isContainer(at) ? Reflect.get(at, step) : undefined;
    const origin = originOf(at, path.slice(0, length));
    if (origin !== undefined) return origin;
  }
  return [];
}
