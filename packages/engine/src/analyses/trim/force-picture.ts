import { type AircraftDefinition, type Place, standardGravity } from "../../aircraft/index.ts";
import { airframeOutlines, asPoint, kindName, partName } from "../drawings/part-outlines.ts";
import type { Meaning, SceneArrow, SceneFigure, ScenePoint } from "../figures.ts";

interface Vector {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/** What one part does to the aircraft, body axes: force [N] and moment about the centre of gravity [N m]. */
export interface PartForce {
  readonly id: string;
  readonly force: Vector;
  readonly moment: Vector;
}

/** One state of flight, as far as a picture needs it. */
export interface FlownState {
  /** [kg] */
  readonly mass: number;
  readonly centre: Place;
  /** Nose above the horizon [rad]. */
  readonly pitch: number;
  /** Right side down [rad]. */
  readonly roll: number;
  /** Horizontal speed through the air [m/s]. */
  readonly airspeed: number;
  /** Air from the right positive [rad]. */
  readonly sideslip: number;
  /** [m/s] */
  readonly climbRate: number;
  /** True where forces do not add up to the weight because the path is curved. */
  readonly turns?: boolean;
}

/** Moments below this are left out: they are what rounding leaves [N m]. */
const smallestMoment = 1e-6;

/**
 * Forces and moments of one state, from the left and from behind, with the horizon level on paper: every part's force
 * where it acts, its moment about that place beside it, the weight at the centre of gravity, the attitude and the air.
 */
export function forcePicture(aircraft: AircraftDefinition, state: FlownState, parts: readonly PartForce[]): SceneFigure {
  const about = asPoint(state.centre);
  const weight = fromLevel([0, 0, state.mass * standardGravity], state);
  const arrows = [neutral("weight", about, weight), ...parts.flatMap((part) => partArrows(aircraft, part, about))];
  const rest = parts.reduce<ScenePoint>(
    ([x, y, z], { force }) => [x - force.x, y - force.y, z - force.z],
    [-weight[0], -weight[1], -weight[2]],
  );
  const [ahead, right] = [state.airspeed * Math.cos(state.sideslip), state.airspeed * Math.sin(state.sideslip)];
  return {
    kind: "scene",
    id: "forces",
    caption: "Forces where they act and each part’s own moment, horizon level; sizes are those in the plane of the view",
    views: ["left", "behind"],
    lines: airframeOutlines(aircraft).map((line) => ({ ...line, weight: "thin" })),
    marks: [{ name: "centre of gravity", meaning: "neutral", shape: "centre", at: about }],
    arrows: state.turns ? [...arrows, neutral("inertia in the turn", about, rest)] : arrows,
    attitude: { pitch: state.pitch, roll: state.roll, about, velocity: fromLevel([ahead, right, -state.climbRate], state) },
  };
}

function neutral(name: string, at: ScenePoint, vector: ScenePoint): SceneArrow {
  return { name, meaning: "neutral", kind: "force", at, vector };
}

/** Force of a part at its place and what is left of its moment there. */
function partArrows(aircraft: AircraftDefinition, { id, force, moment }: PartForce, about: ScenePoint): readonly SceneArrow[] {
  const { name, meaning, at } = placed(aircraft, id, about);
  const vector = asPoint(force);
  const [x, y, z] = [at[0] - about[0], at[1] - about[1], at[2] - about[2]];
  const own: ScenePoint = [
    moment.x - (y * vector[2] - z * vector[1]),
    moment.y - (z * vector[0] - x * vector[2]),
    moment.z - (x * vector[1] - y * vector[0]),
  ];
  const both = [
    { name, meaning, kind: "force", at, vector },
    { name, meaning, kind: "moment", at, vector: own },
  ] as const;
  return both.filter((arrow) => Math.hypot(...arrow.vector) > smallestMoment);
}

/** A vector of level axes in body axes. */
function fromLevel([x, y, z]: ScenePoint, { pitch, roll }: FlownState): ScenePoint {
  const [sinPitch, cosPitch, sinRoll, cosRoll] = [Math.sin(pitch), Math.cos(pitch), Math.sin(roll), Math.cos(roll)];
  const down = sinPitch * x + cosPitch * z;
  return [cosPitch * x - sinPitch * z, cosRoll * y + sinRoll * down, cosRoll * down - sinRoll * y];
}

interface PlacedPart {
  readonly name: string;
  readonly meaning: Meaning;
  readonly at: ScenePoint;
}

/** How a part is called and where its force is drawn; at the centre of gravity where the file has no such part. */
function placed({ rotors, propellers, surfaces, bodies }: AircraftDefinition, id: string, about: ScenePoint): PlacedPart {
  const called = (each: { readonly id: string }) => each.id === id;
  const [rotor, propeller, surface, body] = [rotors.find(called), propellers.find(called), surfaces.find(called), bodies.find(called)];
  if (rotor) return { name: kindName(id, "rotor"), meaning: "rotor", at: asPoint(rotor.hub) };
  if (propeller) return { name: kindName(id, "propeller"), meaning: "propellers", at: asPoint(propeller.place) };
  if (surface) return { name: partName(id), meaning: "wing", at: asPoint(surface.place) };
  return { name: partName(id), meaning: "body", at: body ? asPoint(body.place) : about };
}
