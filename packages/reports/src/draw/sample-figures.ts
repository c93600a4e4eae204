import type { Figure, GridFigure, LinesFigure, ProfileFigure, StackedFigure, TableFigure, TextFigure, TreeFigure } from "@wingseed/engine";
import { sampleForces, sampleMap, sampleScene } from "./sample-places.ts";
import { sampleEnvelope, sampleLoading, sampleRoots, sampleTransition } from "./sample-planes.ts";

/** Invented figures of every kind for tests of drawing and typesetting. No value here comes from an aircraft. */

const speeds = Array.from({ length: 46 }, (_, index) => index);
const parts = {
  induced: (v: number) => 900 / Math.sqrt(1 + (v / 9) ** 2),
  profile: (v: number) => 260 + 0.05 * v * v,
  body: (v: number) => 0.026 * v ** 3,
  wing: (v: number) => (v < 8 ? 0 : 45 + 800 / (v * 1.6)),
  losses: (v: number) => 130 + 0.004 * v ** 3,
  avionics: () => 35,
};
const total = (v: number) => Object.values(parts).reduce((sum, part) => sum + part(v), 0);
const share = (v: number) => Math.max(0, 1 - v / 21);

export const sampleStacked: StackedFigure = {
  kind: "stacked",
  id: "power",
  caption: "Electric power against airspeed by where it goes, cheaper rotor mode",
  x: { label: "airspeed", quantity: "speed", unit: "km/h" },
  y: { label: "electric power", quantity: "power", unit: "W" },
  at: speeds,
  layers: [
    { name: "rotor", meaning: "rotor", values: speeds.map((v) => (v > 41 ? null : parts.induced(v) + parts.profile(v))) },
    { name: "wing", meaning: "wing", values: speeds.map((v) => (v > 41 ? null : parts.wing(v))) },
    { name: "body", meaning: "body", values: speeds.map((v) => (v > 41 ? null : parts.body(v))) },
    { name: "motor, gear and controller losses", meaning: "losses", values: speeds.map((v) => (v > 41 ? null : parts.losses(v))) },
    { name: "avionics", meaning: "avionics", values: speeds.map((v) => (v > 41 ? null : parts.avionics())) },
  ],
  overlays: [
    {
      name: "autorotating",
      meaning: "mode.autorotating",
      weight: "thin",
      x: speeds,
      y: speeds.map((v) => (v < 14 || v > 41 ? null : total(v) * 1.08 + 120 - v * 4)),
    },
  ],
  notable: [
    { name: "cheapest to stay up", x: 16, y: total(16) },
    { name: "lowest autorotating speed", x: 14, y: total(14) * 1.08 + 64 },
    { name: "best range", x: 24, y: total(24) },
  ],
  gaps: [{ from: 41, to: 45, reason: "no level flight: propeller thrust, 12 N short" }],
  ribbon: { x: speeds, share: speeds.map(share), free: speeds.map((v) => v >= 21 && v <= 41) },
};

export const sampleLines: LinesFigure = {
  kind: "lines",
  id: "endurance",
  caption: "Hover endurance against payload, a line for each pack",
  x: { label: "payload", quantity: "mass" },
  y: { label: "hover", quantity: "time", unit: "min" },
  zeroBased: true,
  series: [
    {
      name: "7 blocks",
      meaning: "ordered.1",
      x: [0, 1, 2, 3, 4, 5],
      y: [1100, 1010, 930, 860, 800, 745],
      end: { limit: "take-off mass", family: "rule" },
    },
    {
      name: "10 blocks",
      meaning: "ordered.2",
      x: [0, 1, 2, 3, 3.9],
      y: [1420, 1310, 1210, 1125, 1060],
      end: { limit: "stall margin", family: "air" },
    },
    {
      name: "13 blocks",
      meaning: "ordered.3",
      x: [0, 1, 2, 2.6],
      y: [1690, 1560, 1450, 1390],
      end: { limit: "block current", family: "power" },
    },
    { name: "before", meaning: "before", x: [0, 1, 2, 3, 4, 5], y: [1050, 990, 900, 830, 770, 700] },
  ],
  notable: [{ name: "now: 1.13 kg, 13 blocks", x: 1.13, y: 1545 }],
  bounds: [
    { name: "reserve asks 10 min", axis: "y", value: 600, forbidden: "below", family: "rule" },
    { name: "strongest hook", axis: "x", value: 4.8, forbidden: "above", family: "strength" },
  ],
};

export const sampleTable: TableFigure = {
  kind: "table",
  id: "loads",
  caption: "Hover and cruise by pack and payload",
  columns: [
    { label: "pack" },
    { label: "payload", quantity: "mass" },
    { label: "take-off mass", quantity: "mass" },
    { label: "hover", quantity: "time", unit: "min" },
    { label: "range", quantity: "length", unit: "km" },
    { label: "feasible" },
    { label: "limit" },
  ],
  rows: [
    ["7 blocks", 0, 14.7, 1100, 52_300, true, "charge"],
    ["10 blocks", 1.13, 17.9, 1284, 74_100, true, "block current"],
    ["13 blocks", 5, 24.1, null, null, false, "take-off mass"],
  ],
};

export const sampleGrid: GridFigure = {
  kind: "grid",
  id: "margin",
  caption: "Stall margin over speed and take-off mass",
  x: { label: "airspeed", quantity: "speed" },
  y: { label: "take-off mass", quantity: "mass" },
  value: { label: "stall margin", quantity: "dimensionless" },
  xs: [0, 5, 10, 15, 20, 25, 30, 35],
  ys: [14, 16, 18, 20, 22, 24],
  values: Array.from({ length: 48 }, (_, index) => {
    const [column, row] = [index % 8, Math.floor(index / 8)];
    return row === 5 && column > 5 ? null : 2.4 - 0.08 * column - 0.16 * row + 0.03 * Math.sin(column * row);
  }),
};

const times = Array.from({ length: 61 }, (_, index) => index * 40);
export const sampleProfile: ProfileFigure = {
  kind: "profile",
  id: "timeline",
  caption: "Height, charge and power along the flight",
  x: { label: "time since take-off", quantity: "time", unit: "min" },
  panels: [
    {
      y: { label: "height", quantity: "length", datum: "above sea" },
      zeroBased: true,
      series: [
        { name: "terrain", meaning: "terrain", x: times, y: times.map((t) => 120 * Math.exp(-(((t - 900) / 300) ** 2))) },
        { name: "flown", meaning: "track", x: times, y: times.map((t) => Math.min(t, 240, 2400 - t)) },
      ],
    },
    {
      y: { label: "state of charge", quantity: "dimensionless", unit: "%" },
      zeroBased: true,
      series: [{ name: "charge", meaning: "battery", x: times, y: times.map((t) => 1 - t / 3300) }],
      bounds: [{ name: "policy 20 %", axis: "y", value: 0.2, forbidden: "below", family: "rule" }],
    },
    {
      y: { label: "power at the terminals", quantity: "power" },
      zeroBased: true,
      series: [
        {
          name: "power",
          meaning: "mode.driven",
          x: times,
          y: times.map((t) => (t < 300 || t > 2200 ? 1900 : 1200 + 60 * Math.sin(t / 90))),
        },
      ],
    },
  ],
  notable: [
    { name: "end of climb", x: 240 },
    { name: "town’s edge", x: 420 },
    { name: "ridge", x: 900 },
    { name: "platform", x: 1900 },
    { name: "landing", x: 2400 },
  ],
  ribbon: { x: times, share: times.map((t) => (t < 300 || t > 2200 ? 1 : 0)), free: times.map((t) => t >= 300 && t <= 2200) },
};

export const sampleTree: TreeFigure = {
  kind: "tree",
  id: "why",
  caption: "Why it is not shown",
  root: {
    label: "Lands with the reserve",
    note: "not shown: a cell value is recalled",
    children: [
      { label: "Charge used", note: "62 %", children: [{ label: "Cruise, clutch open" }, { label: "Hover at the platform" }] },
      { label: "Wind on the way back", note: "head wind 4.2 m/s" },
    ],
  },
};

export const sampleText: TextFigure = {
  kind: "text",
  id: "words",
  caption: "Why autorotating never pays",
  paragraphs: [
    [
      { kind: "words", text: "Autorotating is never cheaper in level flight: at" },
      { kind: "reading", value: 24, quantity: "speed", path: "/rows/24/airspeed", unit: "km/h" },
      { kind: "words", text: "it needs" },
      { kind: "reading", value: 96, quantity: "power", path: "/rows/24/electricPower" },
      { kind: "words", text: "more, since the propellers carry the rotor’s drag at a lower efficiency than its own motor." },
    ],
  ],
};

export const sampleFigures: readonly Figure[] = [
  sampleStacked,
  sampleLines,
  sampleTable,
  sampleGrid,
  sampleMap,
  sampleProfile,
  sampleScene,
  sampleForces,
  sampleEnvelope,
  sampleRoots,
  sampleLoading,
  sampleTransition,
  sampleTree,
  sampleText,
];
