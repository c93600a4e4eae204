import { z } from "zod";
import { aircraftDefinition } from "../../aircraft/index.ts";
import { quantity } from "../../quantities/index.ts";

const length = (description: string) => quantity("length", { description });
const inertia = (description: string) => quantity("inertia", { description });
const half = "Half-width of its 95 % interval.";

/** A computed number with the interval that follows from the ± of the file. */
const withHalf = (value: z.ZodNumber, kind: "mass" | "length" | "inertia" | "angle") =>
  z.strictObject({ value, halfWidth: quantity(kind, { description: half, minimum: 0 }) });

const verdict = z
  .enum(["inside", "inside-unsure", "outside-unsure", "outside"])
  .describe("Whether the centre of gravity lies between its limits; unsure where its interval reaches across one.");

const centreLimit = z.strictObject({
  side: z.enum(["fore", "aft"]).describe("Which end it is."),
  x: length("Forward of the datum."),
  from: z.string().describe("Where the limit comes from."),
});

export const balanceRow = z.strictObject({
  blocks: z.int().describe("Battery blocks of the pack."),
  payload: z.string().describe("Payload record."),
  place: z.string().describe("Where the payload sits."),
  mass: withHalf(quantity("mass", { description: "Mass ready to take off." }), "mass"),
  centre: z
    .strictObject({
      x: withHalf(length("Forward of the datum."), "length"),
      y: withHalf(length("Right of the datum."), "length"),
      z: withHalf(length("Below the datum."), "length"),
    })
    .describe("Centre of gravity."),
  inertia: z
    .strictObject({
      x: withHalf(inertia("About the forward axis."), "inertia"),
      y: withHalf(inertia("About the right axis."), "inertia"),
      z: withHalf(inertia("About the down axis."), "inertia"),
      product: withHalf(inertia("Integral of z x over mass."), "inertia"),
    })
    .describe("About the centre of gravity, in body axes."),
  fore: centreLimit.describe("Foremost permitted centre of gravity."),
  aft: centreLimit.describe("Rearmost permitted centre of gravity."),
  foreMargin: length("From the centre of gravity to the fore limit; negative beyond it."),
  aftMargin: length("From the aft limit to the centre of gravity; negative beyond it."),
  verdict,
  binding: z.string().describe("Which limit it comes nearest to, or exceeds."),
  tooHeavy: z.boolean().describe("Above the largest permitted take-off mass."),
});

const suspensionRow = z.strictObject({
  id: z.string().describe("Name of the measurement."),
  blocks: z.int().describe("Battery blocks on board."),
  payload: z.string().nullable().describe("Payload record on board; null for none."),
  measured: withHalf(quantity("angle", { description: "Measured angle of the forward axis above the horizontal." }), "angle"),
  measuredStated: z.boolean().describe("Whether the file states how sure the measurement is."),
  computed: withHalf(quantity("angle", { description: "Angle that follows from the masses of the file." }), "angle"),
  difference: withHalf(quantity("angle", { description: "Measured less computed." }), "angle"),
  agrees: z.boolean().describe("Whether the difference lies within its 95 % interval."),
  centre: withHalf(length("Centre of gravity by the file, forward of the datum."), "length"),
  measuredCentre: withHalf(length("Centre of gravity that the measured angle means, its height as in the file."), "length"),
  emptyCentre: withHalf(length("Centre of gravity of the empty aircraft that this would mean."), "length"),
});

const breakdownRow = z.strictObject({
  item: z.string().describe("What it is."),
  mass: quantity("mass", { description: "Its mass." }),
  share: quantity("dimensionless", { description: "Share of the whole." }),
  x: length("Forward of the datum."),
  y: length("Right of the datum."),
  z: length("Below the datum."),
  pull: length("How far it pulls the centre of gravity forward from the datum."),
});

export const balanceOutputs = z.strictObject({
  rows: z.array(balanceRow).describe("Every pack, payload and place."),
  now: z.int().describe("Row that the breakdown and the drawing show: the largest pack with the standard payload."),
  worst: z.int().nullable().describe("Row nearest to a limit of the centre of gravity, or farthest beyond; null when all are too heavy."),
  largestMass: quantity("mass", { description: "Largest permitted take-off mass." }),
  paths: z
    .array(
      z.strictObject({
        payload: z.string(),
        place: z.string(),
        points: z.array(
          z.strictObject({ blocks: z.int(), mass: quantity("mass", { description: "Mass." }), x: length("Centre of gravity.") }),
        ),
      }),
    )
    .describe("How mass and centre of gravity move as blocks are put in from the front."),
  breakdown: z.array(breakdownRow).describe("What the row shown consists of."),
  contributions: z
    .array(
      z.strictObject({
        path: z.string().describe("Number of the file."),
        text: z.string().describe("As it is written there."),
        halfWidth: length("Half-width that it alone gives the centre of gravity, fore and aft."),
      }),
    )
    .describe("What the interval of the row shown comes from, largest first."),
  suspension: z.array(suspensionRow).describe("Measured against computed angles of the hanging aircraft."),
  aircraft: aircraftDefinition.describe("The aircraft as it was read, for the drawing."),
});

export type BalanceOutputs = z.infer<typeof balanceOutputs>;
export type BalanceRow = z.infer<typeof balanceRow>;
export type SuspensionRow = z.infer<typeof suspensionRow>;
