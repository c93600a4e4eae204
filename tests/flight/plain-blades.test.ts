// The plain rotor against a rotor in space, whose blades are followed point by point, and against what mirrors and turns must give.
import { describe, expect, it } from "vitest";
import { sectionCoefficients, sectionLaw } from "../../packages/engine/src/aerodynamics/airfoil-section/index.ts";
import { bladeSection, type PlainAir, type PlainRotorControls, type PlainRotorState, plainBlades, type RotorPart } from "./plain-blades.ts";
import { triedControls, triedRotor, triedState } from "./plain-rotor-part.ts";
import { cross, dot, less, scaled, sum, tilted, upright, type Vector } from "./plain-vectors.ts";

const air: PlainAir = { density: 1.225, speedOfSound: 340.3, dynamicViscosity: 1.79e-5 };

const unit = (v: Vector): Vector => scaled(1 / Math.hypot(...v), v);

interface Spatial {
  readonly force: Vector;
  /** Of all blades about the hub, without their inertia. */
  readonly moment: Vector;
}

/**
 * Blades as rigid beams in space: where each point is, how it moves and how its chord stands follow from flapping β = β₀ − a cos ψ −
 * b sin ψ about the hub, pitch about the blade's own axis and the body's rates. Nothing is small here, and no axes of the disc are used but to
 * say which way induced air moves.
 */
function bladesInSpace(
  rotor: RotorPart,
  controls: PlainRotorControls,
  state: PlainRotorState,
  velocity: Vector,
  rate: Vector,
  counterClockwise: boolean,
): Spatial {
  const law = sectionLaw(rotor.section);
  const disc = tilted(upright, state.back, state.right).up;
  const blown = scaled(-state.inducedRatio * state.tipSpeed, disc);
  const omega = state.tipSpeed / rotor.radius;
  const sense = counterClockwise ? 1 : -1;
  const coupling = rotor.articulation.kind === "teetering" ? Math.tan(rotor.articulation.pitchFlapCoupling) : 0;
  const [azimuths, elements] = [72, 200];
  let force: Vector = [0, 0, 0];
  let moment: Vector = [0, 0, 0];
  for (let j = 0; j < azimuths; j++) {
    const azimuth = ((j + 0.5) * 2 * Math.PI) / azimuths;
    // The blade swings over the right side when it turns counter-clockwise from above, over the left otherwise.
    const flapAt = (psi: number) => state.coning - state.back * Math.cos(psi) - sense * state.right * Math.sin(psi);
    const pointing = (psi: number): Vector => {
      const beta = flapAt(psi);
      const outward: Vector = [-Math.cos(psi), sense * Math.sin(psi), 0];
      return sum(scaled(Math.cos(beta), outward), [0, 0, -Math.sin(beta)]);
    };
    const along = pointing(azimuth);
    const h = 1e-6;
    const turningPerRadian = scaled(1 / (2 * h), less(pointing(azimuth + h), pointing(azimuth - h)));
    const flapping = flapAt(azimuth) - state.coning;
    const pitch =
      controls.collective + controls.longitudinal * Math.sin(azimuth) - sense * controls.lateral * Math.cos(azimuth) - coupling * flapping;
    // Leading edge: square to the blade, level in the shaft's plane before it is pitched.
    const leading = unit(cross(along, [0, 0, sense]));
    const above = unit(sense > 0 ? cross(along, leading) : cross(leading, along));
    for (let i = 0; i < elements; i++) {
      const x = rotor.rootCutout + ((1 - rotor.rootCutout) * (i + 0.5)) / elements;
      const radius = x * rotor.radius;
      const { chord, twist } = bladeSection(rotor, x);
      const theta = pitch + twist - bladeSection(rotor, 0.75).twist;
      const at = scaled(radius, along);
      const moving = sum(velocity, cross(rate, at), scaled(omega * radius, turningPerRadian));
      const through = less(moving, blown);
      const [forward, up, outward] = [dot(through, leading), dot(through, above), dot(through, along)];
      const speed = Math.hypot(forward, up);
      const inflow = Math.atan2(up, forward);
      const angle = Math.atan2(Math.sin(theta - inflow), Math.cos(theta - inflow));
      const section = sectionCoefficients(law, { angleOfAttack: angle, mach: speed / air.speedOfSound, reynolds: 0 });
      const pressureArea = (0.5 * air.density * speed ** 2 * chord * rotor.radius * (1 - rotor.rootCutout)) / elements;
      const liftEnd = rotor.tipLoss.kind === "lift-cutoff" ? rotor.tipLoss.liftRadiusFraction : 1;
      const lift = x < liftEnd ? pressureArea * section.lift : 0;
      const drag = pressureArea * section.drag;
      // Lift square to the stream toward the upper side, drag with the stream, friction along the span.
      const liftSide = less(scaled(Math.cos(inflow), above), scaled(Math.sin(inflow), leading));
      const streamSide = scaled(-1, sum(scaled(Math.cos(inflow), leading), scaled(Math.sin(inflow), above)));
      const rubbed = scaled((-drag * outward) / speed, along);
      const load = scaled(rotor.blades / azimuths, sum(scaled(lift, liftSide), scaled(drag, streamSide), rubbed));
      force = sum(force, load);
      moment = sum(moment, cross(at, load));
    }
  }
  return { force, moment };
}

const uniform: RotorPart = { ...triedRotor, inflow: "uniform" };

describe("the plain rotor", () => {
  const motions: readonly { readonly name: string; readonly velocity: Vector; readonly rate: Vector }[] = [
    { name: "hover", velocity: [0, 0, 0], rate: [0, 0, 0] },
    { name: "flight ahead", velocity: [16, 0, 1], rate: [0, 0, 0] },
    { name: "flight to the right", velocity: [0, 12, -1], rate: [0, 0, 0] },
    { name: "slipping and turning", velocity: [14, -5, 1], rate: [0.3, -0.4, 0] },
  ];
  it.each(motions)("in $name loads the aircraft like blades followed in space, within 1 % of thrust", ({ velocity, rate }) => {
    for (const turns of ["counter-clockwise", "clockwise"] as const) {
      for (const [back, right, coupling] of [
        [0, 0, 0],
        [0.04, -0.03, 0],
        [-0.03, 0.04, 0.4],
      ] as const) {
        const rotor: RotorPart = { ...uniform, turns, articulation: { kind: "teetering", pitchFlapCoupling: coupling } };
        const state = { ...triedState, back, right };
        const space = bladesInSpace(rotor, triedControls, state, velocity, rate, turns === "counter-clockwise");
        const plain = plainBlades(rotor, air, triedControls, state, velocity, rate);
        const where = `${turns}, ${back}, ${right}, ${coupling}`;
        for (const axis of [0, 1, 2] as const) {
          expect(Math.abs(plain.force[axis] - space.force[axis]) / plain.thrust, `${where}: force ${axis}`).toBeLessThan(0.01);
        }
        // Torque about the normal of the disc, and the two moments that a teeter must not keep.
        const sense = turns === "counter-clockwise" ? 1 : -1;
        const about = dot(space.moment, tilted(upright, back, right).up);
        expect(Math.abs(-sense * plain.torque - about) / (plain.thrust * rotor.radius), `${where}: torque`).toBeLessThan(0.002);
        // The blades' moments with those that the turning body asks of them.
        const blade = rotor.polarInertia * (state.tipSpeed / rotor.radius);
        const asked = cross(rate, [0, 0, -sense * blade]);
        const [rollRight, noseUp] = [space.moment[0] - asked[0], space.moment[1] - asked[1]];
        expect(Math.abs(-plain.flapAft - noseUp) / (plain.thrust * rotor.radius), `${where}: fore and aft`).toBeLessThan(0.01);
        expect(Math.abs(-plain.flapRight - rollRight) / (plain.thrust * rotor.radius), `${where}: across`).toBeLessThan(0.01);
      }
    }
  });

  it("turned by a quarter with its wind gives the same loads turned by a quarter", () => {
    const round: PlainRotorControls = { ...triedControls, longitudinal: 0, lateral: 0 };
    const from = (back: number, right: number, velocity: Vector) =>
      plainBlades(triedRotor, air, round, { ...triedState, back, right }, velocity);
    const ahead = from(0, 0, [15, 0, 1]);
    const sideways = from(0, 0, [0, 15, 1]);
    expect(sideways.thrust).toBeCloseTo(ahead.thrust, 9);
    expect(sideways.torque).toBeCloseTo(ahead.torque, 9);
    expect(sideways.momentum).toBeCloseTo(ahead.momentum, 9);
    // What points aft when flying ahead points left when flying right; what points right then points forward… turned from ahead to the right.
    expect(sideways.force[1]).toBeCloseTo(ahead.force[0], 9);
    expect(sideways.force[0]).toBeCloseTo(-ahead.force[1], 9);
  });

  it("that turns the other way is its own mirror image", () => {
    const velocity: Vector = [14, 6, -1];
    const rate: Vector = [0.2, 0.3, 0];
    const one = plainBlades(triedRotor, air, triedControls, triedState, velocity, rate);
    const other = plainBlades(
      { ...triedRotor, turns: "clockwise" },
      air,
      { ...triedControls, lateral: -triedControls.lateral },
      { ...triedState, right: -triedState.right },
      [14, -6, -1],
      [-0.2, 0.3, 0],
    );
    [1, -1, 1].forEach((sign, axis) => {
      expect(other.force[axis]).toBeCloseTo(sign * (one.force[axis] as number), 9);
      expect(other.moment[axis]).toBeCloseTo(-sign * (one.moment[axis] as number), 9);
    });
    expect(other.flapAft).toBeCloseTo(one.flapAft, 9);
    expect(other.flapRight).toBeCloseTo(-one.flapRight, 9);
  });

  it("in hover has the thrust of a straight lift curve: σ a/2 (θ/3 − λ/2) with its root and tip cut off", () => {
    const straight: RotorPart = {
      ...triedRotor,
      stations: [{ radiusFraction: 0, chord: 0.09, twist: 0 }],
      precone: 0,
      section: { kind: "generic", liftSlope: 5.7, cd0: 1e-6, cd1: 0, cd2: 0, stallAngle: 1 },
      tipLoss: { kind: "lift-cutoff", liftRadiusFraction: 1 },
    };
    const [theta, lambda, tipSpeed] = [0.1, 0.04, 20];
    const round = { collective: theta, longitudinal: 0, lateral: 0, tiltBack: 0, tiltRight: 0 };
    const { thrust } = plainBlades(straight, air, round, { tipSpeed, inducedRatio: lambda, back: 0, right: 0, coning: 0 }, [0, 0, 0]);
    const root = 0.15;
    const hand = ((2 * 0.09) / (Math.PI * 1.15)) * (5.7 / 2) * ((theta * (1 - root ** 3)) / 3 - (lambda * (1 - root ** 2)) / 2);
    expect(thrust / (1.225 * Math.PI * 1.15 ** 2 * tipSpeed ** 2) / hand).toBeCloseTo(1, 2);
  });

  it("with stiff blades resists turning like a gyroscope, and hands its blades' moment on", () => {
    const rigid: RotorPart = { ...triedRotor, articulation: { kind: "rigid" } };
    const empty = { ...air, density: 0 };
    const rate: Vector = [0.3, 0.5, 0];
    const { moment } = plainBlades(rigid, empty, triedControls, { ...triedState, back: 0, right: 0 }, [0, 0, 0], rate);
    const spin: Vector = [0, 0, -0.55 * (80 / 1.15)];
    const hand = scaled(-1, cross(rate, spin));
    for (const axis of [0, 1, 2] as const) expect(moment[axis]).toBeCloseTo(hand[axis], 9);
    // More pitch on the right lifts the right side.
    const rolled = plainBlades(
      rigid,
      air,
      { ...triedControls, longitudinal: 0.05, lateral: 0 },
      { ...triedState, back: 0, right: 0 },
      [0, 0, 0],
    );
    expect(rolled.moment[0]).toBeLessThan(-1);
    expect(Math.abs(rolled.moment[1])).toBeLessThan(0.1 * Math.abs(rolled.moment[0]));
  });

  it("on hinges with springs pulls the nose up when its disc lies back and to the right when it lies right", () => {
    const sprung: RotorPart = {
      ...triedRotor,
      articulation: { kind: "hingeless", flapFrequency: 1.1, hingeOffset: 0, pitchFlapCoupling: 0 },
    };
    const { moment, torque } = plainBlades(sprung, air, triedControls, { ...triedState, back: 0.02, right: 0.01 }, [0, 0, 0]);
    const held = (0.55 / 2) * (80 / 1.15) ** 2 * (1.1 ** 2 - 1);
    expect(moment[1]).toBeCloseTo(held * 0.02, 9);
    expect(moment[0]).toBeCloseTo(held * 0.01, 9);
    // Driven counter-clockwise it turns the nose right.
    expect(moment[2]).toBeCloseTo(torque, 9);
    expect(torque).toBeGreaterThan(0);
  });

  it("with hinges off the shaft hands on the pull of the blades at the hinge and the lift there", () => {
    const offset = 0.1;
    const hinged: RotorPart = {
      ...triedRotor,
      articulation: { kind: "hinged", hingeOffset: offset, restFrequency: 0, pitchFlapCoupling: 0 },
    };
    const { moment } = plainBlades(hinged, { ...air, density: 1e-9 }, triedControls, { ...triedState, back: 0.02, right: 0 }, [0, 0, 0]);
    // Even mass from the hinge out: I = m L²/3 about the hinge, pull m Ω² at e + L/2; N/2 e S Ω² a.
    const length = 1.15 * (1 - offset);
    const bladeMass = (3 * (0.55 / 2)) / length ** 2;
    const pulled = ((offset * 1.15 * bladeMass * length) / 2) * (80 / 1.15) ** 2 * 0.02;
    expect(moment[1] / pulled).toBeCloseTo(1, 6);
  });
});
