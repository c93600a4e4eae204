import { ElasticProgram } from "./elastic-program.kernel.ts";
import type { QuadraticProgram, QuadraticStep } from "./quadratic-program.ts";

/** A variable whose bounds are closer than this does not move. */
const immovable = 1e-12;

/**
 * Primal-dual interior point method with Mehrotra's corrector on the elastic program: it has a feasible point whatever the
 * constraints, so it cannot fail by contradiction. Undefined only when the linear algebra breaks down (not finite).
 *
 * @source nocedal-wright-2006, ch. 16.6, interior point methods for convex quadratic programs, unchecked
 * @derivation elimination of slacks and elastic variables row by row
 */
export function quadraticStep(program: QuadraticProgram): QuadraticStep | undefined {
  const free = Array.from({ length: program.size }, (_, i) => i).filter(
    (i) => (program.high[i] as number) - (program.low[i] as number) > immovable,
  );
  const solver = new ElasticProgram(program, free);
  return solver.solve();
}
