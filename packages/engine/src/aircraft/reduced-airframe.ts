import type { Control } from "./control.ts";
import type { AircraftDefinition } from "./definition.ts";
import type { BodyDrag, FinDefinition, TailplaneDefinition, WingDefinition } from "./reduced-aircraft.ts";
import { type SurfacePart, stallOf } from "./surface-part.ts";
import { partCalled, Unfit } from "./unfit.ts";

type Roles = NonNullable<AircraftDefinition["reduced"]>;

const upright = Math.PI / 2;
const sameAngle = 1e-9;

/** The wing, flat and without twist of its zero-lift line. */
export function reducedWing(aircraft: AircraftDefinition, roles: Roles): WingDefinition {
  const wing = partCalled("surface", aircraft.surfaces, roles.wing);
  turned(wing, 0, "flat");
  plain(wing);
  if (wing.aspectRatio !== undefined)
    throw new Unfit(`The wing ${wing.id} has an aspect ratio of its own; span squared over area is known.`);
  const { angle, sharpness, flatPlateCoefficient } = stallOf(wing);
  const { area, span, liftSlope, maximumLiftCoefficient, trimLiftFraction, cd0, spanEfficiency } = wing;
  return {
    area,
    span,
    incidence: incidenceOf(aircraft, wing),
    liftSlope,
    maximumLiftCoefficient,
    trimLiftFraction,
    cd0,
    spanEfficiency,
    stallAngle: angle,
    stallSharpness: sharpness,
    flatPlateCoefficient,
    rotorDownwashFactor: downwashOn(aircraft, roles.rotor, wing.id),
  };
}

export function reducedTailplane(aircraft: AircraftDefinition, roles: Roles): TailplaneDefinition {
  const tailplane = partCalled("surface", aircraft.surfaces, roles.tailplane);
  turned(tailplane, 0, "flat");
  return tailplane;
}

export function reducedFin(aircraft: AircraftDefinition, roles: Roles): FinDefinition {
  const fin = partCalled("surface", aircraft.surfaces, roles.fin);
  turned(fin, upright, "upright");
  plain(fin);
  if (fin.place.y !== 0) throw new Unfit(`The fin ${fin.id} does not stand in the middle.`);
  return { ...fin, aspectRatio: fin.aspectRatio ?? (fin.span * fin.span) / fin.area };
}

export function reducedBody(aircraft: AircraftDefinition, roles: Roles): BodyDrag {
  const body = partCalled("body", aircraft.bodies, roles.body);
  return {
    dragArea: body.dragArea,
    verticalDragArea: body.verticalDragArea,
    rotorDownwashFactor: downwashOn(aircraft, roles.rotor, body.id),
    stoppedPropellersDragArea: aircraft.propellers.reduce((sum, { stoppedDragArea }) => sum + stoppedDragArea, 0),
  };
}

function turned(surface: SurfacePart, angle: number, word: string): void {
  if (Math.abs(surface.dihedral - angle) > sameAngle || surface.tipDihedral !== 0)
    throw new Unfit(`The surface ${surface.id} is not ${word}.`);
}

function plain(surface: SurfacePart): void {
  if (surface.zeroLiftAngle !== 0) throw new Unfit(`The surface ${surface.id} lifts at no angle of attack: zeroLiftAngle must be 0.`);
}

/** Incidence that a control sets on top of the built-in one; a setting in flight is not known. */
function incidenceOf(aircraft: AircraftDefinition, { id, incidence }: SurfacePart): Control {
  const moved = aircraft.controls.find((one) => one.part === id && one.what === "deflection");
  if (moved === undefined) return { kind: "fixed", value: incidence };
  const { setting } = moved;
  switch (setting.kind) {
    case "fixed":
      return { kind: "fixed", value: setting.value + incidence };
    case "ground-set":
      return {
        kind: "ground-set",
        value: setting.value + incidence,
        minimum: setting.minimum + incidence,
        maximum: setting.maximum + incidence,
      };
    default:
      throw new Unfit(`The wing ${id} is moved in flight by ${moved.id}.`);
  }
}

/** How strongly the rotor blows on a part; on a share of it is not known. */
function downwashOn(aircraft: AircraftDefinition, rotor: string, part: string): number {
  const found = aircraft.interference.find(({ kind, from, on }) => kind === "rotor-downwash" && from === rotor && on === part);
  if (found === undefined || !found.active) return 0;
  if (found.share !== 1) throw new Unfit(`The rotor's downwash meets a share of ${part}: all of it is known.`);
  return found.factor;
}
