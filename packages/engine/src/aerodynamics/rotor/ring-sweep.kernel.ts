import { circleSteps, circleWidth, rootReynoldsStep, rootReynoldsSteps, type SectionLaw, stepWidth } from "../airfoil-section/index.ts";
import { foreAftGradient, lateralGradient } from "./inflow-distribution.kernel.ts";
import { type RotorSweepState, type RotorWorkspace, ringLoadWidth } from "./rotor-workspace.ts";
import type { SectionBlend } from "./section-blend.ts";

const octant = Math.SQRT2 - 1;
const quarter = Math.PI / 2;
const eighth = Math.PI / 4;
const stepsPerRadian = circleSteps / (2 * Math.PI);
const positionShift = circleSteps * 2.5;
const lastStep = circleSteps - 1;
const largestMachSquared = 0.81;
/** Cosines of the angle of attack to which stall delay acts fully (30°), and beyond which not at all (50°). */
const delayFull = Math.cos(Math.PI / 6);
const delayEnd = Math.cos((5 * Math.PI) / 18);

/** Numbers of `RingBuffers.loads` that are summed up. */
const summedLoads = 8;

/** Lift at Mach 0 of attached flow, of separated flow, drag, friction: what `readSection` leaves. */
const reading = new Float64Array(4);
const blended = new Float64Array(4);

/** One law at a table position and a root of the Reynolds number; both linear between neighbours. */
function readSection(law: SectionLaw, position: number, reynoldsRoot: number): void {
  const { table, reynoldsIndex } = law;
  const whole = position | 0;
  const part = position - whole;
  const step = (whole & lastStep) * stepWidth;
  const last = law.reynolds.length - 1;
  if (last === 0) {
    const low0 = table[step] as number;
    const low1 = table[step + 1] as number;
    const low2 = table[step + 2] as number;
    const low3 = table[step + 3] as number;
    reading[0] = low0 + part * ((table[step + stepWidth] as number) - low0);
    reading[1] = low1 + part * ((table[step + stepWidth + 1] as number) - low1);
    reading[2] = low2 + part * ((table[step + stepWidth + 2] as number) - low2);
    reading[3] = low3 + part * ((table[step + stepWidth + 3] as number) - low3);
    return;
  }
  const rootStep = reynoldsRoot | 0;
  const lowLevel = reynoldsIndex[rootStep] as number;
  const level = lowLevel + (reynoldsRoot - rootStep) * ((reynoldsIndex[rootStep + 1] as number) - lowLevel);
  let lower = level | 0;
  if (lower > last - 1) lower = last - 1;
  const upperShare = level - lower;
  const a = (1 - upperShare) * (1 - part);
  const b = (1 - upperShare) * part;
  const c = upperShare * (1 - part);
  const d = upperShare * part;
  const at = lower * circleWidth + step;
  const to = at + stepWidth;
  const up = at + circleWidth;
  const upTo = up + stepWidth;
  reading[0] = a * (table[at] as number) + b * (table[to] as number) + c * (table[up] as number) + d * (table[upTo] as number);
  reading[1] =
    a * (table[at + 1] as number) + b * (table[to + 1] as number) + c * (table[up + 1] as number) + d * (table[upTo + 1] as number);
  reading[2] =
    a * (table[at + 2] as number) + b * (table[to + 2] as number) + c * (table[up + 2] as number) + d * (table[upTo + 2] as number);
  reading[3] =
    a * (table[at + 3] as number) + b * (table[to + 3] as number) + c * (table[up + 3] as number) + d * (table[upTo + 3] as number);
}

/** Arctangent of uP/uT over the full circle, reduced to an eighth of a turn; good to 3·10⁻¹⁰ rad, as in `sweepRotor`. */
function inflowAngle(uP: number, uT: number): number {
  const aT = uT < 0 ? -uT : uT;
  const aP = uP < 0 ? -uP : uP;
  let ratio: number;
  let base: number;
  if (aP <= octant * aT) {
    ratio = aP / (aT + 1e-300);
    base = 0;
  } else if (aT <= octant * aP) {
    ratio = -aT / aP;
    base = quarter;
  } else {
    ratio = (aP - aT) / (aP + aT);
    base = eighth;
  }
  const r2 = ratio * ratio;
  let phi =
    base +
    ratio *
      (0.9999999993921003 +
        r2 *
          (-0.3333330749342842 +
            r2 * (0.19998210797504756 + r2 * (-0.14239982917689845 + r2 * (0.10572814468218183 - 0.060332416829667085 * r2)))));
  if (uT < 0) phi = Math.PI - phi;
  return uP < 0 ? -phi : phi;
}

/** The section of an element: one law, or two blended. */
function readBlend({ inner, outer, outerShare }: SectionBlend, position: number, reynoldsRoot: number): void {
  readSection(inner, position, reynoldsRoot);
  if (outerShare === 0) return;
  blended.set(reading);
  readSection(outer, position, reynoldsRoot);
  for (let k = 0; k < 4; k++) reading[k] = (1 - outerShare) * (blended[k] as number) + outerShare * (reading[k] as number);
}

/**
 * One ring of blade elements over a turn, with an induced and a swirl velocity of its own. Writes `ws.rings.loads`; allocates
 * nothing.
 *
 * The equations of `sweepRotor` with u_T = Ω̂ x − w + μ sin ψ and λ_i, w of the ring. Velocities are over `s.tipSpeed`, which with a
 * turning rotor is its tip speed (Ω̂ = 1); a stopped rotor has Ω̂ = 0 and one turned backwards Ω̂ < 0, over any reference speed. In axial
 * flow without cyclic pitch all azimuths are alike and one is computed. Lift carries Prandtl's function only with mean inflow.
 *
 *     stall delay   c_l + Δ, c_d + Δ tan α with Δ = min(3.1 (c/r)² (Ω r/U)², 1) (c_l,unseparated − c_l), fading out from 30° to 50°
 *
 * The lift that stall delay adds stands at right angles to the chord: the suction at the nose stays lost.
 *
 * @param spin Ω̂, speed of the tip over `s.tipSpeed` [1]
 * @param i index of the ring
 * @param lambdaI λ_i of the ring, over `s.tipSpeed` [1]
 * @param swirl w, in the sense of a turning rotor, over `s.tipSpeed` [1]
 * @source johnson-1980, ch. 5, blade element theory in forward flight, unchecked; snel-1993, stall delay, from memory
 */
export function sweepRing(ws: RotorWorkspace, s: RotorSweepState, spin: number, i: number, lambdaI: number, swirl: number): void {
  const { mesh, rings } = ws;
  const { sine, cosine } = mesh;
  const section = rings.sections[i] as SectionBlend;
  const delay = rings.stallDelay[i] as number;
  const { plungeCosine, plungeSine } = rings;
  const { cosine: turningCosine, sine: turningSine } = ws.turning;
  const still = plungeCosine === 0 && plungeSine === 0 && turningCosine === 0 && turningSine === 0;
  const axial = Math.abs(s.mu) < 1e-9 && s.theta1c === 0 && s.theta1s === 0 && still;
  const azimuths = axial ? 1 : sine.length;
  const scale = axial ? sine.length : 1;
  const x = mesh.radiusFraction[i] as number;
  const weight = scale * (mesh.weight[i] as number);
  const liftWeight = scale * (mesh.liftWeight[i] as number);
  const resultant = ws.radialKind === 2;
  const alongSpan = ws.radialKind === 0 ? 0 : 1;
  const liftLoss = ws.prandtl && !ws.annular;
  const halfBlades = ws.model.bladeCount / 2;
  const { mu, coning } = s;
  const through = s.lambdaC + lambdaI;
  const kx = lambdaI * foreAftGradient(ws.inflowKind, mu, through);
  const ky = lambdaI * lateralGradient(ws.inflowKind, mu);
  const turning = spin * x - swirl;
  const builtIn = s.theta0 + (mesh.twist[i] as number);
  const machSquared = (s.tipSpeed / s.speedOfSound) * (s.tipSpeed / s.speedOfSound);
  const reynolds = (s.tipSpeed / s.kinematicViscosity) * (mesh.chord[i] as number);
  let ct = 0;
  let cq = 0;
  let ch = 0;
  let cy = 0;
  let momentCos = 0;
  let momentSin = 0;
  let induced = 0;
  let liftTorque = 0;
  for (let j = 0; j < azimuths; j++) {
    const sin = axial ? 0 : (sine[j] as number);
    const cos = axial ? 0 : (cosine[j] as number);
    const radial = mu * cos;
    const own = x * (kx * cos + ky * sin);
    const uT = turning + mu * sin;
    const plunge = plungeCosine * cos + plungeSine * sin;
    const uP = through + radial * coning + own + plunge + x * (turningCosine * cos + turningSine * sin);
    const speedSquared = uT * uT + uP * uP;
    const speed = Math.sqrt(speedSquared);
    const phi = inflowAngle(uP, uT);
    const position = (builtIn + s.theta1c * cos + s.theta1s * sin - phi) * stepsPerRadian + positionShift;
    let reynoldsRoot = Math.sqrt(speed * reynolds) / rootReynoldsStep;
    if (reynoldsRoot > rootReynoldsSteps) reynoldsRoot = rootReynoldsSteps;
    readBlend(section, position, reynoldsRoot);
    const compression = 1 / Math.sqrt(1 - Math.min(machSquared * speedSquared, largestMachSquared));
    let drag = reading[2] as number;
    const friction = reading[3] as number;
    const alpha = builtIn + s.theta1c * cos + s.theta1s * sin - phi;
    let lift = (reading[0] as number) * compression + (reading[1] as number);
    if (delay > 0 && Math.cos(alpha) > delayEnd) {
      const rotation = (delay * spin * spin * x * x) / (speedSquared + 1e-300);
      const fade = Math.min((Math.cos(alpha) - delayEnd) / (delayFull - delayEnd), 1);
      const unseparated = section.liftSlope * Math.sin(alpha - section.zeroLift) * compression;
      const regained = Math.min(rotation, 1) * fade * (unseparated - lift);
      lift += regained;
      drag += regained * Math.tan(alpha);
    }
    if (liftLoss) {
      const exponent = (halfBlades * (1 - x) * speed) / (x * Math.abs(uP) + 1e-300);
      if (exponent < 30) lift *= (2 / Math.PI) * Math.acos(Math.exp(-exponent));
    }
    const lifting = liftWeight * speed * lift;
    let dragging = weight * drag * speed;
    let alongBlade = dragging;
    if (resultant) {
      const rubbing = weight * friction;
      alongBlade = rubbing * Math.sqrt(speedSquared + radial * radial);
      dragging += alongBlade - rubbing * speed;
    }
    const dz = lifting * uT - dragging * uP;
    const dx = lifting * uP + dragging * uT;
    const inward = dz * coning - alongSpan * radial * alongBlade;
    ct += dz;
    // A hinge off the shaft is moved up and down by the blades: the air's work on it reaches the shaft.
    cq += x * dx - plunge * dz;
    ch += dx * sin - inward * cos;
    cy -= dx * cos + inward * sin;
    momentCos += x * dz * cos;
    momentSin += x * dz * sin;
    induced += (lambdaI + own) * dz + swirl * dx;
    liftTorque += x * lifting * uP;
  }
  const { loads } = rings;
  const at = i * ringLoadWidth;
  loads[at] = ct;
  loads[at + 1] = cq;
  loads[at + 2] = ch;
  loads[at + 3] = cy;
  loads[at + 4] = momentCos;
  loads[at + 5] = momentSin;
  loads[at + 6] = x * ct;
  loads[at + 7] = induced;
  loads[at + 8] = liftTorque;
}

/**
 * Adds up the rings' loads into `ws.out`. @derivation sum
 */
export function addRings(ws: RotorWorkspace): void {
  const { loads } = ws.rings;
  const sums = [0, 0, 0, 0, 0, 0, 0, 0];
  for (let at = 0; at < loads.length; at += ringLoadWidth) {
    for (let k = 0; k < summedLoads; k++) sums[k] = (sums[k] as number) + (loads[at + k] as number);
  }
  const out = ws.out;
  out.ct = sums[0] as number;
  out.cq = sums[1] as number;
  out.ch = sums[2] as number;
  out.cy = sums[3] as number;
  out.momentCos = sums[4] as number;
  out.momentSin = sums[5] as number;
  out.meanFlapMoment = sums[6] as number;
  out.cpInduced = sums[7] as number;
}

/**
 * One pass over all rings with the induced and swirl velocities in `ws.rings`. Writes `ws.rings.loads` and `ws.out`.
 *
 * @param spin as in `sweepRing`
 * @derivation sum over `sweepRing`
 */
export function sweepRings(ws: RotorWorkspace, s: RotorSweepState, spin: number): void {
  const { induced, swirl } = ws.rings;
  for (let i = 0; i < induced.length; i++) sweepRing(ws, s, spin, i, induced[i] as number, swirl[i] as number);
  addRings(ws);
}
