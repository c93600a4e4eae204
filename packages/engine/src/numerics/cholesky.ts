/** Overwrites the lower triangle with L of A = L Lᵀ; false when A is not positive definite. */
export function choleskyInPlace(a: Float64Array, n: number): boolean {
  for (let j = 0; j < n; j++) {
    let diagonal = a[j * n + j] as number;
    for (let k = 0; k < j; k++) diagonal -= (a[j * n + k] as number) ** 2;
    if (!(diagonal > 0)) return false;
    const root = Math.sqrt(diagonal);
    a[j * n + j] = root;
    for (let i = j + 1; i < n; i++) {
      let sum = a[i * n + j] as number;
      for (let k = 0; k < j; k++) sum -= (a[i * n + k] as number) * (a[j * n + k] as number);
      a[i * n + j] = sum / root;
    }
  }
  return true;
}

/** Solves L Lᵀ x = b with that factor; `x` holds b and is overwritten. */
export function choleskySolveInPlace(factor: Float64Array, x: Float64Array, n: number): void {
  for (let i = 0; i < n; i++) {
    let sum = x[i] as number;
    for (let k = 0; k < i; k++) sum -= (factor[i * n + k] as number) * (x[k] as number);
    x[i] = sum / (factor[i * n + i] as number);
  }
  for (let i = n - 1; i >= 0; i--) {
    let sum = x[i] as number;
    for (let k = i + 1; k < n; k++) sum -= (factor[k * n + i] as number) * (x[k] as number);
    x[i] = sum / (factor[i * n + i] as number);
  }
}
