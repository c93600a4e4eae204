import { z } from "zod";
import { quantity } from "../../quantities/index.ts";
import { partInput } from "../inputs/chosen-part.ts";
import { sectionInput } from "../inputs/section-input.ts";

const station = z.strictObject({
  radiusFraction: quantity("dimensionless", { description: "Distance from the shaft over radius.", minimum: 0, maximum: 1 }).meta({
    columnNames: ["r/R", "x"],
  }),
  chord: quantity("length", { description: "Chord here.", exclusiveMinimum: 0, maximum: 3 }).meta({ columnNames: ["c"] }),
  twist: quantity("angle", {
    description: "Built-in pitch here; only differences to 0.75 of the radius count.",
    minimum: -1,
    maximum: 1,
  })
    .default(0)
    .meta({ columnNames: ["theta", "blade angle", "pitch angle"] }),
  section: sectionInput.optional().meta({ description: "Section here, where it differs from the blade's; blended between stations." }),
});

const writtenRotor = z
  .strictObject({
    radius: quantity("length", { description: "Rotor radius.", minimum: 0.05, maximum: 20 }),
    blades: z.int().min(1).max(8).meta({ description: "Number of blades." }),
    chord: quantity("length", {
      description: "Chord; with tipChord the one at the root cut-out.",
      exclusiveMinimum: 0,
      maximum: 3,
    }).optional(),
    tipChord: quantity("length", {
      description: "Chord at the tip of a straight taper, beside chord.",
      exclusiveMinimum: 0,
      maximum: 3,
    }).optional(),
    solidity: quantity("dimensionless", {
      description: "Blades times chord over π times radius, instead of a chord that is the same everywhere.",
      exclusiveMinimum: 0,
      maximum: 0.6,
    }).optional(),
    twist: quantity("angle", {
      description: "Linear twist over one radius, beside chord or solidity: pitch at the tip less pitch at the shaft; washout is negative.",
      minimum: -1,
      maximum: 1,
    }).optional(),
    stations: z
      .array(station)
      .min(1)
      .max(60)
      .optional()
      .meta({ description: "Chord, twist and section along the blade, from the shaft outward, instead of one chord; straight between." }),
    rootCutout: quantity("dimensionless", { description: "Inner end of the blades over radius.", minimum: 0, maximum: 0.6 }),
    precone: quantity("angle", {
      description: "Upward angle built into the blades; without effect on blades hinged at the shaft.",
      minimum: -0.2,
      maximum: 0.3,
    }).default(0),
    articulation: z.enum(["teetering", "hinged", "hingeless", "rigid"]).meta({
      description: "Blades as one beam on a teeter or gimbal, each on a flapping hinge, each held by an elastic root, or not flapping.",
    }),
    hingeOffset: quantity("dimensionless", {
      description:
        "Distance of the flapping hinges from the shaft axis over radius; of a hingeless blade, of the hinge that stands for its root.",
      minimum: 0,
      maximum: 0.3,
    }).default(0),
    flapFrequencyRatio: quantity("dimensionless", {
      description: "Flapping frequency in vacuum over rotation rate, of hingeless blades, instead of flapSpring.",
      minimum: 1,
      maximum: 2,
    }).optional(),
    flapSpring: quantity("torque", {
      description: "Stiffness of the blade root against flapping, torque per radian; with flapInertia or lockNumber.",
      minimum: 0,
      maximum: 1e6,
    }).optional(),
    flapInertia: quantity("inertia", {
      description: "Inertia of one blade about its flapping hinge, instead of the Lock number.",
      exclusiveMinimum: 0,
      maximum: 1e5,
    }).optional(),
    lockNumber: quantity("dimensionless", {
      description: "Lock number of a blade, with the section's slope of lift at Mach 0 and the inertia of one blade about its hinge.",
      exclusiveMinimum: 0,
      maximum: 40,
    }).optional(),
    pitchFlapCoupling: quantity("angle", {
      description: "δ₃: flapping up by an angle lowers the pitch by its tangent times that angle.",
      minimum: -1.2,
      maximum: 1.2,
    }).default(0),
    flapRange: quantity("angle", {
      description: "Flapping, either way, at which a stop is reached; for the limits.",
      exclusiveMinimum: 0,
      maximum: 0.6,
    }).optional(),
    section: sectionInput,
    sectionDragIncrement: quantity("dimensionless", {
      description: "Added to the section's drag coefficient at every angle: roughness, fabric, joints.",
      minimum: 0,
      maximum: 0.1,
    }).default(0),
  })
  .superRefine((given, context) => {
    const complain = (path: string, message: string): void => context.addIssue({ code: "custom", path: [path], message });
    const sizes = [given.chord, given.stations, given.solidity].filter((size) => size !== undefined).length;
    if (sizes === 0) complain("chord", "a chord is needed: chord, solidity or stations");
    if (sizes > 1) complain("stations", "chord, solidity or stations is allowed, not several of them");
    if (given.stations && given.twist !== undefined) complain("twist", "twist beside stations is not allowed; write it in the stations");
    if (given.tipChord !== undefined && given.chord === undefined) complain("tipChord", "tipChord needs chord beside it");
    const places = given.stations?.map((one) => one.radiusFraction) ?? [];
    if (places.some((place, i) => i > 0 && place <= (places[i - 1] ?? 0)))
      complain("stations", "radiusFraction must rise from station to station");
    if (given.lockNumber !== undefined && given.flapInertia !== undefined)
      complain("flapInertia", "lockNumber or flapInertia is allowed, not both");
    flappingComplaints(given, complain);
  })
  .meta({
    label: "Written out",
    description: "The rotor; it turns counter-clockwise seen from above.",
    givens: [
      { given: ["chord"] },
      { given: ["chord", "tipChord", "twist"] },
      { given: ["solidity", "twist"] },
      { given: ["stations"] },
      { given: ["chord", "flapFrequencyRatio"] },
      { given: ["chord", "flapSpring"] },
    ],
    alternatives: [["lockNumber", "flapInertia"]],
  });

interface Flapping {
  readonly articulation: "teetering" | "hinged" | "hingeless" | "rigid";
  readonly hingeOffset: number;
  readonly flapFrequencyRatio?: number | undefined;
  readonly flapSpring?: number | undefined;
}

function flappingComplaints(given: Flapping, complain: (path: string, message: string) => void): void {
  const { articulation, hingeOffset, flapFrequencyRatio, flapSpring } = given;
  const unhinged = articulation === "teetering" || articulation === "rigid";
  if (unhinged && hingeOffset > 0) complain("hingeOffset", "only hinged and hingeless blades have a hinge away from the shaft");
  if (articulation !== "hingeless" && flapFrequencyRatio !== undefined)
    complain("flapFrequencyRatio", "only of hingeless blades; that of hinged ones follows from hingeOffset and flapSpring");
  if (unhinged && flapSpring !== undefined) complain("flapSpring", "only hinged and hingeless blades have a flap spring");
  if (articulation === "hingeless" && flapFrequencyRatio === undefined && flapSpring === undefined)
    complain("flapFrequencyRatio", "hingeless blades need flapFrequencyRatio or flapSpring");
  if (flapFrequencyRatio !== undefined && flapSpring !== undefined)
    complain("flapSpring", "flapFrequencyRatio or flapSpring is allowed, not both");
}

const rotorOfAircraft = z
  .strictObject({
    aircraft: z.string().min(1).max(1000).meta({ description: "Aircraft file of the open project.", reference: "aircraft" }),
    part: partInput("Which rotor."),
    sectionDragIncrement: quantity("dimensionless", {
      description: "Added to the drag coefficient of the aircraft's section.",
      minimum: 0,
      maximum: 0.1,
    }).default(0),
  })
  .meta({ label: "From this project" });

/** A rotor written out, or the one of an aircraft file. */
export const rotorInput = z.union([writtenRotor, rotorOfAircraft]).meta({ description: "The rotor; counter-clockwise seen from above." });

export type WrittenRotor = z.infer<typeof writtenRotor>;
export type RotorInput = z.infer<typeof rotorInput>;
