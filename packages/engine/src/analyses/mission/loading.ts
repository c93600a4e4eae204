import { type Loading, type ReducedAircraft, recordLoading, takeoffMass } from "../../aircraft/index.ts";
import type { OnBoard } from "../../mission/index.ts";
import type { Problem } from "../contract.ts";
import { chosenLoading, isProblem, massProblem } from "../inputs/flight-conditions.ts";

type LoadingGiven = {
  readonly blocks?: number | undefined;
  readonly payload?: string | undefined;
  readonly payloadMass?: number | undefined;
};

/** The load at take-off: inputs replace the file's blocks and, as a whole, its payload. */
export function takeoffLoading(
  aircraft: ReducedAircraft,
  file: LoadingGiven,
  inputs: LoadingGiven,
): { readonly loading: Loading; readonly onBoard: OnBoard } | Problem {
  const replaced = inputs.payload !== undefined || inputs.payloadMass !== undefined;
  const { payload, payloadMass } = replaced ? inputs : file;
  const nothing = payload === undefined && payloadMass === undefined;
  const chosen = chosenLoading(aircraft, { blocks: inputs.blocks ?? file.blocks, payload, payloadMass: nothing ? 0 : payloadMass });
  if (isProblem(chosen)) return chosen;
  const onBoard: OnBoard =
    payload !== undefined ? { kind: "record", name: payload } : nothing ? { kind: "nothing" } : { kind: "mass", mass: payloadMass ?? 0 };
  return { loading: chosen.loading, onBoard };
}

/** Everything that is on board in turn, as the aircraft carries it; too heavy or unknown is said. */
export function loadingsOf(aircraft: ReducedAircraft, takeoff: Loading, onBoard: readonly OnBoard[]): readonly Loading[] | Problem {
  const loadings: Loading[] = [];
  for (const load of onBoard) {
    const record = load.kind === "record" ? aircraft.payloads.find((entry) => entry.name === load.name) : undefined;
    if (load.kind === "record" && record === undefined) {
      const known = aircraft.payloads.map((entry) => entry.name).join(", ");
      return { kind: "payload-unknown", message: `No payload record is called "${load.name}"; the aircraft file has ${known}.` };
    }
    const bare = { blocks: takeoff.blocks, payloadMass: load.kind === "mass" ? load.mass : 0, payloadPower: 0, payloadDragArea: 0 };
    const loading = record ? recordLoading(takeoff.blocks, record) : bare;
    const tooHeavy = massProblem(aircraft, takeoffMass(aircraft, loading));
    if (tooHeavy) return tooHeavy;
    loadings.push(loading);
  }
  return loadings;
}
