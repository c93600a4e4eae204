import { stencilAt } from "./interpolation-stencil.ts";

/**
 * One thing to look up. On `legs` the speed is the commanded airspeed along the path and always lies on a node; in
 * `maneuver` it is the horizontal airspeed. Climb includes the change of speed, counted as a climb. All [m/s], altitude [m].
 */
export interface PowerQuery {
  readonly part: "legs" | "maneuver";
  readonly loading: number;
  readonly speed: number;
  readonly climb: number;
  readonly altitude: number;
}

/** Nodes of one part of the table: speeds and rates of climb [m/s], heights above mean sea level [m]. */
export interface PartAxes {
  readonly speeds: readonly number[];
  readonly climbs: readonly number[];
  readonly altitudes: readonly number[];
}

export interface PowerTableAxes {
  /** Speeds commanded on legs, along the path. */
  readonly legs: PartAxes;
  /** Horizontal airspeeds of hovers, vertical climbs and changes of speed. */
  readonly maneuver: PartAxes;
}

/** A node of the table by its place on each axis; `id` is unique among all nodes. */
export interface TableNode {
  readonly id: number;
  readonly part: PowerQuery["part"];
  readonly loading: number;
  readonly speed: number;
  readonly climb: number;
  readonly altitude: number;
}

export interface WeightedNode {
  readonly node: TableNode;
  readonly weight: number;
}

/** The nodes around a query: those of the smooth interpolation, and the nearest ones of the linear one. */
export interface Lookup {
  readonly smooth: readonly WeightedNode[];
  readonly nearest: readonly WeightedNode[];
}

/** Finds the nodes around queries; the same node is the same object, so nodes can be collected. */
export function powerLookup(axes: PowerTableAxes): (query: PowerQuery) => Lookup {
  const nodes = new Map<number, TableNode>();
  const stride = {
    speed: Math.max(axes.legs.speeds.length, axes.maneuver.speeds.length),
    climb: Math.max(axes.legs.climbs.length, axes.maneuver.climbs.length),
    altitude: Math.max(axes.legs.altitudes.length, axes.maneuver.altitudes.length),
  };
  const nodeAt = (query: PowerQuery, speed: number, climb: number, altitude: number): TableNode => {
    const half = query.loading * 2 + (query.part === "legs" ? 0 : 1);
    const id = ((half * stride.speed + speed) * stride.climb + climb) * stride.altitude + altitude;
    let node = nodes.get(id);
    if (node === undefined) {
      node = { id, part: query.part, loading: query.loading, speed, climb, altitude };
      nodes.set(id, node);
    }
    return node;
  };
  const around = (query: PowerQuery, shape: "smooth" | "linear"): readonly WeightedNode[] => {
    const part = axes[query.part];
    const speed = stencilAt(part.speeds, query.speed, shape);
    const climb = stencilAt(part.climbs, query.climb, shape);
    const altitude = stencilAt(part.altitudes, query.altitude, shape);
    return speed.weights.flatMap((ofSpeed, s) =>
      climb.weights.flatMap((ofClimb, c) =>
        altitude.weights.map((ofAltitude, a) => ({
          node: nodeAt(query, speed.first + s, climb.first + c, altitude.first + a),
          weight: ofSpeed * ofClimb * ofAltitude,
        })),
      ),
    );
  };
  let last: { query: PowerQuery; lookup: Lookup } | undefined;
  return (query) => {
    if (last === undefined || !same(last.query, query)) {
      const smooth = around(query, "smooth");
      last = { query, lookup: { smooth, nearest: smooth.length === 1 ? smooth : around(query, "linear") } };
    }
    return last.lookup;
  };
}

function same(first: PowerQuery, second: PowerQuery): boolean {
  return (
    first.speed === second.speed &&
    first.climb === second.climb &&
    first.altitude === second.altitude &&
    first.part === second.part &&
    first.loading === second.loading
  );
}
