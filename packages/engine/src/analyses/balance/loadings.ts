import { type AircraftDefinition, type Loading, type Place, recordLoading } from "../../aircraft/index.ts";
import type { Problem } from "../contract.ts";
import { standardPayload } from "../inputs/flight-conditions.ts";
import type { BalanceInputs } from "./schema.ts";

/** A pack, a payload and its place, by their names. */
export interface AskedLoading {
  readonly blocks: number;
  readonly payload: string;
  readonly place: string;
  /** Where the payload is put instead of its own place. */
  readonly at: Place | undefined;
}

/** Every pack with every payload at every place, or what is not there. */
export function askedLoadings(aircraft: AircraftDefinition, inputs: BalanceInputs): readonly AskedLoading[] | Problem {
  const { battery, payloads } = aircraft;
  const packs = [...new Set(inputs.packs ?? battery.packs)].toSorted((a, b) => a - b);
  const tooMany = packs.find((blocks) => blocks > battery.bay.places);
  if (tooMany !== undefined) {
    const message = `The battery bay holds ${battery.bay.places} blocks; a pack of ${tooMany} was asked for.`;
    return { kind: "loading-impossible", message };
  }
  const names = payloads.map(({ name }) => name);
  const unknown = inputs.payloads?.find((name) => !names.includes(name));
  if (unknown !== undefined) {
    return { kind: "payload-unknown", message: `No payload record is called "${unknown}"; the aircraft file has ${names.join(", ")}.` };
  }
  const asked = [...new Set(inputs.payloads ?? names)];
  return packs.flatMap((blocks) =>
    asked.flatMap((payload) => placesOf(aircraft, payload, inputs).map((place) => ({ blocks, payload, ...place }))),
  );
}

function placesOf(aircraft: AircraftDefinition, payload: string, { places }: BalanceInputs): Pick<AskedLoading, "place" | "at">[] {
  const record = aircraft.payloads.find(({ name }) => name === payload);
  if (record === undefined || record.mass === 0) return [{ place: "no payload", at: undefined }];
  if (places === undefined) return [{ place: record.place ? "its own place" : "payload bay", at: undefined }];
  return places.map(({ name, x, y, z }) => ({ place: name, at: { x, y, z } }));
}

/** The loading itself, of this aircraft or of one whose numbers differ a little. */
export function loadingOf(aircraft: AircraftDefinition, { blocks, payload, at }: AskedLoading): Loading {
  const record = aircraft.payloads.find(({ name }) => name === payload);
  if (record === undefined) throw new RangeError(`there is no payload record ${payload}`);
  const loading = recordLoading(blocks, record);
  return at === undefined ? loading : { ...loading, payloadPlace: { x: at.x, y: at.y, z: at.z } };
}

/** The loading that stands for the aircraft: its largest pack with the standard payload, where that was asked. */
export function standardLoading(aircraft: AircraftDefinition, asked: readonly AskedLoading[]): number {
  const most = Math.max(...asked.map(({ blocks }) => blocks));
  const standard = standardPayload(aircraft.payloads)?.name;
  const found = asked.findIndex(({ blocks, payload }) => blocks === most && payload === standard);
  return found >= 0 ? found : asked.findIndex(({ blocks }) => blocks === most);
}
