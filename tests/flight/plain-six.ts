// The six components of a whole aircraft summed a second time, from its file and the state of a trim, with nothing of the
// program's own sums.
import type { AircraftDefinition } from "../../packages/engine/src/aircraft/definition.ts";
import { type PlainAir, type PlainRotorLoads, type PlainRotorState, plainBlades } from "./plain-blades.ts";
import { type PlainLoading, type PlainMass, plainMass } from "./plain-mass.ts";
import { type PlainPropeller, plainPropeller, stoppedPropeller } from "./plain-propeller.ts";
import { plainBodyForces, plainSideForce, plainSurface } from "./plain-surfaces.ts";
import { cross, less, scaled, sum, type Vector, vector } from "./plain-vectors.ts";

export const gravity = 9.80665;

/** How the aircraft moves and is steered. */
export interface PlainState {
  /** Velocity of the centre of gravity through the air, body axes [m/s]. */
  readonly velocity: Vector;
  /** Rates of the body [rad/s]. */
  readonly rate: Vector;
  /** Nose up and right side down [rad]. */
  readonly pitch: number;
  readonly roll: number;
  /** Controls by their names [rad], [m/s], [N]. */
  readonly controls: Readonly<Record<string, number>>;
  readonly rotors: Readonly<Record<string, PlainRotorState>>;
  /** Rotors whose drive is uncoupled: they hand no torque on. */
  readonly uncoupled?: readonly string[];
  /** Propellers that stand still. */
  readonly stopped?: readonly string[];
}

export interface PlainSum {
  readonly mass: PlainMass;
  /** Air on every part [N], and its moment about the centre [N m], by part. */
  readonly parts: Readonly<Record<string, { readonly force: Vector; readonly moment: Vector }>>;
  readonly rotors: Readonly<Record<string, PlainRotorLoads>>;
  readonly propellers: Readonly<Record<string, PlainPropeller>>;
  /** What is left of force and moment in steady flight: air and weight less what turning needs. */
  readonly force: Vector;
  readonly moment: Vector;
}

/** Setting of a control of a part; 0 where the aircraft has none. */
function settingOf(aircraft: AircraftDefinition, state: PlainState, part: string, what: string): number {
  return aircraft.controls
    .filter((control) => control.part === part && control.what === what)
    .reduce((total, control) => total + (state.controls[control.id] ?? Number.NaN), 0);
}

/** Trailing edges of a surface as its controls set them. */
function edgesOf(aircraft: AircraftDefinition, state: PlainState, surface: string): Record<string, number> {
  const edges: Record<string, number> = {};
  for (const control of aircraft.controls) {
    if (control.what !== "movable" || control.part !== surface) continue;
    for (const { id, factor } of control.movables) edges[id] = (edges[id] ?? 0) + factor * (state.controls[control.id] ?? Number.NaN);
  }
  return edges;
}

/** Surfaces, each after those whose wake it meets. */
function surfacesInOrder({ surfaces, interference }: AircraftDefinition): readonly (typeof surfaces)[number][] {
  const upstream = (id: string): number =>
    1 +
    Math.max(
      0,
      ...interference.filter(({ on, kind, active }) => on === id && kind === "wing-downwash" && active).map(({ from }) => upstream(from)),
    );
  return [...surfaces].sort((one, other) => upstream(one.id) - upstream(other.id));
}

/** Weight in body axes. */
export function weightOf(mass: number, pitch: number, roll: number): Vector {
  return scaled(mass * gravity, [-Math.sin(pitch), Math.cos(pitch) * Math.sin(roll), Math.cos(pitch) * Math.cos(roll)]);
}

export function plainSix(aircraft: AircraftDefinition, loading: PlainLoading, air: PlainAir, state: PlainState): PlainSum {
  const mass = plainMass(aircraft, loading);
  const arm = (place: { readonly x: number; readonly y: number; readonly z: number }) => less(vector(place), mass.centre);
  const velocityAt = (at: Vector) => sum(state.velocity, cross(state.rate, at));
  const setting = (part: string, what: string) => settingOf(aircraft, state, part, what);

  const rotors: Record<string, PlainRotorLoads> = {};
  for (const rotor of aircraft.rotors) {
    const now = state.rotors[rotor.id];
    if (now === undefined) throw new Error(`the state says nothing of ${rotor.id}`);
    const controls = {
      collective: setting(rotor.id, "collective"),
      longitudinal: setting(rotor.id, "longitudinal-cyclic"),
      lateral: setting(rotor.id, "lateral-cyclic"),
      tiltBack: setting(rotor.id, "tilt-back"),
      tiltRight: setting(rotor.id, "tilt-right"),
    };
    rotors[rotor.id] = plainBlades(rotor, air, controls, now, velocityAt(arm(rotor.hub)), state.rate);
  }
  const propellers: Record<string, PlainPropeller> = {};
  for (const propeller of aircraft.propellers) {
    const turned = { back: setting(propeller.id, "tilt-back"), right: setting(propeller.id, "tilt-right") };
    const at = velocityAt(arm(propeller.place));
    const still = state.stopped?.includes(propeller.id) === true;
    propellers[propeller.id] = still
      ? stoppedPropeller(propeller, air.density, at)
      : plainPropeller(propeller, air.density, setting(propeller.id, "thrust"), at, state.rate, turned);
  }

  /** Lift of the surfaces summed so far over what a radian gives: their angle of attack [rad]. */
  const angles: Record<string, number> = {};
  /** Air that other parts blow onto a part [m/s], body axes, and the share of its area that lies in it. */
  const blownOn = (part: string): { readonly air: Vector; readonly share: number } => {
    const entries = aircraft.interference.filter(({ on, active, factor }) => on === part && active && factor !== 0);
    const shares = new Set(entries.map(({ share }) => share));
    if (shares.size > 1) throw new Error(`${part} lies in airs of different shares`);
    const moved = entries.map(({ from, kind, factor }): Vector => {
      if (kind === "rotor-downwash") return scaled(factor, rotors[from]?.inducedVelocity ?? [0, 0, 0]);
      if (kind === "slipstream")
        return scaled(-factor, scaled(propellers[from]?.inducedVelocity ?? 0, propellers[from]?.axis ?? [0, 0, 0]));
      return [0, 0, factor * (angles[from] ?? Number.NaN) * Math.hypot(...state.velocity)];
    });
    return { air: sum(...moved), share: [...shares][0] ?? 1 };
  };

  const parts: Record<string, { force: Vector; moment: Vector }> = {};
  const add = (id: string, at: Vector, force: Vector, moment: Vector = [0, 0, 0]) => {
    const known = parts[id] ?? { force: [0, 0, 0], moment: [0, 0, 0] };
    parts[id] = { force: sum(known.force, force), moment: sum(known.moment, moment, cross(at, force)) };
  };
  for (const rotor of aircraft.rotors) {
    const loads = rotors[rotor.id] as PlainRotorLoads;
    const free = state.uncoupled?.includes(rotor.id) === true;
    add(rotor.id, arm(rotor.hub), loads.force, free ? less(loads.moment, loads.reaction) : loads.moment);
  }
  for (const propeller of aircraft.propellers) {
    const loads = propellers[propeller.id] as PlainPropeller;
    add(propeller.id, arm(propeller.place), loads.force, loads.moment);
  }
  for (const surface of surfacesInOrder(aircraft)) {
    const { air: blown, share } = blownOn(surface.id);
    const turned = setting(surface.id, "deflection");
    const edges = edgesOf(aircraft, state, surface.id);
    const inAir = (washed: Vector) =>
      plainSurface(surface, air.density, arm(surface.place), (place) => less(velocityAt(place), washed), turned, edges);
    const [inside, outside] = [inAir(blown), inAir([0, 0, 0])];
    parts[surface.id] = {
      force: sum(scaled(share, inside.force), scaled(1 - share, outside.force)),
      moment: sum(scaled(share, inside.moment), scaled(1 - share, outside.moment)),
    };
    angles[surface.id] = inside.lift / surface.liftSlope;
  }
  aircraft.bodies.forEach((body, i) => {
    const carried = i === 0 ? { ...body, dragArea: body.dragArea + loading.payloadDragArea } : body;
    const { air: blown, share } = blownOn(body.id);
    const { along, above } = plainBodyForces(carried, air.density, velocityAt(arm(body.place)), blown[2], share);
    add(body.id, arm(body.place), sum(along, above));
    const beside = body.sidePlace ?? body.place;
    add(body.id, arm(beside), plainSideForce(body, air.density, velocityAt(arm(beside))));
  });

  const air6 = {
    force: sum(...Object.values(parts).map(({ force }) => force)),
    moment: sum(...Object.values(parts).map(({ moment }) => moment)),
  };
  return {
    mass,
    parts,
    rotors,
    propellers,
    force: less(sum(air6.force, weightOf(mass.mass, state.pitch, state.roll)), scaled(mass.mass, cross(state.rate, state.velocity))),
    moment: less(air6.moment, cross(state.rate, mass.momentum(state.rate))),
  };
}
