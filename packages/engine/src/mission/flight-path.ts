import type { Terrain } from "../environment/terrain/index.ts";
import type { Wind } from "../environment/wind/index.ts";
import type { SpeedLimits } from "./ground-speed.ts";
import { type LegSamples, type LegSampling, sampleLeg } from "./leg-samples.ts";
import { type Phase, restingPhase, runPhases, type Spot, verticalPhase } from "./phases.ts";
import type { MissionPlan, PlannedLeg, PlannedTask } from "./plan.ts";
import type { Route, Waypoint } from "./route.ts";
import { heightAbove, type RunKinematics, runKinematics, type SampledLeg } from "./run-kinematics.ts";

/** The whole flight, and why it ends before its last waypoint if it does. */
export interface FlightPath {
  readonly phases: readonly Phase[];
  readonly lost?: NonNullable<RunKinematics["lost"]>;
}

export interface PathRequest {
  readonly route: Route;
  readonly plan: MissionPlan;
  readonly legs: readonly SampledLeg[];
  readonly wind: Wind;
  readonly limits: SpeedLimits;
}

export type RouteSamples =
  | { readonly kind: "sampled"; readonly samples: readonly LegSamples[] }
  | { readonly kind: "no-ground"; readonly leg: number; readonly sampling: Extract<LegSampling, { kind: "no-ground" }> };

/** Cuts every leg and reads the ground under it; names the first place without ground. */
export function sampledRoute(route: Route, terrain: Terrain): RouteSamples {
  const samples: LegSamples[] = [];
  for (const [index, from] of route.waypoints.slice(0, -1).entries()) {
    const to = route.waypoints[index + 1] as Waypoint;
    const sampling = sampleLeg(from.position, to.position, terrain);
    if (sampling.kind === "no-ground") return { kind: "no-ground", leg: index + 1, sampling };
    samples.push(sampling.samples);
  }
  return { kind: "sampled", samples };
}

/** Planned legs with their ground and their airspeeds [m/s] along the path. */
export function sampledLegs(plan: MissionPlan, samples: readonly LegSamples[], airspeeds: readonly number[]): readonly SampledLeg[] {
  return plan.legs.map(({ number, name, height }, index) => ({
    number,
    name,
    height,
    airspeed: airspeeds[index] as number,
    samples: samples[index] as LegSamples,
  }));
}

/**
 * The flight as a sequence of phases: up vertically to the height that the first run begins at, along each run, up or down
 * to the height of every task, and down vertically at the end. Waypoints without a task are turned without stopping.
 */
export function flightPath({ route, plan, legs, wind, limits }: PathRequest): FlightPath {
  const start = spotAt(route, legs, 0, wind);
  let loading = plan.legs[0]?.loading ?? 0;
  let height = start.ground;
  // Every flight has a first moment, also one that never leaves the ground.
  const phases: Phase[] = [restingPhase("on-ground", start.name, start, height, 0, loading)];
  const final = legs.length;
  let from = 0;
  const move = (spot: Spot, to: number) => {
    const phase = verticalPhase(spot, { from: height, to }, limits, loading);
    if (phase) phases.push(phase);
    height = to;
  };
  for (let waypoint = 0; waypoint <= final; waypoint++) {
    const tasks = plan.tasks[waypoint] as readonly PlannedTask[];
    if (waypoint > 0 && waypoint < final && tasks.length === 0) continue;
    if (waypoint > from) {
      loading = (plan.legs[from] as PlannedLeg).loading;
      const run = runKinematics({ legs: legs.slice(from, waypoint), wind, limits });
      move(spotAt(route, legs, from, wind), run.startHeight);
      phases.push(...runPhases(run.pieces, loading));
      if (run.lost) return { phases, lost: run.lost };
      height = (run.pieces.at(-1) as { endHeight: number }).endHeight;
      from = waypoint;
    }
    const spot = spotAt(route, legs, waypoint, wind);
    for (const task of tasks) {
      move(spot, task.kind === "ground" ? spot.ground : taskHeight(task, spot, height, legs[waypoint]));
      phases.push(restingPhase(task.kind === "ground" ? "on-ground" : "hover", task.name, spot, height, task.duration, loading));
      loading = task.loadingAfter;
    }
    if (waypoint === final) move(spot, spot.ground);
  }
  return { phases };
}

/** Height of a hover above mean sea level [m]: its own, that of arrival, or before take-off that of the leg to come. */
function taskHeight(task: PlannedTask, spot: Spot, arrival: number, next: SampledLeg | undefined): number {
  if (task.height) return heightAbove(task.height, spot.ground);
  return arrival > spot.ground || next === undefined ? arrival : heightAbove(next.height, spot.ground);
}

function spotAt(route: Route, legs: readonly SampledLeg[], waypoint: number, wind: Wind): Spot {
  const { name, number, position } = route.waypoints[waypoint] as Waypoint;
  const ahead = legs[waypoint]?.samples.ground[0];
  const behind = legs[waypoint - 1];
  const ground = ahead ?? (behind?.samples.ground[behind.samples.pieces] as number);
  return { ...position, name: name ?? `waypoint ${number}`, ground, course: wind.fromDirection };
}
