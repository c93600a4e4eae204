// A rotor written a second time, from its equations and in plain loops, to judge the one that trims. It shares with it only
// the tables of the blade section.

import { type SectionLaw, sectionCoefficients } from "../../packages/engine/src/aerodynamics/airfoil-section/index.ts";
import type { ReducedAircraft } from "../../packages/engine/src/aircraft/index.ts";

/** What the disc meets: all velocities over tip speed, down through the disc positive; angles in radians. */
export interface PlainRotorState {
  readonly advanceRatio: number;
  readonly axialFlow: number;
  readonly inducedFlow: number;
  readonly collective: number;
  readonly pitchCosine: number;
  readonly pitchSine: number;
  readonly tipSpeed: number;
}

/** Forces [N] and moments [N m] in axes of the tip-path plane. */
export interface PlainRotorLoads {
  readonly thrust: number;
  readonly aft: number;
  readonly torque: number;
  readonly momentCosine: number;
  readonly momentSine: number;
}

const azimuths = 24;
const elements = 16;

/** Chord [m] and pitch [rad] of the blade at a fraction of the radius. */
function blade(rotor: ReducedAircraft["rotor"], place: number): { readonly chord: number; readonly twist: number } {
  const stations = rotor.stations;
  let inner = stations[0] as (typeof stations)[number];
  for (const outer of stations) {
    if (outer.radiusFraction >= place) {
      const span = outer.radiusFraction - inner.radiusFraction;
      const share = span > 0 ? (place - inner.radiusFraction) / span : 0;
      return { chord: inner.chord + share * (outer.chord - inner.chord), twist: inner.twist + share * (outer.twist - inner.twist) };
    }
    inner = outer;
  }
  return inner;
}

/**
 * First-harmonic gradients of the induced velocity after Drees, with the total inflow rounded off at 0.003 and the fore-and-aft
 * gradient bent to its floor of zero over 0.02, as the rotor's description says.
 */
function gradients(advanceRatio: number, through: number): { readonly aft: number; readonly side: number } {
  const skew = Math.atan2(advanceRatio, Math.hypot(through, 0.003));
  const plain = advanceRatio > 0 ? ((4 / 3) * (1 - Math.cos(skew) - 1.8 * advanceRatio ** 2)) / Math.sin(skew) : 0;
  const bent = plain <= 0 ? 0 : plain < 0.02 ? plain ** 2 * (0.04 - plain) * 2500 : plain;
  return { aft: bent, side: -2 * advanceRatio };
}

/** Sums every blade element over a turn: dimensional forces of each blade, averaged over azimuth. */
export function plainRotorLoads(
  rotor: ReducedAircraft["rotor"],
  law: SectionLaw,
  air: { readonly density: number; readonly speedOfSound: number },
  s: PlainRotorState,
): PlainRotorLoads {
  const { aft, side } = gradients(s.advanceRatio, s.axialFlow + s.inducedFlow);
  const liftEnd = rotor.tipLoss.kind === "lift-cutoff" ? rotor.tipLoss.liftRadiusFraction : 1;
  const edge = (i: number) => (rotor.rootCutout ** 1.5 + (1 - rotor.rootCutout ** 1.5) * (i / elements)) ** (2 / 3);
  const sum = { thrust: 0, aft: 0, torque: 0, momentCosine: 0, momentSine: 0 };
  for (let j = 0; j < azimuths; j++) {
    const azimuth = ((j + 0.5) * 2 * Math.PI) / azimuths;
    const cosine = Math.cos(azimuth);
    const sine = Math.sin(azimuth);
    for (let i = 0; i < elements; i++) {
      const width = edge(i + 1) - edge(i);
      const x = (edge(i + 1) + edge(i)) / 2;
      const { chord, twist } = blade(rotor, x);
      const pitch = s.collective + twist - blade(rotor, 0.75).twist + s.pitchCosine * cosine + s.pitchSine * sine;
      const along = s.tipSpeed * (x + s.advanceRatio * sine);
      const outward = s.tipSpeed * s.advanceRatio * cosine;
      const down = s.tipSpeed * (s.axialFlow + s.inducedFlow * (1 + x * (aft * cosine + side * sine))) + outward * rotor.precone;
      const speed = Math.sqrt(along ** 2 + down ** 2);
      const inflowAngle = Math.atan2(down, along);
      const { lift, drag } = sectionCoefficients(law, { angleOfAttack: pitch - inflowAngle, mach: speed / air.speedOfSound, reynolds: 0 });
      const pressureArea = 0.5 * air.density * speed ** 2 * chord * width * rotor.radius;
      const lifted = pressureArea * lift * Math.min(1, Math.max(0, (liftEnd - edge(i)) / width));
      const dragged = pressureArea * drag;
      const normal = lifted * Math.cos(inflowAngle) - dragged * Math.sin(inflowAngle);
      const inPlane = lifted * Math.sin(inflowAngle) + dragged * Math.cos(inflowAngle);
      // Friction of the flow along the blade, and the lean inward of a preconed blade's lift.
      const radial = (speed > 0 ? (dragged * outward) / speed : 0) - normal * rotor.precone;
      sum.thrust += normal;
      sum.aft += inPlane * sine + radial * cosine;
      sum.torque += x * rotor.radius * inPlane;
      sum.momentCosine += x * rotor.radius * normal * cosine;
      sum.momentSine += x * rotor.radius * normal * sine;
    }
  }
  const share = rotor.blades / azimuths;
  return {
    thrust: sum.thrust * share,
    aft: sum.aft * share,
    torque: sum.torque * share,
    momentCosine: sum.momentCosine * share,
    momentSine: sum.momentSine * share,
  };
}

const smooth = (t: number) => (t <= 0 ? 0 : t >= 1 ? 1 : t * t * (3 - 2 * t));

/**
 * Thrust [N] that the mean induced velocity accounts for: momentum of the flow through the disc, in descent near hover with the
 * measured curve of axial descent blended in (the part of it above x = −1.9 only).
 */
export function momentumThrust(rotor: ReducedAircraft["rotor"], density: number, s: PlainRotorState, thrust: number): number {
  const area = Math.PI * rotor.radius ** 2;
  const kappa = rotor.inducedPowerFactor;
  const hover = Math.sqrt((kappa * thrust) / (2 * density * area)) / s.tipSpeed;
  const x = s.axialFlow / hover;
  const share = smooth(-x / 0.4) * (1 - smooth(Math.abs(s.advanceRatio) / hover / 1.5));
  if (share > 0 && x < -1.9) throw new Error("a descent as steep as this is not level flight");
  const ring = hover / (1 - 1.125 * x - 1.372 * x ** 2 - 1.718 * x ** 3 - 0.655 * x ** 4);
  const through = (1 - share) * (s.axialFlow + s.inducedFlow) ** 2 + (share > 0 ? share * ring ** 2 : 0);
  return (2 * density * area * s.tipSpeed ** 2 * s.inducedFlow * Math.sqrt(s.advanceRatio ** 2 + through)) / kappa;
}
