import type { HeightDatum, MissionDefinition, TaskDefinition } from "./definition.ts";
import type { Route } from "./route.ts";
import { waypointNamed } from "./route.ts";
import type { HeightRule } from "./run-kinematics.ts";

/** What is on board: a payload record by name, a bare mass [kg], or nothing. */
export type OnBoard =
  | { readonly kind: "record"; readonly name: string }
  | { readonly kind: "mass"; readonly mass: number }
  | { readonly kind: "nothing" };

/** How fast a leg is to be flown: an airspeed along the path [m/s], or a speed by its meaning. */
export type SpeedWish =
  | { readonly kind: "airspeed"; readonly airspeed: number }
  | { readonly kind: "rule"; readonly rule: "best-range" | "minimum-power" };

export interface PlannedLeg {
  /** Counted from 1. */
  readonly number: number;
  readonly name: string;
  readonly speed: SpeedWish;
  readonly height: HeightRule;
  /** Index into `onBoard` while this leg is flown. */
  readonly loading: number;
}

/** Something done at a waypoint. `loadingAfter` is the index into `onBoard` once it is done. */
export interface PlannedTask {
  readonly kind: "hover" | "ground";
  readonly name: string;
  /** [s] */
  readonly duration: number;
  readonly height?: HeightRule;
  readonly loadingAfter: number;
}

/** A mission made definite against its route: every leg, every task, and what is on board when. */
export interface MissionPlan {
  readonly legs: readonly PlannedLeg[];
  /** Tasks of each waypoint, by its index; most are empty. */
  readonly tasks: readonly (readonly PlannedTask[])[];
  readonly onBoard: readonly OnBoard[];
}

/** A slip in the mission file, with the JSON Pointer of the place to mend. */
export interface PlanSlip {
  readonly pointer: string;
  readonly message: string;
}

export type Planning =
  | { readonly kind: "plan"; readonly plan: MissionPlan }
  | { readonly kind: "refused"; readonly slips: readonly PlanSlip[] };

/** Sets a mission on its route. Reports every slip at once. */
export function missionPlan(mission: MissionDefinition, route: Route, takeoffLoad: OnBoard): Planning {
  const slips: PlanSlip[] = [];
  const legCount = route.waypoints.length - 1;
  for (const [index, leg] of (mission.legs ?? []).entries()) {
    if (leg.leg > legCount)
      slips.push({ pointer: `/legs/${index}/leg`, message: `leg ${leg.leg} does not exist; ${route.name} has ${legCount}` });
  }
  const placed = placedTasks(mission.tasks ?? [], route, slips);
  const { tasks, onBoard, loadingAt } = loadedTasks(placed, route, takeoffLoad, slips);
  const legs = route.waypoints.slice(0, -1).map((from, index): PlannedLeg => {
    const own = mission.legs?.find((leg) => leg.leg === index + 1);
    const to = route.waypoints[index + 1];
    const settings = own?.height === undefined ? { ...mission.cruise } : { ...own, height: own.height };
    return {
      number: index + 1,
      name: `${from.name ?? `waypoint ${from.number}`} to ${to?.name ?? `waypoint ${to?.number}`}`,
      speed: speedWish(own, mission.cruise),
      height: heightRule(settings.height, settings.heightDatum, settings.geoidUndulation),
      loading: loadingAt[index] as number,
    };
  });
  return slips.length > 0 ? { kind: "refused", slips } : { kind: "plan", plan: { legs, tasks, onBoard } };
}

interface SpeedSettings {
  readonly airspeed?: number | undefined;
  readonly speedRule?: "best-range" | "minimum-power" | undefined;
}

function speedWish(own: SpeedSettings | undefined, cruise: SpeedSettings): SpeedWish {
  const settings = own?.airspeed !== undefined || own?.speedRule !== undefined ? own : cruise;
  if (settings.airspeed !== undefined) return { kind: "airspeed", airspeed: settings.airspeed };
  return { kind: "rule", rule: settings.speedRule ?? "best-range" };
}

/** A height with its datum as a rule. Heights above the ellipsoid: h_sea = h_ellipsoid − N. */
function heightRule(height: number, datum: HeightDatum | undefined, geoidUndulation: number | undefined): HeightRule {
  if (datum === "above-ground") return { kind: "above-ground", height };
  return { kind: "above-sea", height: datum === "ellipsoid" ? height - (geoidUndulation ?? 0) : height };
}

interface PlacedTask {
  readonly waypoint: number;
  readonly pointer: string;
  readonly task: TaskDefinition;
}

function placedTasks(tasks: readonly TaskDefinition[], route: Route, slips: PlanSlip[]): readonly PlacedTask[] {
  return tasks.flatMap((task, index) => {
    const pointer = `/tasks/${index}`;
    const choice = waypointNamed(route, task.at);
    if (choice.kind === "refused") {
      slips.push({ pointer: `${pointer}/at`, message: choice.message });
      return [];
    }
    return [{ waypoint: choice.index, pointer, task }];
  });
}

/** Follows the payload along the route: what is on board after each task, and on each leg. */
function loadedTasks(placed: readonly PlacedTask[], route: Route, takeoffLoad: OnBoard, slips: PlanSlip[]) {
  const onBoard: OnBoard[] = [takeoffLoad];
  const loadingAt: number[] = [];
  let loading = 0;
  const tasks = route.waypoints.map((waypoint, index) => {
    const here = placed
      .filter((entry) => entry.waypoint === index)
      .map((entry): PlannedTask => {
        const after = loadAfter(onBoard[loading] as OnBoard, entry, slips);
        if (after !== onBoard[loading]) {
          const known = onBoard.findIndex((load) => sameLoad(load, after));
          loading = known >= 0 ? known : onBoard.push(after) - 1;
        }
        const { task } = entry;
        const place = waypoint.name ?? `waypoint ${waypoint.number}`;
        return {
          kind: task.land === undefined ? "hover" : "ground",
          name: task.land === undefined ? `hover at ${place}` : `on the ground at ${place}`,
          duration: task.land ?? task.hover ?? 0,
          loadingAfter: loading,
          ...(task.height === undefined ? {} : { height: heightRule(task.height, task.heightDatum, task.geoidUndulation) }),
        };
      });
    loadingAt.push(loading);
    return here;
  });
  return { tasks, onBoard, loadingAt };
}

function loadAfter(now: OnBoard, { task, pointer }: PlacedTask, slips: PlanSlip[]): OnBoard {
  let load = now;
  if (task.deliver !== undefined) {
    if (load.kind !== "record" || load.name !== task.deliver) {
      const carried = load.kind === "record" ? `"${load.name}"` : load.kind === "mass" ? "a payload without a record" : "nothing";
      slips.push({ pointer: `${pointer}/deliver`, message: `"${task.deliver}" cannot be delivered here: ${carried} is on board` });
    }
    load = { kind: "nothing" };
  }
  if (task.pickUp !== undefined) {
    if (load.kind !== "nothing")
      slips.push({
        pointer: `${pointer}/pickUp`,
        message: `"${task.pickUp}" cannot be taken on board before the other payload is delivered`,
      });
    load = { kind: "record", name: task.pickUp };
  }
  return load;
}

function sameLoad(first: OnBoard, second: OnBoard): boolean {
  if (first.kind === "record") return second.kind === "record" && first.name === second.name;
  if (first.kind === "mass") return second.kind === "mass" && first.mass === second.mass;
  return second.kind === "nothing";
}
