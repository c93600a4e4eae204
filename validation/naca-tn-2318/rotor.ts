/** Rotor 1 of NACA TN 2318, also of NACA TN 3236: untwisted, chord tapering straight from the cut-out to the tip. */
export const rotor1 = {
  radius: 3.81,
  blades: 2,
  stations: [
    { radiusFraction: 0.133, chord: 0.287, section: { kind: "cambered", thickness: 0.25 } },
    { radiusFraction: 1, chord: 0.112, section: { kind: "cambered", thickness: 0.12 } },
  ],
  rootCutout: 0.133,
  articulation: "teetering",
  section: { kind: "cambered", thickness: 0.18 },
  sectionDragIncrement: 0.002,
};

export const density = 1.225;
export const discArea = Math.PI * rotor1.radius ** 2;
