import { describe, expect, it } from "vitest";
import type { ProjectView } from "../contract.ts";
import { rotor } from "../rotor/rotor.ts";
import type { PropellerOutputs } from "./output-schema.ts";
import { propeller } from "./propeller.ts";

const nobody = {
  progress: () => {},
  cancelled: () => false,
  partial: () => {},
  analysis: (): never => {
    throw new Error("no other analysis here");
  },
};
const empty: ProjectView = { documents: {}, rasters: {} };
const blades = {
  diameter: 0.3,
  blades: 2,
  pitch: 0.15,
  chordFraction: 0.17,
  rootCutout: 0.15,
  section: { kind: "cambered", thickness: 0.09, camber: 0.04 },
};

function run(inputs: Readonly<Record<string, unknown>>, view: ProjectView = empty) {
  const read = propeller.inputs.safeParse({ propeller: blades, altitude: 0, ...inputs });
  if (!read.success) throw new Error(read.error.issues.map(({ path, message }) => `${path.join(".")}: ${message}`).join("; "));
  return { inputs: read.data, ...propeller.run(view, read.data, nobody) };
}

function outputs(inputs: Readonly<Record<string, unknown>>): PropellerOutputs {
  const { outputs: found, problem } = run(inputs);
  if (!found) throw new Error(problem?.message);
  propeller.outputs.parse(found);
  return found;
}

const refusal = (inputs: Readonly<Record<string, unknown>>): string => {
  const read = propeller.inputs.safeParse({ propeller: blades, altitude: 0, ...inputs });
  return read.success ? "" : read.error.issues.map(({ path, message }) => `${path.join(".")}: ${message}`).join("; ");
};

describe("the propeller bench", () => {
  it("keeps to its definitions in every row", () => {
    const { rows } = outputs({
      points: [{ rotationRate: 600 }, { rotationRate: 600, airspeed: 8 }, { rotationRate: 600, airspeed: 8, inflowAngle: 1 }],
    });
    for (const row of rows) {
      const n = (row.rotationRate ?? 0) / (2 * Math.PI);
      expect(row.ct).toBeCloseTo((row.thrust ?? 0) / (1.225 * n ** 2 * 0.3 ** 4), 6);
      expect(row.cp).toBeCloseTo((row.power ?? 0) / (1.225 * n ** 3 * 0.3 ** 5), 6);
      expect(row.advanceRatio).toBeCloseTo((row.airspeed ?? 0) / (n * 0.3), 9);
      expect(row.power).toBeCloseTo((row.torque ?? 0) * (row.rotationRate ?? 0), 9);
    }
    const [rest, along, oblique] = rows;
    expect([rest?.efficiency, along?.figureOfMerit]).toEqual([null, null]);
    expect(rest?.figureOfMerit).toBeCloseTo((Math.sqrt(2 / Math.PI) * (rest?.ct ?? 0) ** 1.5) / (rest?.cp ?? 1), 12);
    expect(along?.efficiency).toBeCloseTo(((along?.advanceRatio ?? 0) * (along?.ct ?? 0)) / (along?.cp ?? 1), 12);
    expect(oblique?.efficiency).toBeLessThan(1);
  });

  it("is the rotor of the same blades, through the rotor's door, in its convention", () => {
    const twist = (x: number) => Math.atan(0.15 / (Math.PI * 0.3 * x));
    const stations = [0.15, 0.3, 0.45, 0.6, 0.75, 0.9, 1];
    const section = { kind: "generic", liftSlope: 5.9, cd0: 0.02, stallAngle: 0.25 };
    const own = outputs({
      propeller: {
        ...blades,
        pitch: undefined,
        chordFraction: undefined,
        section,
        stations: stations.map((x) => ({ radiusFraction: x, chord: 0.025, pitchAngle: twist(x) })),
      },
      points: [{ rotationRate: 600 }],
    }).rows[0];
    const read = rotor.inputs.parse({
      rotor: {
        radius: 0.15,
        blades: 2,
        rootCutout: 0.15,
        articulation: "rigid",
        section,
        stations: stations.map((x) => ({ radiusFraction: x, chord: 0.025, twist: twist(x) })),
      },
      altitude: 0,
      airspeed: 0,
      shaftAngle: 0,
      rotationRate: 600,
      collective: twist(0.75),
      inflow: "annular",
      inducedPowerFactor: 1,
      swirl: true,
      stallDelay: true,
      radialElements: 20,
    });
    const found = rotor.run(empty, read, nobody).outputs;
    expect(((Math.PI ** 3 / 4) * (found?.ct ?? 0)) / (own?.ct ?? 1)).toBeCloseTo(1, 6);
    expect(((Math.PI ** 4 / 4) * (found?.cq ?? 0)) / (own?.cp ?? 1)).toBeCloseTo(1, 6);
  });

  it("finds the best efficiency above every row it was asked for at that rate", () => {
    const found = outputs({ points: Array.from({ length: 13 }, (_, i) => ({ rotationRate: 600, advanceRatio: 0.05 * i })) });
    const best = Math.max(...found.rows.map((row) => row.efficiency ?? 0));
    expect(found.peakEfficiency).toBeGreaterThanOrEqual(best);
    expect(found.peakEfficiency ?? 0).toBeLessThan(best + 0.01);
    expect(found.zeroThrustAdvanceRatio).toBeGreaterThan(found.peakEfficiencyAdvanceRatio ?? 9);
  });

  it("has a row for what has no answer, with the reason, beside those that have", () => {
    const found = run({ points: [{ rotationRate: 600 }, { thrust: 5000, airspeed: 5 }, { rotationRate: 3000 }] });
    const [fine, weak, fast] = found.outputs?.rows ?? [];
    expect(fine?.state).toBe("normal");
    expect([weak?.state, weak?.thrust, fast?.state]).toEqual(["none", null, "none"]);
    expect(weak?.reason).toMatch(/^The largest thrust up to tip Mach number 0.9 is/u);
    expect(fast?.reason).toMatch(/section law ends at 0.9/u);
    expect(found.warnings?.filter(({ kind }) => kind === "no-answer")).toHaveLength(2);
  });

  it("tells what stands still, lies folded, turns free or backwards", () => {
    const { rows } = outputs({
      points: [
        { state: "stopped", airspeed: 12 },
        { state: "folded", airspeed: 12 },
        { state: "freeWheeling", airspeed: 12 },
        { rotationRate: -500 },
        { rotationRate: 300, airspeed: 20 },
      ],
    });
    const [stopped, folded, free, back, driven] = rows;
    expect(stopped?.thrust ?? 0).toBeLessThan(10 * (folded?.thrust ?? -1));
    expect(folded?.thrust).toBeLessThan(0);
    expect(Math.abs(free?.power ?? 1)).toBeLessThan(1e-5);
    expect([free?.state, back?.state, driven?.state]).toEqual(["freeWheeling", "reversed", "windmill"]);
    expect(back?.thrust).toBeLessThan(0);
    expect(back?.power).toBeGreaterThan(0);
    expect([stopped?.ct, stopped?.advanceRatio]).toEqual([null, null]);
  });

  it("takes pitch and chord in either way with the same result", () => {
    const stations = Array.from({ length: 18 }, (_, i) => 0.15 + 0.05 * i).map((radiusFraction) => ({
      radiusFraction,
      chord: 0.17 * 0.15,
      pitchAngle: Math.atan(0.15 / (Math.PI * 0.3 * radiusFraction)),
    }));
    const points = [{ rotationRate: 600, airspeed: 5 }];
    const short = outputs({ points }).rows[0];
    const long = outputs({ propeller: { ...blades, pitch: undefined, chordFraction: undefined, stations }, points }).rows[0];
    expect(long?.thrust).toBeCloseTo(short?.thrust ?? 0, 9);
  });

  it("says what it took for a section and a chord that nobody gave", () => {
    const { assumed } = run({ propeller: { diameter: 0.3, pitch: 0.15, blades: 2 }, points: [{ rotationRate: 500 }] });
    expect(assumed?.map(({ path }) => path)).toEqual([
      "inputs.propeller.section",
      "inputs.propeller.rootCutout",
      "inputs.propeller.chordFraction",
    ]);
  });

  it("refuses what contradicts itself, saying where", () => {
    expect(refusal({ points: [{ airspeed: 4 }] })).toBe("points.0: one of rotationRate, thrust, power is needed; read none of them");
    expect(refusal({ points: [{ rotationRate: 5, thrust: 2 }] })).toContain("read rotationRate, thrust");
    expect(refusal({ points: [{ rotationRate: 500, airspeed: 4, advanceRatio: 0.2 }] })).toContain("airspeed or advanceRatio, not both");
    expect(refusal({ points: [{ state: "freeWheeling" }] })).toContain("without a stream nothing turns");
    expect(refusal({ points: [{ state: "stopped", rotationRate: 5 }] })).toContain("in the state stopped");
  });

  it("reads a measured table, names what it continues and draws no other propeller into it", () => {
    const table = [0, 0.2, 0.4, 0.6].map((advanceRatio) => ({
      advanceRatio,
      ct: 0.1 - 0.15 * advanceRatio,
      cp: 0.05 - 0.05 * advanceRatio,
    }));
    const found = run({
      propeller: { diameter: 0.3, table },
      points: [
        { rotationRate: 600, advanceRatio: 0.2 },
        { rotationRate: 600, advanceRatio: 0.65 },
        { thrust: 4, airspeed: 6 },
      ],
    });
    const [first, beyond, sought] = found.outputs?.rows ?? [];
    expect(first?.ct).toBeCloseTo(0.07, 12);
    expect(beyond?.extrapolated).toHaveLength(1);
    expect(found.warnings?.map(({ kind }) => kind)).toContain("extrapolated");
    expect(sought?.thrust).toBeCloseTo(4, 6);
    expect(found.outputs?.domain.nearest).toBeNull();
    expect(JSON.stringify(found.outputs && propeller.figures(found.outputs, found.inputs))).not.toContain("AIAA");
  });

  it("reads the same table from a file", () => {
    const document = {
      path: "map.csv",
      kind: "table",
      hash: "",
      written: {},
      data: {
        columns: ["J", "CT", "CP", "rpm"].map((name, i) => ({
          name,
          unit: i === 3 ? "rpm" : null,
          kinds: i === 3 ? ["rotationRate"] : ["dimensionless"],
          line: 1,
          column: 1 + i,
        })),
        rows: [
          [0, 0.1, 0.05, 600],
          [0.4, 0.04, 0.03, 600],
        ],
        places: [
          { line: 2, columns: [1, 2, 3, 4] },
          { line: 3, columns: [1, 2, 3, 4] },
        ],
      },
    };
    const inputs = { propeller: { diameter: 0.3, table: { file: "map.csv" } }, points: [{ rotationRate: 600, advanceRatio: 0.2 }] };
    expect(propeller.needs?.(propeller.inputs.parse(inputs), empty)).toEqual([{ kind: "document", path: "map.csv" }]);
    const { outputs: found } = run(inputs, { documents: { "map.csv": document }, rasters: {} });
    expect(found?.rows[0]?.ct).toBeCloseTo(0.07, 12);
    expect(run(inputs).problem?.kind).toBe("table-missing");
  });

  it("binds on the rotation rate that it is given", () => {
    const found = run({ propeller: { ...blades, rotationRateLimit: 500 }, points: [{ rotationRate: 600 }] });
    const limits = found.outputs ? propeller.limits(found.outputs, found.inputs) : [];
    expect(limits.find(({ binding }) => binding)?.name).toBe("rotation rate");
    expect(found.outputs && propeller.answer(found.outputs, found.inputs).brief).toMatch(/ N for /u);
  });
});
