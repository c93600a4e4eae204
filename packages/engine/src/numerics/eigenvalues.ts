import { EigenvalueDecomposition, Matrix } from "ml-matrix";

/** Eigenvalues of a real square matrix with what belongs to each. Complex ones come in neighbouring pairs, the upper one first. */
export interface EigenSystem {
  readonly real: Float64Array;
  readonly imaginary: Float64Array;
  /**
   * Right eigenvectors in the columns, row-major: of a real eigenvalue the vector, of a pair its real part in the first and its
   * imaginary part in the second column (of the upper eigenvalue).
   */
  readonly vectors: Float64Array;
  /**
   * Inverse of `vectors`, row-major, that is the left eigenvectors in the rows; undefined when the vectors do not span the
   * space (a defective matrix) or nearly so (condition above 1e12).
   */
  readonly inverse: Float64Array | undefined;
}

/**
 * Eigenvalues and eigenvectors of `matrix` (row-major, n×n, at most some dozens), balanced first by powers of two, which changes no eigenvalue and
 * takes away what units do to rounding. Undefined when an entry is not finite or the iteration gives no finite answer.
 * Multiple eigenvalues of a defective matrix are good to the root of the rounding only, as by any method.
 *
 * @source parlett-reinsch-1969, the scaling by powers of the base, from memory
 */
export function eigenSystem(matrix: Float64Array, n: number): EigenSystem | undefined {
  if (n < 1 || matrix.length !== n * n) throw new RangeError(`a matrix of ${n} by ${n} has ${n * n} entries, not ${matrix.length}`);
  if (!matrix.every(Number.isFinite)) return undefined;
  const scale = balancingScale(matrix, n);
  const balanced = new Matrix(n, n);
  for (let i = 0; i < n; i++)
    for (let j = 0; j < n; j++) balanced.set(i, j, ((matrix[i * n + j] as number) * (scale[j] as number)) / (scale[i] as number));
  const found = new EigenvalueDecomposition(balanced, { assumeSymmetric: false });
  const real = Float64Array.from(found.realEigenvalues);
  const imaginary = Float64Array.from(found.imaginaryEigenvalues);
  if (!real.every(Number.isFinite) || !imaginary.every(Number.isFinite)) return undefined;
  const vectors = new Float64Array(n * n);
  const columns = found.eigenvectorMatrix;
  for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) vectors[i * n + j] = columns.get(i, j) * (scale[i] as number);
  return { real, imaginary, vectors, inverse: inverseOf(vectors, n) };
}

/** Powers of two that make rows and columns of D⁻¹ A D about equally long. */
function balancingScale(matrix: Float64Array, n: number): Float64Array {
  const scale = new Float64Array(n).fill(1);
  for (let pass = 0; pass < 20; pass++) {
    let changed = false;
    for (let i = 0; i < n; i++) {
      let row = 0;
      let column = 0;
      for (let j = 0; j < n; j++) {
        if (j === i) continue;
        row += Math.abs((matrix[i * n + j] as number) * (scale[j] as number)) / (scale[i] as number);
        column += Math.abs((matrix[j * n + i] as number) * (scale[i] as number)) / (scale[j] as number);
      }
      if (row === 0 || column === 0) continue;
      const factor = 2 ** Math.round(Math.log2(row / column) / 2);
      if (factor === 1 || !Number.isFinite(factor)) continue;
      if ((row / factor + column * factor) / (row + column) > 0.95) continue;
      scale[i] = (scale[i] as number) * factor;
      changed = true;
    }
    if (!changed) break;
  }
  return scale;
}

/** Inverse by elimination with row pivoting, columns scaled first; undefined when it is not to be trusted. */
function inverseOf(vectors: Float64Array, n: number): Float64Array | undefined {
  const lengths = Float64Array.from({ length: n }, (_, j) => {
    let sum = 0;
    for (let i = 0; i < n; i++) sum += (vectors[i * n + j] as number) ** 2;
    return Math.sqrt(sum);
  });
  const width = 2 * n;
  const work = new Float64Array(n * width);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) work[i * width + j] = (vectors[i * n + j] as number) / (lengths[j] as number);
    work[i * width + n + i] = 1;
  }
  for (let k = 0; k < n; k++) if (!eliminate(work, k, n)) return undefined;
  const inverse = new Float64Array(n * n);
  for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) inverse[i * n + j] = (work[i * width + n + j] as number) / (lengths[i] as number);
  return inverse.every(Number.isFinite) ? inverse : undefined;
}

/** One column of Gauss-Jordan; false when the largest pivot left is no more than rounding. */
function eliminate(work: Float64Array, k: number, n: number): boolean {
  const width = 2 * n;
  let pivot = k;
  for (let i = k + 1; i < n; i++) if (Math.abs(work[i * width + k] as number) > Math.abs(work[pivot * width + k] as number)) pivot = i;
  const head = work[pivot * width + k] as number;
  if (!(Math.abs(head) > 1e-12)) return false;
  for (let j = 0; j < width; j++) {
    const held = work[k * width + j] as number;
    work[k * width + j] = (work[pivot * width + j] as number) / head;
    if (pivot !== k) work[pivot * width + j] = held;
  }
  for (let i = 0; i < n; i++) {
    const factor = work[i * width + k] as number;
    if (i === k || factor === 0) continue;
    for (let j = 0; j < width; j++) work[i * width + j] = (work[i * width + j] as number) - factor * (work[k * width + j] as number);
  }
  return true;
}
