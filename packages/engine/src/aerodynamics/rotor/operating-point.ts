import type { NoOperatingPoint, OperatingGivens, OperatingPoint, OperatingSurroundings } from "./operating-givens.ts";
import { OperatingSearch } from "./operating-search.ts";
import type { RotorWorkspace } from "./rotor-workspace.ts";

/**
 * A rotor's operating point from four of: free stream, shaft angle, rotor speed, collective, thrust, shaft torque.
 *
 * Never on the stalled branch where collective is sought: thrust is approached from low collective and not beyond its first
 * maximum. Shaft angles are scanned upward and the first place where the torque needed falls through the given one is taken
 * (the torque is not monotonic); rotor speeds are scanned downward from the fastest, so the fast, stable equilibrium is found.
 *
 * @derivation searches over `solveRotorInflowAndFlap`
 */
export function rotorOperatingPoint(
  ws: RotorWorkspace,
  givens: OperatingGivens,
  surroundings: OperatingSurroundings,
): OperatingPoint | NoOperatingPoint {
  const search = new OperatingSearch(ws, surroundings);
  switch (givens.seek) {
    case "loads":
      return search.loads(givens.stream, givens.shaftAngle, givens.tipSpeed, givens.collective);
    case "collective":
      return search.collective(givens.stream, givens.shaftAngle, givens.tipSpeed, givens.thrust);
    case "shaft-angle":
      return search.shaftAngle(givens.stream, givens.tipSpeed, givens.collective, givens.torque);
    case "tip-speed":
      return search.tipSpeed(givens);
    case "shaft-angle-and-collective":
      return search.shaftAngleAndCollective(givens.stream, givens.tipSpeed, givens.thrust, givens.torque);
    case "shaft-angle-and-tip-speed":
      return search.shaftAngleAndTipSpeed(givens);
  }
}
