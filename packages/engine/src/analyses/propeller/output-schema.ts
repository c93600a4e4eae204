import { z } from "zod";
import { domainOutputs } from "../../published/index.ts";
import { quantity } from "../../quantities/index.ts";

const one = (description: string) => quantity("dimensionless", { description });

export const propellerStates = ["normal", "braking", "windmill", "reversed", "freeWheeling", "stopped", "folded", "none"] as const;

const row = z.strictObject({
  advanceRatio: one("J = V/(n D), n in turns per second without sign; none without rotation.").nullable(),
  ct: one("C_T = T/(ρ n² D⁴), that is π³/4 times the rotor's; none without rotation.").nullable(),
  cp: one("C_P = P/(ρ n³ D⁵) = 2π Q/(ρ n² D⁵), that is π⁴/4 times the rotor's; none without rotation.").nullable(),
  efficiency: one(
    "η = T V cos(inflowAngle)/P, which is J C_T/C_P along the shaft; none without airspeed from ahead or where thrust or power is not positive.",
  ).nullable(),
  figureOfMerit: one("√(2/π) C_T^1.5/C_P; none with airspeed or where thrust or power is not positive.").nullable(),
  thrust: quantity("force", { description: "Along the shaft, forward; negative brakes." }).nullable(),
  torque: quantity("torque", { description: "That the shaft must give, in the sense of positive rotation." }).nullable(),
  power: quantity("power", { description: "P = 2π n Q that the shaft must give; negative where the air drives it." }).nullable(),
  rotationRate: quantity("rotationRate", { description: "Rotation rate; negative turned backwards." }).nullable(),
  airspeed: quantity("speed", { description: "Size of the free stream." }).nullable(),
  inflowAngle: quantity("angle", { description: "Shaft to stream, 0 from ahead along the shaft." }),
  normalForce: quantity("force", { description: "In the disc, along the part of the stream that lies in it." }).nullable(),
  sideForce: quantity("force", {
    description: "In the disc, towards the side where a blade turning forwards meets the stream.",
  }).nullable(),
  pitchingMoment: quantity("torque", {
    description: "Turns the thrust towards where the stream in the disc flows: nose up when it comes from below.",
  }).nullable(),
  yawingMoment: quantity("torque", { description: "Moves forward the side on which a blade turning forwards retreats." }).nullable(),
  inducedVelocity: quantity("speed", { description: "Mean over the disc; none where not computed." }).nullable(),
  reynoldsNumber: one("On the chord at 0.75 of the radius, from rotation and airspeed; none without a chord.").nullable(),
  tipMach: one("Of the tip where it meets most stream, from rotation and airspeed."),
  state: z.enum(propellerStates).meta({
    description:
      "Normal: power in, thrust out. Braking: power in, thrust backwards. Windmill: the air drives the shaft. Reversed: turned backwards. Free-wheeling: no torque. None: no answer, with the reason.",
  }),
  extrapolated: z.array(z.string()).meta({ description: "What lies outside the table that the numbers come from." }),
  reason: z.string().nullable().meta({ description: "Why there is no answer; none where there is one." }),
});

const list = (kind: Parameters<typeof quantity>[0], description: string) => z.array(quantity(kind, { description }));

export const propellerOutputs = z.strictObject({
  rows: z.array(row).meta({ description: "One for each operating point, in their order." }),
  peakEfficiency: one("Largest efficiency in axial flow at the rate of the first turning point; none where not found.").nullable(),
  peakEfficiencyAdvanceRatio: one("Advance ratio of that.").nullable(),
  zeroThrustAdvanceRatio: one("Advance ratio at which thrust vanishes at that rate; none where not found.").nullable(),
  curve: z
    .strictObject({
      rotationRate: quantity("rotationRate", { description: "Rotation rate of the curve." }).nullable(),
      advanceRatio: list("dimensionless", "J."),
      ct: list("dimensionless", "C_T."),
      cp: list("dimensionless", "C_P."),
      efficiency: z.array(one("η.").nullable()),
    })
    .meta({ description: "Coefficients in axial flow from rest to zero thrust, at the rate of the first turning point." }),
  spanwise: z
    .strictObject({
      radiusFraction: list("dimensionless", "Distance from the shaft over radius."),
      thrust: list("dimensionless", "C_T per radius fraction."),
      torque: list("dimensionless", "C_P per radius fraction."),
      angleOfAttack: list("angle", "Of the mean flow."),
      reynoldsNumber: list("dimensionless", "On the chord."),
      inducedVelocity: list("speed", "Through the disc."),
      swirlVelocity: list("speed", "Around the shaft, with the blades."),
    })
    .meta({ description: "Along the blade at the first turning point, root to tip; empty without blades." }),
  domain: domainOutputs,
});

export type PropellerOutputs = z.infer<typeof propellerOutputs>;
export type PropellerRow = PropellerOutputs["rows"][number];
