import { z } from "zod";
import { quantity } from "../quantities/index.ts";
import { control } from "./control.ts";
import { place, principalInertia } from "./placement.ts";

const fraction = (description: string) => quantity("dimensionless", { description, minimum: 0, maximum: 1 });
const positive = (kind: Parameters<typeof quantity>[0], description: string) => quantity(kind, { description, exclusiveMinimum: 0 });
const notNegative = (kind: Parameters<typeof quantity>[0], description: string) => quantity(kind, { description, minimum: 0 });

const section = z
  .discriminatedUnion("kind", [
    z.strictObject({
      kind: z.literal("generic"),
      liftSlope: positive("dimensionless", "Lift-curve slope at low Mach number, per radian."),
      cd0: positive("dimensionless", "Profile drag coefficient at zero angle of attack."),
      cd1: quantity("dimensionless", { description: "Linear term of profile drag, per radian." }),
      cd2: notNegative("dimensionless", "Quadratic term of profile drag, per radian squared."),
      stallAngle: positive("angle", "Angle of attack at which attached flow gives way to the flat plate."),
    }),
    z.strictObject({
      kind: z.literal("built-in"),
      name: z.enum(["naca-0012", "naca-0015"]),
      dragIncrement: notNegative("dimensionless", "Added to the section drag coefficient everywhere."),
    }),
  ])
  .describe("Two-dimensional section law.");

const rotor = z.strictObject({
  hub: place.describe("Hub centre."),
  radius: positive("length", "Rotor radius."),
  blades: z.int().min(1).max(8).describe("Blades of the rotor."),
  stations: z
    .array(
      z.strictObject({
        radiusFraction: fraction("Station as a fraction of the radius."),
        chord: positive("length", "Blade chord here."),
        twist: quantity("angle", { description: "Blade twist here, zero at 0.75 of the radius." }),
      }),
    )
    .min(1)
    .describe("Chord and twist along the blade, linear between stations."),
  rootCutout: fraction("Where the lifting blade begins, as a fraction of the radius."),
  precone: quantity("angle", { description: "Built-in upward angle of the blades." }),
  articulation: z
    .enum(["teetering"])
    .describe("How the blades flap. Trim knows one central teeter only in this version; the rotor bench knows hinges."),
  section,
  tipLoss: z
    .discriminatedUnion("kind", [
      z.strictObject({
        kind: z.literal("lift-cutoff"),
        liftRadiusFraction: fraction("Lift is zero outboard of this fraction of the radius."),
      }),
      z.strictObject({ kind: z.literal("prandtl") }),
    ])
    .describe("How lift falls to zero at the blade tip."),
  inducedPowerFactor: quantity("dimensionless", { description: "Induced power over the ideal.", minimum: 1 }),
  inflow: z.enum(["drees", "pitt-peters", "uniform"]).describe("First-harmonic distribution of induced velocity."),
  radialFlow: z.enum(["off", "friction", "resultant"]).describe("How drag of the spanwise flow counts."),
  polarInertia: positive("inertia", "Rotor inertia about its shaft."),
  flapRange: positive("angle", "Largest flapping relative to the body, either way."),
  stallMarginFloor: quantity("dimensionless", {
    description: "Smallest allowed ratio of largest steady thrust to trimmed thrust.",
    minimum: 1,
  }),
  alarmTipSpeed: positive("speed", "Tip speed at which the over-speed alarm sounds."),
  brakeTorque: notNegative("torque", "Torque of the rotor brake."),
});

const rotorControls = z.strictObject({
  clutchClosed: z.strictObject({
    tipSpeed: control("speed", "Rotor tip speed held by the governor."),
    tipSpeedReference: z
      .strictObject({ mass: positive("mass", "Mass of the schedule."), density: positive("density", "Air density of the schedule.") })
      .optional()
      .describe("A scheduled tip speed grows with the square root of mass over density from here."),
    collective: control("angle", "Blade pitch at 0.75 of the radius."),
  }),
  clutchOpen: z.strictObject({
    collective: control("angle", "Blade pitch at 0.75 of the radius."),
    tipSpeedMinimum: positive("speed", "Lowest permitted tip speed."),
    tipSpeedMaximum: positive("speed", "Highest permitted tip speed."),
  }),
});

const wing = z.strictObject({
  quarterChord: place.describe("Quarter chord at the root."),
  area: positive("area", "Reference area."),
  span: positive("length", "Span."),
  incidence: control("angle", "Chord relative to the plane normal to the rotor shaft."),
  liftSlope: positive("dimensionless", "Lift-curve slope of the finite wing, per radian."),
  maximumLiftCoefficient: positive("dimensionless", "Largest lift coefficient."),
  trimLiftFraction: fraction("Share of the largest lift coefficient that trim may use."),
  cd0: positive("dimensionless", "Profile drag coefficient."),
  spanEfficiency: positive("dimensionless", "Span efficiency factor."),
  stallAngle: positive("angle", "Centre of the blend to the flat plate."),
  stallSharpness: positive("dimensionless", "Steepness of that blend, per radian."),
  flatPlateCoefficient: positive("dimensionless", "Normal force coefficient of the stalled wing at ninety degrees."),
  rotorDownwashFactor: notNegative("dimensionless", "Rotor induced velocity at the wing over that at the disc."),
});

const fin = z.strictObject({
  place,
  area: positive("area", "Reference area."),
  liftSlope: positive("dimensionless", "Lift-curve slope, per radian."),
  aspectRatio: positive("dimensionless", "Aspect ratio."),
  spanEfficiency: positive("dimensionless", "Span efficiency factor."),
  maximumLiftCoefficient: positive("dimensionless", "Largest lift coefficient either way."),
  deflection: positive("angle", "Largest deflection of the all-moving fin."),
  rate: positive("anglePerTime", "Rate of deflection."),
});

const tailplane = z.strictObject({
  place,
  area: positive("area", "Reference area."),
  span: positive("length", "Span."),
  liftSlope: positive("dimensionless", "Lift-curve slope, per radian."),
  maximumLiftCoefficient: positive("dimensionless", "Largest lift coefficient either way."),
  cd0: positive("dimensionless", "Profile drag coefficient."),
  spanEfficiency: positive("dimensionless", "Span efficiency factor."),
  incidence: quantity("angle", { description: "Setting at zero deflection." }),
  deflection: positive("angle", "Largest deflection."),
  rate: positive("anglePerTime", "Rate of deflection."),
});

const body = z.strictObject({
  dragArea: positive("area", "Drag area in forward flight, everything but wing, rotor blades and propellers."),
  dragPlace: place.describe("Where that drag acts."),
  sideDragArea: notNegative("area", "Drag area to flow from the side."),
  sidePlace: place.describe("Where side drag acts."),
  verticalDragArea: notNegative("area", "Drag area to the rotor's downwash."),
  stoppedPropellersDragArea: notNegative("area", "Drag area of all stopped propellers together."),
});

const motor = z.strictObject({
  speedConstant: positive("speedConstant", "Rotation rate per volt of back electromotive force."),
  resistance: positive("resistance", "Winding and lead resistance."),
  noLoadCurrent: notNegative("current", "Current at no load, taken as constant."),
  polePairs: z.int().min(1).describe("Pole pairs."),
  controllerConstantLoss: notNegative("power", "Loss of the controller whenever it runs."),
  controllerProportionalLoss: fraction("Loss of the controller as a share of its input."),
  controllerDutyMaximum: fraction("Largest share of the pack voltage that reaches the motor."),
  continuousPower: positive("power", "Electric power that may be drawn without end."),
  shortPower: positive("power", "Electric power for a short time."),
  shortTime: positive("time", "How long the short-time power may be drawn."),
  currentMaximum: positive("current", "Largest motor current."),
  heatCapacity: positive("heatCapacity", "Heat capacity of the winding."),
  thermalResistance: positive("thermalResistance", "Winding to air."),
  temperatureMaximum: positive("temperature", "Hottest permitted winding."),
});

const rotorDrive = z.strictObject({
  motor,
  gearRatio: positive("dimensionless", "Motor turns for one rotor turn."),
  gearConstantLoss: notNegative("power", "Gear loss whenever the clutch is closed."),
  gearProportionalLoss: fraction("Gear loss as a share of the power passed."),
  constantEfficiency: fraction("Electric to shaft efficiency under the comparison assumption of constant losses."),
});

const propellers = z.strictObject({
  count: z.literal(2).describe("One on each side."),
  diameter: positive("length", "Propeller diameter."),
  place: place.describe("The right one; the left one mirrors it."),
  inducedFactor: quantity("dimensionless", { description: "Induced velocity over the ideal in shaft power.", minimum: 1 }),
  profileEfficiency: fraction("Share of shaft power left after blade drag."),
  reverseFigureOfMerit: fraction("Static figure of merit when run backwards."),
  thrustCoefficient: positive("dimensionless", "Static T over rho n squared D to the fourth, n in turns per second."),
  zeroThrustAdvanceRatio: positive("dimensionless", "V over n D at which thrust vanishes."),
  reverseThrustCoefficient: positive("dimensionless", "The same when run backwards."),
  thrustRate: positive("forceRate", "How fast thrust can change."),
  reversalTime: notNegative("time", "Dead time of a change of direction."),
  inertia: positive("inertia", "Polar inertia of one propeller."),
  motor,
  constantEfficiency: fraction("Electric to shaft efficiency under the comparison assumption of constant losses."),
});

const curvePoint = (kind: Parameters<typeof quantity>[0], description: string) =>
  z.strictObject({ stateOfCharge: fraction("State of charge."), value: quantity(kind, { description, minimum: 0 }) });

const cell = z
  .strictObject({
    capacity: positive("capacity", "Charge of a new cell at 25 °C."),
    mass: positive("mass", "Mass of one cell."),
    specificHeat: positive("specificHeat", "Specific heat of the cell."),
    openCircuitVoltage: z.array(curvePoint("voltage", "Rest voltage.")).min(2).describe("Linear between points."),
    resistance: positive("resistance", "Resistance at 25 °C once the voltage has settled."),
    relaxation: z
      .strictObject({
        resistance: positive("resistance", "Part of the resistance that shows only after a while."),
        timeConstant: positive("time", "After this time 63 % of that part show."),
      })
      .optional()
      .describe("How the voltage settles after a change of load; at once when absent. Endurance over a flight does without it."),
    resistanceFactor: z
      .array(curvePoint("dimensionless", "Factor on resistance."))
      .min(1)
      .describe("Linear between points, held beyond the ends."),
    resistanceActivation: notNegative("temperatureDifference", "B in R(T) = R25 exp(B (1/T − 1/298.15 K))."),
    capacityFactor: z
      .array(z.strictObject({ temperature: positive("temperature", "Cell temperature."), value: fraction("Factor on capacity.") }))
      .min(1)
      .describe("Linear between points, held beyond the ends."),
    cutoffVoltage: positive("voltage", "Lowest permitted voltage under load."),
    temperatureMinimum: positive("temperature", "Coldest permitted cell."),
    temperatureMaximum: positive("temperature", "Hottest permitted cell."),
  })
  .refine((one) => one.relaxation === undefined || one.relaxation.resistance < one.resistance, {
    error: "relaxation.resistance is a part of resistance: it must be smaller",
    path: ["relaxation", "resistance"],
  });

const battery = z.strictObject({
  cell,
  seriesCells: z.int().min(1).describe("Cells in series in one block."),
  parallelCells: z.int().min(1).describe("Cells in parallel in one block."),
  blockMass: positive("mass", "Mass of one block."),
  fixedMass: notNegative("mass", "Mass of the pack without blocks."),
  fixedPlace: place.describe("Where that mass sits."),
  bay: z.strictObject({
    front: quantity("length", { description: "Front edge of the bay, forward of the datum." }),
    back: quantity("length", { description: "Rear edge of the bay, forward of the datum." }),
    z: quantity("length", { description: "Depth of the bay below the datum." }),
    places: z.int().min(1).describe("Equal places, filled from the front."),
  }),
  packs: z.array(z.int().min(1)).min(1).describe("Block counts that are flown."),
  wiringResistance: notNegative("resistance", "Wiring between blocks and terminals."),
  continuousCurrent: positive("current", "Current of one block without end."),
  shortCurrent: positive("current", "Current of one block for a short time."),
  shortTime: positive("time", "How long the short-time current may flow."),
  thermalResistance: positive("thermalResistance", "Block to bay air."),
  bayTemperatureRise: notNegative("temperatureDifference", "Bay air above ambient."),
});

const electrical = z.strictObject({
  avionicsPower: notNegative("power", "Always drawn at the pack terminals, converter loss included."),
  converterProportionalLoss: notNegative("dimensionless", "Further 12 V loads count with this share on top."),
  lightsPower: notNegative("power", "Lights, at 12 V, when switched on."),
});

const payload = z.strictObject({
  name: z.string().min(1).describe("Name of this record."),
  mass: notNegative("mass", "Payload mass."),
  power: notNegative("power", "Electric power at 12 V."),
  dragArea: notNegative("area", "Drag area it adds."),
  temperatureMinimum: positive("temperature", "Coldest permitted air.").optional(),
  temperatureMaximum: positive("temperature", "Hottest permitted air.").optional(),
});

const limits = z.strictObject({
  largestTakeoffMass: positive("mass", "Largest permitted take-off mass."),
  climbRate: positive("speed", "Fastest permitted climb."),
  descentRate: positive("speed", "Fastest permitted descent with the clutch closed at low speed."),
  altitudeMaximum: quantity("length", { description: "Highest permitted altitude above mean sea level." }),
  airTemperatureMinimum: positive("temperature", "Coldest permitted air."),
  airTemperatureMaximum: positive("temperature", "Hottest permitted air."),
  centreOfGravityAft: quantity("length", { description: "Rearmost permitted centre of gravity, forward of the datum." }),
  centreOfGravityForward: quantity("length", { description: "Foremost permitted centre of gravity, forward of the datum." }),
});

/** What an aircraft is: components, places, masses, energy and the controls it really has. SI after reading. */
export const aircraftDefinition = z.strictObject({
  format: z.literal(1).describe("Version of this document's format."),
  name: z.string().min(1).describe("Name of the aircraft."),
  provenance: z.string().optional().describe("One word or sentence on where the values come from."),
  emptyMass: positive("mass", "Mass without batteries and payload."),
  emptyCentre: place.describe("Centre of gravity of the empty aircraft."),
  emptyInertia: principalInertia.describe("Inertia of the empty aircraft about its centre of gravity."),
  rotor,
  rotorControls,
  rotorDrive,
  propellers,
  wing,
  tailplane,
  fin,
  body,
  battery,
  electrical,
  payloadBay: place.describe("Where the payload sits."),
  payloads: z.array(payload).min(1).describe("Payload records."),
  limits,
});

export type AircraftDefinition = z.infer<typeof aircraftDefinition>;
export type RotorDefinition = AircraftDefinition["rotor"];
export type WingDefinition = AircraftDefinition["wing"];
export type MotorDefinition = AircraftDefinition["rotorDrive"]["motor"];
export type PropellersDefinition = AircraftDefinition["propellers"];
export type BatteryDefinition = AircraftDefinition["battery"];
export type PayloadRecord = AircraftDefinition["payloads"][number];
