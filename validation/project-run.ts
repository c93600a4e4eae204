import { fileURLToPath } from "node:url";
import { openProject } from "@wingseed/documents";
import { type Analysis, aircraftDefinition, analyses, type ReadDocument } from "@wingseed/engine";
import { recordLoading } from "../packages/engine/src/aircraft/index.ts";
import { atmosphereAt } from "../packages/engine/src/environment/atmosphere/index.ts";
import { FullTrimmer } from "../packages/engine/src/equilibrium/full/index.ts";

const nobody = {
  progress: () => {},
  cancelled: () => false,
  partial: () => {},
  analysis: (name: string): never => {
    throw new Error(`no other analysis is at hand here: ${name}`);
  },
};

/** Changes an aircraft as it was read, in SI, before it is asked: what a check varies. */
export type Change = (aircraft: Record<string, unknown>) => unknown;

/** The documents of a check's own project, read as every face reads them, and a way to ask about them. */
export interface CheckProject {
  /** Outputs of an analysis; throws where it says no. */
  outputsOf<Outputs>(name: string, inputs: unknown, change?: Change): Outputs;
  /** What trims for the analyses, at sea level with the first payload, kept for many flights of one aircraft. */
  trimmer(change?: Change): FullTrimmer;
}

/** Opens the project folder of a check: project.yaml and the one aircraft that it names. */
export async function checkProject(folder: URL): Promise<CheckProject> {
  const project = openProject(fileURLToPath(folder));
  const read = async (path: string): Promise<ReadDocument> => {
    const reading = await project.readDocument(path);
    if (reading.problems) throw new Error(reading.problems.map((problem) => problem.message).join("; "));
    return reading.value;
  };
  const head = await read("project.yaml");
  const [path] = (head.data as { readonly aircraft: readonly string[] }).aircraft;
  if (path === undefined) throw new Error(`${folder.pathname}: the project names no aircraft`);
  const aircraft = await read(path);
  return {
    outputsOf<Outputs>(name: string, inputs: unknown, change: Change = (as) => as): Outputs {
      const analysis = analyses.find((candidate) => candidate.name === name) as Analysis<unknown, Outputs> | undefined;
      if (!analysis) throw new Error(`there is no analysis named ${name}`);
      const changed = { ...aircraft, data: change(structuredClone(aircraft.data) as Record<string, unknown>) };
      const outcome = analysis.run(
        { documents: { "project.yaml": head, [path]: changed }, rasters: {} },
        analysis.inputs.parse(inputs),
        nobody,
      );
      if (outcome.problem) throw new Error(`${name} gave no result: ${outcome.problem.message}`);
      return outcome.outputs;
    },
    trimmer(change: Change = (as) => as): FullTrimmer {
      const definition = aircraftDefinition.parse(change(structuredClone(aircraft.data) as Record<string, unknown>));
      const [payload] = definition.payloads;
      if (payload === undefined) throw new Error("an aircraft has a payload record");
      return new FullTrimmer({
        aircraft: definition,
        loading: recordLoading(Math.max(...definition.battery.packs), payload),
        air: atmosphereAt({ altitude: 0, temperatureOffset: 0, relativeHumidity: 0 }),
        controls: "optimum",
        losses: "component",
        lightsOn: false,
      });
    },
  };
}

/** A number that comes out of a trim with as many digits as its solver is good for on any processor. */
export const trimmedDigits = (value: number): number => Number(value.toPrecision(5));
