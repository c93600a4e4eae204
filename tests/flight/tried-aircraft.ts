// An invented aircraft in the plain format of the engine: rotor, one propeller, wing, tail, fin, body. Symmetrical in its places.
import type { AircraftDefinition } from "../../packages/engine/src/aircraft/definition.ts";
import { aircraftDefinition } from "../../packages/engine/src/aircraft/definition.ts";
import { triedRotor } from "./plain-rotor-part.ts";

const degree = Math.PI / 180;
const origin = { x: 0, y: 0, z: 0 };
const stall = { angle: 18.5 * degree, sharpness: 60, flatPlateCoefficient: 1.2 };

/** A battery that plays no part. */
export const idleBattery = {
  cell: {
    capacity: 12_240,
    mass: 0.048,
    specificHeat: 920,
    openCircuitVoltage: [
      { stateOfCharge: 0, value: 3 },
      { stateOfCharge: 1, value: 4.2 },
    ],
    resistance: 0.04,
    resistanceFactor: [{ stateOfCharge: 0, value: 1 }],
    resistanceActivation: 0,
    capacityFactor: [{ temperature: 298.15, value: 1 }],
    cutoffVoltage: 3,
    temperatureMinimum: 263.15,
    temperatureMaximum: 333.15,
  },
  seriesCells: 14,
  parallelCells: 1,
  blockMass: 0.69,
  fixedMass: 0,
  fixedPlace: origin,
  bay: { front: 0.1, back: -0.1, z: 0.05, places: 10 },
  packs: [10],
  wiringResistance: 0.004,
  continuousCurrent: 1000,
  shortCurrent: 1000,
  shortTime: 10,
  thermalResistance: 1,
  bayTemperatureRise: 0,
} as const;

/** As a file would give it: defaults are filled by the schema. */
const written = {
  format: 2,
  name: "tried",
  emptyMass: 16,
  emptyCentre: { x: 0, y: 0, z: 0 },
  emptyInertia: { x: 0.6, y: 1.1, z: 1.3 },
  rotors: [triedRotor],
  propellers: [
    {
      id: "propeller",
      place: { x: 0.6, y: 0, z: 0 },
      turns: "clockwise",
      diameter: 0.48,
      inducedFactor: 1.2,
      profileEfficiency: 0.8,
      reverseFigureOfMerit: 0.38,
      thrustCoefficient: 0.095,
      zeroThrustAdvanceRatio: 1.05,
      reverseThrustCoefficient: 0.06,
      thrustRate: 40,
      reversalTime: 0.25,
      inertia: 0.0011,
    },
  ],
  surfaces: [
    {
      id: "wing",
      place: { x: -0.02, y: 0, z: -0.02 },
      area: 0.42,
      span: 1.85,
      incidence: 5 * degree,
      liftSlope: 4.7,
      maximumLiftCoefficient: 1.25,
      cd0: 0.018,
      spanEfficiency: 0.8,
      stall,
    },
    {
      id: "fin",
      place: { x: -0.85, y: 0, z: -0.15 },
      dihedral: 90 * degree,
      area: 0.06,
      span: 0.346,
      liftSlope: 2.5,
      maximumLiftCoefficient: 0.5,
      cd0: 0.01,
      spanEfficiency: 0.9,
      stall,
    },
  ],
  bodies: [{ id: "body", place: origin, dragArea: 0.05, sideDragArea: 0.14, verticalDragArea: 0.06 }],
  driveLines: [
    { id: "rotor-drive", drives: "rotor", clutch: "one-way" },
    { id: "propeller-drive", drives: "propeller", clutch: "none" },
  ],
  controls: [
    { id: "collective", part: "rotor", what: "collective", setting: { kind: "free", minimum: -0.05, maximum: 0.28 } },
    { id: "back", part: "rotor", what: "longitudinal-cyclic", setting: { kind: "free", minimum: -0.14, maximum: 0.14 } },
    { id: "right", part: "rotor", what: "lateral-cyclic", setting: { kind: "free", minimum: -0.14, maximum: 0.14 } },
    { id: "pull", part: "propeller", what: "thrust", setting: { kind: "free", minimum: -20, maximum: 60 } },
  ],
  interference: [
    { from: "rotor", on: "wing", kind: "rotor-downwash", factor: 1 },
    { from: "rotor", on: "body", kind: "rotor-downwash", factor: 1 },
  ],
  battery: idleBattery,
  electrical: { buses: [{ id: "main", voltage: 50 }], payloadBus: "main" },
  payloadBay: origin,
  payloads: [{ name: "none", mass: 0, power: 0, dragArea: 0 }],
  limits: {
    largestTakeoffMass: 30,
    climbRate: 5,
    descentRate: 5,
    altitudeMaximum: 3000,
    airTemperatureMinimum: 250,
    airTemperatureMaximum: 320,
    centreOfGravityAft: -0.2,
    centreOfGravityForward: 0.2,
  },
};

export function triedAircraft(): AircraftDefinition {
  return aircraftDefinition.parse(written);
}
