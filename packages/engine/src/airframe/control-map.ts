import { type AircraftDefinition, type ControlPart, controlRange } from "../aircraft/index.ts";

/** A control of the aircraft as the airframe takes it: one number in SI. */
export interface AirframeControl {
  readonly id: string;
  readonly part: string;
  readonly what: ControlPart["what"];
  /** The whole range that it has [rad, m/s, N]. */
  readonly minimum: number;
  readonly maximum: number;
  /** Per second; absent: at once. */
  readonly rate?: number;
  readonly definition: ControlPart;
}

/** Numbers of the controls that move a rotor; −1 where none does. */
export interface RotorControls {
  readonly collective: number;
  readonly longitudinalCyclic: number;
  readonly lateralCyclic: number;
  readonly tiltBack: number;
  readonly tiltRight: number;
  readonly tipSpeed: number;
}

export interface PropellerControls {
  readonly thrust: number;
  readonly tiltBack: number;
  readonly tiltRight: number;
}

/** Which edge of a surface a control moves, and how far for one of it. */
export interface EdgeControl {
  readonly edge: string;
  readonly control: number;
  readonly factor: number;
}

/** The controls of an aircraft in the order of its file. @derivation not a formula */
export function airframeControls(aircraft: AircraftDefinition): readonly AirframeControl[] {
  return aircraft.controls.map((definition) => {
    const range = controlRange(definition.setting, 0, "optimum");
    const open = definition.clutchOpen ? controlRange(definition.clutchOpen, 0, "optimum") : range;
    return {
      id: definition.id,
      part: definition.part,
      what: definition.what,
      minimum: Math.min(range.minimum, open.minimum),
      maximum: Math.max(range.maximum, open.maximum),
      ...(definition.rate === undefined ? {} : { rate: definition.rate }),
      definition,
    };
  });
}

const find = (controls: readonly AirframeControl[], part: string, what: ControlPart["what"]) =>
  controls.findIndex((control) => control.part === part && control.what === what);

/** @derivation not a formula */
export function rotorControls(controls: readonly AirframeControl[], part: string): RotorControls {
  return {
    collective: find(controls, part, "collective"),
    longitudinalCyclic: find(controls, part, "longitudinal-cyclic"),
    lateralCyclic: find(controls, part, "lateral-cyclic"),
    tiltBack: find(controls, part, "tilt-back"),
    tiltRight: find(controls, part, "tilt-right"),
    tipSpeed: find(controls, part, "tip-speed"),
  };
}

/** @derivation not a formula */
export function propellerControls(controls: readonly AirframeControl[], part: string): PropellerControls {
  return {
    thrust: find(controls, part, "thrust"),
    tiltBack: find(controls, part, "tilt-back"),
    tiltRight: find(controls, part, "tilt-right"),
  };
}

/** @derivation not a formula */
export function surfaceControls(
  controls: readonly AirframeControl[],
  part: string,
): { readonly deflection: number; readonly edges: readonly EdgeControl[] } {
  return {
    deflection: find(controls, part, "deflection"),
    edges: controls.flatMap(({ definition }, control) =>
      definition.part === part && definition.what === "movable"
        ? definition.movables.map(({ id, factor }) => ({ edge: id, control, factor }))
        : [],
    ),
  };
}
