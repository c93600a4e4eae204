import { type AircraftDefinition, type Place, standardGravity } from "../../aircraft/index.ts";
import { airframeOutlines, asPoint, kindName, partName } from "../drawings/part-outlines.ts";
import type { Meaning, SceneArrow, SceneFigure, ScenePoint } from "../figures.ts";

/** What one part does to the aircraft, body axes: force [N] at a place [m from the datum] and moment about that place [N m]. */
export interface PartForce {
  readonly id: string;
  readonly place: Place;
  readonly force: ArrayLike<number>;
  readonly moment: ArrayLike<number>;
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
  /** Velocity through the air, body axes [m/s]. */
  readonly velocity: ArrayLike<number>;
}

/**
 * Forces and moments of one state, from the left and from behind, with the horizon level on paper: every part's force
 * where it acts, its own moment beside it, the weight at the centre of gravity, the attitude and the air that comes.
 */
export function forcePicture(aircraft: AircraftDefinition, state: FlownState, parts: readonly PartForce[]): SceneFigure {
  const about = asPoint(state.centre);
  const arrows = parts.flatMap((part): readonly SceneArrow[] => {
    const { name, meaning } = named(aircraft, part.id);
    const at = asPoint(part.place);
    const both = [
      { name, meaning, kind: "force", at, vector: vectorOf(part.force) },
      { name, meaning, kind: "moment", at, vector: vectorOf(part.moment) },
    ] as const;
    return both.filter(({ vector }) => Math.hypot(...vector) > 0);
  });
  const weight: SceneArrow = { name: "weight", meaning: "neutral", kind: "force", at: about, vector: weightVector(state) };
  return {
    kind: "scene",
    id: "forces",
    caption: "Forces where they act and each part’s own moment, horizon level; sizes are those in the plane of the view",
    views: ["left", "behind"],
    lines: airframeOutlines(aircraft).map((line) => ({ ...line, weight: "thin" })),
    marks: [{ name: "centre of gravity", meaning: "neutral", shape: "centre", at: about }],
    arrows: [weight, ...arrows],
    attitude: { pitch: state.pitch, roll: state.roll, about, velocity: vectorOf(state.velocity) },
  };
}

/** Weight in body axes [N]. */
function weightVector({ mass, pitch, roll }: FlownState): ScenePoint {
  const weight = mass * standardGravity;
  return [-weight * Math.sin(pitch), weight * Math.cos(pitch) * Math.sin(roll), weight * Math.cos(pitch) * Math.cos(roll)];
}

function vectorOf(values: ArrayLike<number>): ScenePoint {
  return [values[0] ?? 0, values[1] ?? 0, values[2] ?? 0];
}

function named({ rotors, propellers, surfaces }: AircraftDefinition, id: string): { readonly name: string; readonly meaning: Meaning } {
  if (rotors.some((each) => each.id === id)) return { name: kindName(id, "rotor"), meaning: "rotor" };
  if (propellers.some((each) => each.id === id)) return { name: kindName(id, "propeller"), meaning: "propellers" };
  return { name: partName(id), meaning: surfaces.some((each) => each.id === id) ? "wing" : "body" };
}
