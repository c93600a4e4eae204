import { bracketedRoot } from "./bracketed-root.ts";
import { type DiscFlow, discFlow, isAlone, ringsAlone } from "./disc-flow.ts";
import { RingBalance } from "./ring-balance.ts";
import { addRings } from "./ring-sweep.kernel.ts";
import type { RotorSweepState, RotorWorkspace } from "./rotor-workspace.ts";

export type AnnularInflow =
  | { readonly kind: "balanced"; readonly lambdaI: number; readonly ringSweeps: number }
  /** No balance was found for the ring at `radiusFraction`, or for the whole disc (0). */
  | { readonly kind: "unbalanced"; readonly radiusFraction: number; readonly ringSweeps: number };

/** Secants on the thrust of the disc: how many, and how short the last [1]. */
const discSecants = 12;
const endingThrust = 1e-12;
/** Places over the square root of thrust at which a search without a near guess looks for a change of sign, and the last thrust [1]. */
const discPlaces = 24;
const mostThrust = 0.12;

/**
 * The induced (and swirl) velocity of every ring, each from its own momentum. Writes `ws.rings` and `ws.out`.
 *
 *     dC_T = 4 F λ_i Λ x dx/κ      dC_Q = 4 F w Λ x² dx
 *
 * with Λ the flow through the ring, √(μ² + (λ_c + λ_i)²) in climb, hover and forward flight, and F Prandtl's function.
 * κ stands for what a contracting wake takes beyond that; it fades to 1 over the first 0.4 v_h of descent, where the air drives the
 * rotor and its wake widens instead.
 * In descent there are no streamtubes to tell rings apart, and the law of the ring state was measured on whole discs: there every ring
 * has the induced velocity that goes with the thrust of the disc, and more flow down by as much as the tip loses lift (`discFlow`).
 * Swirl by drag is mixed away as if at least a flow of 2 % of the tip speed carried it off: else drag alone would spin the air up where
 * nothing flows through, and a rotor without thrust would need no torque.
 * A ring that depends on nothing but itself is a search in one number between places of opposite sign. Where a ring has several
 * answers, it is the one with the least angle of attack: stalled only where attached flow cannot balance.
 *
 * @param spin as in `sweepRing`
 * @param near start from the velocities in `ws.rings`, of a state not far away
 * @source leishman-2006, ch. 3, blade element momentum theory with tip loss, unchecked
 * @derivation the same balance in oblique flow and descent
 */
export function solveAnnularInflow(ws: RotorWorkspace, s: RotorSweepState, spin: number, near = false): AnnularInflow {
  const known = near ? ws.rings.discThrust : 0;
  if (known !== 0) {
    const beside = new DiscBalance(ws, s, spin).nearby(known, true);
    if (beside) return beside;
  }
  const alone = balancedRings(ws, s, spin, near && known === 0, ringsAlone);
  ws.rings.discThrust = 0;
  if (s.lambdaC === 0) return alone;
  // Without a balance of the rings alone the disc is searched in the sense in which it would descend.
  const ct = alone.kind === "balanced" ? ws.out.ct : -Math.sign(s.lambdaC) * 0.005;
  if (isAlone(discFlow(s, ct))) return alone;
  const disc = new DiscBalance(ws, s, spin, alone.ringSweeps);
  return disc.nearby(ct, false) ?? disc.anywhere(ct);
}

/** Every ring in turn, the flow through the disc given. */
function balancedRings(ws: RotorWorkspace, s: RotorSweepState, spin: number, near: boolean, flow: DiscFlow): AnnularInflow {
  const { induced, swirl, slopes } = ws.rings;
  const balance = new RingBalance(ws, s, spin, flow);
  let sum = 0;
  let area = 0;
  for (let i = 0; i < induced.length; i++) {
    if (!balance.solve(i, near)) {
      return { kind: "unbalanced", radiusFraction: ws.mesh.radiusFraction[i] ?? 0, ringSweeps: balance.sweeps };
    }
    induced[i] = balance.induced;
    swirl[i] = balance.swirl;
    slopes[i] = balance.slope;
    const ringArea = (ws.mesh.radiusFraction[i] ?? 0) * (ws.mesh.width[i] ?? 0);
    sum += ringArea * balance.induced;
    area += ringArea;
  }
  addRings(ws);
  return { kind: "balanced", lambdaI: sum / area, ringSweeps: balance.sweeps };
}

/** The search for the thrust of the disc that its rings make in the flow that goes with it. */
class DiscBalance {
  private readonly ws: RotorWorkspace;
  private readonly state: RotorSweepState;
  private readonly spin: number;
  private sweeps: number;
  private near = true;
  private ended: AnnularInflow = { kind: "unbalanced", radiusFraction: 0, ringSweeps: 0 };

  constructor(ws: RotorWorkspace, state: RotorSweepState, spin: number, sweeps = 0) {
    this.ws = ws;
    this.state = state;
    this.spin = spin;
    this.sweeps = sweeps;
  }

  /** By secants from a guess; undefined where they do not end at once, or end where the rings are alone. */
  nearby(guess: number, near: boolean): AnnularInflow | undefined {
    this.near = near;
    let at = guess;
    let here = this.miss(at);
    let slope = -1.5;
    for (let step = 0; step < discSecants; step++) {
      const move = -here / slope;
      if (!(Math.abs(move) < 0.5 * Math.abs(at) + 1e-3)) return undefined;
      const next = this.miss(at + move);
      if (Math.abs(move) < endingThrust) return this.end(at + move);
      if (!(Math.abs(next) < 2 * Math.abs(here))) return undefined;
      if (Math.abs(next - here) > 1e-15) slope = (next - here) / move;
      at += move;
      here = next;
    }
    return undefined;
  }

  /** The change of sign nearest to a guess, of all places of its sign. */
  anywhere(guess: number): AnnularInflow {
    const sign = guess < 0 ? -1 : 1;
    const places = Array.from({ length: discPlaces + 1 }, (_, i) => sign * mostThrust * (Math.max(i, 0.05) / discPlaces) ** 2);
    let best: { readonly at: number; readonly distance: number } | undefined;
    let before = this.miss(places[0] as number);
    for (let i = 1; i < places.length; i++) {
      const [from, to] = [places[i - 1] as number, places[i] as number];
      const here = this.miss(to);
      const distance = Math.abs(from + to - 2 * guess);
      if (before * here <= 0 && (!best || distance < best.distance)) {
        const at = bracketedRoot((ct) => this.miss(ct), from, before, to, here, endingThrust);
        if (!Number.isNaN(at) && Math.abs(this.miss(at)) < 1e-8) best = { at, distance };
      }
      before = here;
    }
    if (!best) return { kind: "unbalanced", radiusFraction: 0, ringSweeps: this.sweeps };
    this.miss(best.at);
    return this.end(best.at) ?? this.ended;
  }

  /** Thrust of the rings less the thrust they were told. */
  private miss(ct: number): number {
    this.ended = balancedRings(this.ws, this.state, this.spin, this.near, discFlow(this.state, ct));
    this.sweeps += this.ended.ringSweeps;
    this.near = this.ended.kind === "balanced";
    return this.near ? this.ws.out.ct - ct : Number.NaN;
  }

  private end(ct: number): AnnularInflow | undefined {
    if (this.ended.kind !== "balanced" || isAlone(discFlow(this.state, ct))) return undefined;
    this.ws.rings.discThrust = ct;
    return { ...this.ended, ringSweeps: this.sweeps };
  }
}
