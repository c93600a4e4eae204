import { describe, expect, it } from "vitest";
import type { Outcome, ProjectView } from "../contract.ts";
import type { Figure } from "../figures.ts";
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
const degree = Math.PI / 180;
const blades = {
  radius: 1.15,
  blades: 2,
  chord: 0.09,
  rootCutout: 0.15,
  articulation: "teetering",
  section: { kind: "generic", liftSlope: 5.7, cd0: 0.0125, cd2: 0.4, stallAngle: 0.218 },
};
const hinged = { ...blades, articulation: "hinged", lockNumber: 6 };
const forward = { airspeed: 15, shaftAngle: -0.08, rotationRate: 70, collective: 0.12 };
const hover = { rotationRate: 70, collective: 0.12 };

type Given = Readonly<Record<string, unknown>>;

function asked(inputs: Given, project: ProjectView = { documents: {}, rasters: {} }): Outcome<RotorOutputs> {
  const read = rotor.inputs.safeParse({ rotor: blades, ...inputs });
  if (!read.success) throw new Error(read.error.issues.map((issue) => issue.message).join("; "));
  return rotor.run(project, read.data, nobody);
}

function solved(inputs: Given): RotorOutputs {
  const outcome = asked(inputs);
  if (outcome.problem) throw new Error(`${JSON.stringify(inputs)}: ${outcome.problem.message}`);
  return outcome.outputs;
}

function figures(inputs: Given): readonly Figure[] {
  const read = rotor.inputs.parse({ rotor: blades, ...inputs });
  return rotor.figures(solved(inputs), read);
}

describe("a sweep", () => {
  const swept = { ...forward, collective: undefined, sweep: { collective: [0.05, 0.1, 0.15] } };

  it("gives the rows that single points give, and beside them the first", () => {
    const { rows, swept: names, ...first } = solved(swept);
    expect(names).toEqual(["collective"]);
    const singles = [0.05, 0.1, 0.15].map((collective) => solved({ ...forward, collective }));
    expect(rows.map((row) => row.thrust)).toEqual(singles.map((single) => single.thrust));
    expect(rows).toEqual(singles.map((single) => single.rows[0]));
    expect(first.power).toBe(singles[0]?.power);
  });

  it("crosses every value of several lists, or takes them together", () => {
    const lists = { collective: [0.05, 0.1], rotationRate: [60, 70, 80] };
    const base = { airspeed: 15, shaftAngle: -0.08 };
    const every = solved({ ...base, sweep: lists }).rows;
    const settings = (rows: RotorOutputs["rows"]) => rows.map((row) => [Math.round(row.rotationRate ?? 0), row.collective]);
    expect(settings(every)).toEqual([
      [60, 0.05],
      [60, 0.1],
      [70, 0.05],
      [70, 0.1],
      [80, 0.05],
      [80, 0.1],
    ]);
    const together = solved({ ...base, sweep: { collective: [0.05, 0.1], rotationRate: [60, 70], combine: "together" } }).rows;
    expect(settings(together)).toEqual([
      [60, 0.05],
      [70, 0.1],
    ]);
  });

  it("carries the reason where a row has no solution, and is a problem when none has one", () => {
    const { rows } = solved({ rotationRate: 70, sweep: { thrust: [100, 5000] } });
    expect(rows[0]?.problem).toBeNull();
    expect(rows[1]).toMatchObject({ thrust: 5000, power: null });
    expect(rows[1]?.problem).toContain("The rotor stalls first");
    expect(asked({ rotationRate: 70, sweep: { thrust: [4000, 5000] } }).problem?.message).toContain("None of the 2 points has a solution");
  });

  it("is drawn with a gap where a row has no solution, and every row stands in the table", () => {
    const drawn = figures({ rotationRate: 70, sweep: { thrust: [50, 100, 5000] } });
    const power = drawn.find((figure) => figure.id === "sweep-power-over-thrust");
    expect(power?.kind === "lines" && power.gaps?.[0]?.reason).toContain("stalls");
    const table = drawn.find((figure) => figure.id === "sweep");
    expect(table?.kind === "table" && table.rows.length).toBe(3);
  });
});

describe("autorotation", () => {
  it("in vertical descent is faster with more load, as the root of the disc loading", () => {
    const descent = (thrust: number) => solved({ advanceRatio: 0, collective: 0.035, thrust, shaftTorque: 0 });
    const [light, heavy] = [descent(60), descent(240)];
    expect(light.state).toBe("autorotating");
    expect(light.axialRatio).toBeGreaterThan(-2.2);
    expect(light.axialRatio).toBeLessThan(-1.6);
    expect(heavy.airspeed / light.airspeed).toBeCloseTo(2, 1);
    expect(light.climbRate).toBeCloseTo(-light.airspeed, 9);
  });

  it("lists every shaft angle without torque and says which is the answer", () => {
    const { torqueRoots, shaftAngle } = solved({ rotationRate: 62, collective: 0.035, airspeed: 20, shaftTorque: 0 });
    const taken = torqueRoots.filter((root) => root.taken);
    expect(taken).toHaveLength(1);
    expect(taken[0]?.shaftAngle).toBeCloseTo(shaftAngle, 6);
    expect(taken[0]?.holdsSpeed).toBe(true);
    for (const root of torqueRoots) {
      const there = solved({ rotationRate: 62, collective: 0.035, airspeed: 20, shaftAngle: root.shaftAngle });
      expect(Math.abs(there.cq)).toBeLessThan(1e-9);
    }
  });

  it("lists every collective without torque where the angle is held", () => {
    const { shaftAngle } = solved({ rotationRate: 62, collective: 0.035, airspeed: 20, shaftTorque: 0 });
    const { torqueRoots, collective } = solved({ rotationRate: 62, shaftAngle, airspeed: 20, shaftTorque: 0 });
    expect(torqueRoots.some((root) => Math.abs(root.collective - 0.035) < 1e-6)).toBe(true);
    expect(torqueRoots.filter((root) => root.taken).map((root) => root.collective)).toEqual([collective]);
  });

  it("turns into a windmill with a brake, and is normal when driven", () => {
    const states = [-0.2, 0, 0.5].map((shaftTorque) => solved({ rotationRate: 62, collective: 0.035, airspeed: 20, shaftTorque }).state);
    expect(states).toEqual(["windmill", "autorotating", "normal"]);
    const ring = solved({ rotationRate: 70, thrust: 100, climbRate: -4 });
    expect(ring.state).toBe("vortex ring");
    expect(asked({ rotationRate: 70, thrust: 100, climbRate: -4 }).warnings?.map((warning) => warning.kind)).toContain("vortex-ring");
  });
});

describe("the blades' attachment", () => {
  it("matters to the hub: no moment through a central hinge, more the stiffer the root", () => {
    const moment = (rotor: Given): number => {
      const { hubPitchMoment, hubRollMoment } = solved({ ...forward, rotor });
      return Math.hypot(hubPitchMoment, hubRollMoment);
    };
    const stiffer = [1.02, 1.08, 1.15].map((flapFrequencyRatio) => moment({ ...hinged, articulation: "hingeless", flapFrequencyRatio }));
    expect(moment(blades)).toBeLessThan(1e-6);
    expect(moment(hinged)).toBeLessThan(1e-6);
    expect(moment({ ...hinged, hingeOffset: 0.05 })).toBeGreaterThan(0.1);
    expect(stiffer[0]).toBeGreaterThan(0.1);
    expect(stiffer[1]).toBeGreaterThan(stiffer[0] as number);
    expect(stiffer[2]).toBeGreaterThan(stiffer[1] as number);
  });

  it("is the same by Lock number and by inertia, by spring and by frequency", () => {
    const byInertia = solved({ ...forward, rotor: { ...hinged, lockNumber: undefined, flapInertia: 0.275 } });
    const lockNumber = (1.225 * 5.7 * 0.09 * 1.15 ** 4) / 0.275;
    const byLock = solved({ ...forward, rotor: { ...hinged, lockNumber } });
    expect(byInertia.coning).toBeCloseTo(byLock.coning, 4);
    const flapSpring = 0.275 * 70 ** 2 * (1.1 ** 2 - 1);
    const sprung = solved({
      ...forward,
      rotor: { ...hinged, lockNumber: undefined, flapInertia: 0.275, articulation: "hingeless", flapSpring },
    });
    const stiff = solved({
      ...forward,
      rotor: { ...hinged, lockNumber: undefined, flapInertia: 0.275, articulation: "hingeless", flapFrequencyRatio: 1.1 },
    });
    expect(sprung.hubPitchMoment).toBeCloseTo(stiff.hubPitchMoment, 6);
  });

  it.each([
    ["teetering", blades],
    ["hinged off the shaft", { ...hinged, hingeOffset: 0.04 }],
    ["hingeless", { ...hinged, articulation: "hingeless", flapFrequencyRatio: 1.1 }],
    ["coupled", { ...hinged, pitchFlapCoupling: 0.4 }],
  ])("%s: cyclic pitch can hold the disc normal to the shaft, and feeding it back gives the same", (_name, rotor) => {
    const trimmed = solved({ ...forward, rotor, cyclicTrim: "no-flapping" });
    expect(Math.hypot(trimmed.flapLongitudinal, trimmed.flapLateral)).toBeLessThan(1e-8);
    const { cyclicCosine, cyclicSine } = trimmed;
    const held = solved({ ...forward, rotor, cyclicCosine, cyclicSine });
    expect(held.thrust).toBeCloseTo(trimmed.thrust, 4);
    expect(held.flapLongitudinal).toBeCloseTo(0, 6);
  });
});

describe("shortcuts and options", () => {
  it("solidity, taper and twist are the stations that they stand for", () => {
    const solidity = (2 * 0.09) / (Math.PI * 1.15);
    expect(solved({ ...forward, rotor: { ...blades, chord: undefined, solidity } }).thrust).toBeCloseTo(solved(forward).thrust, 9);
    const stations = [
      { radiusFraction: 0.15, chord: 0.1, twist: -0.1 * 0.15 },
      { radiusFraction: 1, chord: 0.06, twist: -0.1 },
    ];
    const short = solved({ ...forward, rotor: { ...blades, chord: 0.1, tipChord: 0.06, twist: -0.1 } });
    expect(short.thrust).toBe(solved({ ...forward, rotor: { ...blades, chord: undefined, stations } }).thrust);
    expect(solved({ ...hover, rotationRate: undefined, tipSpeed: 70 * 1.15 }).thrust).toBeCloseTo(solved(hover).thrust, 9);
  });

  it("a blade of two sections lies between the blades of one", () => {
    const rough = { ...blades.section, cd0: 0.03 };
    const blend = [
      { radiusFraction: 0.15, chord: 0.09 },
      { radiusFraction: 1, chord: 0.09, section: rough },
    ];
    const power = (rotor: Given): number => solved({ ...hover, rotor }).power;
    const [smooth, mixed, all] = [
      power(blades),
      power({ ...blades, chord: undefined, stations: blend }),
      power({ ...blades, section: rough }),
    ];
    expect(mixed).toBeGreaterThan(smooth as number);
    expect(mixed).toBeLessThan(all as number);
  });

  it("annular inflow needs more power than even inflow in hover, loss at the root more, and swirl more still", () => {
    const power = (more: Given): number => solved({ rotationRate: 70, thrust: 120, ...more }).power;
    const even = power({ inflow: "uniform", tipLoss: { kind: "lift-cutoff", liftRadiusFraction: 1 } });
    const annular = power({ inflow: "annular" });
    expect(annular).toBeGreaterThan(even);
    expect(power({ inflow: "annular", rootLoss: true })).toBeGreaterThan(annular);
    expect(power({ inflow: "annular", swirl: true })).toBeGreaterThan(annular);
  });

  it("the ground lowers the power in hover, less with height and speed, and too near it is said so", () => {
    const power = (heightAboveGround: number | undefined, more: Given = {}): number =>
      solved({ rotationRate: 70, thrust: 120, inflow: "drees", ...more, heightAboveGround }).inducedPower;
    const far = power(undefined);
    expect(power(1.15) / far).toBeCloseTo((1 - 1 / 16) ** 1.5, 3);
    expect(power(2.3)).toBeGreaterThan(power(1.15));
    expect(power(1e4)).toBeCloseTo(far, 4);
    const cruise = { airspeed: 15, shaftAngle: -0.08 };
    expect(power(1.15, cruise) / power(undefined, cruise)).toBeGreaterThan(0.99);
    expect(asked({ rotationRate: 70, thrust: 120, heightAboveGround: 0.3 }).problem?.message).toContain("0.5 radii");
  });
});

describe("symmetries and scales", () => {
  it("the same rotor twice as large at the same tip speed has four times the forces", () => {
    const large = { ...blades, radius: 2.3, chord: 0.18 };
    const small = solved({ ...hover, air: { density: 1.2 } });
    const grown = solved({ ...hover, rotationRate: 35, rotor: large, air: { density: 1.2 } });
    expect(grown.thrust).toBeCloseTo(4 * small.thrust, 6);
    expect(grown.torque).toBeCloseTo(8 * small.torque, 6);
  });

  it("upside down in hover it pushes as much", () => {
    const up = solved(hover);
    const down = solved({ ...hover, collective: -0.12 });
    expect(down.thrust).toBeCloseTo(-up.thrust, 6);
    expect(down.power).toBeCloseTo(up.power, 6);
  });

  it("loads along the blade, around the turn and over the disc sum to the coefficients", () => {
    const { spanwise, azimuthal, discMap, ct, cq, flapLongitudinal } = solved({ ...forward, cyclicTrim: "no-flapping" });
    expect(flapLongitudinal).toBe(0);
    const mean = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0) / values.length;
    expect(mean(azimuthal.thrust)).toBeCloseTo(ct, 9);
    expect(mean(azimuthal.torque)).toBeCloseTo(cq, 9);
    expect(discMap.angleOfAttack).toHaveLength(spanwise.radiusFraction.length * azimuthal.azimuth.length);
    const elements = spanwise.radiusFraction.length;
    expect(mean(discMap.thrust.filter((_, index) => index % elements === 3))).toBeCloseTo(spanwise.thrust[3] as number, 9);
  });
});

describe("what is told", () => {
  it("names the limits with the share used, the stop of flapping when one is given", () => {
    const inputs = rotor.inputs.parse({ ...forward, rotor: { ...blades, flapRange: 0.02 } });
    const outcome = asked({ ...forward, rotor: { ...blades, flapRange: 0.02 } });
    if (outcome.problem) throw new Error(outcome.problem.message);
    const limits = rotor.limits(outcome.outputs, inputs);
    expect(limits.map((limit) => limit.name)).toEqual(["rotor stall", "tip Mach number", "flapping"]);
    expect(limits.find((limit) => limit.binding)?.name).toBe("flapping");
    expect(outcome.warnings?.map((warning) => warning.kind)).toContain("flap-stop");
  });

  it("says how far it lies from what was measured", () => {
    const { domain } = solved({ ...forward, rotationRate: 200, airspeed: 2 });
    expect(domain.nearest).not.toBeNull();
    expect(domain.outside.length).toBeGreaterThan(0);
  });

  it("asks for the aircraft's file and says when it is not there", () => {
    const inputs = rotor.inputs.parse({ ...hover, rotor: { aircraft: "aircraft/one.yaml" } });
    expect(rotor.needs?.(inputs, { documents: {}, rasters: {} })).toEqual([{ kind: "document", path: "aircraft/one.yaml" }]);
    expect(asked({ ...hover, rotor: { aircraft: "aircraft/one.yaml" } }).problem?.kind).toBe("aircraft-missing");
  });

  it("keeps to one sentence and a short brief, for a sweep too", () => {
    for (const inputs of [
      hover,
      { rotationRate: 70, sweep: { thrust: [100, 5000] } },
      { advanceRatio: 0, collective: 0.035, thrust: 60, shaftTorque: 0 },
    ]) {
      const { sentence, brief } = rotor.answer(solved(inputs), rotor.inputs.parse({ rotor: blades, ...inputs }));
      expect(brief.length).toBeLessThanOrEqual(40);
      expect(sentence.at(-1)).toMatchObject({ kind: "words" });
    }
  });

  it("refuses a tip faster than the section law knows", () => {
    expect(asked({ ...hover, rotationRate: 290 }).problem?.kind).toBe("outside-model");
    expect(Math.abs(solved({ ...hover, discAngle: 10 * degree, airspeed: 5 }).discAngle)).toBeCloseTo(10 * degree, 12);
  });
});
