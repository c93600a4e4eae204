/** Polynomial of the measured ring state: v_i/v_h over x = V_c/v_h, −2 ≤ x ≤ 0. @source leishman-2006, axial descent, read */
const ringState = [1, -1.125, -1.372, -1.718, -0.655] as const;

/** From here down the polynomial is left; at −2 the curve passes momentum theory's value; beyond the last it follows that theory. */
const ringEnd = -1.9;
const windmillEdge = -2;
const windmillStart = -2.05;
/** Slope given to the curve at −2, where momentum theory's is infinite and the polynomial's has no say [1]. Chosen. */
const edgeSlope = 4.5;

/**
 * Flow through the disc of a rotor that descends along its axis, over v_h: 1/(v_i/v_h), so that thrust is momentum times it [1].
 *
 *     −1.9 ≤ x < 0   v_i/v_h = 1 − 1.125 x − 1.372 x² − 1.718 x³ − 0.655 x⁴
 *     x ≤ −2.05      v_i/v_h = −x/2 − √(x²/4 − 1)
 *
 * and cubic pieces between with one value (1) and one slope at x = −2: continuous with its slope everywhere. The polynomial
 * runs 5 to 15 % under the measurements of a small rotor.
 *
 * @param axial x = V_c/v_h, climb positive; at or above 0 the polynomial's value at 0 [1]
 * @source leishman-2006, axial descent, read
 */
export function descentThroughFlow(axial: number): number {
  return 1 / inducedInDescent(Math.min(axial, 0));
}

function inducedInDescent(x: number): number {
  if (x >= ringEnd) return ring(x).value;
  if (x <= windmillStart) return windmill(x).value;
  const edge = { value: 1, slope: edgeSlope };
  return x > windmillEdge
    ? cubic(x, windmillEdge, edge, ringEnd, ring(ringEnd))
    : cubic(x, windmillStart, windmill(windmillStart), windmillEdge, edge);
}

interface Knot {
  readonly value: number;
  readonly slope: number;
}

function ring(x: number): Knot {
  const [a, b, c, d, e] = ringState;
  return { value: a + x * (b + x * (c + x * (d + x * e))), slope: b + x * (2 * c + x * (3 * d + x * 4 * e)) };
}

function windmill(x: number): Knot {
  const root = Math.sqrt((x * x) / 4 - 1);
  // The quotient form of −x/2 − root keeps its digits at high descent rates.
  return { value: 1 / (root - x / 2), slope: -0.5 - x / (4 * root) };
}

function cubic(x: number, from: number, start: Knot, to: number, end: Knot): number {
  const width = to - from;
  const t = (x - from) / width;
  const risen = t * t * (3 - 2 * t);
  return start.value * (1 - risen) + end.value * risen + width * t * (1 - t) * (start.slope * (1 - t) - end.slope * t);
}
