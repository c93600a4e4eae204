import { z } from "zod";
import {
  type AircraftDefinition,
  aircraftDefinition,
  isNotReducible,
  type Loading,
  type PayloadRecord,
  type ReducedAircraft,
  recordLoading,
  reducedAircraft,
} from "../../aircraft/index.ts";
import { type AirState, moistAir, standardPressure, standardTemperature } from "../../environment/atmosphere/index.ts";
import { quantity } from "../../quantities/index.ts";
import type { Need, Problem, ProjectView } from "../contract.ts";
import { entryAt } from "./project-definition.ts";

/** Inputs that say which aircraft, how it is loaded and in what air: the same names in every flight analysis. */
export const aircraftInput = z
  .string()
  .min(1)
  .optional()
  .meta({ description: "Aircraft file; the project's first when absent.", role: "aircraft" });

export const loadingInput = z
  .strictObject({
    blocks: z
      .int()
      .min(1)
      .optional()
      .meta({ description: "Battery blocks on board; the largest pack when absent.", role: "condition.pack" }),
    payload: z.string().min(1).optional().meta({
      description: "Payload record of the aircraft file; its first when neither record nor mass is given.",
      role: "condition.payload",
    }),
    payloadMass: quantity("mass", {
      description: "Payload mass instead of a record: no power, no drag.",
      minimum: 0,
      role: "condition.payload",
    }).optional(),
  })
  .prefault({});

export const airInputs = {
  altitude: quantity("length", {
    description: "Geopotential altitude above mean sea level.",
    minimum: -2000,
    maximum: 11_000,
    role: "condition.altitude",
  }).default(0),
  temperature: quantity("temperature", {
    description: "Outside air temperature; the standard atmosphere's when absent.",
    minimum: 150,
    maximum: 350,
    role: "condition.temperature",
  }).optional(),
  temperatureOffset: quantity("temperatureDifference", {
    description: "Air temperature minus the standard atmosphere's, instead of temperature.",
    minimum: -80,
    maximum: 80,
    role: "condition.temperature",
  }).optional(),
  relativeHumidity: quantity("dimensionless", { description: "Relative humidity; dry air is 0.", minimum: 0, maximum: 1 }).default(0),
};

export const powerInputs = {
  controls: z
    .enum(["optimum", "schedule"])
    .default("optimum")
    .meta({ description: "Scheduled controls free within their limits, or as the file schedules them." }),
  losses: z
    .enum(["component", "constant"])
    .default("component")
    .meta({ description: "Losses of every motor, controller and gear, or two constant efficiencies for comparison." }),
  trimLevel: z.enum(["reduced"]).default("reduced").meta({ description: "Which forces and moments are balanced." }),
  lightsOn: z.boolean().default(false).meta({ description: "Lights switched on." }),
};

/** For questions that both trim levels answer. */
export const trimLevelInput = z.enum(["reduced", "full"]).default("reduced").meta({
  description: "reduced balances two forces and yaw; full three forces and three moments with the controls the aircraft has.",
});

export const cellInputs = {
  cellTemperature: quantity("temperature", {
    description: "Cell temperature.",
    minimum: 233.15,
    maximum: 353.15,
    role: "condition.cells",
  }).default(298.15),
  cellCapacityFactor: quantity("dimensionless", {
    description: "Capacity left by age; new cells are 1.",
    exclusiveMinimum: 0,
    maximum: 1,
    role: "condition.cells",
  }).default(1),
  cellResistanceFactor: quantity("dimensionless", {
    description: "Resistance grown by age; new cells are 1.",
    minimum: 1,
    maximum: 5,
    role: "condition.cells",
  }).default(1),
};

export const projectFile = "project.yaml";

interface AirGiven {
  readonly altitude: number;
  readonly temperature?: number | undefined;
  readonly temperatureOffset?: number | undefined;
  readonly relativeHumidity: number;
}

/** Air at the door: pressure of the standard atmosphere at the altitude, temperature as given. */
export function givenAir(given: AirGiven): AirState | Problem {
  if (given.temperature !== undefined && given.temperatureOffset !== undefined) {
    return {
      kind: "contradicting-inputs",
      message: `temperature (${given.temperature} K) and temperatureOffset (${given.temperatureOffset} K) both say how warm the air is; give one of them.`,
      inputs: ["temperature", "temperatureOffset"],
    };
  }
  return moistAir({
    pressure: standardPressure(given.altitude),
    temperature: given.temperature ?? standardTemperature(given.altitude) + (given.temperatureOffset ?? 0),
    relativeHumidity: given.relativeHumidity,
  });
}

export function isProblem(value: object): value is Problem {
  return "kind" in value && "message" in value;
}

/** Documents a flight analysis needs: the project, then the aircraft it names. */
export function aircraftNeeds(inputs: { readonly aircraft?: string | undefined }, available: ProjectView): Need[] {
  const needs: Need[] = [{ kind: "document", path: projectFile }];
  const path = inputs.aircraft ?? projectAircraft(available)?.[0];
  if (path !== undefined) needs.push({ kind: "document", path });
  return needs;
}

const projectShape = z.looseObject({ aircraft: z.array(z.string()).optional() });

function projectAircraft(project: ProjectView): readonly string[] | undefined {
  const read = projectShape.safeParse(project.documents[projectFile]?.data);
  return read.success ? read.data.aircraft : undefined;
}

export type Assumed = readonly { readonly path: string; readonly value: unknown; readonly because: string }[];

/** An aircraft file as it is. */
export interface ChosenDefinition {
  readonly definition: AircraftDefinition;
  readonly path: string;
  readonly assumed: Assumed;
}

/** An aircraft file as the trim level `reduced` knows it. */
export interface ChosenAircraft extends ChosenDefinition {
  readonly aircraft: ReducedAircraft;
}

/** The aircraft of an analysis that counts at the trim level `reduced`, or why there is none. */
export function chosenAircraft(project: ProjectView, given: string | undefined): ChosenAircraft | Problem {
  const chosen = chosenDefinition(project, given);
  if (isProblem(chosen)) return chosen;
  const aircraft = reducedAircraft(chosen.definition);
  if (!isNotReducible(aircraft)) return { ...chosen, aircraft };
  return { kind: "not-reducible", message: `${chosen.path} is not for the trim level reduced. ${aircraft.reason}` };
}

/** The aircraft that is meant, whatever it is built of, or why there is none. */
export function chosenDefinition(project: ProjectView, given: string | undefined): ChosenDefinition | Problem {
  const listed = projectAircraft(project);
  const path = given ?? listed?.[0];
  if (path === undefined) {
    return {
      kind: "aircraft-missing",
      message: "No aircraft is named: project.yaml lists none and the input aircraft is absent. Name one, for example aircraft/first.yaml.",
    };
  }
  const document = entryAt(project.documents, path);
  if (document === undefined) {
    return {
      kind: "aircraft-missing",
      message: `The aircraft file ${path} is not in the project${listed ? `; it lists ${listed.join(", ")}` : ""}.`,
    };
  }
  const read = aircraftDefinition.safeParse(document.data);
  if (!read.success) {
    const first = read.error.issues[0];
    return {
      kind: "aircraft-invalid",
      message: `${path} is not a usable aircraft file: ${first?.path.join(".")}: ${first?.message}. Run wingseed check for every problem with its line.`,
    };
  }
  const assumed = given === undefined ? [{ path: "/aircraft", value: path, because: "the project's first aircraft" }] : [];
  return { definition: read.data, path, assumed };
}

interface LoadingGiven {
  readonly blocks?: number | undefined;
  readonly payload?: string | undefined;
  readonly payloadMass?: number | undefined;
}

/** Standard payload record when an analysis is asked without one. */
const standardRecord = "parts";

/** The payload record that stands for the aircraft where none is named; undefined when there is none at all. */
export function standardPayload(payloads: readonly PayloadRecord[]): PayloadRecord | undefined {
  return payloads.find((record) => record.name === standardRecord) ?? payloads[0];
}

/** The loading of a flight analysis, or why it cannot be. */
export function chosenLoading(
  aircraft: Pick<AircraftDefinition, "battery"> & { readonly payloads: readonly PayloadRecord[] },
  given: LoadingGiven,
): { readonly loading: Loading; readonly assumed: Assumed } | Problem {
  const { battery, payloads } = aircraft;
  const largest = Math.max(...battery.packs);
  const assumed: { path: string; value: unknown; because: string }[] = [];
  const blocks = given.blocks ?? largest;
  if (given.blocks === undefined) assumed.push({ path: "/loading/blocks", value: blocks, because: "the aircraft's largest pack" });
  if (blocks > battery.bay.places) {
    return { kind: "loading-impossible", message: `The battery bay holds ${battery.bay.places} blocks; ${blocks} were asked for.` };
  }
  if (given.payload !== undefined && given.payloadMass !== undefined) {
    return {
      kind: "contradicting-inputs",
      message: "loading.payload and loading.payloadMass both say what is carried; give one of them.",
      inputs: ["payload", "payloadMass"],
    };
  }
  if (given.payloadMass !== undefined) {
    return { loading: { blocks, payloadMass: given.payloadMass, payloadPower: 0, payloadDragArea: 0 }, assumed };
  }
  const standard = standardPayload(payloads);
  const record = given.payload === undefined ? standard : payloads.find((entry) => entry.name === given.payload);
  if (record === undefined) {
    return {
      kind: "payload-unknown",
      message: `No payload record is called "${given.payload}"; the aircraft file has ${payloads.map((entry) => entry.name).join(", ")}.`,
    };
  }
  if (given.payload === undefined) assumed.push({ path: "/loading/payload", value: record.name, because: "the standard payload record" });
  return { loading: recordLoading(blocks, record), assumed };
}

/** Why a loading may not take off, undefined when it may. */
export function massProblem(aircraft: Pick<AircraftDefinition, "limits">, mass: number): Problem | undefined {
  const most = aircraft.limits.largestTakeoffMass;
  if (mass <= most + 1e-9) return undefined;
  return {
    kind: "too-heavy",
    message: `Take-off mass ${mass.toFixed(2)} kg is above the largest permitted ${most} kg; take ${(mass - most).toFixed(2)} kg off.`,
    takeoffMass: mass,
  };
}
