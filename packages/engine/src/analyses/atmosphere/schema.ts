import { z } from "zod";
import { standardAltitudeRange } from "../../environment/atmosphere/index.ts";
import { quantity } from "../../quantities/index.ts";
import { type GivensSet, matchingGivens } from "../inputs/givens.ts";

const solved = ["temperature", "pressure", "density", "speedOfSound", "dynamicViscosity", "densityAltitude"];

/** The ways to ask; an empty question is one too and means sea level on a standard day. */
const atmosphereGivens: readonly GivensSet[] = [
  { given: [], solved },
  { given: ["altitude"], solved },
  { given: ["temperatureOffset"], solved },
  { given: ["altitude", "temperatureOffset"], solved },
  { given: ["altitude", "outsideAirTemperature"], solved },
  { given: ["pressureAltitude"], solved },
  { given: ["pressureAltitude", "temperatureOffset"], solved },
  { given: ["pressureAltitude", "outsideAirTemperature"], solved },
];
const names = ["altitude", "pressureAltitude", "outsideAirTemperature", "temperatureOffset"];

const range = { minimum: standardAltitudeRange.lowest, maximum: standardAltitudeRange.highest };

export const atmosphereInputs = z
  .strictObject({
    altitude: quantity("length", {
      description: "Geopotential altitude above mean sea level; 0 when neither altitude is given.",
      ...range,
      role: "condition.altitude",
    }).optional(),
    pressureAltitude: quantity("length", {
      description: "Altitude of the standard atmosphere with the pressure at hand: what an altimeter set to 1013.25 hPa shows.",
      ...range,
      role: "condition.altitude",
    }).optional(),
    outsideAirTemperature: quantity("temperature", {
      description: "Measured temperature of the air.",
      minimum: 150,
      maximum: 350,
      role: "condition.temperature",
    }).optional(),
    temperatureOffset: quantity("temperatureDifference", {
      description: "Added to the standard temperature; pressure stays that of the standard atmosphere at this altitude.",
      minimum: -60,
      maximum: 60,
      role: "condition.temperature",
    }).optional(),
    relativeHumidity: quantity("dimensionless", {
      description: "Relative humidity over water, 0 to 1.",
      minimum: 0,
      maximum: 1,
    }).default(0),
  })
  .superRefine((inputs, context) => {
    const match = matchingGivens(atmosphereGivens, names, inputs);
    if ("message" in match) context.addIssue({ code: "custom", message: match.message });
  })
  .meta({ givens: atmosphereGivens });

export type AtmosphereInputs = z.infer<typeof atmosphereInputs>;

export const atmosphereOutputs = z.strictObject({
  temperature: quantity("temperature", { description: "Temperature of the air." }),
  pressure: quantity("pressure", { description: "Static pressure." }),
  density: quantity("density", { description: "Density of the air, humidity included." }),
  speedOfSound: quantity("speed", { description: "Speed of sound." }),
  dynamicViscosity: quantity("dynamicViscosity", { description: "Dynamic viscosity of dry air at this temperature." }),
  densityAltitude: quantity("length", { description: "Altitude of the dry standard atmosphere with this density." }),
});

export type AtmosphereOutputs = z.infer<typeof atmosphereOutputs>;
