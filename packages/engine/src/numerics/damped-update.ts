import type { NonlinearProgram, ProgramState } from "./nonlinear-program.ts";

/**
 * Updates the curvature of the Lagrangian from the change of its gradient along a move, damped so that it stays positive definite.
 *
 * @source powell-1978, damped update, unchecked
 */
export function dampedUpdate(
  program: NonlinearProgram,
  hessian: Float64Array,
  from: ProgramState,
  to: ProgramState,
  multipliers: Float64Array,
): void {
  const { size } = program;
  const s = new Float64Array(size);
  const y = new Float64Array(size);
  const rows = program.equalities + program.inequalities;
  for (let i = 0; i < size; i++) {
    s[i] = (to.x[i] as number) - (from.x[i] as number);
    let change = (to.jacobian[i] as number) - (from.jacobian[i] as number);
    for (let r = 0; r < rows; r++) {
      const at = (r + 1) * size + i;
      change -= (multipliers[r] as number) * ((to.jacobian[at] as number) - (from.jacobian[at] as number));
    }
    y[i] = change;
  }
  const Bs = new Float64Array(size);
  let sBs = 0;
  let sy = 0;
  for (let i = 0; i < size; i++) {
    let sum = 0;
    for (let j = 0; j < size; j++) sum += (hessian[i * size + j] as number) * (s[j] as number);
    Bs[i] = sum;
    sBs += sum * (s[i] as number);
    sy += (s[i] as number) * (y[i] as number);
  }
  if (!(sBs > 1e-20)) return;
  const damping = sy >= 0.2 * sBs ? 1 : (0.8 * sBs) / (sBs - sy);
  let sr = 0;
  const r = y.map((value, i) => damping * value + (1 - damping) * (Bs[i] as number));
  for (let i = 0; i < size; i++) sr += (s[i] as number) * (r[i] as number);
  if (!(sr > 1e-20)) return;
  for (let i = 0; i < size; i++)
    for (let j = 0; j < size; j++)
      hessian[i * size + j] =
        (hessian[i * size + j] as number) - ((Bs[i] as number) * (Bs[j] as number)) / sBs + ((r[i] as number) * (r[j] as number)) / sr;
}
