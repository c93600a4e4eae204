/**
 * Solves A x = b for a small dense square system by elimination with row pivoting. `a` (row-major, n×n) and `b` are
 * overwritten; the solution is left in `b`. Returns false when a pivot vanishes.
 */
export function solveLinearInPlace(a: Float64Array, b: Float64Array, n: number): boolean {
  for (let k = 0; k < n; k++) {
    let pivot = k;
    let largest = Math.abs(a[k * n + k] as number);
    for (let i = k + 1; i < n; i++) {
      const size = Math.abs(a[i * n + k] as number);
      if (size > largest) {
        largest = size;
        pivot = i;
      }
    }
    if (!(largest > 1e-300)) return false;
    if (pivot !== k) {
      for (let j = k; j < n; j++) {
        const held = a[k * n + j] as number;
        a[k * n + j] = a[pivot * n + j] as number;
        a[pivot * n + j] = held;
      }
      const held = b[k] as number;
      b[k] = b[pivot] as number;
      b[pivot] = held;
    }
    const inverse = 1 / (a[k * n + k] as number);
    for (let i = k + 1; i < n; i++) {
      const factor = (a[i * n + k] as number) * inverse;
      if (factor === 0) continue;
      for (let j = k + 1; j < n; j++) a[i * n + j] = (a[i * n + j] as number) - factor * (a[k * n + j] as number);
      b[i] = (b[i] as number) - factor * (b[k] as number);
    }
  }
  for (let i = n - 1; i >= 0; i--) {
    let sum = b[i] as number;
    for (let j = i + 1; j < n; j++) sum -= (a[i * n + j] as number) * (b[j] as number);
    b[i] = sum / (a[i * n + i] as number);
  }
  return true;
}
