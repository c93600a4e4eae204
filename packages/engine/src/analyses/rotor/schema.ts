import { z } from "zod";
import { standardAltitudeRange } from "../../environment/atmosphere/index.ts";
import { quantity } from "../../quantities/index.ts";
import { bladeMasses } from "./blade-masses-schema.ts";
import { rotorInput } from "./blade-schema.ts";
import { rotorGivens, rotorQuestion } from "./givens.ts";
import { rotorRowInputs, rowCount, sweepableNames } from "./sweep.ts";

const air = z.strictObject({
  density: quantity("density", { description: "Density of the air.", minimum: 0.05, maximum: 2 }),
  speedOfSound: quantity("speed", {
    description: "Speed of sound; the standard one at sea level when absent.",
    minimum: 250,
    maximum: 400,
  }).optional(),
  dynamicViscosity: quantity("dynamicViscosity", {
    description: "Dynamic viscosity; the standard one at sea level when absent.",
    minimum: 1e-5,
    maximum: 3e-5,
  }).optional(),
});

const tipLoss = z.discriminatedUnion("kind", [
  z.strictObject({ kind: z.literal("prandtl") }),
  z.strictObject({
    kind: z.literal("lift-cutoff"),
    liftRadiusFraction: quantity("dimensionless", {
      description: "No lift outboard of this fraction of the radius; drag stays.",
      minimum: 0.8,
      maximum: 1,
    }),
  }),
]);

const angle = (description: string, bound: number) => quantity("angle", { description, minimum: -bound, maximum: bound });

/** What a rotor can be held at, one value each; the same names hold lists in a sweep. */
const held = {
  airspeed: quantity("speed", { description: "Size of the free stream.", minimum: 0, maximum: 150 }),
  advanceRatio: quantity("dimensionless", {
    description: "Airspeed times cosine of shaft angle over tip speed, instead of the airspeed.",
    minimum: 0,
    maximum: 1.2,
  }),
  climbRate: quantity("speed", {
    description: "Speed along the shaft, up positive; alone it means vertical flight, descent when negative.",
    minimum: -100,
    maximum: 100,
  }),
  shaftAngle: angle("Shaft axis to the normal of the stream, positive tilted back: the stream comes up through the disc.", Math.PI / 2),
  discAngle: angle("Tip-path plane to the stream, positive tilted back, instead of the shaft angle.", Math.PI / 2),
  rotationRate: quantity("rotationRate", { description: "Rotation rate.", exclusiveMinimum: 0, maximum: 3000 }),
  tipSpeed: quantity("speed", {
    description: "Rotation rate times radius, instead of the rotation rate.",
    exclusiveMinimum: 0,
    maximum: 400,
  }),
  collective: angle("Blade pitch at 0.75 of the radius.", 0.7),
  thrust: quantity("force", { description: "Force along the shaft.", minimum: 0, maximum: 1e6 }),
  ct: quantity("dimensionless", {
    description: "Thrust over density, disc area and tip speed squared, instead of the thrust.",
    minimum: 0,
    maximum: 0.1,
  }),
  lift: quantity("force", { description: "Force across the stream, instead of the thrust.", minimum: 0, maximum: 1e6 }),
  shaftTorque: quantity("torque", {
    description: "Torque that the shaft gives to the rotor; 0 is autorotation, a brake or generator is negative.",
    minimum: -1e5,
    maximum: 1e5,
  }),
  power: quantity("power", { description: "Power that the shaft gives to the rotor, instead of the torque.", minimum: -1e7, maximum: 1e7 }),
};

const heightAboveGround = quantity("length", {
  description: "Height of the rotor's disc above even ground; far from it when absent.",
  exclusiveMinimum: 0,
  maximum: 1e4,
});

/** Most points of one sweep. */
const mostRows = 500;
const list = <Schema extends z.ZodType>(schema: Schema) => z.array(schema).min(1).max(mostRows).optional();

const sweep = z.strictObject({
  airspeed: list(held.airspeed),
  advanceRatio: list(held.advanceRatio),
  climbRate: list(held.climbRate),
  shaftAngle: list(held.shaftAngle),
  discAngle: list(held.discAngle),
  rotationRate: list(held.rotationRate),
  tipSpeed: list(held.tipSpeed),
  collective: list(held.collective),
  thrust: list(held.thrust),
  ct: list(held.ct),
  lift: list(held.lift),
  shaftTorque: list(held.shaftTorque),
  power: list(held.power),
  heightAboveGround: list(heightAboveGround),
  combine: z
    .enum(["every", "together"])
    .default("every")
    .meta({ description: "Several lists: every value with every other, the last list fastest, or first with first, second with second." }),
});

/** Of each pair one stands for the other, or rules it out. */
const alternatives = [
  ["air", "altitude"],
  ["inflow", "inflowGradient"],
  ["inflow", "rootLoss"],
  ["inflow", "swirl"],
  ["tipLoss", "rootLoss"],
  ["cyclicTrim", "cyclicCosine"],
  ["cyclicTrim", "cyclicSine"],
];

/** A list in place of a value makes a question too: the usual one, over collective. */
const usualSweep = { given: ["airspeed", "shaftAngle", "rotationRate", "sweep"], solved: ["rows"] };

export const rotorInputs = z
  .strictObject({
    rotor: rotorInput,
    blade: bladeMasses.optional(),
    air: air.optional().meta({ description: "The air by its density, instead of an altitude." }),
    altitude: quantity("length", {
      description: "Geopotential altitude of the standard atmosphere; 0 when neither air nor altitude is given.",
      minimum: standardAltitudeRange.lowest,
      maximum: standardAltitudeRange.highest,
      role: "condition.altitude",
    }).optional(),
    airspeed: held.airspeed.optional(),
    advanceRatio: held.advanceRatio.optional(),
    climbRate: held.climbRate.optional(),
    shaftAngle: held.shaftAngle.optional(),
    discAngle: held.discAngle.optional(),
    rotationRate: held.rotationRate.optional(),
    tipSpeed: held.tipSpeed.optional(),
    collective: held.collective.optional(),
    thrust: held.thrust.optional(),
    ct: held.ct.optional(),
    lift: held.lift.optional(),
    shaftTorque: held.shaftTorque.optional(),
    power: held.power.optional(),
    heightAboveGround: heightAboveGround.optional(),
    sweep: sweep.optional().meta({ description: "Lists of values for any of these, in their place: one row for each." }),
    cyclicCosine: angle("Cyclic pitch relative to the plane normal to the shaft, part with the cosine of azimuth (0 aft).", 0.3).default(0),
    cyclicSine: angle("The part with the sine of azimuth.", 0.3).default(0),
    cyclicTrim: z
      .enum(["held", "no-flapping"])
      .default("held")
      .meta({ description: "Cyclic pitch as given, or set so that the disc stays normal to the shaft." }),
    tipLoss: tipLoss.optional().meta({ description: "How lift is lost at the blade tip; Prandtl's function when absent." }),
    inducedPowerFactor: quantity("dimensionless", {
      description:
        "Factor on thrust in momentum theory; when absent 1.2 with annular inflow, where it fades to 1 in descent, and 1 with a law around the mean.",
      minimum: 1,
      maximum: 2,
    }).optional(),
    inflow: z.enum(["drees", "pitt-peters", "uniform", "annular"]).optional().meta({
      description:
        "How induced velocity varies over the disc: by a law around its mean, or ring by ring from the ring's own thrust; annular when absent.",
    }),
    inflowGradient: z
      .enum(["drees", "pitt-peters", "uniform"])
      .optional()
      .meta({ description: "How annular inflow varies around each ring; Drees' law when absent." }),
    rootLoss: z
      .boolean()
      .optional()
      .meta({ description: "Loss of lift at the blade's inner end by Prandtl's function; with annular inflow." }),
    stallDelay: z
      .boolean()
      .optional()
      .meta({ description: "Rotation keeps the flow near the root from separating: more lift beyond stall there." }),
    swirl: z.boolean().optional().meta({ description: "Velocity induced around the shaft by the torque; with annular inflow." }),
    radialFlow: z
      .union([z.enum(["resultant", "friction", "off"]).meta({ label: "Law" }), z.boolean().meta({ label: "On or off" })])
      .optional()
      .meta({ description: "Drag of the flow along the blade; true means resultant, its absence friction." }),
    azimuths: z.int().min(8).max(96).default(24).meta({ description: "Blade positions per turn." }),
    radialElements: z.int().min(4).max(64).default(16).meta({ description: "Elements per blade." }),
  })
  .superRefine((inputs, context) => {
    const complain = (path: string[], message: string): void => context.addIssue({ code: "custom", path, message });
    const complaint = givensComplaint(inputs);
    if (complaint) complain(complaint.path, complaint.message);
    if (inputs.air && inputs.altitude !== undefined) complain(["air"], "air or altitude is allowed, not both");
    const steepest = Math.max(
      ...[inputs.shaftAngle, inputs.discAngle, ...(inputs.sweep?.shaftAngle ?? []), ...(inputs.sweep?.discAngle ?? [])].map((one) =>
        Math.abs(one ?? 0),
      ),
    );
    const byRatio = inputs.advanceRatio !== undefined || inputs.sweep?.advanceRatio !== undefined;
    if (byRatio && steepest > 1.4)
      complain(["advanceRatio"], "with the shaft within 10 degrees of the stream the advance ratio says nothing; give the airspeed");
    for (const name of ["inflowGradient", "rootLoss", "swirl"] as const) {
      if (inputs[name] && (inputs.inflow ?? "annular") !== "annular") complain([name], `${name} goes with annular inflow only`);
    }
    if (inputs.rootLoss && (inputs.tipLoss?.kind ?? "prandtl") !== "prandtl") complain(["rootLoss"], "rootLoss needs Prandtl's tip loss");
    if (inputs.cyclicTrim === "no-flapping" && (inputs.cyclicCosine !== 0 || inputs.cyclicSine !== 0))
      complain(["cyclicTrim"], "with no-flapping the cyclic pitch is computed; leave cyclicCosine and cyclicSine out");
  })
  .meta({ givens: [...rotorGivens, usualSweep], alternatives });

export type RotorInputs = z.infer<typeof rotorInputs>;

/** The first thing wrong with what is held and what is swept. */
function givensComplaint(inputs: RotorInputs): { readonly path: string[]; readonly message: string } | undefined {
  const swept = sweepableNames.filter((name) => inputs.sweep?.[name as keyof typeof inputs.sweep] !== undefined);
  const given = inputs as Readonly<Record<string, unknown>>;
  if (inputs.sweep && swept.length === 0)
    return { path: ["sweep"], message: `a sweep needs a list of one of ${sweepableNames.join(", ")}` };
  const both = swept.find((name) => given[name] !== undefined);
  if (both !== undefined) return { path: ["sweep", both], message: `${both} is given as one value and as a list; leave one out` };
  const count = rowCount(inputs.sweep);
  if (count === undefined) return { path: ["sweep"], message: "lists taken together must be equally long" };
  if (count > mostRows) return { path: ["sweep"], message: `a sweep has at most ${mostRows} points, this one ${count}` };
  const rows = rotorRowInputs(inputs);
  for (const row of rows) {
    const question = rotorQuestion(row, "radius" in inputs.rotor ? inputs.rotor.radius : 1);
    if ("complaint" in question) return { path: [], message: question.complaint };
  }
  return undefined;
}
