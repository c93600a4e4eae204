import type { FigureBase, LimitFamily, Meaning } from "./figure-parts.ts";

/** A point in body axes [m]: x forward, y right, z down from the datum; also a vector in them. */
export type ScenePoint = readonly [x: number, y: number, z: number];

/** From where a scene is looked at: from the left, from ahead, from behind, from above. */
export type SceneView = "left" | "ahead" | "behind" | "above";

/** An edge or outline. */
export interface SceneLine {
  readonly name: string;
  readonly meaning: Meaning;
  readonly points: readonly ScenePoint[];
  /** True for an outline that closes by itself: its inside is tinted. */
  readonly closed?: boolean;
  /** `thin` for what stands behind the subject or is known in outline only. */
  readonly weight?: "full" | "thin";
  /** The views in which it says something; all when absent. */
  readonly views?: readonly SceneView[];
}

/** A point worth a name. */
export interface SceneMark {
  readonly name: string;
  readonly meaning: Meaning;
  readonly at: ScenePoint;
  /** `centre` is a centre of gravity, `point` anything else. */
  readonly shape: "centre" | "point";
}

/** A length measured in one view. */
export interface SceneDimension {
  readonly name: string;
  readonly from: ScenePoint;
  readonly to: ScenePoint;
  readonly view: SceneView;
}

/** How far a mark may move along an axis of the body; drawn beside that mark. */
export interface SceneBound {
  readonly name: string;
  readonly axis: "x" | "z";
  readonly value: number;
  readonly forbidden: "above" | "below";
  readonly family: LimitFamily;
  /** Name of the mark that it bounds. */
  readonly mark: string;
}

/** A force [N] or a moment [N m] in body axes, drawn where it acts. All forces of a scene share one scale, so do all moments. */
export interface SceneArrow {
  readonly name: string;
  readonly meaning: Meaning;
  readonly kind: "force" | "moment";
  readonly at: ScenePoint;
  readonly vector: ScenePoint;
}

/** How the body stands to the horizon and the air: the drawing is turned so that the horizon lies level on paper. */
export interface SceneAttitude {
  /** Nose above the horizon [rad]. */
  readonly pitch: number;
  /** Right side down [rad]. */
  readonly roll: number;
  /** About which point it is turned. */
  readonly about: ScenePoint;
  /** Velocity of the body through the air, body axes [m/s]. */
  readonly velocity?: ScenePoint;
}

/** A part of one view drawn larger: what lies between two corners. */
export interface SceneDetail {
  readonly name: string;
  readonly view: SceneView;
  readonly from: ScenePoint;
  readonly to: ScenePoint;
}

/** A body in space, drawn to one scale in several views. */
export interface SceneFigure extends FigureBase {
  readonly kind: "scene";
  /** In the order of the paper; from the left, from ahead and from above when absent. */
  readonly views?: readonly SceneView[];
  readonly lines: readonly SceneLine[];
  readonly marks?: readonly SceneMark[];
  readonly bounds?: readonly SceneBound[];
  readonly dimensions?: readonly SceneDimension[];
  readonly arrows?: readonly SceneArrow[];
  readonly detail?: SceneDetail;
  readonly attitude?: SceneAttitude;
}
