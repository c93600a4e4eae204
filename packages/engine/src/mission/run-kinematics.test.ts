import { describe, expect, it } from "vitest";
import { positionFromDegrees } from "../environment/geodesy/index.ts";
import { evenGround, type Terrain } from "../environment/terrain/index.ts";
import { sampleLeg } from "./leg-samples.ts";
import { type HeightRule, type RunRequest, runKinematics } from "./run-kinematics.ts";

const limits = { acceleration: 0.5, climbRate: 3, descentRate: 2 };
const calm = { speed: 0, fromDirection: 0, profile: { kind: "uniform" } } as const;

function legOver(terrain: Terrain, height: HeightRule, airspeed = 22) {
  const sampling = sampleLeg(positionFromDegrees([-31, 41]), positionFromDegrees([-31, 41.1]), terrain);
  if (sampling.kind === "no-ground") throw new Error("ground");
  return { number: 1, name: "leg 1", airspeed, height, samples: sampling.samples };
}

const run = (leg: ReturnType<typeof legOver>, wind: RunRequest["wind"] = calm): RunRequest => ({ legs: [leg], wind, limits });

/** A ridge of 300 m across the track, 1 km wide at its foot. */
const ridge: Terrain = {
  sampleSpacing: 10,
  elevationAt: ({ latitude }) => {
    const away = Math.abs((latitude * 180) / Math.PI - 41.05) * 111_000;
    return { kind: "elevation", value: Math.max(0, 300 * (1 - away / 500)) };
  },
};

describe("a run over ground", () => {
  it("keeps the height above ground over a ridge and never climbs or descends faster than allowed", () => {
    const { pieces } = runKinematics(run(legOver(ridge, { kind: "above-ground", height: 80 })));
    for (const piece of pieces) {
      expect(piece.endHeight - piece.endGround).toBeGreaterThanOrEqual(80 - 1e-6);
      const rate = (piece.endHeight - piece.startHeight) / piece.duration;
      expect(rate).toBeLessThanOrEqual(3 + 1e-4);
      expect(rate).toBeGreaterThanOrEqual(-2 - 1e-4);
    }
    // The crest may lie half a piece from the nearest cut: 5 m at a slope of 0.6 is 3 m.
    const highest = Math.max(...pieces.map((piece) => piece.endHeight));
    expect(highest).toBeGreaterThan(377);
    expect(highest).toBeLessThanOrEqual(380);
  });

  it("keeps the airspeed along the path: the horizontal part gives way to the climb", () => {
    const { pieces } = runKinematics(run(legOver(ridge, { kind: "above-ground", height: 80 })));
    for (const piece of pieces.filter((entry) => entry.kind === "cruise")) {
      const climb = (piece.endHeight - piece.startHeight) / piece.duration;
      // Where the envelope leaves the ground's own slope, one piece settles only to a millimetre a second.
      expect(Math.abs(Math.hypot(piece.startSpeed, climb) - 22)).toBeLessThan(0.001);
    }
  });

  it("a head wind that grows with height slows the high part of the run", () => {
    const wind = { speed: 8, fromDirection: 0, profile: { kind: "power-law", exponent: 0.2 } } as const;
    const { pieces } = runKinematics(run(legOver(ridge, { kind: "above-ground", height: 80 }), wind));
    const cruise = pieces.filter((piece) => piece.kind === "cruise");
    const level = cruise.filter((piece) => Math.abs(piece.endHeight - piece.startHeight) < 1e-9);
    expect(level.length).toBeGreaterThan(10);
    for (const piece of level) expect(piece.startSpeed).toBeCloseTo(22 - 8 * 8 ** 0.2, 6);
  });

  it("flies level at a height above sea whatever the ground does", () => {
    const { pieces } = runKinematics(run(legOver(ridge, { kind: "above-sea", height: 120 })));
    expect(new Set(pieces.map((piece) => piece.endHeight))).toEqual(new Set([120]));
  });

  it("says where the track is lost instead of flying on", () => {
    const wind = { speed: 25, fromDirection: Math.PI / 2, profile: { kind: "uniform" } } as const;
    const result = runKinematics(run(legOver(evenGround(0), { kind: "above-ground", height: 50 }), wind));
    expect(result.pieces).toEqual([]);
    expect(result.startHeight).toBe(50);
    expect(result.lost).toMatchObject({ because: "cross-wind" });
  });
});
