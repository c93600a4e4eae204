import { z } from "zod";
import { domainOutputs } from "../../published/index.ts";
import { quantity } from "../../quantities/index.ts";
import { partInput } from "../inputs/chosen-part.ts";
import { sectionInput } from "../inputs/section-input.ts";

const degree = Math.PI / 180;

/** The blade section of an aircraft in the open project. */
const sectionOfAircraft = z
  .strictObject({
    aircraft: z.string().min(1).max(1000).meta({ description: "Aircraft file of the open project.", reference: "aircraft" }),
    part: partInput("Which rotor's section."),
  })
  .meta({ label: "From this project" });

export const sectionInputs = z.strictObject({
  section: z.union([sectionInput, sectionOfAircraft]).meta({
    description:
      "Section: a built-in table, a law of five numbers, a law by thickness and camber with Reynolds number, a table over angle, Reynolds and Mach number, or that of an aircraft.",
  }),
  sectionDragIncrement: quantity("dimensionless", {
    description: "Added to the drag coefficient at every angle: roughness, fabric, joints.",
    minimum: 0,
    maximum: 0.1,
  }).default(0),
  reynoldsNumber: quantity("dimensionless", { description: "Reynolds number on the chord.", minimum: 1000, maximum: 1e8 })
    .default(500_000)
    .meta({ columnNames: ["re", "reynolds"] }),
  machNumber: quantity("dimensionless", { description: "Mach number of the stream.", minimum: 0, maximum: 0.9 })
    .default(0)
    .meta({ columnNames: ["mach", "m"] }),
  angles: z
    .array(quantity("angle", { description: "Angle of attack.", minimum: -Math.PI - 1e-9, maximum: Math.PI + 1e-9 }))
    .min(1)
    .max(2000)
    .default(() => Array.from({ length: 73 }, (_, i) => (i * 0.5 - 16) * degree))
    .meta({
      description: "Angles of attack to compute, −16 to 20 degrees in steps of half a degree when absent.",
      columnNames: ["angle", "alpha", "alphas", "angles of attack"],
    }),
});

export type SectionInputs = z.infer<typeof sectionInputs>;

const one = (description: string) => quantity("dimensionless", { description });

export const sectionRowOutputs = z.strictObject({
  angle: quantity("angle", { description: "Angle of attack." }),
  liftCoefficient: one("Lift over dynamic pressure and chord."),
  dragCoefficient: one("Drag, likewise."),
  momentCoefficient: one("Pitching moment about the quarter chord, nose up, over dynamic pressure and chord squared."),
  liftToDrag: one("Lift over drag; none without drag.").nullable(),
});

export const sectionOutputs = z.strictObject({
  rows: z.array(sectionRowOutputs).meta({ description: "In the order of the angles asked for." }),
  stallAngle: quantity("angle", {
    description: "Angle of the first largest lift; none where lift does not fall within 40 degrees.",
  }).nullable(),
  largestLift: one("Lift coefficient there.").nullable(),
  bestLiftToDrag: one("Largest lift over drag up to stall.").nullable(),
  bestLiftToDragAngle: quantity("angle", { description: "Angle of that." }).nullable(),
  zeroLiftAngle: quantity("angle", { description: "Angle without lift nearest to zero; none within 20 degrees of it." }).nullable(),
  leastDrag: one("Least drag coefficient between no lift and stall.").nullable(),
  liftSlope: one("Slope of lift at the angle without lift, per radian.").nullable(),
  reynoldsNumber: one("Reynolds number at which the section was read: the nearest that it knows."),
  machNumber: one("Mach number."),
  domain: domainOutputs,
});

export type SectionOutputs = z.infer<typeof sectionOutputs>;
