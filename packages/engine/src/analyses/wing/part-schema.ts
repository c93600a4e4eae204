import { z } from "zod";
import { quantity } from "../../quantities/index.ts";
import { partInput } from "../inputs/chosen-part.ts";
import { sectionInput } from "../inputs/section-input.ts";

const share = (description: string) => quantity("dimensionless", { description, minimum: 0, maximum: 1 });

const flap = z
  .strictObject({
    from: share("Share of the half span at which it begins.").default(0),
    to: share("Share of the half span at which it ends.").default(1),
    chordFraction: quantity("dimensionless", { description: "Its chord over that of the wing.", minimum: 0.02, maximum: 0.8 }),
    deflection: quantity("angle", { description: "Trailing edge down positive.", minimum: -1.2, maximum: 1.2 }),
    side: z
      .enum(["both", "left", "right", "opposite"])
      .default("both")
      .meta({ description: "Where it is; opposite: as given on the right, the other way on the left." }),
  })
  .refine(({ from, to }) => from < to, { error: "a flap must end farther out than it begins", path: ["to"] });

/** A wing, written out. */
export const writtenWing = z
  .strictObject({
    area: quantity("area", { description: "Reference area.", minimum: 1e-4, maximum: 1e4 }),
    span: quantity("length", { description: "From tip to tip.", minimum: 0.02, maximum: 300 }),
    planform: z.enum(["trapezoidal", "elliptic"]).default("trapezoidal").meta({ description: "Shape from above." }),
    taper: quantity("dimensionless", {
      description: "Tip chord over root chord; not used for an elliptic wing.",
      minimum: 0.05,
      maximum: 2,
    }).default(1),
    sweep: quantity("angle", { description: "Of the quarter chord, aft positive.", minimum: -0.8, maximum: 0.8 }).default(0),
    twist: quantity("angle", { description: "Tip against root, nose up positive, linear between.", minimum: -0.5, maximum: 0.5 }).default(
      0,
    ),
    incidence: quantity("angle", {
      description: "Root chord against the line from which angles are measured.",
      minimum: -0.8,
      maximum: 0.8,
    }).default(0),
    section: sectionInput.default("naca-0012"),
    flaps: z.array(flap).max(20).default([]).meta({ description: "Plain trailing-edge flaps and ailerons." }),
  })
  .refine(({ area, span }) => (span * span) / area >= 0.5 && (span * span) / area <= 100, {
    error: "the aspect ratio, span squared over area, must lie between 0.5 and 100",
    path: ["span"],
  })
  .meta({ label: "Written out" });

export const wingOfAircraft = z
  .strictObject({
    aircraft: z.string().min(1).max(1000).meta({ description: "Aircraft file of the open project.", reference: "aircraft" }),
    part: partInput("Which surface."),
  })
  .meta({ label: "From this project" });

const liftingLine = z
  .strictObject({
    kind: z.literal("lifting-line"),
    stations: z.int().min(5).max(121).default(31).meta({ description: "Stations from tip to tip." }),
    shortWing: z
      .boolean()
      .default(true)
      .meta({ description: "Stream bent along the chord of a short wing: slope of lift by Helmbold, not by the plain lifting line." }),
  })
  .meta({ label: "Lifting line with the section" });

const oswald = z
  .strictObject({
    kind: z.literal("oswald"),
    efficiency: quantity("dimensionless", {
      description: "Oswald efficiency e of C_L²/(π A e); 0.8 when absent.",
      minimum: 0.1,
      maximum: 1.5,
    }).optional(),
    zeroLiftDrag: quantity("dimensionless", {
      description: "Drag coefficient without lift; the least of the section when absent.",
      minimum: 1e-4,
      maximum: 1,
    }).optional(),
    liftSlope: quantity("dimensionless", {
      description: "Slope of lift per radian; from aspect ratio, sweep and section when absent.",
      minimum: 0.3,
      maximum: 8,
    }).optional(),
    zeroLiftAngle: quantity("angle", {
      description: "Angle of the root chord without lift; the section's when absent.",
      minimum: -0.4,
      maximum: 0.4,
    }).optional(),
    maximumLiftCoefficient: quantity("dimensionless", {
      description: "Largest lift coefficient; nine tenths of the section's, and flaps on top, when absent.",
      minimum: 0.2,
      maximum: 5,
    }).optional(),
  })
  .meta({ label: "Parabolic polar" });

export const wingMethod = z.union([liftingLine, oswald]);

export type WrittenWing = z.infer<typeof writtenWing>;
export type WingMethod = z.infer<typeof wingMethod>;
