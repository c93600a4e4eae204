import type { AircraftDefinition } from "./aircraft-entries.ts";
import { type Complain, uniqueIds, unknown } from "./complaint.ts";

const ids = (parts: readonly { readonly id: string }[]) => parts.map(({ id }) => id);

/** Parts, what turns them, what they do to each other, what is carried. */
export function partChecks(aircraft: AircraftDefinition, complain: Complain): void {
  const { rotors, propellers, surfaces, bodies } = aircraft;
  uniqueIds({ rotors, propellers, surfaces, bodies }, complain);
  uniqueIds({ landingGear: aircraft.landingGear }, complain);
  uniqueIds({ suspension: aircraft.suspension }, complain);
  surfaces.forEach(({ movables }, index) => {
    uniqueIds({ movables }, (path, message) => complain(["surfaces", index, ...path], message));
  });
  rotorChecks(aircraft, complain);
  driveChecks(aircraft, complain);
  interferenceChecks(aircraft, complain);
  roleChecks(aircraft, complain);
  loadChecks(aircraft, complain);
}

function rotorChecks({ rotors }: AircraftDefinition, complain: Complain): void {
  rotors.forEach(({ stations, tipSpeedMinimum, tipSpeedMaximum }, index) => {
    const falls = stations.findIndex((station, at) => at > 0 && station.radiusFraction <= (stations[at - 1]?.radiusFraction ?? 0));
    if (falls > 0)
      complain(["rotors", index, "stations", falls, "radiusFraction"], "stations go outward: each lies farther out than the one before");
    if (tipSpeedMinimum > tipSpeedMaximum)
      complain(["rotors", index, "tipSpeedMinimum"], `is above tipSpeedMaximum, ${tipSpeedMaximum} m/s`);
  });
}

function driveChecks({ driveLines, rotors, propellers }: AircraftDefinition, complain: Complain): void {
  uniqueIds({ driveLines }, complain);
  const driven = new Map<string, string>();
  const motors = new Map<string, string>();
  driveLines.forEach((line, index) => {
    const at = ["driveLines", index] as const;
    const turnsRotor = ids(rotors).includes(line.drives);
    if (!turnsRotor && !ids(propellers).includes(line.drives)) {
      complain([...at, "drives"], unknown("rotor or propeller", line.drives, ids([...rotors, ...propellers])));
    } else if (line.clutch === "one-way" && !turnsRotor) {
      complain([...at, "clutch"], `a one-way clutch is for a rotor that may turn free; ${line.drives} is a propeller: write none`);
    }
    const other = driven.get(line.drives);
    if (other !== undefined)
      complain([...at, "drives"], `${line.drives} is turned by ${other} already; motors on one shaft stand in one drive line`);
    driven.set(line.drives, line.id);
    line.motors.forEach(({ id }, motor) => {
      const first = motors.get(id);
      if (first !== undefined) complain([...at, "motors", motor, "id"], `"${id}" is the name of a motor of ${first} already`);
      motors.set(id, line.id);
    });
  });
}

function interferenceChecks({ interference, rotors, propellers, surfaces, bodies }: AircraftDefinition, complain: Complain): void {
  const movers = {
    "rotor-downwash": ["rotor", ids(rotors)],
    slipstream: ["propeller", ids(propellers)],
    "wing-downwash": ["surface", ids(surfaces)],
    "propeller-wake": ["propeller", ids(propellers)],
  } as const;
  const met = ids([...surfaces, ...bodies]);
  const known = new Set<string>();
  interference.forEach(({ from, on, kind }, index) => {
    const at = ["interference", index] as const;
    const [mover, able] = movers[kind];
    if (!able.includes(from)) complain([...at, "from"], `${kind} comes from a ${mover}: ${unknown(mover, from, able)}`);
    const meets = kind === "propeller-wake" ? { word: "propeller", able: ids(propellers) } : { word: "surface or body", able: met };
    if (!meets.able.includes(on)) complain([...at, "on"], unknown(meets.word, on, meets.able));
    if (from === on) complain([...at, "on"], `${on} does not meet its own wake`);
    const entry = `${kind} ${from} ${on}`;
    if (known.has(entry)) complain([...at, "on"], `${kind} of ${from} on ${on} stands here a second time`);
    known.add(entry);
  });
}

function roleChecks({ reduced, rotors, propellers, surfaces, bodies }: AircraftDefinition, complain: Complain): void {
  if (reduced === undefined) return;
  const kinds = {
    rotor: ["rotor", rotors],
    rightPropeller: ["propeller", propellers],
    leftPropeller: ["propeller", propellers],
    wing: ["surface", surfaces],
    tailplane: ["surface", surfaces],
    fin: ["surface", surfaces],
    body: ["body", bodies],
  } as const;
  for (const role of Object.keys(kinds) as (keyof typeof kinds)[]) {
    const [kind, parts] = kinds[role];
    if (!ids(parts).includes(reduced[role])) complain(["reduced", role], unknown(kind, reduced[role], ids(parts)));
  }
}

function loadChecks({ battery, payloads, suspension, limits }: AircraftDefinition, complain: Complain): void {
  const { bay, packs } = battery;
  if (bay.front <= bay.back) complain(["battery", "bay", "front"], "the front of the bay lies forward of its back");
  packs.forEach((blocks, index) => {
    if (blocks > bay.places) complain(["battery", "packs", index], `the bay holds ${bay.places} blocks`);
  });
  const names = payloads.map(({ name }) => name);
  names.forEach((name, index) => {
    if (names.indexOf(name) < index)
      complain(["payloads", index, "name"], `"${name}" is the name of payloads[${names.indexOf(name)}] already`);
  });
  suspension.forEach(({ payload, blocks }, index) => {
    if (payload !== undefined && !names.includes(payload))
      complain(["suspension", index, "payload"], unknown("payload record", payload, names));
    if (blocks > bay.places) complain(["suspension", index, "blocks"], `the bay holds ${bay.places} blocks`);
  });
  if (limits.centreOfGravityAft >= limits.centreOfGravityForward)
    complain(["limits", "centreOfGravityAft"], "the aft limit lies behind the forward one");
  if (limits.airTemperatureMinimum >= limits.airTemperatureMaximum)
    complain(["limits", "airTemperatureMinimum"], "the coldest permitted air is colder than the hottest");
}
