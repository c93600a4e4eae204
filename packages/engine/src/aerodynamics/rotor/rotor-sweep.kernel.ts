import { circleSteps, circleWidth, rootReynoldsStep, rootReynoldsSteps, stepWidth } from "../airfoil-section/index.ts";
import { foreAftGradient, lateralGradient } from "./inflow-distribution.kernel.ts";
import { sweepRings } from "./ring-sweep.kernel.ts";
import type { RotorSweepState, RotorWorkspace } from "./rotor-workspace.ts";

const octant = Math.SQRT2 - 1;
const quarter = Math.PI / 2;
const eighth = Math.PI / 4;
const stepsPerRadian = circleSteps / (2 * Math.PI);
/** Shift that makes table positions positive for angles within two turns, so that truncation is rounding down. */
const positionShift = circleSteps * 2.5;
const lastStep = circleSteps - 1;
/** Square of the Mach number at which the compressibility factor is read when it is higher; doors warn long before. */
const largestMachSquared = 0.81;

/**
 * One pass over all blade elements of a turn, in tip-path-plane axes. Writes `ws.out`; allocates nothing.
 *
 *     u_T = x + μ sin ψ      u_R = μ cos ψ
 *     u_P = λ_c + λ_i (1 + k_x x cos ψ + k_y x sin ψ) + μ β₀ cos ψ + x (t_c cos ψ + t_s sin ψ)
 *     θ = θ₀ + twist + θ_1c cos ψ + θ_1s sin ψ      φ = atan2(u_P, u_T)      α = θ − φ
 *     dF_z = U c_l u_T − D u_P      dF_x = U c_l u_P + D u_T      dF_r = D_r u_R
 *
 * with t_c, t_s of a disc that turns in pitch and roll (`ws.turning`), U² = u_T² + u_P² and the drags D, D_r: without radial flow U c_d, 0; with friction U c_d, U c_d; with resultant flow
 * W c_v + U (c_d − c_v), W c_v, where W² = U² + u_R²: the drag c_v of attached flow acts along the whole velocity, the drag of
 * separated flow as if the blade were unswept in the flow across it. Reverse flow needs no case of its own: the angle simply turns. The arctangent is good to 3·10⁻¹⁰ rad.
 *
 * @source johnson-1980, ch. 5, blade element theory in forward flight, unchecked
 */
export function sweepRotor(ws: RotorWorkspace, s: RotorSweepState): void {
  if (ws.byRings) sweepWithRings(ws, s);
  else if (ws.prandtl || ws.law.reynolds.length > 1) sweepGeneral(ws, s);
  else sweepFast(ws, s);
}

/** Rings with velocities of their own, or one mean velocity over sections that change along the blade. */
function sweepWithRings(ws: RotorWorkspace, s: RotorSweepState): void {
  if (!ws.annular) ws.rings.induced.fill(s.lambdaI);
  sweepRings(ws, s, 1);
}

/** Sections without Reynolds number, lift cut-off: the case of the trim's inner loop. */
function sweepFast(ws: RotorWorkspace, s: RotorSweepState): void {
  const { radiusFraction, twist, weight, liftWeight, sine, cosine } = ws.mesh;
  const table = ws.law.table;
  const elements = radiusFraction.length;
  const azimuths = sine.length;
  const resultant = ws.radialKind === 2;
  const alongSpan = ws.radialKind === 0 ? 0 : 1;
  const { mu, lambdaI, theta0, theta1c, theta1s, coning } = s;
  const through = s.lambdaC + lambdaI;
  const { cosine: turningCosine, sine: turningSine } = ws.turning;
  const kx = lambdaI * foreAftGradient(ws.inflowKind, mu, through);
  const ky = lambdaI * lateralGradient(ws.inflowKind, mu);
  const machSquared = (s.tipSpeed / s.speedOfSound) * (s.tipSpeed / s.speedOfSound);
  let ct = 0;
  let cq = 0;
  let ch = 0;
  let cy = 0;
  let momentCos = 0;
  let momentSin = 0;
  let meanMoment = 0;
  let induced = 0;
  for (let j = 0; j < azimuths; j++) {
    const sin = sine[j] as number;
    const cos = cosine[j] as number;
    const advance = mu * sin;
    const radial = mu * cos;
    const radialSquared = radial * radial;
    const plunge = through + radial * coning;
    const gradient = kx * cos + ky * sin;
    const slope = gradient + turningCosine * cos + turningSine * sin;
    const pitch = theta0 + theta1c * cos + theta1s * sin;
    let sumZ = 0;
    let sumX = 0;
    let sumXRadius = 0;
    let sumZRadius = 0;
    let sumR = 0;
    for (let i = 0; i < elements; i++) {
      const x = radiusFraction[i] as number;
      const uT = x + advance;
      const uP = plunge + slope * x;
      const speedSquared = uT * uT + uP * uP;
      const speed = Math.sqrt(speedSquared);
      // Arctangent of uP/uT over the full circle, reduced to an eighth of a turn.
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
      if (uP < 0) phi = -phi;
      const position = (pitch + (twist[i] as number) - phi) * stepsPerRadian + positionShift;
      const whole = position | 0;
      const part = position - whole;
      const at = (whole & lastStep) * stepWidth;
      const low = table[at] as number;
      const low1 = table[at + 1] as number;
      const low2 = table[at + 2] as number;
      const mach2 = machSquared * speedSquared;
      const compression = 1 / Math.sqrt(1 - Math.min(mach2, largestMachSquared));
      const lift = (low + part * ((table[at + 4] as number) - low)) * compression + low1 + part * ((table[at + 5] as number) - low1);
      const drag = low2 + part * ((table[at + 6] as number) - low2);
      const lifting = (liftWeight[i] as number) * speed * lift;
      let dragging = (weight[i] as number) * drag * speed;
      let alongBlade = dragging;
      if (resultant) {
        const low3 = table[at + 3] as number;
        const rubbing = (weight[i] as number) * (low3 + part * ((table[at + 7] as number) - low3));
        alongBlade = rubbing * Math.sqrt(speedSquared + radialSquared);
        dragging += alongBlade - rubbing * speed;
      }
      const dz = lifting * uT - dragging * uP;
      const dx = lifting * uP + dragging * uT;
      sumZ += dz;
      sumX += dx;
      sumZRadius += x * dz;
      sumXRadius += x * dx;
      sumR += alongBlade;
    }
    const inward = sumZ * coning - alongSpan * radial * sumR;
    ct += sumZ;
    cq += sumXRadius;
    ch += sumX * sin - inward * cos;
    cy -= sumX * cos + inward * sin;
    momentCos += sumZRadius * cos;
    momentSin += sumZRadius * sin;
    meanMoment += sumZRadius;
    induced += lambdaI * sumZ + gradient * sumZRadius;
  }
  const out = ws.out;
  out.ct = ct;
  out.cq = cq;
  out.ch = ch;
  out.cy = cy;
  out.momentCos = momentCos;
  out.momentSin = momentSin;
  out.meanFlapMoment = meanMoment;
  out.cpInduced = induced;
}

/** The same with Reynolds number and Prandtl's tip function per element. */
function sweepGeneral(ws: RotorWorkspace, s: RotorSweepState): void {
  const { radiusFraction, twist, chord, weight, liftWeight, sine, cosine } = ws.mesh;
  const table = ws.law.table;
  const reynoldsIndex = ws.law.reynoldsIndex;
  const lastTable = ws.law.reynolds.length - 1;
  const lastLower = lastTable > 0 ? lastTable - 1 : 0;
  const nextTable = lastTable > 0 ? circleWidth : 0;
  const elements = radiusFraction.length;
  const azimuths = sine.length;
  const resultant = ws.radialKind === 2;
  const alongSpan = ws.radialKind === 0 ? 0 : 1;
  const prandtl = ws.prandtl;
  const halfBlades = ws.model.bladeCount / 2;
  const { mu, lambdaI, theta0, theta1c, theta1s, coning } = s;
  const through = s.lambdaC + lambdaI;
  const { cosine: turningCosine, sine: turningSine } = ws.turning;
  const kx = lambdaI * foreAftGradient(ws.inflowKind, mu, through);
  const ky = lambdaI * lateralGradient(ws.inflowKind, mu);
  const machSquared = (s.tipSpeed / s.speedOfSound) * (s.tipSpeed / s.speedOfSound);
  const reynoldsPerChord = s.tipSpeed / s.kinematicViscosity;
  let ct = 0;
  let cq = 0;
  let ch = 0;
  let cy = 0;
  let momentCos = 0;
  let momentSin = 0;
  let meanMoment = 0;
  let induced = 0;
  for (let j = 0; j < azimuths; j++) {
    const sin = sine[j] as number;
    const cos = cosine[j] as number;
    const advance = mu * sin;
    const radial = mu * cos;
    const radialSquared = radial * radial;
    const plunge = through + radial * coning;
    const gradient = kx * cos + ky * sin;
    const slope = gradient + turningCosine * cos + turningSine * sin;
    const pitch = theta0 + theta1c * cos + theta1s * sin;
    let sumZ = 0;
    let sumX = 0;
    let sumXRadius = 0;
    let sumZRadius = 0;
    let sumR = 0;
    for (let i = 0; i < elements; i++) {
      const x = radiusFraction[i] as number;
      const uT = x + advance;
      const uP = plunge + slope * x;
      const speedSquared = uT * uT + uP * uP;
      const speed = Math.sqrt(speedSquared);
      const phi = Math.atan2(uP, uT);
      const position = (pitch + (twist[i] as number) - phi) * stepsPerRadian + positionShift;
      const whole = position | 0;
      const part = position - whole;
      let rootReynolds = Math.sqrt(speed * reynoldsPerChord * (chord[i] as number)) / rootReynoldsStep;
      if (rootReynolds > rootReynoldsSteps) rootReynolds = rootReynoldsSteps;
      const rootStep = rootReynolds | 0;
      const lowLevel = reynoldsIndex[rootStep] as number;
      const level = lowLevel + (rootReynolds - rootStep) * ((reynoldsIndex[rootStep + 1] as number) - lowLevel);
      let lower = level | 0;
      if (lower > lastLower) lower = lastLower;
      const upperShare = level - lower;
      const lowerShare = 1 - upperShare;
      const at = lower * circleWidth + (whole & lastStep) * stepWidth;
      const up = at + nextTable;
      const low = lowerShare * (table[at] as number) + upperShare * (table[up] as number);
      const low1 = lowerShare * (table[at + 1] as number) + upperShare * (table[up + 1] as number);
      const low2 = lowerShare * (table[at + 2] as number) + upperShare * (table[up + 2] as number);
      const high = lowerShare * (table[at + 4] as number) + upperShare * (table[up + 4] as number);
      const high1 = lowerShare * (table[at + 5] as number) + upperShare * (table[up + 5] as number);
      const high2 = lowerShare * (table[at + 6] as number) + upperShare * (table[up + 6] as number);
      const mach2 = machSquared * speedSquared;
      const compression = 1 / Math.sqrt(1 - Math.min(mach2, largestMachSquared));
      let lift = (low + part * (high - low)) * compression + low1 + part * (high1 - low1);
      if (prandtl) {
        const exponent = (halfBlades * (1 - x) * speed) / (x * (uP < 0 ? -uP : uP) + 1e-300);
        if (exponent < 30) lift *= (2 / Math.PI) * Math.acos(Math.exp(-exponent));
      }
      const drag = low2 + part * (high2 - low2);
      const lifting = (liftWeight[i] as number) * speed * lift;
      let dragging = (weight[i] as number) * drag * speed;
      let alongBlade = dragging;
      if (resultant) {
        const low3 = lowerShare * (table[at + 3] as number) + upperShare * (table[up + 3] as number);
        const high3 = lowerShare * (table[at + 7] as number) + upperShare * (table[up + 7] as number);
        const rubbing = (weight[i] as number) * (low3 + part * (high3 - low3));
        alongBlade = rubbing * Math.sqrt(speedSquared + radialSquared);
        dragging += alongBlade - rubbing * speed;
      }
      const dz = lifting * uT - dragging * uP;
      const dx = lifting * uP + dragging * uT;
      sumZ += dz;
      sumX += dx;
      sumZRadius += x * dz;
      sumXRadius += x * dx;
      sumR += alongBlade;
    }
    const inward = sumZ * coning - alongSpan * radial * sumR;
    ct += sumZ;
    cq += sumXRadius;
    ch += sumX * sin - inward * cos;
    cy -= sumX * cos + inward * sin;
    momentCos += sumZRadius * cos;
    momentSin += sumZRadius * sin;
    meanMoment += sumZRadius;
    induced += lambdaI * sumZ + gradient * sumZRadius;
  }
  const out = ws.out;
  out.ct = ct;
  out.cq = cq;
  out.ch = ch;
  out.cy = cy;
  out.momentCos = momentCos;
  out.momentSin = momentSin;
  out.meanFlapMoment = meanMoment;
  out.cpInduced = induced;
}
