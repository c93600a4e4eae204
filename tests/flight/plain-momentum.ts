// Momentum of the flow through a disc written out plainly.

const smooth = (t: number) => (t <= 0 ? 0 : t >= 1 ? 1 : t * t * (3 - 2 * t));

/** Thrust [N] that the mean induced velocity accounts for, far from the ground. */
export function momentumThrust(
  rotor: { readonly radius: number; readonly inducedPowerFactor: number },
  density: number,
  flow: { readonly mu: number; readonly axial: number; readonly induced: number; readonly tipSpeed: number },
  thrust: number,
): number {
  const area = Math.PI * rotor.radius ** 2;
  const hover = Math.sqrt((rotor.inducedPowerFactor * Math.abs(thrust)) / (2 * density * area)) / flow.tipSpeed;
  const x = (Math.sign(thrust) * flow.axial) / hover;
  const share = smooth(-x / 0.4) * (1 - smooth(flow.mu / hover / 1.5));
  const slow = share > 0 ? share * (hover / inducedInDescent(x)) ** 2 : 0;
  const through = (1 - share) * (flow.axial + flow.induced) ** 2 + slow;
  return (2 * density * area * flow.tipSpeed ** 2 * flow.induced * Math.sqrt(flow.mu ** 2 + through)) / rotor.inducedPowerFactor;
}

/** v_i over v_h in a straight descent at x v_h: measured curve to −1.9, momentum theory from −2.05, two cubics through 1 at −2 between. */
function inducedInDescent(x: number): number {
  const ring = (at: number) => 1 - 1.125 * at - 1.372 * at ** 2 - 1.718 * at ** 3 - 0.655 * at ** 4;
  const brake = (at: number) => -at / 2 - Math.sqrt(at ** 2 / 4 - 1);
  if (x >= -1.9) return ring(Math.min(x, 0));
  if (x <= -2.05) return brake(x);
  const slopeAt = (of: (at: number) => number, at: number) => (of(at + 1e-6) - of(at - 1e-6)) / 2e-6;
  const [from, to] = x > -2 ? [-2, -1.9] : [-2.05, -2];
  const start = x > -2 ? { value: 1, slope: 4.5 } : { value: brake(-2.05), slope: slopeAt(brake, -2.05) };
  const end = x > -2 ? { value: ring(-1.9), slope: slopeAt(ring, -1.9) } : { value: 1, slope: 4.5 };
  const width = to - from;
  const t = (x - from) / width;
  return (
    start.value * (1 + 2 * t) * (1 - t) ** 2 +
    start.slope * width * t * (1 - t) ** 2 +
    end.value * t ** 2 * (3 - 2 * t) +
    end.slope * width * t ** 2 * (t - 1)
  );
}
