import { openProject } from "@wingseed/documents";
import { type AircraftDefinition, aircraftDefinition } from "@wingseed/engine";
import { isNotReducible, type ReducedAircraft, recordLoading, reducedAircraft } from "../../packages/engine/src/aircraft/index.ts";
import { atmosphereAt } from "../../packages/engine/src/environment/atmosphere/index.ts";
import { createTrimRotor, type FlightConditions, type TrimRotor } from "../../packages/engine/src/equilibrium/index.ts";
import { type LineHooks, type PoweredMode, type ReducedPoint, speedLine } from "../../packages/engine/src/performance/index.ts";

/** Sea level on a standard dry day. */
export const seaLevel = atmosphereAt({ altitude: 0, temperatureOffset: 0, relativeHumidity: 0 });

/** An aircraft of the demo, read as every face reads it. */
export async function demoDefinition(name: "baseline" | "revised"): Promise<AircraftDefinition> {
  const reading = await openProject("demo").readDocument(`aircraft/${name}.yaml`);
  if (reading.problems) throw new Error(reading.problems.map((problem) => problem.message).join("; "));
  return aircraftDefinition.parse(reading.value.data);
}

/** The same as the trim level reduced knows it. */
export async function demoAircraft(name: "baseline" | "revised"): Promise<ReducedAircraft> {
  const aircraft = reducedAircraft(await demoDefinition(name));
  if (isNotReducible(aircraft)) throw new Error(aircraft.reason);
  return aircraft;
}

/** Thirteen blocks and the spare parts at sea level, controls at their optimum, unless told otherwise. */
export function standardConditions(aircraft: ReducedAircraft, change: Partial<FlightConditions> = {}): FlightConditions {
  const parts = aircraft.payloads.find((record) => record.name === "parts");
  if (parts === undefined) throw new Error("the demo carries parts");
  return {
    aircraft,
    loading: recordLoading(13, parts),
    air: seaLevel,
    controls: "optimum",
    losses: "component",
    lightsOn: false,
    ...change,
  };
}

const quiet: LineHooks = { progress: () => {}, cancelled: () => {} };

/** Level flight in one mode over ascending speeds. */
export function flownLine(
  conditions: FlightConditions,
  mode: PoweredMode,
  speeds: readonly number[],
  rotor: TrimRotor = createTrimRotor(conditions.aircraft, conditions.air),
): ReducedPoint[] {
  return speedLine(conditions, mode, speeds, rotor, quiet);
}
