import { z } from "zod";
import { quantity } from "../quantities/index.ts";
import { fraction, notNegative, positive } from "./bounds.ts";
import { partId } from "./part-id.ts";
import { place } from "./placement.ts";

const movable = z.strictObject({
  id: partId,
  side: z
    .enum(["both", "left", "right"])
    .describe("Which half of the surface it is on; of an upright surface right is the half above its place."),
  inner: fraction("Where it begins, over the half span."),
  outer: fraction("Where it ends, over the half span."),
  liftPerDeflection: quantity("dimensionless", {
    description: "Change of the local lift coefficient per radian, trailing edge down positive.",
  }),
  momentPerDeflection: quantity("dimensionless", {
    description: "Change of the local moment coefficient about the quarter chord per radian, on the mean chord.",
  }).default(0),
  dragPerDeflectionSquared: notNegative("dimensionless", "Change of the local drag coefficient per radian squared.").default(0),
});

const surfaceStall = z.strictObject({
  angle: positive("angle", "Centre of the blend to the flat plate."),
  sharpness: positive("dimensionless", "Steepness of that blend, per radian."),
  flatPlateCoefficient: positive("dimensionless", "Normal force coefficient at ninety degrees."),
});

/** A wing, tailplane or fin. */
export const surfacePart = z.strictObject({
  id: partId,
  place: place.describe("Quarter chord in the middle of the span."),
  dihedral: quantity("angle", {
    description: "Span turned up on the right about the forward axis: 0 a wing, 90 deg an upright fin.",
    minimum: -3.2,
    maximum: 3.2,
  }).default(0),
  tipDihedral: quantity("angle", { description: "Both halves raised by this much.", minimum: -1.3, maximum: 1.3 }).default(0),
  area: positive("area", "Reference area."),
  span: positive("length", "Span."),
  aspectRatio: positive("dimensionless", "Effective aspect ratio of induced drag; span squared over area when absent.").optional(),
  incidence: quantity("angle", {
    description: "Chord to the forward axis, nose up (of a fin: nose left), before any control moves it.",
  }).default(0),
  liftSlope: positive("dimensionless", "Lift-curve slope of the finite surface, per radian."),
  zeroLiftAngle: quantity("angle", { description: "Angle of attack without lift." }).default(0),
  maximumLiftCoefficient: positive("dimensionless", "Largest lift coefficient, either way."),
  trimLiftFraction: fraction("Share of the largest lift coefficient that trim may use.").default(1),
  momentCoefficient: quantity("dimensionless", { description: "Moment about the quarter chord on the mean chord, nose up." }).default(0),
  cd0: notNegative("dimensionless", "Profile drag coefficient."),
  spanEfficiency: positive("dimensionless", "Span efficiency factor."),
  stall: surfaceStall
    .optional()
    .describe("How lift gives way to the flat plate; from the largest lift coefficient and common values when absent."),
  movables: z.array(movable).default([]).describe("Parts of the trailing edge that a control can move."),
});

export type SurfacePart = z.infer<typeof surfacePart>;
export type SurfaceStall = z.infer<typeof surfaceStall>;

/** What is taken of a surface whose file does not say how it stalls: common practice. */
/** The joint with the flat plate lies a little beyond the angle of the largest lift: at its centre half the lift is gone (own choice). */
const stallShare = 1.15;
const commonStall = { sharpness: 60, flatPlateCoefficient: 1.2 };

/** How lift of a surface gives way to the flat plate: as the file says, else where its lift reaches the largest coefficient. */
export function stallOf(surface: Pick<SurfacePart, "stall" | "maximumLiftCoefficient" | "liftSlope">): SurfaceStall {
  return surface.stall ?? { angle: (stallShare * surface.maximumLiftCoefficient) / surface.liftSlope, ...commonStall };
}
