import { type BorderedPlace, type BorderedSystem, measuredSlopes, solveBorderedSystem } from "./bordered-system.ts";
import { discFlow, isAlone } from "./disc-flow.ts";
import type { FlapEquations } from "./flap-equations.ts";
import { RingBalance } from "./ring-balance.ts";
import { addRings } from "./ring-sweep.kernel.ts";
import { ringLoadWidth } from "./rotor-workspace.ts";

/** Loads of a ring that balances need: C_T, C_Q, moment cos, moment sin; and where `RingBuffers.loads` has them. */
const loadPlaces = [0, 1, 4, 5] as const;

/** What the disc, the shaft and the search have to say beside inflow and flapping. */
export interface AnnularTorque {
  /** Torque that the shaft gives [1]. */
  readonly cq: number;
  /** Of a torque coefficient, to bring it to the size of the other residuals [1]. */
  readonly scale: number;
  /** Turns the disc of the equations' point to an angle [rad]. */
  turn(discAngle: number): void;
  readonly largestSteps: readonly number[];
  readonly tolerance: number;
  readonly largestSweepCount: number;
}

/**
 * Inflow of all rings, flapping and torque in one system, a sweep an evaluation. Shared by the rings: C_T of the disc, θ_1c, θ_1s, β₀
 * for blades that cone, and the disc angle; a ring's own: its induced and, if it swirls, its swirl velocity.
 *
 * @derivation the balances of `solveAnnularInflow` and `flapEquations`, not one inside the other but side by side
 */
function ringSystem(equations: FlapEquations, torque: AnnularTorque): BorderedSystem {
  const { workspace: ws, size } = equations;
  const { rings, model } = ws;
  const memberCount = rings.induced.length;
  const ownCount = model.swirl === true ? 2 : 1;
  const sharedCount = size + 1;
  const answerCount = ownCount + loadPlaces.length;
  // Slopes are of no loads, not of what was swept last.
  rings.loads.fill(0);
  addRings(ws);
  const balance = (shared: Float64Array, balances: Float64Array): void => {
    equations.flapBalance(shared, balances);
    balances[0] = ws.out.ct - (shared[0] as number);
    balances[size] = (ws.out.cq - torque.cq) * torque.scale;
  };
  return {
    sharedCount,
    memberCount,
    ownCount,
    loadCount: loadPlaces.length,
    sharedSlopes: sharedSlopes(balance, sharedCount),
    loadSlopes: loadSlopes(equations, torque.scale),
    largestSteps: torque.largestSteps,
    tolerance: torque.tolerance,
    largestEvaluationCount: torque.largestSweepCount,
    evaluate(shared, own, answers, balances) {
      torque.turn(shared[size] as number);
      equations.place(shared);
      const flow = discFlow(ws.state, shared[0] as number);
      const search = new RingBalance(ws, ws.state, 1, flow);
      for (let i = 0; i < memberCount; i++) {
        rings.induced[i] = own[i * ownCount] as number;
        rings.swirl[i] = ownCount === 2 ? (own[i * ownCount + 1] as number) : 0;
        const [momentum, angularMomentum] = search.leftOver(i, rings.induced[i] as number, rings.swirl[i] as number);
        answers[i * answerCount] = momentum;
        if (ownCount === 2) answers[i * answerCount + 1] = angularMomentum;
        for (const [k, at] of loadPlaces.entries()) {
          answers[i * answerCount + ownCount + k] = rings.loads[i * ringLoadWidth + at] as number;
        }
      }
      addRings(ws);
      rings.discThrust = isAlone(flow) ? 0 : (shared[0] as number);
      equations.effort.sweeps += search.sweeps / memberCount;
      balance(shared, balances);
    },
  };
}

/** Balances are straight in the shared unknowns where loads are held: differences are slopes, whatever the step. */
function sharedSlopes(balance: (shared: Float64Array, balances: Float64Array) => void, count: number): Float64Array {
  const slopes = new Float64Array(count * count);
  const none = new Float64Array(count);
  const some = new Float64Array(count);
  balance(new Float64Array(count), none);
  for (let column = 0; column < count; column++) {
    const one = new Float64Array(count);
    one[column] = 1;
    balance(one, some);
    for (let row = 0; row < count; row++) slopes[row * count + column] = (some[row] as number) - (none[row] as number);
  }
  return slopes;
}

/** Slopes of the balances over the loads of each ring, [ring][balance][load]. */
function loadSlopes({ workspace: ws, size, stiffness, halfSlope, coningPerMoment }: FlapEquations, torqueScale: number): Float64Array {
  const { radiusFraction } = ws.mesh;
  const { length: loadCount } = loadPlaces;
  const slopes = new Float64Array(radiusFraction.length * (size + 1) * loadCount);
  for (const [i, x] of radiusFraction.entries()) {
    const share = 1 - stiffness.hingeOffset / x;
    const at = (balance: number, load: number): number => (i * (size + 1) + balance) * loadCount + load;
    slopes[at(0, 0)] = 1;
    slopes[at(size, 1)] = torqueScale;
    if (!stiffness.rigid) {
      slopes[at(1, 2)] = (8 / halfSlope) * share;
      slopes[at(2, 3)] = (8 / halfSlope) * share;
    }
    if (stiffness.cones) slopes[at(3, 0)] = -coningPerMoment * share * x;
  }
  return slopes;
}

/** The state of the workspace's rings as a place to start from, with slopes by differences. */
export function annularPlace(equations: FlapEquations, torque: AnnularTorque, unknowns: Float64Array): BorderedPlace {
  const { out, rings, model, state } = equations.workspace;
  const shared = unknowns.slice();
  shared[0] = out.ct;
  const own =
    model.swirl === true ? Float64Array.from([...rings.induced].flatMap((v, i) => [v, rings.swirl[i] as number])) : rings.induced.slice();
  const slopes = measuredSlopes(ringSystem(equations, torque), shared, own);
  state.lambdaI = unknowns[0] as number;
  return { shared, own, slopes };
}

/** A state beside a place, and where it is; leaves the workspace at it. Undefined where none is found from there. */
export function annularAutorotation(
  equations: FlapEquations,
  torque: AnnularTorque,
  start: BorderedPlace,
): { readonly place: BorderedPlace; readonly unknowns: Float64Array } | undefined {
  const { rings, mesh, state, model } = equations.workspace;
  if (start.own.length !== rings.induced.length * (model.swirl === true ? 2 : 1)) return undefined;
  if (start.shared.length !== equations.size + 1) return undefined;
  const place = solveBorderedSystem(ringSystem(equations, torque), start);
  if (!place) return undefined;
  let sum = 0;
  let area = 0;
  for (const [i, x] of mesh.radiusFraction.entries()) {
    const ringArea = x * (mesh.width[i] as number);
    sum += ringArea * (rings.induced[i] as number);
    area += ringArea;
  }
  state.lambdaI = sum / area;
  const unknowns = place.shared.slice();
  unknowns[0] = state.lambdaI;
  return { place, unknowns };
}
