import { z } from "zod";
import { quantity } from "../../quantities/index.ts";
import { partInput } from "../inputs/chosen-part.ts";
import { sectionInput } from "../inputs/section-input.ts";
import { tableInput } from "../inputs/table-input.ts";

const diameter = quantity("length", { description: "Diameter D.", minimum: 0.02, maximum: 10 }).meta({ columnNames: ["D"] });
const chord = quantity("length", { description: "Chord.", exclusiveMinimum: 0, maximum: 2 });
const chordFraction = quantity("dimensionless", { description: "Chord over radius, c/R.", exclusiveMinimum: 0, maximum: 1 });
const pitchBound = 1.6;

const station = z.strictObject({
  radiusFraction: quantity("dimensionless", { description: "Distance from the shaft over radius, r/R.", minimum: 0.01, maximum: 1 }).meta({
    columnNames: ["r/R", "x"],
  }),
  chord: chord.optional().meta({ columnNames: ["c"] }),
  chordFraction: chordFraction.optional().meta({ columnNames: ["c/R", "chord/R"] }),
  pitchAngle: quantity("angle", {
    description: "Chord to the plane of the disc; absent where one pitch length is given for the propeller.",
    minimum: -pitchBound,
    maximum: pitchBound,
  })
    .optional()
    .meta({ columnNames: ["beta", "blade angle", "pitch", "twist"] }),
  section: sectionInput.optional().meta({ description: "Section here, where it differs from the blade's; blended between stations." }),
});

const rotationRateLimit = quantity("rotationRate", {
  description: "Highest permitted rotation rate.",
  exclusiveMinimum: 0,
  maximum: 20_000,
}).optional();

const foldedDragArea = quantity("area", {
  description: "Drag area with blades folded, hub included; from the blades' area by skin friction when absent.",
  minimum: 0,
  maximum: 10,
}).optional();

const writtenPropeller = z
  .strictObject({
    diameter,
    blades: z
      .int()
      .min(1)
      .max(12)
      .meta({ description: "Number of blades.", columnNames: ["blade count", "number of blades", "B"] }),
    stations: z
      .array(station)
      .min(1)
      .max(80)
      .optional()
      .meta({ description: "Chord, pitch angle and section along the blade, from the shaft outward; straight between." }),
    pitch: quantity("length", {
      description: "Advance per turn without slip, the same at every radius: pitch angle = atan(pitch/(2π r)).",
      minimum: -10,
      maximum: 20,
    }).optional(),
    chord: chord.optional().meta({ description: "One chord for the whole blade, where stations give none.", columnNames: ["c"] }),
    chordFraction: chordFraction.optional().meta({ description: "The same over radius, c/R.", columnNames: ["c/R"] }),
    rootCutout: quantity("dimensionless", {
      description: "Inner end of the blades over radius; the first station, or 0.15, when absent.",
      minimum: 0.02,
      maximum: 0.6,
    }).optional(),
    section: sectionInput.optional(),
    sectionDragIncrement: quantity("dimensionless", {
      description: "Added to the section's drag coefficient at every angle.",
      minimum: 0,
      maximum: 0.1,
    }).default(0),
    pitchChange: quantity("angle", {
      description: "Blades turned about their own axis by this, more pitch positive.",
      minimum: -pitchBound,
      maximum: pitchBound,
    }).default(0),
    foldedDragArea,
    rotationRateLimit,
  })
  .superRefine((given, context) => {
    const complain = (path: (string | number)[], message: string): void => context.addIssue({ code: "custom", path, message });
    const { stations } = given;
    if (given.chord !== undefined && given.chordFraction !== undefined) complain(["chordFraction"], "chord or chordFraction, not both");
    if (!stations && given.pitch === undefined) complain(["pitch"], "a pitch is needed, here or as pitch angles of stations");
    stations?.forEach((one, i) => {
      const before = stations[i - 1];
      if (before && one.radiusFraction <= before.radiusFraction)
        complain(["stations", i, "radiusFraction"], "radiusFraction must rise from station to station");
      if (one.chord !== undefined && one.chordFraction !== undefined) complain(["stations", i], "chord or chordFraction, not both");
      if (one.pitchAngle === undefined && given.pitch === undefined)
        complain(["stations", i, "pitchAngle"], "a pitch angle is needed here, or a pitch for the whole propeller");
    });
    if (given.pitch !== undefined && stations?.some((one) => one.pitchAngle !== undefined))
      complain(["pitch"], "the stations give pitch angles; leave this pitch out, or those");
    const own = stations?.filter((one) => one.chord !== undefined || one.chordFraction !== undefined).length ?? 0;
    const whole = given.chord !== undefined || given.chordFraction !== undefined;
    const stated = given.chord === undefined ? "chordFraction" : "chord";
    if (stations && own > 0 && whole) complain([stated], "the stations give chords; leave this one out, or those");
    if (stations && own > 0 && own < stations.length) complain(["stations"], "either every station gives a chord or none does");
  })
  .meta({ label: "Written out" });

/** A row of a measured propeller. */
export const propellerMapRow = z.strictObject({
  advanceRatio: quantity("dimensionless", { description: "J = V/(n D), n in turns per second.", minimum: 0, maximum: 10 }).meta({
    columnNames: ["j"],
  }),
  ct: quantity("dimensionless", { description: "C_T = T/(ρ n² D⁴).", minimum: -5, maximum: 5 }).meta({
    columnNames: ["thrust coefficient"],
  }),
  cp: quantity("dimensionless", { description: "C_P = P/(ρ n³ D⁵).", minimum: -10, maximum: 10 }).meta({
    columnNames: ["power coefficient"],
  }),
  rotationRate: quantity("rotationRate", { description: "Rotation rate of this row.", exclusiveMinimum: 0, maximum: 20_000 })
    .optional()
    .meta({ columnNames: ["rpm", "rate"] }),
  reynoldsNumber: quantity("dimensionless", { description: "Reynolds number at 0.75 of the radius.", minimum: 100, maximum: 1e9 })
    .optional()
    .meta({ columnNames: ["re", "reynolds"] }),
});

const measuredPropellerInput = z
  .strictObject({
    diameter,
    table: tableInput(propellerMapRow, {
      description: "Measured coefficients over advance ratio, at one or more rotation rates or Reynolds numbers.",
    }),
    referenceChord: chord.optional().meta({
      description: "Chord at 0.75 of the radius, for the Reynolds number; needed where the table is over Reynolds number.",
    }),
    foldedDragArea: foldedDragArea.meta({ description: "Drag area with blades folded, hub included." }),
    rotationRateLimit,
  })
  .meta({ label: "Measured" });

const aircraftPropeller = z
  .strictObject({
    aircraft: z
      .string()
      .min(1)
      .max(400)
      .meta({ description: "Aircraft file of the project whose propeller is meant.", reference: "aircraft" }),
    part: partInput("Which propeller."),
  })
  .meta({ label: "From this project" });

export const propellerInput = z
  .union([writtenPropeller, measuredPropellerInput, aircraftPropeller])
  .meta({ description: "The propeller: by its blades, by a measured table, or that of an aircraft of this project." });

export type PropellerInput = z.infer<typeof propellerInput>;
export type WrittenPropeller = z.infer<typeof writtenPropeller>;
export type MeasuredPropellerInput = z.infer<typeof measuredPropellerInput>;
