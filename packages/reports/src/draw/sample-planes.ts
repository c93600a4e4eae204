import type { LinesFigure, ProfileFigure } from "@wingseed/engine";

/** Invented figures over planes of results, and a course in time, for tests. No value here comes from an aircraft. */

const arc = (count: number, at: (share: number) => readonly [number, number]) => {
  const points = Array.from({ length: count }, (_, index) => at(index / (count - 1)));
  return { x: points.map(([x]) => x), y: points.map(([, y]) => y) };
};
const join = (...parts: readonly { readonly x: readonly number[]; readonly y: readonly number[] }[]) => ({
  x: parts.flatMap((part) => part.x),
  y: parts.flatMap((part) => part.y),
});

const ceiling = arc(24, (share) => [31 * share, 1400 + 1500 * Math.sin(Math.PI * (0.15 + 0.6 * share))]);
const fastest = arc(12, (share) => [36 - 5 * share, 2500 * share]);
const slowest = arc(12, (share) => [14 + 5 * share, 2300 * share]);
const freeTop = arc(8, (share) => [19 + 12 * share, 2300 + 200 * share]);

export const sampleEnvelope: LinesFigure = {
  kind: "lines",
  id: "envelope",
  caption: "Where it can fly: airspeed and altitude",
  plane: true,
  x: { label: "airspeed", quantity: "speed", unit: "km/h" },
  y: { label: "altitude", quantity: "length", datum: "above sea" },
  series: [],
  regions: [
    {
      name: "rotor driven",
      meaning: "mode.driven",
      ...join({ x: [0], y: [0] }, ceiling, { x: fastest.x.toReversed(), y: fastest.y.toReversed() }),
    },
    {
      name: "autorotating",
      meaning: "mode.autorotating",
      ...join(slowest, freeTop, { x: fastest.x.toReversed(), y: fastest.y.toReversed() }),
    },
  ],
  borders: [
    { name: "rotor motor: continuous power", family: "power", forbidden: "left", ...ceiling },
    { name: "propeller thrust", family: "power", forbidden: "right", ...fastest },
    { name: "clutch open: rotor slows below its lowest speed", family: "air", forbidden: "left", ...slowest },
  ],
  bounds: [{ name: "operator’s highest altitude", axis: "y", value: 3000, forbidden: "above", family: "rule" }],
  notable: [{ name: "now", x: 22, y: 300 }],
};

const rootsAt = (share: number) => [
  { name: "phugoid", x: -0.05 + 0.02 * share, y: 0.5 - 0.25 * share },
  { name: "short period", x: -1.6 - 1.4 * share, y: 1.2 + 3.2 * share },
  { name: "rotor speed", x: -0.35 - 0.5 * share, y: 0 },
];
const shares = Array.from({ length: 9 }, (_, index) => index / 8);

export const sampleRoots: LinesFigure = {
  kind: "lines",
  id: "roots",
  caption: "Roots of motion from 15 to 35 m/s",
  plane: true,
  x: { label: "growth rate, 1/s", quantity: "dimensionless" },
  y: { label: "frequency", quantity: "rotationRate", unit: "rad/s" },
  series: rootsAt(0).map(({ name }, index) => ({
    name,
    meaning: "neutral",
    shape: "points",
    x: shares.map((share) => rootsAt(share)[index]?.x ?? 0),
    y: shares.map((share) => rootsAt(share)[index]?.y ?? 0),
  })),
  notable: rootsAt(0.5).map(({ name, x, y }) => ({ name: `${name} at 25 m/s`, x, y })),
  bounds: [{ name: "grows", axis: "x", value: 0, forbidden: "above", family: "control" }],
};

export const sampleLoading: LinesFigure = {
  kind: "lines",
  id: "loading",
  caption: "Take-off mass and centre of gravity",
  plane: true,
  x: { label: "centre of gravity forward of the datum", quantity: "length", unit: "mm" },
  y: { label: "take-off mass", quantity: "mass", unit: "kg" },
  series: [7, 10, 13].map((blocks, index) => ({
    name: `${blocks} blocks`,
    meaning: (["ordered.1", "ordered.2", "ordered.3"] as const)[index] ?? "neutral",
    x: [0, 1.1, 1.6].map((payload) => 0.032 - 0.011 * index - 0.004 * payload),
    y: [0, 1.1, 1.6].map((payload) => 14.7 + 2.07 * index + payload),
  })),
  notable: [7, 10, 13].flatMap((_, index) =>
    ["empty", "parts", "camera"].map((name, load) => ({
      name,
      x: 0.032 - 0.011 * index - 0.004 * ([0, 1.1, 1.6][load] ?? 0),
      y: 14.7 + 2.07 * index + ([0, 1.1, 1.6][load] ?? 0),
    })),
  ),
  borders: [
    { name: "forward limit", family: "control", forbidden: "right", x: [0.05, 0.05], y: [13, 24] },
    { name: "aft limit", family: "control", forbidden: "left", x: [-0.02, -0.02], y: [13, 24] },
  ],
  bounds: [{ name: "largest take-off mass", axis: "y", value: 24, forbidden: "above", family: "rule" }],
};

const times = Array.from({ length: 61 }, (_, index) => index * 0.25);
const opened = 8.5;

export const sampleTransition: ProfileFigure = {
  kind: "profile",
  id: "transition",
  caption: "From hover to cruise",
  x: { label: "time", quantity: "time", unit: "s" },
  panels: [
    {
      y: { label: "airspeed", quantity: "speed" },
      zeroBased: true,
      series: [{ name: "airspeed", meaning: "track", x: times, y: times.map((t) => 27 * (1 - Math.exp(-t / 5))) }],
    },
    {
      y: { label: "rotor speed", quantity: "rotationRate" },
      series: [
        {
          name: "rotor speed",
          meaning: "rotor",
          x: times,
          y: times.map((t) => (t < opened ? 77 : 77 - 9 * (1 - Math.exp(-(t - opened) / 3)))),
        },
      ],
      bounds: [{ name: "lowest permitted", axis: "y", value: 48, forbidden: "below", family: "air" }],
    },
    {
      y: { label: "electric power", quantity: "power" },
      zeroBased: true,
      series: [
        { name: "rotor motor", meaning: "rotor", x: times, y: times.map((t) => (t < opened ? 1900 * (1 - t / (opened * 1.1)) : 0)) },
        { name: "propellers", meaning: "propellers", x: times, y: times.map((t) => Math.min(1300, 260 * t)) },
      ],
    },
  ],
  notable: [{ name: "clutch opens", x: opened }],
  ribbon: { x: times, share: times.map((t) => (t < opened ? 1 - t / (opened * 1.1) : 0)), free: times.map((t) => t >= opened) },
};
