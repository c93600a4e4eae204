import { z } from "zod";
import { builtInSectionNames } from "../aerodynamics/airfoil-section/index.ts";
import { standardAltitudeRange } from "../environment/atmosphere/index.ts";
import { quantity } from "../quantities/index.ts";
import { rotorGivens, rotorGivensComplaint } from "./rotor-givens.ts";

const genericSection = z
  .strictObject({
    kind: z.literal("generic"),
    liftSlope: quantity("dimensionless", { description: "Slope of lift at Mach 0, per radian.", exclusiveMinimum: 0, maximum: 8 }),
    cd0: quantity("dimensionless", { description: "Drag coefficient at zero angle.", exclusiveMinimum: 0, maximum: 0.5 }),
    cd1: quantity("dimensionless", {
      description: "Drag per radian of angle, with its sign: lowest drag then lies to one side.",
      minimum: -0.1,
      maximum: 0.1,
    }).default(0),
    cd2: quantity("dimensionless", { description: "Drag per radian of angle squared.", minimum: 0, maximum: 5 }).default(0),
    stallAngle: quantity("angle", { description: "Angle at which the flow is half separated.", minimum: 0.05, maximum: 0.6 }),
  })
  .refine((section) => section.cd1 ** 2 < 4 * section.cd0 * Math.max(section.cd2, 1e-12) || section.cd1 === 0, {
    error: "drag must stay positive at every angle: cd1² must be less than 4 cd0 cd2",
  })
  .meta({ label: "Five numbers" });

const station = z.strictObject({
  radiusFraction: quantity("dimensionless", { description: "Distance from the shaft over radius.", minimum: 0, maximum: 1 }),
  chord: quantity("length", { description: "Chord here.", exclusiveMinimum: 0, maximum: 3 }),
  twist: quantity("angle", {
    description: "Built-in pitch here; only differences to 0.75 of the radius count.",
    minimum: -1,
    maximum: 1,
  }).default(0),
});

const rotor = z
  .strictObject({
    radius: quantity("length", { description: "Rotor radius.", minimum: 0.05, maximum: 20 }),
    blades: z.int().min(1).max(8).meta({ description: "Number of blades." }),
    chord: quantity("length", { description: "Chord of a blade without taper or twist.", exclusiveMinimum: 0, maximum: 3 }).optional(),
    stations: z
      .array(station)
      .min(1)
      .max(60)
      .optional()
      .meta({ description: "Chord and twist along the blade, from the shaft outward, instead of one chord; straight between." }),
    rootCutout: quantity("dimensionless", { description: "Inner end of the blades over radius.", minimum: 0, maximum: 0.6 }),
    precone: quantity("angle", {
      description: "Upward angle built into the blades; without effect on hinged blades.",
      minimum: -0.2,
      maximum: 0.3,
    }).default(0),
    articulation: z.enum(["teetering", "hinged"]).meta({
      description: "Blades as one beam on a teeter or gimbal, or each on a flapping hinge at the shaft axis.",
    }),
    hingeOffset: quantity("dimensionless", {
      description: "Distance of the flapping hinges from the shaft axis over radius; only 0 is computed.",
      minimum: 0,
      maximum: 0.5,
    }).default(0),
    lockNumber: quantity("dimensionless", {
      description: "Lock number of a hinged blade, with the section's slope of lift at Mach 0 and the inertia of one blade.",
      exclusiveMinimum: 0,
      maximum: 40,
    }).optional(),
    section: z
      .union([z.enum(builtInSectionNames).meta({ label: "Built in" }), genericSection])
      .meta({ description: "Blade section: one of the built-in tables or a law of five numbers." }),
    sectionDragIncrement: quantity("dimensionless", {
      description: "Added to the section's drag coefficient at every angle: roughness, fabric, joints.",
      minimum: 0,
      maximum: 0.1,
    }).default(0),
  })
  .superRefine((given, context) => {
    const complain = (path: string, message: string): void => context.addIssue({ code: "custom", path: [path], message });
    if (given.hingeOffset > 0) complain("hingeOffset", "a flapping hinge away from the shaft axis is not computed; only 0 is allowed");
    if (given.chord === undefined && given.stations === undefined) complain("chord", "a chord is needed, here or in stations");
    if (given.chord !== undefined && given.stations !== undefined) complain("stations", "chord or stations is allowed, not both");
    const places = given.stations?.map((one) => one.radiusFraction) ?? [];
    if (places.some((place, i) => i > 0 && place <= (places[i - 1] ?? 0)))
      complain("stations", "radiusFraction must rise from station to station");
  })
  .meta({
    description: "The rotor; it turns counter-clockwise seen from above.",
    givens: [{ given: ["chord"] }, { given: ["stations"] }],
  });

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

export const rotorInputs = z
  .strictObject({
    rotor,
    air: air.optional().meta({ description: "The air by its density, instead of an altitude." }),
    altitude: quantity("length", {
      description: "Geopotential altitude of the standard atmosphere; 0 when neither air nor altitude is given.",
      minimum: standardAltitudeRange.lowest,
      maximum: standardAltitudeRange.highest,
      role: "condition.altitude",
    }).optional(),
    airspeed: quantity("speed", { description: "Size of the free stream.", minimum: 0, maximum: 150 }).optional(),
    advanceRatio: quantity("dimensionless", {
      description: "Airspeed times cosine of shaft angle over tip speed, instead of the airspeed.",
      minimum: 0,
      maximum: 1.2,
    }).optional(),
    shaftAngle: angle(
      "Shaft axis to the normal of the stream, positive tilted back: the stream comes up through the disc.",
      Math.PI / 2,
    ).optional(),
    rotationRate: quantity("rotationRate", { description: "Rotation rate.", exclusiveMinimum: 0, maximum: 3000 }).optional(),
    collective: angle("Blade pitch at 0.75 of the radius.", 0.7).optional(),
    thrust: quantity("force", { description: "Force along the shaft.", minimum: 0, maximum: 1e6 }).optional(),
    shaftTorque: quantity("torque", {
      description: "Torque that the shaft gives to the rotor; 0 is autorotation.",
      minimum: -1e5,
      maximum: 1e5,
    }).optional(),
    cyclicCosine: angle("Cyclic pitch relative to the plane normal to the shaft, part with the cosine of azimuth (0 aft).", 0.3).default(0),
    cyclicSine: angle("The part with the sine of azimuth.", 0.3).default(0),
    tipLoss: tipLoss.default({ kind: "prandtl" }).meta({ description: "How lift is lost at the blade tip." }),
    inducedPowerFactor: quantity("dimensionless", {
      description: "Factor on thrust in momentum theory; 1 where tip loss and inflow distribution are computed.",
      minimum: 1,
      maximum: 2,
    }).default(1),
    inflow: z
      .enum(["drees", "pitt-peters", "uniform"])
      .default("drees")
      .meta({ description: "How induced velocity varies over the disc." }),
    radialFlow: z
      .union([z.enum(["resultant", "friction", "off"]).meta({ label: "Law" }), z.boolean().meta({ label: "On or off" })])
      .default("resultant")
      .meta({ description: "Drag of the flow along the blade; true means resultant." }),
    azimuths: z.int().min(8).max(96).default(24).meta({ description: "Blade positions per turn." }),
    radialElements: z.int().min(4).max(64).default(16).meta({ description: "Elements per blade." }),
  })
  .superRefine((inputs, context) => {
    const complain = (path: string[], message: string): void => context.addIssue({ code: "custom", path, message });
    const complaint = rotorGivensComplaint(inputs);
    if (complaint) complain([], complaint);
    if (inputs.air && inputs.altitude !== undefined) complain(["air"], "air or altitude is allowed, not both");
    if (inputs.advanceRatio !== undefined && Math.abs(inputs.shaftAngle ?? 0) > 1.4)
      complain(["advanceRatio"], "with the shaft within 10 degrees of the stream the advance ratio says nothing; give the airspeed");
  })
  .meta({ givens: rotorGivens, alternatives: [["air", "altitude"]] });

export type RotorInputs = z.infer<typeof rotorInputs>;

const one = (description: string) => quantity("dimensionless", { description });
const force = (description: string) => quantity("force", { description });

export const rotorStates = ["normal", "vortex ring", "windmill", "autorotating"] as const;

export const rotorOutputs = z.strictObject({
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
  advanceRatio: one("Airspeed times cosine of shaft angle over tip speed."),
  figureOfMerit: one("Ideal over actual power in hover; none with airspeed or without positive thrust and torque.").nullable(),
  inducedVelocity: quantity("speed", { description: "Mean induced velocity, down through the disc." }),
  airspeed: quantity("speed", { description: "Size of the free stream." }),
  rotationRate: quantity("rotationRate", { description: "Rotation rate." }),
  collective: quantity("angle", { description: "Blade pitch at 0.75 of the radius; good to 1 to 1.5 degrees at given thrust." }),
  shaftAngle: quantity("angle", { description: "Shaft axis to the normal of the stream, positive tilted back." }),
  discAngle: quantity("angle", { description: "Tip-path plane to the stream, positive tilted back." }),
  coning: quantity("angle", { description: "Upward angle of the blades; the precone when teetering." }),
  flapLongitudinal: quantity("angle", { description: "Tip-path plane relative to the plane normal to the shaft, positive tilted back." }),
  flapLateral: quantity("angle", { description: "The same, positive down on the advancing side." }),
  state: z.enum(rotorStates).meta({ description: "What the rotor does with the air." }),
  largestThrust: force("Largest steady thrust at this rotor speed, disc angle and airspeed; none where not found.").nullable(),
  largestThrustCollective: quantity("angle", { description: "Collective of that; beyond it the rotor is stalled." }).nullable(),
  advancingTipMach: one("Mach number of the advancing tip."),
  reynoldsNumber: one("Reynolds number of the chord at 0.75 of the radius, mean over the turn."),
  spanwise: z
    .strictObject({
      radiusFraction: z.array(one("Distance from the shaft over radius.")),
      thrust: z.array(one("Thrust coefficient per radius fraction, mean over the turn.")),
      torque: z.array(one("Torque coefficient per radius fraction.")),
      advancingAngle: z.array(quantity("angle", { description: "Angle of attack on the advancing side." })),
      retreatingAngle: z.array(quantity("angle", { description: "Angle of attack on the retreating side." })),
    })
    .meta({ description: "Along the blade, root to tip." }),
});

export type RotorOutputs = z.infer<typeof rotorOutputs>;
