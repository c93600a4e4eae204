import { type SectionCondition, sectionCoefficients } from "../airfoil-section/index.ts";
import { foreAftGradient, lateralGradient } from "./inflow-distribution.kernel.ts";
import type { RotorSweepState, RotorWorkspace } from "./rotor-workspace.ts";
import type { SectionBlend } from "./section-blend.ts";

/** What one blade element does at one azimuth; forces as shares of the rotor's coefficients. */
export interface ElementLoad {
  readonly radiusFraction: number;
  readonly azimuth: number;
  /** Angle of attack, −π to π [rad]. */
  readonly angleOfAttack: number;
  /** Velocity in the plane of the section over tip speed [1]. */
  readonly speed: number;
  /** Shares of C_T, C_Q, C_H and C_Y. */
  readonly thrust: number;
  readonly torque: number;
  readonly aft: number;
  readonly side: number;
  /** Shares of the power of drag and of the induced velocity. */
  readonly profilePower: number;
  readonly inducedPower: number;
}

/**
 * The load of every element, written out plainly: azimuth by azimuth, root to tip.
 *
 * The same equations as the sweep, without its tricks; kept beside it as the reading for pictures and as its judge. With annular
 * inflow, and with hinges off the shaft, velocities are those left in `ws.rings` by the last solution.
 *
 * @source johnson-1980, ch. 5, blade element theory in forward flight, unchecked
 */
export function rotorLoading(ws: RotorWorkspace, s: Readonly<RotorSweepState>): readonly ElementLoad[] {
  const azimuths = Array.from(ws.mesh.sine, (sine, j) => ({ sine, cosine: ws.mesh.cosine[j] ?? 0 }));
  return azimuths.flatMap((azimuth) => Array.from(ws.mesh.radiusFraction, (_, element) => elementLoad(ws, s, azimuth, element)));
}

function elementLoad(
  ws: RotorWorkspace,
  s: Readonly<RotorSweepState>,
  { sine, cosine }: { readonly sine: number; readonly cosine: number },
  element: number,
): ElementLoad {
  const { mesh, model } = ws;
  const at = (values: Float64Array): number => values[element] ?? 0;
  const x = at(mesh.radiusFraction);
  const mean = ws.annular ? at(ws.rings.induced) : s.lambdaI;
  const swirl = ws.annular ? at(ws.rings.swirl) : 0;
  const total = s.lambdaC + mean;
  const induced = mean * (1 + x * (foreAftGradient(ws.inflowKind, s.mu, total) * cosine + lateralGradient(ws.inflowKind, s.mu) * sine));
  const along = x - swirl + s.mu * sine;
  const plunge = ws.rings.plungeCosine * cosine + ws.rings.plungeSine * sine;
  const through = s.lambdaC + induced + s.mu * s.coning * cosine + plunge;
  const span = s.mu * cosine;
  const speed = Math.hypot(along, through);
  const inflowAngle = Math.atan2(through, along);
  const angleOfAttack = s.theta0 + at(mesh.twist) + s.theta1c * cosine + s.theta1s * sine - inflowAngle;
  const blend = ws.rings.sections[element];
  if (!blend) throw new Error("an element without a section");
  const mach = (speed * s.tipSpeed) / s.speedOfSound;
  const reynolds = (speed * s.tipSpeed * at(mesh.chord)) / s.kinematicViscosity;
  const { lift, drag, viscousDrag } = delayedCoefficients(
    blend,
    { angleOfAttack, mach, reynolds },
    at(ws.rings.stallDelay) * (x / speed) ** 2,
  );
  const lifting = at(mesh.liftWeight) * speed * lift * (ws.prandtl && !ws.annular ? tipFactor(model.bladeCount, x, inflowAngle) : 1);
  const rubbing = at(mesh.weight) * viscousDrag * Math.hypot(speed, span);
  const unswept = at(mesh.weight) * drag * speed;
  const dragging = ws.radialKind === 2 ? rubbing + at(mesh.weight) * (drag - viscousDrag) * speed : unswept;
  const spanDrag = ([0, unswept, rubbing][ws.radialKind] ?? 0) * span;
  const normal = lifting * along - dragging * through;
  const inPlane = lifting * through + dragging * along;
  const outward = spanDrag - normal * s.coning;
  return {
    radiusFraction: x,
    azimuth: Math.atan2(sine, cosine),
    angleOfAttack: Math.atan2(Math.sin(angleOfAttack), Math.cos(angleOfAttack)),
    speed,
    thrust: normal,
    torque: x * inPlane - plunge * normal,
    aft: inPlane * sine + outward * cosine,
    side: outward * sine - inPlane * cosine,
    profilePower: dragging * speed * speed + spanDrag * span,
    inducedPower: normal * induced + inPlane * swirl,
  };
}

type ForceCoefficients = Pick<ReturnType<typeof sectionCoefficients>, "lift" | "drag" | "viscousDrag">;

/** With as much of the lift of unseparated flow as rotation keeps, at right angles to the chord. */
function delayedCoefficients(blend: SectionBlend, at: SectionCondition, rotation: number): ForceCoefficients {
  const still = blendedCoefficients(blend, at);
  const { angleOfAttack, mach } = at;
  const unseparated = (blend.liftSlope * Math.sin(angleOfAttack - blend.zeroLift)) / Math.sqrt(1 - Math.min(mach * mach, 0.81));
  const regained = Math.min(rotation, 1) * delayFade(angleOfAttack) * (unseparated - still.lift);
  return { ...still, lift: still.lift + regained, drag: still.drag + regained * Math.tan(angleOfAttack) };
}

/** 1 to 30° of angle of attack, 0 from 50°, along the cosine. */
function delayFade(angleOfAttack: number): number {
  const [full, end] = [Math.cos(Math.PI / 6), Math.cos((5 * Math.PI) / 18)];
  return Math.min(Math.max((Math.cos(angleOfAttack) - end) / (full - end), 0), 1);
}

function blendedCoefficients(blend: SectionBlend, at: SectionCondition): ForceCoefficients {
  const inner = sectionCoefficients(blend.inner, at);
  if (blend.outerShare === 0) return inner;
  const outer = sectionCoefficients(blend.outer, at);
  const between = (name: keyof ForceCoefficients): number => inner[name] + blend.outerShare * (outer[name] - inner[name]);
  return { lift: between("lift"), drag: between("drag"), viscousDrag: between("viscousDrag") };
}

/** Prandtl's function: F = (2/π) acos(exp(−f)), f = (N/2)(1 − x)/(x |sin φ|). @source leishman-2006, tip loss, unchecked */
function tipFactor(bladeCount: number, x: number, inflowAngle: number): number {
  const exponent = ((bladeCount / 2) * (1 - x)) / (x * Math.abs(Math.sin(inflowAngle)) + 1e-300);
  return (2 / Math.PI) * Math.acos(Math.exp(-exponent));
}
