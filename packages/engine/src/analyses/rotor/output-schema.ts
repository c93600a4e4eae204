import { z } from "zod";
import { domainOutputs } from "../../published/index.ts";
import { quantity } from "../../quantities/index.ts";

const one = (description: string) => quantity("dimensionless", { description });
const force = (description: string) => quantity("force", { description });
const angle = (description: string) => quantity("angle", { description });
const moment = (description: string) => quantity("torque", { description });

export const rotorStates = ["normal", "vortex ring", "windmill", "autorotating"] as const;

/** What is told of every operating point. */
const pointFields = {
  thrust: force("Along the shaft, up."),
  hForce: force("Across the shaft, aft."),
  sideForce: force("Across the shaft, towards the advancing side."),
  torque: quantity("torque", { description: "Torque that the shaft must give." }),
  power: quantity("power", { description: "Power that the shaft must give." }),
  inducedPower: quantity("power", { description: "Part of the power spent on induced velocity." }),
  profilePower: quantity("power", { description: "Part spent on section drag." }),
  lift: force("Across the stream."),
  drag: force("Along the stream."),
  ct: one("Thrust over density, disc area and tip speed squared."),
  ch: one("H-force, likewise."),
  cq: one("Torque, likewise and over radius."),
  cl: one("Lift over dynamic pressure and disc area; none without airspeed.").nullable(),
  cd: one("Drag, likewise.").nullable(),
  liftToDrag: one("Lift over drag; none without airspeed.").nullable(),
  solidity: one("Blade area over disc area, chord weighted with the radius squared."),
  bladeLoading: one("Thrust coefficient over solidity."),
  torqueLoading: one("Torque coefficient over solidity."),
  advanceRatio: one("Airspeed times cosine of shaft angle over tip speed."),
  axialRatio: one(
    "Speed along the disc's normal over induced velocity in hover at this thrust: climb positive; none without thrust.",
  ).nullable(),
  inducedRatio: one("Mean induced velocity over that in hover at this thrust; none without thrust.").nullable(),
  figureOfMerit: one("Ideal over actual power in hover; none with airspeed or without positive thrust and torque.").nullable(),
  inducedVelocity: quantity("speed", { description: "Mean induced velocity, down through the disc." }),
  heightAboveGround: quantity("length", { description: "Height of the disc above the ground; none far from it." }).nullable(),
  airspeed: quantity("speed", { description: "Size of the free stream." }),
  climbRate: quantity("speed", { description: "Speed along the shaft, up positive." }),
  rotationRate: quantity("rotationRate", { description: "Rotation rate." }),
  tipSpeed: quantity("speed", { description: "Rotation rate times radius." }),
  collective: angle("Blade pitch at 0.75 of the radius; good to 1 to 1.5 degrees at given thrust."),
  cyclicCosine: angle("Cyclic pitch relative to the plane normal to the shaft, part with the cosine of azimuth."),
  cyclicSine: angle("The part with the sine of azimuth."),
  shaftAngle: angle("Shaft axis to the normal of the stream, positive tilted back."),
  discAngle: angle("Tip-path plane to the stream, positive tilted back."),
  coning: angle("Upward angle of the blades; the precone when teetering."),
  flapLongitudinal: angle("Tip-path plane relative to the plane normal to the shaft, positive tilted back."),
  flapLateral: angle("The same, positive down on the advancing side."),
  hubPitchMoment: moment("Moment of the blades on the hub, nose up positive; none passes a hinge at the shaft."),
  hubRollMoment: moment("Moment on the hub, positive down on the advancing side."),
  state: z.enum(rotorStates).meta({
    description:
      "Autorotating: no shaft torque. Vortex ring: descending at 0.4 to 1.6 hover induced velocities, with less than 1 of it along the disc. Windmill: the shaft takes torque from the rotor. Normal: all else.",
  }),
  advancingTipMach: one("Mach number of the advancing tip."),
  tipMach: one("Tip speed over the speed of sound."),
  reynoldsNumber: one("Reynolds number of the chord at 0.75 of the radius, mean over the turn."),
  centrifugalForce: force("Centrifugal force of one blade at its root, without coning; none unless its mass is given.").nullable(),
  airspeedBandLow: quantity("speed", {
    description:
      "Lowest airspeed that the errors of published checks leave open; none unless the airspeed was sought at which the air alone turns the rotor under a given thrust.",
  }).nullable(),
  airspeedBandHigh: quantity("speed", { description: "Highest such airspeed." }).nullable(),
};

/** What is found by a further search, or is long: of a point alone, of the first solved row of a sweep. */
const aloneFields = {
  largestThrust: force(
    "First maximum of thrust over collective at this rotor speed, disc angle and airspeed; none where not found.",
  ).nullable(),
  largestThrustCollective: angle("Collective of that; beyond it the rotor is stalled.").nullable(),
  spanwise: z
    .strictObject({
      radiusFraction: z.array(one("Distance from the shaft over radius.")),
      thrust: z.array(one("Thrust coefficient per radius fraction, mean over the turn.")),
      torque: z.array(one("Torque coefficient per radius fraction.")),
      advancingAngle: z.array(angle("Angle of attack on the advancing side.")),
      retreatingAngle: z.array(angle("Angle of attack on the retreating side.")),
    })
    .meta({ description: "Along the blade, root to tip." }),
  azimuthal: z
    .strictObject({
      azimuth: z.array(angle("Of the blade, 0 aft, the way it turns.")),
      thrust: z.array(one("Thrust of one blade there, as the coefficient of a rotor whose blades all were.")),
      torque: z.array(one("Torque coefficient, likewise.")),
      flapMoment: z.array(one("Moment of lift about the shaft, likewise, over radius.")),
    })
    .meta({ description: "Around the turn." }),
  discMap: z
    .strictObject({
      azimuth: z.array(angle("Of the blade, 0 aft, the way it turns.")),
      radiusFraction: z.array(one("Distance from the shaft over radius.")),
      angleOfAttack: z.array(angle("Angle of attack, azimuth by azimuth, root to tip.")),
      reynoldsNumber: z.array(one("Section Reynolds number in the same order.")),
      machNumber: z.array(one("Section Mach number in the same order.")),
      thrust: z.array(one("Thrust coefficient per radius fraction in the same order.")),
    })
    .meta({ description: "Over the disc." }),
  airspeedBandChecks: z
    .array(
      z.strictObject({
        check: z.string().meta({ description: "Published check." }),
        title: z.string().meta({ description: "Its short name." }),
        quantity: z.string().meta({ description: "What it compares." }),
        factor: one("Its largest error as a factor on the airspeed, above 1 whichever way it went."),
        distance: one("Distance of this state from its range; the factor is raised to 1 plus this."),
      }),
    )
    .meta({ description: "Errors that the band of the airspeed is made of, the one that decides first; empty without a band." }),
  torqueRoots: z
    .array(
      z.strictObject({
        shaftAngle: angle("Shaft angle at which the torque is 0."),
        collective: angle("Collective there."),
        thrust: force("Thrust there."),
        liftToDrag: one("Lift over drag there; none without airspeed.").nullable(),
        taken: z.boolean().meta({ description: "Whether it is the one answered with." }),
        holdsSpeed: z.boolean().meta({ description: "Whether a rotor that turns faster is slowed, so that it keeps this rotation rate." }),
      }),
    )
    .meta({
      description:
        "Every shaft angle without torque, from climb to descent, or every collective, from low up; empty unless autorotation was asked for at a rotation rate with one of the two free.",
    }),
};

type Nullable<Fields extends z.ZodRawShape> = { readonly [Name in keyof Fields]: z.ZodNullable<Fields[Name]> };

function nullable<Fields extends Record<string, z.ZodType>>(fields: Fields): Nullable<Fields> {
  return Object.fromEntries(Object.entries(fields).map(([name, field]) => [name, field.nullable()])) as unknown as Nullable<Fields>;
}

const rowFields = {
  ...pointFields,
  largestThrust: aloneFields.largestThrust,
  largestThrustCollective: aloneFields.largestThrustCollective,
};

const rotorMeasures = z.strictObject(rowFields);

const rotorRow = z.strictObject({
  ...nullable(rowFields),
  problem: z.string().nullable().meta({ description: "Why this row has no numbers; none where it has." }),
});

const rotorPoint = z.strictObject({ ...pointFields, ...aloneFields, domain: domainOutputs });

export const rotorOutputs = z.strictObject({
  ...rotorPoint.shape,
  swept: z.array(z.string()).meta({ description: "Inputs of which lists were given; empty for a single point." }),
  rows: z.array(rotorRow).meta({
    description:
      "Every point of the sweep in its order; of a single point that one. The fields beside are those of the first row with numbers.",
  }),
});

/** The numbers of a point that was found. */
export type RotorMeasures = z.infer<typeof rotorMeasures>;
export type RotorPointOutputs = z.infer<typeof rotorPoint>;
export type RotorRow = z.infer<typeof rotorRow>;
export type RotorOutputs = z.infer<typeof rotorOutputs>;

/** A row of a point that has no solution: what was held there, and the reason. */
export function unsolvedRow(problem: string, held: Readonly<Partial<Record<string, unknown>>> = {}): RotorRow {
  const names = Object.keys(rowFields);
  const entries = names.map((name): [string, number | null] => {
    const value = held[name === "torque" ? "shaftTorque" : name];
    return [name, typeof value === "number" ? value : null];
  });
  return { ...(Object.fromEntries(entries) as Omit<RotorRow, "problem">), problem };
}
