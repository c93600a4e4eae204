import { describe, expect, it } from "vitest";
import type { Outcome } from "../contract.ts";
import { rotorGivens } from "./givens.ts";
import type { RotorOutputs } from "./output-schema.ts";
import { rotor } from "./rotor.ts";

const nobody = {
  progress: () => {},
  cancelled: () => false,
  partial: () => {},
  analysis: (): never => {
    throw new Error("nothing else is asked for");
  },
};

const bench = {
  rotor: {
    radius: 1.15,
    blades: 2,
    chord: 0.09,
    twist: -0.05,
    rootCutout: 0.15,
    precone: 0.035,
    articulation: "teetering",
    section: { kind: "generic", liftSlope: 5.7, cd0: 0.0125, cd1: -0.005, cd2: 0.4, stallAngle: 0.218 },
  },
  inflow: "drees",
  inducedPowerFactor: 1.12,
  tipLoss: { kind: "lift-cutoff", liftRadiusFraction: 0.97 },
  azimuths: 12,
  radialElements: 8,
};

function asked(inputs: Readonly<Record<string, unknown>>): Outcome<RotorOutputs> {
  const read = rotor.inputs.safeParse({ ...bench, ...inputs });
  if (!read.success) throw new Error(read.error.issues.map((issue) => issue.message).join("; "));
  return rotor.run({ documents: {}, rasters: {} }, read.data, nobody);
}

function solved(inputs: Readonly<Record<string, unknown>>): RotorOutputs {
  const outcome = asked(inputs);
  if (outcome.problem) throw new Error(`${JSON.stringify(inputs)}: ${outcome.problem.message}`);
  return outcome.outputs;
}

function refusal(inputs: Readonly<Record<string, unknown>>): string {
  const read = rotor.inputs.safeParse({ ...bench, ...inputs });
  return read.success ? "" : read.error.issues.map((issue) => issue.message).join("; ");
}

const states = {
  hover: solved({ rotationRate: 70, collective: 0.11 }),
  climb: solved({ rotationRate: 70, collective: 0.15, climbRate: 4 }),
  descent: solved({ rotationRate: 70, collective: 0.1, climbRate: -2 }),
  forward: solved({ rotationRate: 70, collective: 0.12, airspeed: 15, shaftAngle: -0.08 }),
  climbing: solved({ rotationRate: 70, collective: 0.13, airspeed: 18, climbRate: 3 }),
  autorotating: solved({ rotationRate: 62, collective: 0.035, airspeed: 20, shaftTorque: 0 }),
  falling: solved({ rotationRate: 62, collective: 0.035, shaftAngle: Math.PI / 2, shaftTorque: 0 }),
};

/** A value of an answer by the name of the input that it answers. */
function answerTo(outputs: RotorOutputs, name: string): number {
  const value = (outputs as Readonly<Record<string, unknown>>)[name === "shaftTorque" ? "torque" : name];
  if (typeof value !== "number") throw new Error(`no ${name}`);
  return Math.abs(value) < 1e-12 ? 0 : value;
}

/** Whether a set of givens can describe a state: steep streams have no advance ratio, level ones no climb angle to divide by. */
function speaksOf(given: readonly string[], { airspeed, shaftAngle }: RotorOutputs): boolean {
  const steep = Math.abs(shaftAngle) > 1.4;
  const has = (name: string): boolean => given.includes(name);
  const streams = ["airspeed", "advanceRatio", "climbRate", "shaftAngle", "discAngle"].filter(has);
  if (airspeed === 0) return streams.length === 0 || (streams.length === 2 && !has("climbRate"));
  if (streams.length === 0) return given.length === 4 && !steep;
  if (has("lift") && steep) return false;
  if (has("advanceRatio") && (has("discAngle") || (steep && has("shaftAngle")))) return false;
  // Alone with two others a climb rate means flight along the shaft.
  return !(streams.length === 1 && has("climbRate") && given.length === 3 && !steep);
}

const measures = ["tipSpeed", "ct", "lift", "power"];
const compared = ["thrust", "rotationRate", "collective", "airspeed", "shaftAngle", "torque"] as const;

function differs(one: RotorOutputs, other: RotorOutputs): boolean {
  return compared.some((name) => Math.abs(one[name] - other[name]) > 1e-5 * Math.max(Math.abs(other[name]), 1));
}

/** How far a found state is from what was held, relative to the size of a thrust, torque, speed or angle. */
function missed(given: readonly string[], found: RotorOutputs, held: Readonly<Record<string, number>>): number {
  const scales: Readonly<Record<string, number>> = {
    thrust: 1,
    lift: 1,
    power: 1,
    airspeed: 1,
    rotationRate: 1,
    tipSpeed: 1,
    climbRate: 1,
  };
  return Math.max(...given.map((name) => Math.abs(answerTo(found, name) - (held[name] ?? 0)) / (scales[name] ?? 0.1)));
}

describe("every combination of givens", () => {
  it.each(Object.entries(states))(
    "gives the state of the %s back, or another that meets what is held, or says that there is none",
    (name, state) => {
      const counts = { same: 0, other: 0, none: 0 };
      // Other measures of the same are tried on one state; they pass through the same searches.
      const sets = rotorGivens.filter(
        ({ given }) => speaksOf(given, state) && (name === "forward" || !given.some((one) => measures.includes(one))),
      );
      for (const { given } of sets) {
        const held = Object.fromEntries(given.map((one) => [one, answerTo(state, one)]));
        const outcome = asked(held);
        if (outcome.problem) {
          counts.none += 1;
          continue;
        }
        expect(missed(given, outcome.outputs, held), `${name}: ${given.join(" + ")}`).toBeLessThan(1e-4);
        if (differs(outcome.outputs, state)) counts.other += 1;
        else counts.same += 1;
      }
      const all = counts.same + counts.other + counts.none;
      expect(counts.same / all, JSON.stringify(counts)).toBeGreaterThan(0.6);
      expect(counts.none / all, JSON.stringify(counts)).toBeLessThan(0.15);
    },
    120_000,
  );

  it("that is plain gives exactly the same state back", () => {
    const { forward, autorotating, falling, climb, hover } = states;
    const plain: readonly (readonly [RotorOutputs, readonly string[]])[] = [
      [hover, ["rotationRate", "thrust"]],
      [hover, ["rotationRate", "shaftTorque"]],
      [hover, ["rotationRate", "power"]],
      [hover, ["rotationRate", "ct"]],
      [hover, ["collective", "thrust"]],
      [hover, ["collective", "power"]],
      [climb, ["climbRate", "rotationRate", "power"]],
      [climb, ["climbRate", "tipSpeed", "thrust"]],
      [forward, ["airspeed", "shaftAngle", "rotationRate", "power"]],
      [forward, ["airspeed", "rotationRate", "thrust", "power"]],
      [forward, ["airspeed", "climbRate", "rotationRate", "thrust"]],
      [forward, ["advanceRatio", "shaftAngle", "tipSpeed", "lift"]],
      [forward, ["airspeed", "discAngle", "rotationRate", "thrust"]],
      [forward, ["airspeed", "rotationRate", "collective", "thrust"]],
      [autorotating, ["airspeed", "collective", "thrust", "shaftTorque"]],
      [autorotating, ["airspeed", "rotationRate", "thrust", "shaftTorque"]],
      [autorotating, ["airspeed", "shaftAngle", "collective", "shaftTorque"]],
      [autorotating, ["rotationRate", "collective", "shaftAngle", "power"]],
      [falling, ["shaftAngle", "thrust", "collective", "shaftTorque"]],
      [falling, ["shaftAngle", "thrust", "rotationRate", "shaftTorque"]],
      [falling, ["advanceRatio", "collective", "thrust", "shaftTorque"]],
    ];
    for (const [state, given] of plain) {
      const found = solved(Object.fromEntries(given.map((one) => [one, answerTo(state, one)])));
      expect(differs(found, state), `${given.join(" + ")}: ${compared.map((one) => `${one} ${found[one]}`).join(", ")}`).toBe(false);
    }
  });
});

describe("a rotor without pitch that comes down under a load", () => {
  it("turns fast and unstalled, though a slow stalled rotor would carry the load too", () => {
    const rotor = { radius: 0.61, blades: 4, chord: 0.05, rootCutout: 0.15, articulation: "teetering", section: "naca-0012" };
    const given = { rotor, inducedPowerFactor: 1, collective: 0, shaftTorque: 0, thrust: 25 };
    const outcome = asked({ ...given, shaftAngle: Math.PI / 2 });
    expect(outcome.warnings?.map((warning) => warning.kind)).not.toContain("stalled");
    const found = solved({ ...given, advanceRatio: 0 });
    expect(found.axialRatio).toBeGreaterThan(-2.1);
    const { airspeed, rotationRate } = found;
    expect(
      solved({ rotor, inducedPowerFactor: 1, collective: 0, shaftTorque: 0, airspeed, shaftAngle: Math.PI / 2 }).rotationRate,
    ).toBeCloseTo(rotationRate, 3);
  });
});

describe("still air", () => {
  it("is meant by no stream at all, or by one that is zero", () => {
    for (const stream of [{ airspeed: 0 }, { advanceRatio: 0 }, { shaftAngle: 0 }, { climbRate: 0 }, { airspeed: 0, shaftAngle: 0 }]) {
      expect(solved({ ...stream, rotationRate: 70, collective: 0.11 }).thrust, JSON.stringify(stream)).toBe(states.hover.thrust);
    }
  });
});

describe("ring by ring", () => {
  const rings = { inflow: "annular", inducedPowerFactor: 1 };

  it.each([
    [{ rotationRate: 70, collective: 0.11 }, ["collective", "thrust"]],
    [{ rotationRate: 70, collective: 0.11 }, ["rotationRate", "power"]],
    [{ rotationRate: 70, collective: 0.15, climbRate: 4 }, ["climbRate", "rotationRate", "thrust"]],
    [{ rotationRate: 70, collective: 0.12, airspeed: 15, shaftAngle: -0.08 }, ["airspeed", "rotationRate", "thrust", "power"]],
    [{ rotationRate: 62, collective: 0.035, airspeed: 20, shaftTorque: 0 }, ["airspeed", "collective", "thrust", "shaftTorque"]],
    [{ rotationRate: 62, collective: 0.035, airspeed: 20, shaftTorque: 0 }, ["airspeed", "rotationRate", "thrust", "shaftTorque"]],
  ])("%j is found again from %j", (inputs, given) => {
    const state = solved({ ...rings, ...inputs });
    const found = solved({ ...rings, ...Object.fromEntries(given.map((one) => [one, answerTo(state, one)])) });
    expect(differs(found, state), compared.map((one) => `${one} ${found[one]} for ${state[one]}`).join(", ")).toBe(false);
  });

  it("a rotor comes down in autorotation faster than with even inflow, by less than a quarter", () => {
    const falling = { advanceRatio: 0, collective: 0.035, thrust: 80, shaftTorque: 0 };
    const ratio = solved({ ...rings, ...falling }).airspeed / solved({ ...falling, inducedPowerFactor: 1 }).airspeed;
    expect(ratio).toBeGreaterThan(1);
    expect(ratio).toBeLessThan(1.25);
  });
});

describe("what does not go together", () => {
  it.each([
    [{ airspeed: 10, collective: 0.1 }, "Given together: airspeed + collective."],
    [{ rotationRate: 60, tipSpeed: 60, collective: 0.1 }, "rotationRate or tipSpeed is allowed"],
    [{ rotationRate: 60, thrust: 10, ct: 0.01 }, "thrust or ct or lift is allowed"],
    [{ airspeed: 0, rotationRate: 60, thrust: 10, shaftTorque: 1 }, "At airspeed 0"],
    [{ airspeed: 2, climbRate: 3, rotationRate: 60, collective: 0.1 }, "is more than the airspeed of 2"],
    [{ climbRate: 3, shaftAngle: 0.2, rotationRate: 60, collective: 0.1 }, "in climb the stream comes down through the disc"],
    [{ airspeed: 10, shaftAngle: 0, collective: 0.1, ct: 0.005 }, "ct says how much thrust only beside rotationRate or tipSpeed"],
    [{ climbRate: 2, rotationRate: 60, lift: 100 }, "give the thrust"],
    [{ rotationRate: 60, collective: 0.1, sweep: { collective: [0.1] } }, "collective is given as one value and as a list"],
    [{ rotationRate: 60, collective: 0.1, sweep: {} }, "a sweep needs a list"],
    [
      { airspeed: 10, shaftAngle: 0, sweep: { collective: [0.1, 0.2], rotationRate: [60], combine: "together" } },
      "lists taken together must be equally long",
    ],
    [{ rotationRate: 60, collective: 0.1, inflow: "drees", swirl: true }, "swirl goes with annular inflow only"],
    [{ rotationRate: 60, collective: 0.1, cyclicTrim: "no-flapping", cyclicSine: 0.1 }, "the cyclic pitch is computed"],
  ])("%j is refused in words", (inputs, words) => {
    expect(refusal(inputs)).toContain(words);
  });

  it("names the nearest combinations", () => {
    expect(refusal({ airspeed: 10, rotationRate: 60, collective: 0.1 })).toContain("airspeed + shaftAngle + rotationRate + collective");
  });

  it("of a rotor is refused in words too", () => {
    const withRotor = (more: Readonly<Record<string, unknown>>) =>
      refusal({ rotor: { ...bench.rotor, ...more }, rotationRate: 60, collective: 0.1 });
    expect(withRotor({ hingeOffset: 0.05 })).toContain("only hinged and hingeless blades have a hinge away from the shaft");
    expect(withRotor({ articulation: "hingeless" })).toContain("hingeless blades need flapFrequencyRatio or flapSpring");
    expect(withRotor({ solidity: 0.05 })).toContain("chord, solidity or stations is allowed");
    expect(withRotor({ chord: undefined, stations: [{ radiusFraction: 0, chord: 0.1 }] })).toContain("twist beside stations");
    expect(withRotor({ chord: undefined })).toContain("a chord is needed");
  });
});
