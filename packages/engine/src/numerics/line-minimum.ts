const golden = (3 - Math.sqrt(5)) / 2;

/**
 * Where a function of one variable is smallest within [low, high], to `tolerance` in the variable: parabolas through the
 * best points, golden section where they do not help.
 *
 * @source brent-1973, ch. 5, unchecked
 */
export function lineMinimum(
  f: (x: number) => number,
  low: number,
  high: number,
  tolerance: number,
): { readonly x: number; readonly value: number } {
  let a = low;
  let b = high;
  let x = a + golden * (b - a);
  let w = x;
  let v = x;
  let fx = f(x);
  let fw = fx;
  let fv = fx;
  let step = 0;
  let before = 0;
  for (let iteration = 0; iteration < 60; iteration++) {
    const middle = (a + b) / 2;
    if (Math.abs(x - middle) <= 2 * tolerance - (b - a) / 2) break;
    let parabolic = false;
    if (Math.abs(before) > tolerance && Number.isFinite(fw) && Number.isFinite(fv)) {
      const r = (x - w) * (fx - fv);
      let q = (x - v) * (fx - fw);
      let p = (x - v) * q - (x - w) * r;
      q = 2 * (q - r);
      if (q > 0) p = -p;
      q = Math.abs(q);
      if (q > 0 && Math.abs(p) < Math.abs(0.5 * q * before) && p > q * (a - x) && p < q * (b - x)) {
        before = step;
        step = p / q;
        parabolic = true;
      }
    }
    if (!parabolic) {
      before = x < middle ? b - x : a - x;
      step = golden * before;
    }
    const u = Math.abs(step) >= tolerance ? x + step : x + (step > 0 ? tolerance : -tolerance);
    const fu = f(u);
    if (fu <= fx) {
      if (u < x) b = x;
      else a = x;
      [v, fv, w, fw, x, fx] = [w, fw, x, fx, u, fu];
    } else {
      if (u < x) a = u;
      else b = u;
      if (fu <= fw || w === x) [v, fv, w, fw] = [w, fw, u, fu];
      else if (fu <= fv || v === x || v === w) [v, fv] = [u, fu];
    }
  }
  return { x, value: fx };
}

/** Narrows the border between a point where `holds` is true and one where it is false; returns the last true side. */
export function border(holds: (x: number) => boolean, inside: number, outside: number, tolerance: number): number {
  let good = inside;
  let bad = outside;
  while (Math.abs(good - bad) > tolerance) {
    const middle = (good + bad) / 2;
    if (holds(middle)) good = middle;
    else bad = middle;
  }
  return good;
}
