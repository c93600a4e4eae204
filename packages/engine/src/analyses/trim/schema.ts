import { z } from "zod";
import { aircraftDefinition } from "../../aircraft/index.ts";
import { domainOutputs } from "../../published/index.ts";
import { quantity } from "../../quantities/index.ts";
import { aircraftInput, airInputs, loadingInput } from "../inputs/flight-conditions.ts";

export const trimInputs = z.strictObject({
  aircraft: aircraftInput,
  loading: loadingInput,
  ...airInputs,
  mode: z
    .enum(["clutch-closed", "clutch-open", "glide"])
    .default("clutch-closed")
    .meta({ description: "Motor may drive the rotor; rotor turns free; all motors stand still." }),
  airspeed: quantity("speed", {
    description: "Speed through the air, horizontal; along the path in a glide. In hover it is the wind.",
    minimum: 0,
    maximum: 90,
  }).default(15),
  climbRate: quantity("speed", { description: "Rate of climb; found by the trim in a glide.", minimum: -15, maximum: 15 }).default(0),
  sideslip: z
    .union([
      quantity("angle", { description: "Direction the air comes from, to the right of the nose.", minimum: -Math.PI, maximum: Math.PI }),
      z.literal("free").describe("Whatever costs least."),
    ])
    .default(0)
    .meta({ description: "Direction the air comes from, to the right of the nose; free leaves it to the trim." }),
  turnRate: quantity("anglePerTime", { description: "Rate of turn about the vertical, to the right.", minimum: -2, maximum: 2 }).default(0),
  stopped: z
    .array(z.string().min(1).describe("Id of a drive line."))
    .max(8)
    .default([])
    .meta({ description: "Drive lines that stand still, by id: one-sided flight." }),
  stuck: z
    .array(
      z.strictObject({
        control: z.string().min(1).describe("Id of a control that moves by an angle."),
        at: quantity("angle", { description: "Where it is stuck." }),
      }),
    )
    .max(8)
    .default([])
    .meta({ description: "Controls that do not move any more." }),
  steering: z.enum(["each", "mixed"]).default("each").meta({
    description: "Every control on its own, or those of the aircraft's mixing matrix only as its axes move them.",
  }),
  groundHeight: quantity("length", {
    description: "Height of the rotor's hub above even ground; far from it when absent.",
    minimum: 0,
    maximum: 1000,
  }).optional(),
  losses: z
    .enum(["component", "constant"])
    .default("component")
    .meta({ description: "Losses of every motor, controller and gear, or constant efficiencies for comparison." }),
  lightsOn: z.boolean().default(false).meta({ description: "Lights switched on." }),
});

export type TrimInputs = z.infer<typeof trimInputs>;

const word = (description: string) => z.string().describe(description);
const one = (description: string) => quantity("dimensionless", { description });
const angle = (description: string) => quantity("angle", { description });
const force = (description: string) => quantity("force", { description });
const torque = (description: string) => quantity("torque", { description });
const watt = (description: string) => quantity("power", { description });

const forceVector = z.strictObject({ x: force("Forward."), y: force("Right."), z: force("Down.") }).describe("Force, body axes.");
const momentVector = z
  .strictObject({ x: torque("Right side down."), y: torque("Nose up."), z: torque("Nose right.") })
  .describe("Moment about the centre of gravity, body axes.");

const controlRow = z.strictObject({
  id: word("Control."),
  part: word("What it moves."),
  angle: angle("Position of a control that is an angle.").nullable(),
  speed: quantity("speed", { description: "Position of one that is a tip speed." }).nullable(),
  force: force("Position of one that is a thrust.").nullable(),
  margin: one("Way left to the nearer end of its range, over half the range; none where it cannot move.").nullable(),
  state: z.enum(["free", "scheduled", "held", "stuck"]).describe("What may move it in this flight."),
});

const rotorRow = z.strictObject({
  id: word("Rotor."),
  driven: z.boolean().describe("Whether its drive turns it."),
  tipSpeed: quantity("speed", { description: "Tip speed." }),
  rotationRate: quantity("rotationRate", { description: "Rotation rate." }),
  thrust: force("Along the normal of the disc."),
  hForce: force("In the disc, along the flow."),
  sideForce: force("In the disc, across the flow towards the advancing side."),
  torque: torque("That the shaft gives."),
  shaftPower: watt("That the shaft gives."),
  inducedVelocity: quantity("speed", { description: "Mean induced velocity." }),
  advanceRatio: one("In-plane flow over tip speed."),
  bladeLoading: one("C_T over solidity."),
  stallMargin: one("Largest steady thrust over thrust; none where it makes no thrust.").nullable(),
  flapBack: angle("Disc behind the plane normal to the shaft."),
  flapRight: angle("Disc down on the right."),
  coning: angle("Mean upward angle of the blades."),
  domain: domainOutputs,
});

const propellerRow = z.strictObject({
  id: word("Propeller."),
  thrust: force("Along its axis."),
  rotationRate: quantity("rotationRate", { description: "Rotation rate." }),
  shaftPower: watt("At the shaft."),
  torque: torque("At the shaft."),
});

const surfaceRow = z.strictObject({
  id: word("Surface."),
  liftCoefficient: one("Mean over the span."),
  angleOfAttack: angle("Mean over the span, in the air that other parts move."),
});

const partRow = z.strictObject({
  id: word("Part."),
  kind: z.enum(["rotor", "propeller", "surface", "body"]).describe("Kind of the part."),
  lift: force("Force up, against gravity."),
  liftShare: one("Of the weight."),
  force: forceVector,
  moment: momentVector,
});

const powerRow = z.strictObject({
  id: word("Drive line, load, payload or converter."),
  shaftPower: watt("At its shaft.").nullable(),
  losses: watt("Between the pack and that shaft.").nullable(),
  electricPower: watt("At the pack's terminals."),
});

const limitRow = z.strictObject({
  name: word("Name of the limit."),
  family: z.enum(["air", "power", "strength", "control", "rule"]).describe("Kind of the limit."),
  share: one("Share of it that is used; 1 is the limit."),
});

export const flownState = z.strictObject({
  pitch: angle("Nose above the horizon."),
  roll: angle("Right side down."),
  sideslip: angle("Air from the right."),
  airspeed: quantity("speed", { description: "Horizontal speed through the air." }),
  climbRate: quantity("speed", { description: "Rate of climb." }),
  loadFactor: one("Apparent gravity over gravity."),
  electricPower: watt("Drawn at the pack's terminals: the sum over consumers."),
  controls: z.array(controlRow).describe("Where every control stands."),
  rotors: z.array(rotorRow).describe("Rotors."),
  propellers: z.array(propellerRow).describe("Propellers."),
  surfaces: z.array(surfaceRow).describe("Lifting surfaces."),
  parts: z.array(partRow).describe("What every part does to the aircraft; they add up to the weight."),
  power: z.array(powerRow).describe("Who draws it."),
  axes: z
    .strictObject({
      pitch: one("Nose up."),
      roll: one("Right side down."),
      yaw: one("Nose right."),
      lift: one("Up."),
      forward: one("Forward."),
    })
    .nullable()
    .describe("Axes of the mixing matrix, −1 to 1; none where each control is on its own."),
  limits: z.array(limitRow).describe("Limits, longest first."),
  bindingLimit: z.string().nullable().describe("Limit that binds, none when every control is free to move."),
  forceResidual: one("Largest force left over, over weight."),
  momentResidual: one("Largest moment left over, over weight times rotor radius."),
});

const refusal = z.strictObject({
  kind: z.enum(["no-equilibrium", "not-resolved"]).describe("Contradiction, or a solver that gave up."),
  limit: z.string().nullable().describe("What blocks."),
  family: z.enum(["air", "power", "strength", "control", "rule"]).nullable().describe("Its kind."),
  missing: one("What is missing, in the solver's own measure.").nullable(),
  needed: z
    .strictObject({
      allowed: z.number().describe("What the limit allows, SI."),
      needed: z.number().describe("What it would have to allow, SI."),
      quantity: word("What both measure."),
    })
    .nullable()
    .describe("How far the limit would have to be moved; none where that alone is not enough."),
  reason: word("The same in words."),
});

const answerOf = (description: string) =>
  z.strictObject({ state: flownState.nullable(), refusal: refusal.nullable() }).describe(description);

const interferenceRow = z.strictObject({
  from: word("Part that moves air."),
  on: word("Part in it."),
  kind: z.enum(["rotor-downwash", "slipstream", "wing-downwash", "propeller-wake"]).describe("How."),
  factor: one("Factor of the aircraft file."),
  source: z.string().nullable().describe("Where the factor comes from."),
  without: watt("Least electric power with it switched off; sink rate is not compared.").nullable(),
  effect: one("What it costs: least power with it over that without, less 1.").nullable(),
});

export const trimOutputs = z.strictObject({
  interference: z.array(interferenceRow).describe("Air moved by one part that meets another, each switched off in turn."),
  aircraft: aircraftDefinition.describe("The aircraft as it was read, for the picture of forces."),
  takeoffMass: quantity("mass", { description: "Take-off mass." }),
  centre: z
    .strictObject({
      x: quantity("length", { description: "Forward of the datum." }),
      y: quantity("length", { description: "Right of it." }),
      z: quantity("length", { description: "Below it." }),
    })
    .describe("Centre of gravity."),
  optimum: answerOf("Every control free within its limits, at least electric power (least sink in a glide)."),
  schedule: answerOf("Scheduled controls where the file has them."),
  scheduleCost: one("Power on schedule over the least, less 1; none where either does not fly or in a glide.").nullable(),
  reduced: z
    .strictObject({
      electricPower: watt("What the trim level reduced says of the same flight.").nullable(),
      difference: one("Full over reduced, less 1.").nullable(),
    })
    .nullable()
    .describe("The balance of two forces and yaw, for comparison; only straight flight without sideslip."),
});

export type TrimOutputs = z.infer<typeof trimOutputs>;
export type FlownStateOutputs = z.infer<typeof flownState>;
