import { freeBothWays, type Mapping, mapping, spanOf, thrustBound } from "./aircraft-parts.ts";
import { scaledText } from "./scaled-text.ts";

const source = "format 1";
const added = (value: unknown): Mapping => ({ value, source });

/** What {@link aircraftFormat2} takes without its being written. */
export const addedInFormat2 =
  "Not written in it, and taken so: cyclic pitch reaches as far as the blades may flap, thrust as far as the motors give it, the rotor's downwash meets the tailplane as it meets the wing and the body in full, the wing's meets nothing.";

/**
 * An aircraft of format 1, one rotor and two propellers under fixed names, as parts in lists with ids. What format 1 did not
 * know is added so that it flies as before: a swashplate that reaches as far as the blades may flap, a thrust that the motors
 * limit, a bus of the pack and one rail. Values that were written keep their text, interval and source.
 */
export function aircraftFormat2(document: Mapping): Mapping {
  const { rotor, rotorControls, rotorDrive, propellers, wing, tailplane, fin, body, electrical, battery, ...others } = document;
  const bodyParts = mapping(body);
  return {
    ...others,
    rotors: [rotorPart(mapping(rotor), mapping(mapping(rotorControls).clutchOpen))],
    propellers: propellerParts(mapping(propellers), bodyParts.stoppedPropellersDragArea),
    surfaces: [wingPart(mapping(wing)), tailplanePart(mapping(tailplane)), finPart(mapping(fin))],
    bodies: [bodyPart(bodyParts)],
    driveLines: driveLines(mapping(rotorDrive), mapping(propellers)),
    controls: controls(document),
    interference: interference(mapping(wing).rotorDownwashFactor),
    reduced: {
      rotor: "main",
      rightPropeller: "right-propeller",
      leftPropeller: "left-propeller",
      wing: "wing",
      tailplane: "tailplane",
      fin: "fin",
      body: "body",
    },
    battery,
    electrical: network(mapping(electrical)),
  };
}

function rotorPart({ articulation, ...rotor }: Mapping, { tipSpeedMinimum, tipSpeedMaximum }: Mapping): Mapping {
  return { id: "main", turns: "counter-clockwise", ...rotor, articulation: { kind: articulation }, tipSpeedMinimum, tipSpeedMaximum };
}

function propellerParts(
  { count: _, place, motor: _motor, constantEfficiency: _efficiency, ...each }: Mapping,
  stopped: unknown,
): Mapping[] {
  const right = mapping(place);
  const stoppedDragArea = stopped === undefined ? undefined : scaledText(stopped, 0.5);
  return [
    { id: "right-propeller", place: right, turns: "clockwise", ...each, stoppedDragArea },
    { id: "left-propeller", place: { ...right, y: scaledText(right.y, -1) }, turns: "counter-clockwise", ...each, stoppedDragArea },
  ];
}

function wingPart(wing: Mapping): Mapping {
  const { quarterChord, incidence: _, stallAngle, stallSharpness, flatPlateCoefficient, rotorDownwashFactor: _factor, ...own } = wing;
  return { id: "wing", place: quarterChord, ...own, stall: { angle: stallAngle, sharpness: stallSharpness, flatPlateCoefficient } };
}

function tailplanePart({ deflection: _, rate: _rate, ...own }: Mapping): Mapping {
  return { id: "tailplane", ...own };
}

function finPart({ deflection: _, rate: _rate, ...own }: Mapping): Mapping {
  return { id: "fin", dihedral: added("90 deg"), ...own, span: spanOf(own.area, own.aspectRatio), cd0: added(0) };
}

function bodyPart({ dragPlace, stoppedPropellersDragArea: _, ...own }: Mapping): Mapping {
  return { id: "body", place: dragPlace, ...own };
}

function driveLines({ motor, gearRatio, gearConstantLoss, gearProportionalLoss, ...own }: Mapping, propellers: Mapping): Mapping[] {
  const side = (name: string) => ({
    id: `${name}-drive`,
    drives: `${name}-propeller`,
    motors: [{ id: `${name}-motor`, motor: propellers.motor }],
    clutch: "none",
    constantEfficiency: propellers.constantEfficiency,
  });
  const stage = { ratio: gearRatio, constantLoss: gearConstantLoss, proportionalLoss: gearProportionalLoss };
  const rotorDrive = { id: "rotor-drive", drives: "main", motors: [{ id: "rotor-motor", motor }], gearStages: [stage], clutch: "one-way" };
  return [{ ...rotorDrive, ...own }, side("right"), side("left")];
}

function controls({ rotor, rotorControls, propellers, wing, tailplane, fin }: Mapping): Mapping[] {
  const closed = mapping(mapping(rotorControls).clutchClosed);
  const open = mapping(mapping(rotorControls).clutchOpen);
  const { diameter, motor, thrustRate } = mapping(propellers);
  const most = thrustBound(diameter, mapping(motor).shortPower);
  const cyclic = freeBothWays(mapping(rotor).flapRange);
  const moved = (id: string, part: string, { deflection, rate }: Mapping): Mapping => ({
    id,
    part,
    what: "deflection",
    setting: freeBothWays(deflection),
    rate,
  });
  const thrust = (side: string): Mapping => ({
    id: `${side}-thrust`,
    part: `${side}-propeller`,
    what: "thrust",
    setting: freeBothWays(added(most)),
    rate: thrustRate,
  });
  return [
    { id: "collective", part: "main", what: "collective", setting: closed.collective, clutchOpen: open.collective },
    { id: "longitudinal-cyclic", part: "main", what: "longitudinal-cyclic", setting: cyclic },
    { id: "lateral-cyclic", part: "main", what: "lateral-cyclic", setting: cyclic },
    { id: "governor", part: "main", what: "tip-speed", setting: closed.tipSpeed, reference: closed.tipSpeedReference },
    thrust("right"),
    thrust("left"),
    { id: "wing-incidence", part: "wing", what: "deflection", setting: mapping(wing).incidence },
    moved("elevator", "tailplane", mapping(tailplane)),
    moved("rudder", "fin", mapping(fin)),
  ];
}

function interference(onWing: unknown): Mapping[] {
  const rotorOn = (on: string, factor: unknown) => ({ from: "main", on, kind: "rotor-downwash", factor });
  return [rotorOn("wing", onWing), rotorOn("tailplane", onWing), rotorOn("body", added(1))];
}

function network({ avionicsPower, converterProportionalLoss, lightsPower, ...own }: Mapping): Mapping {
  return {
    ...own,
    buses: [
      { id: "pack", voltage: added("50 V") },
      { id: "rail", voltage: added("12 V") },
    ],
    converters: [{ id: "converter", from: "pack", to: "rail", constantLoss: added("0 W"), proportionalLoss: converterProportionalLoss }],
    loads: [
      { id: "avionics", bus: "pack", power: avionicsPower },
      { id: "lights", bus: "rail", power: lightsPower, when: "lights" },
    ],
    payloadBus: "rail",
  };
}
