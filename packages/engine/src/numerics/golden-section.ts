/** Where a function of one variable is smallest within [low, high], to `tolerance` in the variable; unimodal assumed. */
export function goldenSection(f: (x: number) => number, low: number, high: number, tolerance: number): { readonly x: number; readonly value: number } {
  const ratio = (Math.sqrt(5) - 1) / 2;
  let a = low;
  let b = high;
  let c = b - ratio * (b - a);
  let d = a + ratio * (b - a);
  let fc = f(c);
  let fd = f(d);
  while (b - a > tolerance) {
    if (fc <= fd) {
      b = d;
      d = c;
      fd = fc;
      c = b - ratio * (b - a);
      fc = f(c);
    } else {
      a = c;
      c = d;
      fc = fd;
      d = a + ratio * (b - a);
      fd = f(d);
    }
  }
  return fc <= fd ? { x: c, value: fc } : { x: d, value: fd };
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
