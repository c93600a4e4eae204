import type { MapFigure, SceneFigure } from "@wingseed/engine";

/** An invented map and an invented drawing for tests. */

const across = 48;
const down = 36;
const ground = (column: number, row: number) => {
  const island = 420 * Math.exp(-(((column - 14) / 9) ** 2) - ((row - 16) / 8) ** 2);
  const ridge = 260 * Math.exp(-(((column - 30 - row * 0.2) / 4) ** 2));
  return island + ridge - 45;
};

export const sampleMap: MapFigure = {
  kind: "map",
  id: "route",
  caption: "Route over terrain",
  tracks: [
    {
      name: "driven",
      meaning: "mode.driven",
      points: [
        [-31.52, -18.31],
        [-31.47, -18.3],
        [-31.45, -18.29],
      ],
    },
    {
      name: "autorotating",
      meaning: "mode.autorotating",
      points: [
        [-31.45, -18.29],
        [-31.36, -18.26],
        [-31.27, -18.21],
        [-31.2, -18.2],
      ],
    },
  ],
  sites: [
    { name: "harbour store", at: [-31.52, -18.31], note: "take-off" },
    { name: "platform", at: [-31.2, -18.2] },
    { name: "saddle field", at: [-31.4, -18.25], note: "emergency site" },
    { name: "quay", at: [-31.515, -18.305] },
  ],
  relief: {
    west: -31.6,
    east: -31.12,
    south: -18.4,
    north: -18.12,
    width: across,
    height: down,
    elevation: Array.from({ length: across * down }, (_, index) => (index < 6 ? null : ground(index % across, Math.floor(index / across)))),
  },
  wind: { speed: 6, from: (240 * Math.PI) / 180 },
};

const circle = (radius: number, [x, y, z]: readonly [number, number, number]) =>
  Array.from({ length: 37 }, (_, index): readonly [number, number, number] => {
    const angle = (index / 36) * 2 * Math.PI;
    return [x + radius * Math.cos(angle), y + radius * Math.sin(angle), z];
  });

export const sampleScene: SceneFigure = {
  kind: "scene",
  id: "arrangement",
  caption: "General arrangement",
  lines: [
    { name: "rotor disc", meaning: "rotor", points: circle(1.15, [0, 0, -0.4]) },
    {
      name: "wing",
      meaning: "wing",
      points: [
        [0.12, -1.05, 0],
        [0.12, 1.05, 0],
        [-0.1, 1.05, 0],
        [-0.1, -1.05, 0],
        [0.12, -1.05, 0],
      ],
    },
    {
      name: "fuselage",
      meaning: "body",
      points: [
        [0.6, 0, 0],
        [0.4, 0, -0.12],
        [-0.9, 0, -0.1],
        [-0.9, 0, 0],
        [0.3, 0, 0.15],
        [0.6, 0, 0],
      ],
    },
    {
      name: "propeller",
      meaning: "propellers",
      points: [
        [0.3, 0.8, -0.2],
        [0.3, 0.8, 0.2],
      ],
    },
    {
      name: "propeller",
      meaning: "propellers",
      points: [
        [0.3, -0.8, -0.2],
        [0.3, -0.8, 0.2],
      ],
    },
  ],
  marks: [
    { name: "centre of gravity", meaning: "neutral", shape: "centre", at: [0.02, 0, 0.01] },
    { name: "payload", meaning: "avionics", shape: "point", at: [0.1, 0, 0.1] },
  ],
  bounds: [
    { name: "forward limit", axis: "x", value: 0.05, forbidden: "above", family: "control", mark: "centre of gravity" },
    { name: "aft limit", axis: "x", value: -0.04, forbidden: "below", family: "control", mark: "centre of gravity" },
  ],
  dimensions: [
    { name: "length", view: "left", from: [0.6, 0, 0.15], to: [-0.9, 0, 0.15] },
    { name: "span", view: "ahead", from: [0, -1.05, 0], to: [0, 1.05, 0] },
    { name: "rotor diameter", view: "above", from: [0, -1.15, 0], to: [0, 1.15, 0] },
  ],
  detail: { name: "centre of gravity, larger", view: "left", from: [0.2, 0, -0.1], to: [-0.2, 0, 0.2] },
};

/** The same body with what acts on it. */
export const sampleForces: SceneFigure = {
  kind: "scene",
  id: "forces",
  caption: "Forces and moments",
  views: ["left", "behind"],
  lines: sampleScene.lines.map((line) => ({ ...line, weight: "thin" })),
  marks: [{ name: "centre of gravity", meaning: "neutral", shape: "centre", at: [0.02, 0, 0.01] }],
  arrows: [
    { name: "weight", meaning: "neutral", kind: "force", at: [0.02, 0, 0.01], vector: [-11, 6, 196] },
    { name: "main rotor", meaning: "rotor", kind: "force", at: [0, 0, -0.4], vector: [-9, -5, -150] },
    { name: "main rotor", meaning: "rotor", kind: "moment", at: [0, 0, -0.4], vector: [0.4, 1.2, -3] },
    { name: "wing", meaning: "wing", kind: "force", at: [0.05, 0, 0], vector: [-3, 0, -46] },
    { name: "propellers", meaning: "propellers", kind: "force", at: [0.3, 0.8, 0], vector: [31, 0, 0] },
    { name: "fin", meaning: "wing", kind: "force", at: [-0.9, 0, -0.1], vector: [0, -0.2, 0] },
    { name: "tailplane", meaning: "wing", kind: "moment", at: [-0.9, 0, -0.1], vector: [0, 0.006, 0] },
  ],
  attitude: { pitch: 0.06, roll: -0.03, about: [0.02, 0, 0.01], velocity: [22, 0.5, 1.4] },
};
