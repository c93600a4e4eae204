// A rotor of any articulation in any stream written out plainly, element by element in axes of its disc, then turned into the
// body. It shares with the program only the tables of the blade section.

import { sectionCoefficients, sectionLaw } from "../../packages/engine/src/aerodynamics/airfoil-section/index.ts";
import type { AircraftDefinition } from "../../packages/engine/src/aircraft/definition.ts";
import { momentumThrust } from "./plain-momentum.ts";
import { type Axes, dot, scaled, sum, tilted, upright, type Vector } from "./plain-vectors.ts";

export type RotorPart = AircraftDefinition["rotors"][number];

export interface PlainAir {
  readonly density: number;
  readonly speedOfSound: number;
  readonly dynamicViscosity: number;
}

/** Disc back and down on the right side of the aircraft relative to the shaft, coning [rad]; induced velocity over tip speed. */
export interface PlainRotorState {
  readonly tipSpeed: number;
  readonly inducedRatio: number;
  readonly back: number;
  readonly right: number;
  readonly coning: number;
}

/** Settings [rad]; the cyclics tilt the disc back and to the right. */
export interface PlainRotorControls {
  readonly collective: number;
  readonly longitudinal: number;
  readonly lateral: number;
  readonly tiltBack: number;
  readonly tiltRight: number;
}

export interface PlainRotorLoads {
  /** In body axes, at the hub [N], [N m]; the moment with the reaction to the shaft's torque, which a free shaft hands on to nobody. */
  readonly force: Vector;
  readonly moment: Vector;
  readonly reaction: Vector;
  /** Along the disc's normal, in the disc towards aft and to the right of the aircraft [N]; torque the shaft must give [N m]. */
  readonly thrust: number;
  readonly aft: number;
  readonly right: number;
  readonly torque: number;
  /** Air pushed down along the disc's normal [m/s], body axes. */
  readonly inducedVelocity: Vector;
  /** What must vanish: momentum [N], flapping about the disc's aft-up and right-up harmonics and mean flap moment of a blade [N m]. */
  readonly momentum: number;
  readonly flapAft: number;
  readonly flapRight: number;
  readonly flapMean: number;
}

const azimuths = 24;
const elements = 16;

/** Chord [m] and twist [rad] of the blade at a fraction of the radius, level beyond the last stations. */
export function bladeSection(rotor: Pick<RotorPart, "stations">, place: number): { readonly chord: number; readonly twist: number } {
  const { stations } = rotor;
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

/** First-harmonic gradients downstream and across, with roundings that the description of the rotor states. */
function gradients(kind: RotorPart["inflow"], mu: number, through: number): { readonly downstream: number; readonly across: number } {
  if (kind === "uniform") return { downstream: 0, across: 0 };
  const skew = Math.atan2(mu, Math.hypot(through, 0.003));
  if (kind === "pitt-peters") return { downstream: ((15 * Math.PI) / 32) * Math.tan(skew / 2), across: 0 };
  const plain = mu > 0 ? ((4 / 3) * (1 - Math.cos(skew) - 1.8 * mu ** 2)) / Math.sin(skew) : 0;
  const bent = plain <= 0 ? 0 : plain < 0.02 ? plain ** 2 * (0.04 - plain) * 2500 : plain;
  return { downstream: bent, across: -2 * mu };
}

/** Flap stiffness ν² − 1 of a blade, even mass from the hinge out; the part that is a spring's. */
export function flapStiffnessOf({ articulation }: RotorPart, rate: number): { readonly total: number; readonly spring: number } {
  if (articulation.kind === "teetering" || articulation.kind === "rigid") return { total: 0, spring: 0 };
  const centrifugal = (1.5 * articulation.hingeOffset) / (1 - articulation.hingeOffset);
  const spring =
    articulation.kind === "hinged"
      ? (articulation.restFrequency / rate) ** 2
      : Math.max(articulation.flapFrequency ** 2 - 1 - centrifugal, 0);
  return { total: centrifugal + spring, spring };
}

/**
 * Loads of a rotor whose hub moves through the air at `velocity` [m/s] and turns with the body at `rate` [rad/s].
 *
 * Everything is written for a rotor that turns from aft over the advancing side; one that turns the other way is its mirror
 * image, so that its advancing side is the left one.
 */
export function plainBlades(
  rotor: RotorPart,
  air: PlainAir,
  controls: PlainRotorControls,
  state: PlainRotorState,
  velocity: Vector,
  rate: Vector = [0, 0, 0],
): PlainRotorLoads {
  const shaft = tilted(upright, rotor.shaftTilt.back + controls.tiltBack, rotor.shaftTilt.right + controls.tiltRight);
  const disc = tilted(shaft, state.back, state.right);
  const side = rotor.turns === "counter-clockwise" ? 1 : -1;
  const turning = sweep(rotor, air, controls, state, stream(disc, side, state.tipSpeed, velocity, rate));
  const { thrust, aft, advancing, torque } = turning;
  const right = side * advancing;
  const force = sum(scaled(thrust, disc.up), scaled(aft, disc.aft), scaled(right, disc.right));
  const reaction = scaled(-side * torque, shaft.up);
  return {
    force,
    reaction,
    // Aft side up turns the nose down about the right axis; the right side up rolls about the axis aft.
    moment: sum(reaction, scaled(-turning.hubAft, shaft.right), scaled(side * turning.hubAdvancing, shaft.aft)),
    thrust,
    aft,
    right,
    torque,
    inducedVelocity: scaled(-state.inducedRatio * state.tipSpeed, disc.up),
    momentum: turning.momentumThrust - thrust,
    flapAft: turning.flapAft,
    flapRight: side * turning.flapAdvancing,
    flapMean: turning.flapMean,
  };
}

interface Stream {
  /** In the disc, over tip speed, and the azimuth it blows to, from aft over the advancing side. */
  readonly mu: number;
  readonly to: number;
  /** Down through the disc. */
  readonly axial: number;
  /** Rates of the body over rotor rate times radius over tip speed: nose up, advancing side down. */
  readonly noseUp: number;
  readonly advancingDown: number;
}

function stream(disc: Axes, side: number, tipSpeed: number, velocity: Vector, rate: Vector): Stream {
  const aft = -dot(velocity, disc.aft) / tipSpeed;
  const advancing = (-side * dot(velocity, disc.right)) / tipSpeed;
  return {
    mu: Math.hypot(aft, advancing),
    to: Math.atan2(advancing, aft),
    axial: dot(velocity, disc.up) / tipSpeed,
    noseUp: dot(rate, disc.right) / tipSpeed,
    advancingDown: (-side * dot(rate, disc.aft)) / tipSpeed,
  };
}

interface Swept {
  readonly thrust: number;
  readonly aft: number;
  readonly advancing: number;
  readonly torque: number;
  readonly momentumThrust: number;
  /** Unbalanced flap moments of all blades as a disc: aft side up, advancing side up; and of one blade in the mean [N m]. */
  readonly flapAft: number;
  readonly flapAdvancing: number;
  readonly flapMean: number;
  /** Moments on the hub beside the torque: aft side up, advancing side up [N m]. */
  readonly hubAft: number;
  readonly hubAdvancing: number;
}

function sweep(rotor: RotorPart, air: PlainAir, controls: PlainRotorControls, state: PlainRotorState, s: Stream): Swept {
  const law = sectionLaw(rotor.section);
  const { tipSpeed, coning, inducedRatio } = state;
  const side = rotor.turns === "counter-clockwise" ? 1 : -1;
  const advancingDown = side * state.right;
  const { articulation } = rotor;
  const coupling = articulation.kind === "rigid" ? 0 : Math.tan(articulation.pitchFlapCoupling);
  const offset = articulation.kind === "hinged" || articulation.kind === "hingeless" ? articulation.hingeOffset : 0;
  // Flapping up takes tan δ₃ of itself off the pitch; seen from the disc, pitch at the swashplate less flapping turned by 90°.
  const pitchCosine = -side * controls.lateral + coupling * state.back + advancingDown;
  const pitchSine = controls.longitudinal + coupling * advancingDown - state.back;
  const { downstream, across } = gradients(rotor.inflow, s.mu, s.axial + inducedRatio);
  const liftEnd = rotor.tipLoss.kind === "lift-cutoff" ? rotor.tipLoss.liftRadiusFraction : 1;
  // Where Prandtl's function falls to zero with the root of the distance to the tip, elements stand closer there.
  const tipped = rotor.tipLoss.kind === "prandtl";
  const edge = (i: number) =>
    tipped
      ? rotor.rootCutout + (1 - rotor.rootCutout) * Math.sin((Math.PI / 2) * (i / elements))
      : (rotor.rootCutout ** 1.5 + (1 - rotor.rootCutout ** 1.5) * (i / elements)) ** (2 / 3);
  const total = { thrust: 0, aft: 0, advancing: 0, torque: 0, hubAft: 0, hubAdvancing: 0, hingeAft: 0, hingeAdvancing: 0, hingeMean: 0 };
  for (let j = 0; j < azimuths; j++) {
    // Half a step off the wind, from which the blades are counted round.
    const fromWind = ((j + 0.5) * 2 * Math.PI) / azimuths;
    const azimuth = fromWind + s.to;
    const [cosine, sine] = [Math.cos(azimuth), Math.sin(azimuth)];
    const [windCosine, windSine] = [Math.cos(fromWind), Math.sin(fromWind)];
    // A hinge off the shaft: the blade's outer part stands parallel to the disc, moved up and down with the hinge.
    const plunge = offset * (advancingDown * cosine - state.back * sine);
    for (let i = 0; i < elements; i++) {
      const width = edge(i + 1) - edge(i);
      const x = tipped ? edge(i + 0.5) : (edge(i + 1) + edge(i)) / 2;
      const { chord, twist } = bladeSection(rotor, x);
      const pitch = controls.collective + twist - bladeSection(rotor, 0.75).twist + pitchCosine * cosine + pitchSine * sine;
      const along = tipSpeed * (x + s.mu * windSine);
      const outward = tipSpeed * s.mu * windCosine;
      const induced = inducedRatio * (1 + x * (downstream * windCosine + across * windSine));
      const bodyTurn = -x * rotor.radius * (s.noseUp * cosine + s.advancingDown * sine);
      const down = tipSpeed * (s.axial + induced + plunge + bodyTurn) + outward * coning;
      const speed = Math.hypot(along, down);
      const inflowAngle = Math.atan2(down, along);
      const reynolds = (speed * chord * air.density) / air.dynamicViscosity;
      const section = sectionCoefficients(law, { angleOfAttack: pitch - inflowAngle, mach: speed / air.speedOfSound, reynolds });
      const area = 0.5 * air.density * chord * width * rotor.radius;
      const tip = tipped ? prandtl(rotor.blades, x, inflowAngle) : 1;
      const lifted = area * speed ** 2 * section.lift * tip * Math.min(1, Math.max(0, (liftEnd - edge(i)) / width));
      // Resultant: what is viscous acts along the whole velocity.
      const rubbing = area * section.viscousDrag * Math.hypot(speed, outward);
      const unswept = area * section.drag * speed;
      const dragPerSpeed = rotor.radialFlow === "resultant" ? rubbing + area * (section.drag - section.viscousDrag) * speed : unswept;
      const spanPerSpeed = { off: 0, friction: unswept, resultant: rubbing }[rotor.radialFlow];
      const liftPerSpeed = speed > 0 ? lifted / speed : 0;
      const normal = liftPerSpeed * along - dragPerSpeed * down;
      const inPlane = liftPerSpeed * down + dragPerSpeed * along;
      const radial = spanPerSpeed * outward - normal * coning;
      const arm = x * rotor.radius;
      const hingeArm = (x - offset) * rotor.radius;
      total.thrust += normal;
      total.aft += inPlane * sine + radial * cosine;
      total.advancing += radial * sine - inPlane * cosine;
      total.torque += arm * inPlane - plunge * rotor.radius * normal;
      total.hubAft += arm * normal * cosine;
      total.hubAdvancing += arm * normal * sine;
      total.hingeAft += hingeArm * normal * cosine;
      total.hingeAdvancing += hingeArm * normal * sine;
      total.hingeMean += hingeArm * normal;
    }
  }
  const share = rotor.blades / azimuths;
  const omega = tipSpeed / rotor.radius;
  const bladeInertia = rotor.polarInertia / rotor.blades;
  const stiffness = flapStiffnessOf(rotor, omega);
  // A blade carried round in a turning body must be accelerated up by 2 Ω r (q sin ψ − p cos ψ).
  const discInertia = (rotor.blades / 2) * bladeInertia * omega;
  const spring = (rotor.blades / 2) * bladeInertia * omega ** 2 * stiffness.total;
  const gyroAft = 2 * discInertia * s.advancingDown * tipSpeed;
  const gyroAdvancing = -2 * discInertia * s.noseUp * tipSpeed;
  const thrust = total.thrust * share;
  const hub = handedOn(articulation, {
    blades: [total.hubAft * share, total.hubAdvancing * share],
    aboutHinge: [total.hingeAft * share, total.hingeAdvancing * share],
    spring: [spring * state.back, spring * advancingDown],
    gyroscopic: [gyroAft, gyroAdvancing],
  });
  return {
    thrust,
    aft: total.aft * share,
    advancing: total.advancing * share,
    torque: total.torque * share,
    momentumThrust: momentumThrust(rotor, air.density, { mu: s.mu, axial: s.axial, induced: inducedRatio, tipSpeed }, thrust),
    flapAft: total.hingeAft * share + spring * state.back + gyroAft,
    flapAdvancing: total.hingeAdvancing * share + spring * advancingDown + gyroAdvancing,
    flapMean:
      (total.hingeMean * share) / rotor.blades -
      bladeInertia * omega ** 2 * (coning * (1 + stiffness.total) - stiffness.spring * rotor.precone),
    hubAft: hub[0],
    hubAdvancing: hub[1],
  };
}

type Pair = readonly [aftUp: number, advancingUp: number];

/**
 * What the hub gets of the blades' moments. Stiff blades hand on all, with the reaction to being turned with the body. Hinged ones
 * hand on what the spring and the pull at the hinge hold against their flapping, and the lift at the hinge times its offset.
 */
function handedOn(
  articulation: RotorPart["articulation"],
  moments: { readonly blades: Pair; readonly aboutHinge: Pair; readonly spring: Pair; readonly gyroscopic: Pair },
): Pair {
  const { blades, aboutHinge, spring, gyroscopic } = moments;
  if (articulation.kind === "teetering") return [0, 0];
  if (articulation.kind === "rigid") return [blades[0] + gyroscopic[0], blades[1] + gyroscopic[1]];
  return [blades[0] - aboutHinge[0] - spring[0], blades[1] - aboutHinge[1] - spring[1]];
}

/** Prandtl's function of the local inflow angle. */
function prandtl(blades: number, x: number, inflowAngle: number): number {
  return (2 / Math.PI) * Math.acos(Math.exp(((-blades / 2) * (1 - x)) / (x * Math.abs(Math.sin(inflowAngle)) + 1e-300)));
}
