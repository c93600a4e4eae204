/**
 * The place between two ends where a function changes sign, by bisection: for checks that ask an analysis for the input that
 * gives a wanted output.
 */
export function signChange(low: number, high: number, of: (x: number) => number, tolerance = 1e-6): number {
  let [a, b] = [low, high];
  const sign = Math.sign(of(a));
  if (sign === Math.sign(of(b))) throw new Error(`no change of sign between ${low} and ${high}`);
  while (Math.abs(b - a) > tolerance) {
    const middle = (a + b) / 2;
    if (Math.sign(of(middle)) === sign) a = middle;
    else b = middle;
  }
  return (a + b) / 2;
}

/** The place near two guesses where a smooth function vanishes, by secants. */
export function rootNear(first: number, second: number, of: (x: number) => number, tolerance = 1e-7): number {
  let [a, b] = [first, second];
  let [atA, atB] = [of(a), of(b)];
  for (let step = 0; step < 40; step++) {
    if (Math.abs(b - a) <= tolerance || atB === atA) return b;
    const next = b - (atB * (b - a)) / (atB - atA);
    [a, atA] = [b, atB];
    b = next;
    atB = of(b);
  }
  throw new Error(`no root near ${first} and ${second}`);
}
