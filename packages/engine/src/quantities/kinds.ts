/**
 * What a number in a schema measures. Kinds with equal dimensions stay apart where mixing them is a mistake:
 * torque and energy, an absolute temperature and a temperature difference. Inside the engine every one is SI.
 */
export const quantityKinds = {
  angle: "rad",
  anglePerTime: "rad/s",
  area: "m2",
  capacity: "C",
  current: "A",
  density: "kg/m3",
  dimensionless: "1",
  dynamicViscosity: "Pa s",
  energy: "J",
  energyPerDistance: "J/m",
  force: "N",
  forceRate: "N/s",
  growthRate: "1/s",
  heatCapacity: "J/K",
  inertia: "kg m2",
  latitude: "rad",
  length: "m",
  mass: "kg",
  power: "W",
  pressure: "Pa",
  resistance: "Ohm",
  rotationRate: "rad/s",
  specificHeat: "J/(kg K)",
  speed: "m/s",
  speedConstant: "rad/(s V)",
  temperature: "K",
  temperatureDifference: "K",
  thermalResistance: "K/W",
  time: "s",
  torque: "N m",
  voltage: "V",
  acceleration: "m/s2",
} as const;

export type QuantityKind = keyof typeof quantityKinds;
