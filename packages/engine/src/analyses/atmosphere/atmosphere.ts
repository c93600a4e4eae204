import { densityAltitude, moistAir, standardPressure, standardTemperature } from "../../environment/atmosphere/index.ts";
import type { Analysis, Outcome } from "../contract.ts";
import type { Figure } from "../figures.ts";
import { reading, words } from "../tokens.ts";
import { type AtmosphereInputs, type AtmosphereOutputs, atmosphereInputs, atmosphereOutputs } from "./schema.ts";

/** What is the air like at an altitude? */
export const atmosphere: Analysis<AtmosphereInputs, AtmosphereOutputs> = {
  name: "atmosphere",
  question: "What is the air like up there?",
  inputs: atmosphereInputs,
  outputs: atmosphereOutputs,
  quick: true,
  method: {
    summary:
      "Standard atmosphere to 20 km geopotential altitude; pressure by altitude, temperature with an offset or as measured, density and speed of sound of moist air, viscosity of dry air.",
    sources: ["iso-2533-1975", "wmo-8"],
    checks: ["iso-2533", "density-altitude"],
  },
  example: { pressureAltitude: "5000 ft", outsideAirTemperature: "30 degC" },
  run: (_project, inputs) => run(inputs),
  figures: (outputs, inputs) => [stateTable(outputs), densityOverAltitude(outputs, inputs)],
  answer: (outputs) => ({
    sentence: [
      words("The air weighs "),
      reading(outputs.density, "density", "/density"),
      words(", as at "),
      reading(outputs.densityAltitude, "length", "/densityAltitude", { datum: "in the standard atmosphere" }),
      words("."),
    ],
    brief: `density ${outputs.density.toFixed(3)} kg/m³`,
  }),
  limits: () => [],
};

function run(inputs: AtmosphereInputs): Outcome<AtmosphereOutputs> {
  const altitude = inputs.altitude ?? inputs.pressureAltitude ?? 0;
  const air = moistAir({
    pressure: standardPressure(altitude),
    temperature: inputs.outsideAirTemperature ?? standardTemperature(altitude) + (inputs.temperatureOffset ?? 0),
    relativeHumidity: inputs.relativeHumidity,
  });
  const asked = inputs.altitude !== undefined || inputs.pressureAltitude !== undefined;
  return {
    outputs: { ...air, densityAltitude: densityAltitude(air.density) },
    ...(asked ? {} : { assumed: [{ path: "inputs.altitude", value: 0, because: "no altitude was given: mean sea level" }] }),
  };
}

function stateTable(outputs: AtmosphereOutputs): Figure {
  return {
    kind: "table",
    id: "state",
    caption: "State of the air",
    columns: [
      { label: "Temperature", quantity: "temperature" },
      { label: "Pressure", quantity: "pressure" },
      { label: "Density", quantity: "density" },
      { label: "Speed of sound", quantity: "speed" },
      { label: "Dynamic viscosity", quantity: "dynamicViscosity" },
      { label: "Density altitude", quantity: "length", datum: "in the standard atmosphere" },
    ],
    rows: [
      [outputs.temperature, outputs.pressure, outputs.density, outputs.speedOfSound, outputs.dynamicViscosity, outputs.densityAltitude],
    ],
  };
}

/** The density here against that of the standard atmosphere around. */
function densityOverAltitude(outputs: AtmosphereOutputs, inputs: AtmosphereInputs): Figure {
  const here = inputs.altitude ?? inputs.pressureAltitude ?? 0;
  const highest = Math.max(4000, Math.ceil(Math.max(here, outputs.densityAltitude) / 1000) * 1000 + 1000);
  const lowest = Math.min(0, Math.floor(Math.min(here, outputs.densityAltitude) / 1000) * 1000);
  const altitudes = Array.from({ length: 41 }, (_, i) => lowest + ((highest - lowest) * i) / 40);
  const standardDensity = (altitude: number): number =>
    moistAir({ pressure: standardPressure(altitude), temperature: standardTemperature(altitude), relativeHumidity: 0 }).density;
  return {
    kind: "lines",
    id: "density-over-altitude",
    caption: "Density of the standard atmosphere, and of this air",
    x: { label: "Altitude", quantity: "length", datum: "above sea" },
    y: { label: "Density", quantity: "density" },
    series: [{ name: "standard day", meaning: "neutral", x: altitudes, y: altitudes.map(standardDensity) }],
    notable: [{ name: "this air", x: here, y: outputs.density }],
  };
}
