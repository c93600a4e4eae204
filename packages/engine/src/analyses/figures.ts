import type { QuantityKind } from "../quantities/index.ts";
import type { Axis, FigureBase, LimitFamily, Meaning } from "./figure-parts.ts";
import type { SceneFigure } from "./scene-figure.ts";
import type { Token } from "./tokens.ts";

export type { Axis, LimitFamily, Meaning } from "./figure-parts.ts";
export type * from "./scene-figure.ts";

export interface Series {
  readonly name: string;
  readonly meaning: Meaning;
  readonly x: readonly number[];
  /** null leaves a gap in the line. */
  readonly y: readonly (number | null)[];
  /** `thin` for what is dearer, earlier or secondary. */
  readonly weight?: "full" | "thin";
  /** `points` where nothing is computed between neighbours: dots without a line. */
  readonly shape?: "line" | "points";
  /** Where the line ends because something stops it: the limit's name and family are written there. */
  readonly end?: { readonly limit: string; readonly family: LimitFamily };
}

/** A point worth a name: minimum, crossing, lowest speed. */
export interface NotablePoint {
  readonly name: string;
  readonly x: number;
  readonly y: number;
  readonly meaning?: Meaning;
  /** Half-widths of its 95 % interval along the axes. */
  readonly halfWidth?: { readonly x?: number; readonly y?: number };
}

/** A stretch of x without an answer, with the reason. */
export interface Gap {
  readonly from: number;
  readonly to: number;
  readonly reason: string;
}

/** A bound across the picture with the forbidden side named. */
export interface Bound {
  readonly name: string;
  readonly axis: "x" | "y";
  readonly value: number;
  readonly forbidden: "above" | "below";
  readonly family: LimitFamily;
}

/** A limit that is not straight: a line with its name along it and ticks on the side that is forbidden. */
export interface Border {
  readonly name: string;
  readonly x: readonly number[];
  readonly y: readonly number[];
  /** The side beyond, for whoever walks along the points with x to the right and y up. */
  readonly forbidden: "left" | "right";
  readonly family: LimitFamily;
}

/** A part of the plane in which something holds; its outline closes by itself. */
export interface Region {
  readonly name: string;
  readonly meaning: Meaning;
  readonly x: readonly number[];
  readonly y: readonly number[];
}

/** Rotor shaft power as a share of hover's along x, and where the rotor turns free. */
export interface RotorRibbon {
  readonly x: readonly number[];
  readonly share: readonly (number | null)[];
  readonly free: readonly boolean[];
}

export interface LinesFigure extends FigureBase {
  readonly kind: "lines";
  readonly x: Axis;
  readonly y: Axis;
  readonly series: readonly Series[];
  readonly notable?: readonly NotablePoint[];
  readonly gaps?: readonly Gap[];
  readonly bounds?: readonly Bound[];
  readonly borders?: readonly Border[];
  readonly regions?: readonly Region[];
  readonly ribbon?: RotorRibbon;
  /** Start the y axis at zero (areas and costs). */
  readonly zeroBased?: boolean;
  /**
   * True where a line is a path over two results (roots, loadings, an outline) and no function of x: nothing is read at
   * an x, and the table behind it lists every point.
   */
  readonly plane?: boolean;
}

export interface StackedFigure extends FigureBase {
  readonly kind: "stacked";
  readonly x: Axis;
  readonly y: Axis;
  readonly at: readonly number[];
  readonly layers: readonly { readonly name: string; readonly meaning: Meaning; readonly values: readonly (number | null)[] }[];
  readonly overlays?: readonly Series[];
  readonly notable?: readonly NotablePoint[];
  readonly gaps?: readonly Gap[];
  readonly ribbon?: RotorRibbon;
}

export interface TableColumn {
  readonly label: string;
  /** Absent for columns of words. */
  readonly quantity?: QuantityKind;
  readonly unit?: string;
  readonly datum?: string;
}

export interface TableFigure extends FigureBase {
  readonly kind: "table";
  readonly columns: readonly TableColumn[];
  readonly rows: readonly (readonly (number | string | boolean | null)[])[];
}

export interface GridFigure extends FigureBase {
  readonly kind: "grid";
  readonly x: Axis;
  readonly y: Axis;
  readonly value: Axis;
  readonly xs: readonly number[];
  readonly ys: readonly number[];
  /** Row-major over ys, then xs. */
  readonly values: readonly (number | null)[];
}

/** Longitude and latitude in degrees (RFC 7946 order), so that GeoJSON export is a copy. */
export type Position = readonly [longitude: number, latitude: number];

export interface MapFigure extends FigureBase {
  readonly kind: "map";
  readonly tracks: readonly { readonly name: string; readonly meaning: Meaning; readonly points: readonly Position[] }[];
  readonly sites: readonly { readonly name: string; readonly at: Position; readonly note?: string }[];
  /** Grey relief under it: a thinned elevation grid, row 0 north, null where the file has no value. */
  readonly relief?: {
    readonly west: number;
    readonly east: number;
    readonly south: number;
    readonly north: number;
    readonly width: number;
    readonly height: number;
    readonly elevation: readonly (number | null)[];
  };
  /** Blowing FROM, radians clockwise from true north. */
  readonly wind?: { readonly speed: number; readonly from: number };
}

export interface ProfilePanel {
  readonly y: Axis;
  readonly series: readonly Series[];
  readonly bounds?: readonly Bound[];
  readonly zeroBased?: boolean;
}

/** Several panels over one axis of time or distance. */
export interface ProfileFigure extends FigureBase {
  readonly kind: "profile";
  readonly x: Axis;
  readonly panels: readonly ProfilePanel[];
  readonly notable?: readonly { readonly name: string; readonly x: number }[];
  readonly ribbon?: RotorRibbon;
}

export interface TreeNode {
  readonly label: string;
  readonly note?: string;
  readonly children?: readonly TreeNode[];
}

export interface TreeFigure extends FigureBase {
  readonly kind: "tree";
  readonly root: TreeNode;
}

export interface TextFigure extends FigureBase {
  readonly kind: "text";
  readonly paragraphs: readonly (readonly Token[])[];
}

/** The closed list of picture kinds. A new kind is a decision, since every face must draw it. */
export type Figure =
  | LinesFigure
  | StackedFigure
  | TableFigure
  | GridFigure
  | MapFigure
  | ProfileFigure
  | SceneFigure
  | TreeFigure
  | TextFigure;
