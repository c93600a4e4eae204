import { z } from "zod";
import { quantity } from "../../quantities/index.ts";
import { wingMethod, wingOfAircraft, writtenWing } from "./part-schema.ts";

const degree = Math.PI / 180;

const air = z.strictObject({
  density: quantity("density", { description: "Density of the air.", minimum: 0.01, maximum: 5 }),
  dynamicViscosity: quantity("dynamicViscosity", {
    description: "For Reynolds numbers; that of a standard day at sea level when absent.",
    minimum: 1e-6,
    maximum: 1e-4,
  }).optional(),
  speedOfSound: quantity("speed", {
    description: "For Mach numbers; that of a standard day at sea level when absent.",
    minimum: 100,
    maximum: 500,
  }).optional(),
});

export const wingInputs = z
  .strictObject({
    wing: z.union([writtenWing, wingOfAircraft]).meta({ description: "The wing, or a surface of an aircraft." }),
    method: wingMethod.optional().meta({
      description: "How lift and drag follow; by lifting line when absent, for a surface of an aircraft by the polar of its file.",
    }),
    parasiteDragArea: quantity("area", {
      description: "Drag area of everything but the wing: body, gear, propellers.",
      minimum: 0,
      maximum: 1e3,
    }).default(0),
    mass: quantity("mass", {
      description: "What flies on the wing; without it no speeds are computed.",
      minimum: 1e-3,
      maximum: 1e6,
    }).optional(),
    air: air.optional().meta({ description: "The air by its density, instead of an altitude." }),
    altitude: quantity("length", {
      description: "Geopotential altitude of the standard atmosphere; 0 when neither air nor altitude is given.",
      minimum: -2000,
      maximum: 20_000,
      role: "condition.altitude",
    }).optional(),
    temperatureOffset: quantity("temperatureDifference", {
      description: "Air temperature minus the standard atmosphere's.",
      minimum: -60,
      maximum: 60,
      role: "condition.temperature",
    }).default(0),
    reynoldsNumber: quantity("dimensionless", {
      description: "On the mean chord, the same at every angle; without it and airspeed that of the glide at each angle.",
      minimum: 1000,
      maximum: 1e8,
    }).optional(),
    airspeed: quantity("speed", {
      description: "For Reynolds and Mach number, the same at every angle; instead of reynoldsNumber.",
      minimum: 0.1,
      maximum: 250,
    }).optional(),
    angles: z
      .array(quantity("angle", { description: "Angle of attack.", minimum: -Math.PI - 1e-9, maximum: Math.PI + 1e-9 }))
      .min(1)
      .max(1000)
      .default(() => Array.from({ length: 41 }, (_, i) => (i - 10) * degree))
      .meta({ description: "Angles to compute, −10 to 30 degrees in steps of one when absent." }),
  })
  .superRefine((inputs, context) => {
    const complain = (path: string[], message: string): void => context.addIssue({ code: "custom", path, message });
    if (inputs.air && inputs.altitude !== undefined) complain(["air"], "air or altitude is allowed, not both");
    if (inputs.air && inputs.temperatureOffset !== 0) complain(["air"], "air or temperatureOffset is allowed, not both");
    if (inputs.reynoldsNumber !== undefined && inputs.airspeed !== undefined)
      complain(["reynoldsNumber"], "reynoldsNumber or airspeed is allowed, not both");
    if ("aircraft" in inputs.wing && inputs.method)
      complain(["method"], "a surface of an aircraft is computed by the polar of its file; leave method out, or write the wing out");
  })
  .meta({
    alternatives: [
      ["air", "altitude"],
      ["air", "temperatureOffset"],
      ["reynoldsNumber", "airspeed"],
    ],
  });

export type WingInputs = z.infer<typeof wingInputs>;
