import type { QuantityKind } from "@wingseed/engine";

/** SI unit of every kind in plain letters, for machine-read heads. The engine's own list; a test holds both together. */
const units: Readonly<Record<QuantityKind, string>> = {
  acceleration: "m/s2",
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
};

/** The SI unit of a kind; empty for plain numbers. */
export function siUnit(kind: QuantityKind): string {
  const unit = units[kind];
  return unit === "1" ? "" : unit;
}
