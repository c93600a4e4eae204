import { type GivensSet, matchingGivens } from "./givens.ts";

const loads = ["thrust", "torque", "hForce", "sideForce"];

/** With the airspeed; each of the first four also with the advance ratio in its place. */
const byAirspeed: readonly GivensSet[] = [
  { given: ["airspeed", "shaftAngle", "rotationRate", "collective"], solved: loads },
  { given: ["airspeed", "shaftAngle", "rotationRate", "thrust"], solved: ["collective", ...loads] },
  { given: ["airspeed", "rotationRate", "collective", "shaftTorque"], solved: ["shaftAngle", ...loads] },
  { given: ["airspeed", "rotationRate", "thrust", "shaftTorque"], solved: ["shaftAngle", "collective", ...loads] },
];

/** Every way to put the question to a rotor: four of six quantities, of which the rest follows. */
export const rotorGivens: readonly GivensSet[] = [
  ...byAirspeed,
  ...byAirspeed.map(({ given, solved }) => ({ given: given.map((name) => (name === "airspeed" ? "advanceRatio" : name)), solved })),
  { given: ["airspeed", "shaftAngle", "collective", "shaftTorque"], solved: ["rotationRate", ...loads] },
  { given: ["airspeed", "shaftAngle", "collective", "thrust"], solved: ["rotationRate", ...loads] },
  { given: ["airspeed", "collective", "thrust", "shaftTorque"], solved: ["shaftAngle", "rotationRate", ...loads] },
];

const names = ["airspeed", "advanceRatio", "shaftAngle", "rotationRate", "collective", "thrust", "shaftTorque"];

/** The sentence against a combination that is not in the table; undefined when it is. */
export function rotorGivensComplaint(inputs: Readonly<Record<string, unknown>>): string | undefined {
  const match = matchingGivens(rotorGivens, names, inputs);
  return "message" in match ? match.message : undefined;
}
