import fc from "fast-check";

const from = (min: number, max: number) => fc.double({ min, max, noNaN: true });

const blades = fc
  .record({ diameter: from(0.1, 1.5), pitch: from(-0.1, 0.8), chordFraction: from(0.05, 0.4), blades: fc.integer({ min: 1, max: 6 }) })
  .map((given) => ({ ...given, rootCutout: 0.15 }));
const stations = fc.record({ diameter: from(0.1, 1.5), root: from(-0.2, 1.4), tip: from(-0.3, 0.6) }).map(({ diameter, root, tip }) => ({
  diameter,
  blades: 2,
  section: "naca-0012",
  stations: [
    { radiusFraction: 0.15, chordFraction: 0.15, pitchAngle: root },
    { radiusFraction: 1, chordFraction: 0.05, pitchAngle: tip },
  ],
}));
const table = fc.record({ diameter: from(0.1, 1), end: from(0.3, 1.2), cp: from(0.01, 0.1) }).map(({ diameter, end, cp }) => ({
  diameter,
  table: [0, 0.5, 1].map((share) => ({ advanceRatio: share * end, ct: 0.1 * (1 - share), cp: cp * (1 - share / 2), rotationRate: 500 })),
}));

/** What is mostly meant by a question about a propeller. */
export const preferredPropeller = {
  propeller: fc.oneof(blades, stations, table, fc.constant({ aircraft: "aircraft/baseline.yaml" })),
  "points.*.rotationRate": from(-600, 900),
  "points.*.airspeed": from(0, 60),
  "points.*.advanceRatio": from(0, 2),
  "points.*.thrust": from(-5, 40),
  "points.*.power": from(1, 800),
  "propeller.blades": fc.integer({ min: 2, max: 4 }),
};
