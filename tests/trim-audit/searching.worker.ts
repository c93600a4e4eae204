// Searches one flight after another in a thread of its own; bundled by tools/audit-trim.mjs.
import { parentPort, workerData } from "node:worker_threads";
import { openProject } from "@wingseed/documents";
import { aircraftDefinition } from "@wingseed/engine";
import type { AircraftDefinition } from "../../packages/engine/src/aircraft/definition.ts";
import { auditedFlight } from "./audited-flights.ts";
import { searchedFlight } from "./searched-flight.ts";

const { starts } = workerData as { readonly starts: number };
const aircraft: Record<string, AircraftDefinition> = {};
for (const name of ["baseline", "revised"]) {
  const reading = await openProject("demo").readDocument(`aircraft/${name}.yaml`);
  if (reading.problems) throw new Error(reading.problems.map(({ message }) => message).join("; "));
  aircraft[name] = aircraftDefinition.parse(reading.value.data);
}

parentPort?.on("message", (index: number) => {
  const before = performance.now();
  const searched = searchedFlight(auditedFlight(aircraft, index), starts, index + 1);
  parentPort?.postMessage({ ...searched, index, seconds: (performance.now() - before) / 1000 });
});
parentPort?.postMessage("ready");
