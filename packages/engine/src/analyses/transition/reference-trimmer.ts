import type { AircraftDefinition } from "../../aircraft/index.ts";
import { type FullConditions, FullTrimmer } from "../../equilibrium/index.ts";
import type { FullFlight } from "../inputs/full-flight.ts";

/** Room that the reference keeps to the rotor's speed limits and flapping range, for what the motion adds [1]: our own choice. */
const rotorSpeedRoom = 0.02;
const flappingRoom = 0.05;

/** Trims the reference of a transition: like the aircraft's own, with some room to the limits that motion comes near. */
export function referenceTrimmer(flight: FullFlight, controls: FullConditions["controls"]): FullTrimmer {
  return new FullTrimmer({ ...flight.conditions, controls, aircraft: roomy(flight.definition) });
}

function roomy(aircraft: AircraftDefinition): AircraftDefinition {
  const rotors = aircraft.rotors.map((rotor) => ({
    ...rotor,
    tipSpeedMinimum: rotor.tipSpeedMinimum * (1 + rotorSpeedRoom),
    tipSpeedMaximum: rotor.tipSpeedMaximum * (1 - rotorSpeedRoom),
    flapRange: rotor.flapRange * (1 - flappingRoom),
  }));
  const controls = aircraft.controls.map((control) => {
    const rotor = rotors.find(({ id }) => id === control.part);
    const { setting } = control;
    if (!rotor || control.what !== "tip-speed" || !("minimum" in setting)) return control;
    const minimum = Math.max(setting.minimum, rotor.tipSpeedMinimum);
    const maximum = Math.min(setting.maximum, rotor.tipSpeedMaximum);
    return minimum <= maximum ? { ...control, setting: { ...setting, minimum, maximum } } : control;
  });
  return { ...aircraft, rotors, controls };
}
