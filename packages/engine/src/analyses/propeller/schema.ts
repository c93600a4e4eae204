import { z } from "zod";
import { standardAltitudeRange } from "../../environment/atmosphere/index.ts";
import { quantity } from "../../quantities/index.ts";
import { propellerInput } from "./blade-schema.ts";

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

/** Below this a propeller counts as stopped [rad/s]. */
const slowestRate = 0.1;

const point = z
  .strictObject({
    rotationRate: quantity("rotationRate", {
      description: "Rotation rate; negative turned backwards.",
      minimum: -20_000,
      maximum: 20_000,
    })
      .optional()
      .meta({ columnNames: ["rpm", "rate", "n"] }),
    thrust: quantity("force", { description: "Thrust, instead of the rotation rate.", minimum: -1e5, maximum: 1e5 }).optional(),
    power: quantity("power", { description: "Shaft power, instead of the rotation rate.", exclusiveMinimum: 0, maximum: 1e7 }).optional(),
    airspeed: quantity("speed", { description: "Size of the free stream; 0 when absent.", minimum: 0, maximum: 250 })
      .optional()
      .meta({ columnNames: ["V", "speed"] }),
    advanceRatio: quantity("dimensionless", {
      description: "J = V/(n D) instead of the airspeed, n in turns per second, without sign.",
      minimum: 0,
      maximum: 10,
    })
      .optional()
      .meta({ columnNames: ["J"] }),
    inflowAngle: quantity("angle", {
      description:
        "Shaft to stream: 0 from ahead along the shaft, 90 degrees in the plane of the disc, 180 from behind; its sign does not count.",
      minimum: -Math.PI,
      maximum: Math.PI,
    }).default(0),
    state: z.enum(["turning", "freeWheeling", "stopped", "folded"]).default("turning").meta({
      description: "Turning at a rate, turned by the air without torque, held still, or held with blades folded along the stream.",
    }),
  })
  .superRefine((given, context) => {
    const complain = (path: string[], message: string): void => context.addIssue({ code: "custom", path, message });
    const rates = (["rotationRate", "thrust", "power"] as const).filter((name) => given[name] !== undefined);
    if (given.airspeed !== undefined && given.advanceRatio !== undefined) complain(["advanceRatio"], "airspeed or advanceRatio, not both");
    if (given.state === "turning") {
      if (rates.length !== 1) complain([], `one of rotationRate, thrust, power is needed; read ${rates.join(", ") || "none of them"}`);
      if (given.rotationRate !== undefined && Math.abs(given.rotationRate) < slowestRate)
        complain(["rotationRate"], `slower than ${slowestRate} rad/s is the state stopped`);
      return;
    }
    if (rates.length > 0) complain([rates[0] ?? ""], `in the state ${given.state} no ${rates.join(" or ")} can be given`);
    if (given.advanceRatio !== undefined) complain(["advanceRatio"], `in the state ${given.state} the airspeed must be given`);
    if (given.state === "freeWheeling" && (given.airspeed ?? 0) === 0) complain(["airspeed"], "without a stream nothing turns");
  })
  .meta({
    givens: [
      { given: ["rotationRate"], solved: ["thrust", "power"] },
      { given: ["rotationRate", "airspeed"], solved: ["thrust", "power"] },
      { given: ["rotationRate", "advanceRatio"], solved: ["thrust", "power", "airspeed"] },
      { given: ["thrust", "airspeed"], solved: ["rotationRate", "power"] },
      { given: ["thrust", "advanceRatio"], solved: ["rotationRate", "power", "airspeed"] },
      { given: ["power", "airspeed"], solved: ["rotationRate", "thrust"] },
      { given: ["power", "advanceRatio"], solved: ["rotationRate", "thrust", "airspeed"] },
      { given: ["state", "airspeed"], solved: ["rotationRate", "thrust"] },
    ],
  });

export const propellerInputs = z
  .strictObject({
    propeller: propellerInput,
    points: z.array(point).min(1).max(5000).meta({ description: "Operating points, one row of the answer for each." }),
    air: air.optional().meta({ description: "The air by its density, instead of an altitude." }),
    altitude: quantity("length", {
      description: "Geopotential altitude of the standard atmosphere; 0 when neither air nor altitude is given.",
      minimum: standardAltitudeRange.lowest,
      maximum: standardAltitudeRange.highest,
      role: "condition.altitude",
    }).optional(),
    stallDelay: z.boolean().default(true).meta({ description: "Rotation keeps the flow near the root from separating." }),
    swirl: z.boolean().default(true).meta({ description: "The wake turns, by the torque of each ring." }),
    rootLoss: z.boolean().default(false).meta({ description: "Lift is lost at the inner blade end too; no where a hub fills the root." }),
    radialElements: z.int().min(4).max(64).default(20).meta({ description: "Elements per blade." }),
    azimuths: z.int().min(8).max(72).default(16).meta({ description: "Blade positions per turn where the stream is not along the shaft." }),
  })
  .superRefine((inputs, context) => {
    if (inputs.air && inputs.altitude !== undefined)
      context.addIssue({ code: "custom", path: ["air"], message: "air or altitude is allowed, not both" });
  })
  .meta({ alternatives: [["air", "altitude"]] });

export type PropellerInputs = z.infer<typeof propellerInputs>;
export type PropellerPoint = PropellerInputs["points"][number];
