import type { AircraftDefinition } from "./definition.ts";
import type { ReducedAircraft } from "./reduced-aircraft.ts";
import { reducedBody, reducedFin, reducedTailplane, reducedWing } from "./reduced-airframe.ts";
import { reducedPropellers, reducedRotor, reducedRotorControls, reducedRotorDrive } from "./reduced-drive.ts";
import { Unfit } from "./unfit.ts";

/** Why the trim level `reduced` does not know an aircraft. */
export interface NotReducible {
  readonly kind: "not-reducible";
  /** A sentence that names the part. */
  readonly reason: string;
}

/** Whether a reduction found its reason instead. */
export function isNotReducible(found: ReducedAircraft | NotReducible): found is NotReducible {
  return "kind" in found;
}

/**
 * The aircraft as the trim level `reduced` knows it, or why it does not: it has one rotor that teeters on an upright shaft and
 * turns counter-clockwise, two propellers that mirror each other, one wing, one tailplane, one fin and one body, and no other.
 */
export function reducedAircraft(aircraft: AircraftDefinition): ReducedAircraft | NotReducible {
  try {
    return reduction(aircraft);
  } catch (error) {
    if (error instanceof Unfit) return { kind: "not-reducible", reason: error.message };
    throw error;
  }
}

function reduction(aircraft: AircraftDefinition): ReducedAircraft {
  const { reduced: roles, name, emptyMass, battery, electrical, payloads, limits } = aircraft;
  if (roles === undefined) throw new Unfit("The file does not say under reduced which parts stand for rotor, propellers, wing and tail.");
  noOthers("rotor", aircraft.rotors, [roles.rotor]);
  noOthers("propeller", aircraft.propellers, [roles.rightPropeller, roles.leftPropeller]);
  noOthers("surface", aircraft.surfaces, [roles.wing, roles.tailplane, roles.fin]);
  noOthers("body", aircraft.bodies, [roles.body]);
  const rotor = reducedRotor(aircraft, roles.rotor);
  return {
    name,
    emptyMass,
    rotor,
    rotorControls: reducedRotorControls(aircraft, rotor),
    rotorDrive: reducedRotorDrive(aircraft, roles.rotor),
    propellers: reducedPropellers(aircraft, roles),
    wing: reducedWing(aircraft, roles),
    tailplane: reducedTailplane(aircraft, roles),
    fin: reducedFin(aircraft, roles),
    body: reducedBody(aircraft, roles),
    battery,
    electrical,
    payloads,
    limits,
  };
}

function noOthers(kind: string, parts: readonly { readonly id: string }[], known: readonly string[]): void {
  const other = parts.find(({ id }) => !known.includes(id));
  if (other !== undefined) throw new Unfit(`The ${kind} ${other.id} has no place in it.`);
}
