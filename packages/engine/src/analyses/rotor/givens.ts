import type { GivensSet } from "../inputs/givens.ts";
import { type GivenStream, givenStream, type StreamInputs } from "./stream.ts";

/** What may be held of a rotor beside the stream. Each has names that say the same in another measure. */
const synonyms: Readonly<Record<string, readonly string[]>> = {
  rotationRate: ["rotationRate", "tipSpeed"],
  collective: ["collective"],
  thrust: ["thrust", "ct", "lift"],
  shaftTorque: ["shaftTorque", "power"],
};
const others = Object.keys(synonyms);
const streamNames = ["airspeed", "advanceRatio", "climbRate", "shaftAngle", "discAngle"];

/** Names of inputs of which a question is made, whatever the number of values. */
export const rotorGivenNames: readonly string[] = [...streamNames, ...Object.values(synonyms).flat()];

/** The stream wholly given: in hover by nothing, in axial flow by the climb rate. */
const wholeStreams: readonly (readonly string[])[] = [
  ["airspeed", "shaftAngle"],
  ["advanceRatio", "shaftAngle"],
  [],
  ["climbRate"],
  ["airspeed", "climbRate"],
  ["advanceRatio", "climbRate"],
  ["climbRate", "shaftAngle"],
  ["airspeed", "discAngle"],
  ["advanceRatio", "discAngle"],
];
const freeAngle = [["airspeed"], ["advanceRatio"]];
const freeSpeed = [["shaftAngle"], ["climbRate"], ["discAngle"]];

function combinations(names: readonly string[], size: number): readonly (readonly string[])[] {
  if (size === 0) return [[]];
  return names.flatMap((name, i) => combinations(names.slice(i + 1), size - 1).map((rest) => [name, ...rest]));
}

function setsOf(streams: readonly (readonly string[])[], size: number, found: readonly string[]): readonly GivensSet[] {
  return streams.flatMap((stream) =>
    combinations(others, size).map((held) => ({
      given: [...stream, ...held],
      solved: [...found, ...others.filter((name) => !held.includes(name)).map((name) => (name === "shaftTorque" ? "torque" : name))],
    })),
  );
}

const canonical: readonly GivensSet[] = [
  ...setsOf(wholeStreams, 2, []),
  ...setsOf(freeAngle, 3, ["shaftAngle"]),
  ...setsOf(freeSpeed, 3, ["airspeed"]),
  ...setsOf([[]], 4, ["airspeed", "shaftAngle"]),
];

/** A thrust coefficient says something only of a known rotor speed, lift only of a stream that is not along the shaft. */
function meaningful(name: string, given: readonly string[]): boolean {
  if (name === "ct") return given.includes("rotationRate") || given.includes("tipSpeed");
  return name !== "lift" || !(given.includes("climbRate") && given.length === 3);
}

/** Every way to put the question to a rotor; first by the usual names, then with one of them in another measure. */
export const rotorGivens: readonly GivensSet[] = [
  ...canonical,
  ...others.flatMap((name) =>
    (synonyms[name] ?? [])
      .slice(1)
      .flatMap((other) =>
        canonical
          .filter(({ given }) => given.includes(name) && meaningful(other, given))
          .map(({ given, solved }) => ({ given: given.map((one) => (one === name ? other : one)), solved })),
      ),
  ),
];

/** A wanted thrust: along the shaft [N], as a coefficient [1], or across the stream [N]. */
export interface ThrustWanted {
  readonly of: "thrust" | "ct" | "lift";
  readonly value: number;
}

/** A wanted torque [N m] or shaft power [W]. */
export interface TorqueWanted {
  readonly of: "torque" | "power";
  readonly value: number;
}

/** A question to a rotor: what is absent is sought. */
export interface RotorQuestion {
  readonly stream: GivenStream;
  /** [m/s]. */
  readonly tipSpeed: number | undefined;
  /** [rad]. */
  readonly collective: number | undefined;
  readonly thrust: ThrustWanted | undefined;
  readonly torque: TorqueWanted | undefined;
}

export interface GivenInputs extends StreamInputs {
  readonly rotationRate?: number | undefined;
  readonly tipSpeed?: number | undefined;
  readonly collective?: number | undefined;
  readonly thrust?: number | undefined;
  readonly ct?: number | undefined;
  readonly lift?: number | undefined;
  readonly shaftTorque?: number | undefined;
  readonly power?: number | undefined;
}

/** The question that the inputs make, or one sentence why they make none. */
export function rotorQuestion(inputs: GivenInputs, radius: number): RotorQuestion | { readonly complaint: string } {
  const values = inputs as Readonly<Record<string, number | undefined>>;
  const held = others.filter((name) => (synonyms[name] ?? []).some((one) => values[one] !== undefined));
  const twice = others.find((name) => (synonyms[name] ?? []).filter((one) => values[one] !== undefined).length > 1);
  if (twice !== undefined) return { complaint: `${(synonyms[twice] ?? []).join(" or ")} is allowed, not several of them` };
  const stream = streamNames.filter((name) => values[name] !== undefined);
  // One number of the stream that says that there is none.
  const still = [inputs.airspeed, inputs.advanceRatio, inputs.shaftAngle].some((one) => one === 0);
  const hovering = held.length === 2 && stream.length === 1 && still;
  if (!hovering && !canonical.some(({ given }) => sameNames(given, [...stream, ...held]))) return { complaint: complaintOf(stream, held) };
  const measure = ["ct", "lift"].find((name) => values[name] !== undefined);
  if (measure !== undefined && !meaningful(measure, [...stream, ...held])) return { complaint: unmeaning[measure] ?? "" };
  if (stream.length === 1 && inputs.airspeed === 0 && held.length === 3)
    return { complaint: `At airspeed 0 ${held.join(" + ")} leave nothing to be found; leave one of them out.` };
  const found = givenStream(inputs, held.length);
  if ("complaint" in found) return found;
  const { rotationRate, tipSpeed, collective } = inputs;
  return {
    stream: found,
    tipSpeed: rotationRate === undefined ? tipSpeed : rotationRate * radius,
    collective,
    thrust: wanted(["thrust", "ct", "lift"] as const, values),
    torque: wanted(["torque", "power"] as const, { torque: inputs.shaftTorque, power: inputs.power }),
  };
}

const unmeaning: Readonly<Record<string, string>> = {
  ct: "ct says how much thrust only beside rotationRate or tipSpeed; give the thrust, or one of them.",
  lift: "Lift is the force across the stream, and in vertical flight there is none; give the thrust.",
};

function wanted<Name extends string>(names: readonly Name[], values: Readonly<Record<string, number | undefined>>) {
  for (const of of names) {
    const value = values[of];
    if (value !== undefined) return { of, value };
  }
  return undefined;
}

function sameNames(one: readonly string[], other: readonly string[]): boolean {
  return one.length === other.length && one.every((name) => other.includes(name));
}

const rule =
  "Of rotor speed (rotationRate or tipSpeed), collective, thrust (thrust, ct or lift) and torque (shaftTorque or power) give two with the whole stream, three with one number of it, or four without: nothing is hover, climbRate is along the shaft, and two of airspeed, advanceRatio, climbRate and shaftAngle (or discAngle) are any stream";

function complaintOf(stream: readonly string[], held: readonly string[]): string {
  const given = [...stream, ...held];
  const distance = (set: GivensSet): number =>
    set.given.length + given.length - 2 * set.given.filter((name) => given.includes(name)).length;
  const least = Math.min(...canonical.map(distance));
  const nearest = canonical.filter((set) => distance(set) === least).slice(0, 6);
  const read = given.length > 0 ? given.join(" + ") : "none of them";
  return `Given together: ${read}. ${rule}. Nearest: ${nearest.map((set) => set.given.join(" + ")).join("; or ")}.`;
}
