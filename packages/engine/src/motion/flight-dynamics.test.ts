import { describe, expect, it } from "vitest";
import { longitudinalMotion } from "./aeroplane-derivatives.ts";
import { writeQuaternion } from "./attitude.ts";
import { type EnergyState, energyGap, energyState } from "./energy-balance.ts";
import { FlightDynamics } from "./flight-dynamics.ts";
import { discreteGust } from "./gusts.ts";
import type { Mode } from "./linear-motion.ts";
import { splitMotion, withFollowing, withHeld } from "./linear-reduction.ts";
import { linearise } from "./linearisation.ts";
import { modesOf } from "./modes.ts";
import type { MovingAircraft, MovingLoads } from "./moving-aircraft.ts";
import { MultistepIntegrator } from "./multistep.ts";
import { bodyState } from "./rigid-body.ts";

const gravity = 9.80665;

/** An aeroplane whose loads are linear by their derivatives about a steady level flight. */
const d = { xu: -0.07, xw: 0.1, zu: -0.4, zw: -1.7, zq: -2, zwDot: 0, mu: 0.01, mw: -0.28, mq: -2.2, mwDot: 0 };
const cruise = 50;
const aeroplane: MovingAircraft = {
  mass: 900,
  inertia: Float64Array.of(1000, 0, 0, 0, 1500, 0, 0, 0, 2300),
  controls: [{ id: "elevator", minimum: -0.4, maximum: 0.4, rate: 1 }],
  rotors: [],
  evaluate: ({ velocity: [u, v, w], rates: [p, q, r] }, controls): MovingLoads => ({
    force: [900 * (d.xu * (u - cruise) + d.xw * w), 900 * -0.15 * v, 900 * (-gravity + d.zu * (u - cruise) + d.zw * w + d.zq * q)],
    moment: [
      1000 * (-0.1 * v - 2.3 * p + r),
      1500 * (d.mu * (u - cruise) + d.mw * w + d.mq * q - 8 * (controls[0] ?? 0)),
      2300 * (0.17 * v - 1.7 * p - r),
    ],
    rotors: [],
    electricPower: 0,
  }),
};

const [radius, discInertia, density, solidity] = [1.15, 0.55, 1.225, 0.05];
const area = Math.PI * radius ** 2;
const discMass = 20;
const hub = 0.4;

/** A disc of blades without twist in axial flow, tilted by what its cyclic says, above a heavy point: closed form, blade element and momentum. */
const disc: MovingAircraft = {
  mass: discMass,
  inertia: Float64Array.of(0.6, 0, 0.05, 0, 1.1, 0, 0.05, 0, 1.3),
  controls: [
    { id: "collective", minimum: -0.1, maximum: 0.4 },
    { id: "cyclic", minimum: -0.2, maximum: 0.2 },
  ],
  rotors: [{ part: { radius, polarInertia: discInertia, inducedPowerFactor: 1 }, groundFactor: 1 }],
  evaluate: ({ velocity: [u, v, w], rates: [p, q, r] }, controls, states, _running, torques): MovingLoads => {
    const [tipSpeed = 0, inflow = 0, back = 0, right = 0] = states;
    const axial = -w / tipSpeed;
    const mu = Math.hypot(u, v) / tipSpeed;
    const ct = ((solidity * 5.7) / 2) * ((controls[0] ?? 0) / 3 - (axial + inflow) / 2);
    const cq = (axial + inflow) * ct + (solidity * 0.012 * (1 + 3 * mu * mu)) / 8;
    const scale = density * area * tipSpeed * tipSpeed;
    const thrust = ct * scale;
    const force = [
      -thrust * Math.sin(back) - 0.03 * u * Math.abs(u),
      thrust * Math.sin(right) - 0.05 * v,
      -thrust * Math.cos(back),
    ] as const;
    return {
      force,
      moment: [hub * thrust * Math.sin(right) - 0.5 * p, hub * thrust * Math.sin(back) - 0.5 * q, (torques?.[0] ?? 0) - 0.6 * r - 0.05 * v],
      rotors: [
        {
          torque: cq * scale * radius,
          thrust,
          ct,
          advanceRatio: mu,
          axialInflow: axial,
          flapResidualCosine: back + 0.02 * back ** 3 - (controls[1] ?? 0) - 0.6 * mu + 0.06 * q,
          flapResidualSine: right - 0.2 * back * mu + 0.06 * p,
          coningResidual: 0,
        },
      ],
      electricPower: 0,
    };
  },
};

/** Hover of the disc: tip speed 84 m/s, thrust the weight. */
function hovering(): { readonly dynamics: FlightDynamics; readonly state: Float64Array; readonly power: number } {
  const dynamics = new FlightDynamics(disc, gravity);
  const tipSpeed = 84;
  const ct = (discMass * gravity) / (density * area * tipSpeed ** 2);
  const inflow = Math.sqrt(ct / 2);
  dynamics.controls[0] = 3 * (ct / ((solidity * 5.7) / 2) + inflow / 2);
  const state = new Float64Array(dynamics.size);
  writeQuaternion({ roll: 0, pitch: 0, yaw: 0 }, state, bodyState.quaternion);
  state[dynamics.rotorAt(0)] = tipSpeed / radius;
  state[dynamics.rotorAt(0) + 1] = inflow * tipSpeed;
  const power = (inflow * ct + (solidity * 0.012) / 8) * density * area * tipSpeed ** 3;
  return { dynamics, state, power };
}

function level(): { readonly dynamics: FlightDynamics; readonly state: Float64Array } {
  const dynamics = new FlightDynamics(aeroplane, gravity);
  const state = new Float64Array(dynamics.size);
  writeQuaternion({ roll: 0, pitch: 0, yaw: 0.7 }, state, bodyState.quaternion);
  state[0] = cruise;
  return { dynamics, state };
}

function fly(dynamics: FlightDynamics, state: Float64Array, duration: number, step: number, each?: (time: number) => void): EnergyState {
  const integrator = new MultistepIntegrator(dynamics.size, dynamics.rates);
  const count = Math.round(duration / step);
  for (let k = 0; k < count; k++) {
    each?.(k * step);
    integrator.advance(k * step, state, step);
  }
  return energyState(dynamics, state);
}

function modes(motion: Parameters<typeof modesOf>[0]): readonly Mode[] {
  const found = modesOf(motion);
  if (!found) throw new Error("no modes");
  return found;
}

describe("linearisation", () => {
  it("gives back the derivatives that an aeroplane was made of, and its modes, split where nothing couples", () => {
    const { dynamics, state } = level();
    const linear = linearise(dynamics, state);
    for (const rate of linear.rates) expect(Math.abs(rate)).toBeLessThan(1e-12);
    const { longitudinal, coupling } = splitMotion(linear);
    expect(coupling).toBeLessThan(1e-9);
    const exact = longitudinalMotion(d, { airspeed: cruise, pathAngle: 0, gravity });
    longitudinal.matrix.forEach((entry, i) => {
      expect(entry).toBeCloseTo(exact.matrix[i] as number, 4);
    });
    const [fast, slow] = modes(longitudinal);
    expect([fast?.name, slow?.name]).toEqual(["short period", "phugoid"]);
    expect(linear.controls[2]).toBeCloseTo(-8, 9);
  });

  it("has rotor speed and inflow as states of a rotorcraft; frozen or at once, the motion is another one", () => {
    const { dynamics, state, power } = hovering();
    dynamics.drives = [{ kind: "torque", torque: power / (84 / radius) }];
    dynamics.flap.tolerance = 1e-11;
    // The law of descent begins at hover with its own curvature: a fifteenth of the usual widths takes it out of the comparison.
    const linear = linearise(dynamics, state, 1 / 15);
    expect(linear.states.map(({ id }) => id)).toEqual(["u", "w", "q", "theta", "v", "p", "r", "phi", "rotor-speed-1", "inflow-1"]);
    // Nothing takes up the reaction of the shaft here: it yaws, and rolls by its product of inertia.
    for (const [i, rate] of linear.rates.entries()) if (i !== 5 && i !== 6) expect(Math.abs(rate)).toBeLessThan(1e-6);
    const frozen = withHeld(linear, ({ kind }) => kind === "rotor-speed");
    const heave = (motion: typeof frozen) => modes(motion).find(({ name }) => name === "heave")?.real ?? 0;
    // Heave damping of a rotor at constant speed, its inflow following, in closed form.
    const following = withFollowing(frozen, ({ kind }) => kind === "inflow");
    if (!following) throw new Error("no inflow settles");
    const inflow = (state[dynamics.rotorAt(0) + 1] as number) / 84;
    const blade = (solidity * 5.7) / 4;
    // dC_T = −blade (dλ_c + dλ_i) and dC_T = 2 λ_i (dλ_c + 2 dλ_i) at the hover.
    const induced = -(blade + 2 * inflow) / (blade + 4 * inflow);
    const expected = (-blade * (1 + induced) * density * area * 84) / discMass;
    expect(heave(following) / expected).toBeCloseTo(1, 3);
    expect(Math.abs(heave(frozen) / heave(following) - 1)).toBeGreaterThan(0.005);
    const roots = (motion: typeof frozen) => modes(motion).map(({ real, imaginary }) => [real, imaginary] as const);
    const shifted = roots(frozen).filter(([a, b]) => !roots(linear).some(([c, e]) => Math.hypot(a - c, b - e) < 0.01 * Math.hypot(a, b)));
    expect(shifted.length).toBeGreaterThan(0);
  });
});

describe("flight", () => {
  it("without air and turned about any axis keeps energy and angular momentum", () => {
    const nothing: MovingAircraft = {
      ...aeroplane,
      evaluate: () => ({ force: [0, 0, 0], moment: [0, 0, 0], rotors: [], electricPower: 0 }),
    };
    const dynamics = new FlightDynamics(nothing, gravity);
    const state = new Float64Array(dynamics.size);
    writeQuaternion({ roll: 0.3, pitch: 1.2, yaw: -2 }, state, bodyState.quaternion);
    state.set([10, -3, 5, 1, 2, -0.5]);
    const before = energyState(dynamics, state);
    const after = fly(dynamics, state, 5, 0.005);
    expect(Math.abs(energyGap(before, after))).toBeLessThan(1e-5);
    const fallen = (state[bodyState.down] as number) - gravity * 12.5;
    const straight = new Float64Array(dynamics.size);
    writeQuaternion({ roll: 0.3, pitch: 1.2, yaw: -2 }, straight, bodyState.quaternion);
    straight.set([10, -3, 5]);
    fly(dynamics, straight, 5, 0.005);
    expect(fallen).toBeCloseTo((straight[bodyState.down] as number) - gravity * 12.5, 3);
  });

  it("closes its books to a thousandth over a manoeuvre with gust, cyclic and a rotor that slows", () => {
    const { dynamics, state, power } = hovering();
    dynamics.drives = [{ kind: "governed", rate: 84 / radius, timeConstant: 0.6, largestPower: 2 * power, torque: 0 }];
    state[dynamics.rotorAt(0) + 2] = power / (84 / radius);
    dynamics.wind = discreteGust({ peak: [-3, 2, -2], gradientDistance: 5, speed: 10, start: 0.5 });
    const before = energyState(dynamics, state);
    const after = fly(dynamics, state, 4, 0.005, (time) => {
      dynamics.controls[1] = 0.02 * Math.sin(3 * time);
      if (time > 2) dynamics.drives = [{ kind: "torque", torque: 0 }];
    });
    expect(Math.abs(energyGap(before, after))).toBeLessThan(1e-3);
    expect(after.rotors).toBeLessThan(before.rotors * 0.8);
    expect(after.driveWork).toBeGreaterThan(power);
  });

  it("is of third order in the step as a whole, flapping balance and inflow included", () => {
    const end = (step: number): Float64Array => {
      const { dynamics, state } = hovering();
      dynamics.flap.tolerance = 1e-12;
      dynamics.wind = discreteGust({ peak: [-4, 1, -1], gradientDistance: 8, speed: 8, start: -0.1 });
      fly(dynamics, state, 1, step);
      return state;
    };
    const best = end(1 / 3200);
    const errors = [100, 200, 400].map((rate) => {
      const state = end(1 / rate);
      return Math.hypot(...[0, 1, 2, 3, 4, 5, 13, 14].map((i) => (state[i] as number) - (best[i] as number)));
    });
    for (let k = 1; k < errors.length; k++) {
      const order = Math.log2((errors[k - 1] as number) / (errors[k] as number));
      expect(order).toBeGreaterThan(2.7);
      expect(order).toBeLessThan(3.5);
    }
  });
});

describe("a vertical drop after the drive has stopped", () => {
  // Prouty's rule and the energy of a drop are one relation: ½ m V² = m g h + ½ J (Ω₀² − Ω₁²) − ∫P dt, P what the rotor leaves in the air.
  it("satisfies the energy relation: what falls and what slows goes into speed and into the air", () => {
    const { dynamics, state } = hovering();
    const start = state[dynamics.rotorAt(0)] as number;
    let lost = 0;
    const step = 0.005;
    const loss = (): number => {
      dynamics.rates(0, state, new Float64Array(dynamics.size));
      const rotor = dynamics.loads?.rotors[0];
      if (!rotor) throw new Error("no loads");
      const tipSpeed = dynamics.rotorStates[0] as number;
      const induced = (dynamics.rotorStates[1] as number) * tipSpeed;
      const profile = ((solidity * 0.012) / 8) * density * area * tipSpeed ** 3;
      return rotor.thrust * induced + profile;
    };
    const losses: number[] = [];
    fly(dynamics, state, 1.5, step, () => losses.push(loss()));
    losses.push(loss());
    // Trapezoids over the steps.
    losses.forEach((power, k) => {
      lost += power * (k === 0 || k === losses.length - 1 ? step / 2 : step);
    });
    const speed = state[bodyState.w] as number;
    const fallen = state[bodyState.down] as number;
    const end = state[dynamics.rotorAt(0)] as number;
    const available = discMass * gravity * fallen + (discInertia / 2) * (start ** 2 - end ** 2) - lost;
    expect(fallen).toBeGreaterThan(1);
    expect(end).toBeLessThan(start * 0.9);
    expect(((discMass / 2) * speed ** 2) / available).toBeCloseTo(1, 2);
  });

  it("held in hover for a time by collective costs the rotor the power of hover times that time", () => {
    const { dynamics, state, power } = hovering();
    const start = state[dynamics.rotorAt(0)] as number;
    const duration = 0.4;
    fly(dynamics, state, duration, 0.0025, () => {
      const tipSpeed = (state[dynamics.rotorAt(0)] as number) * radius;
      const ct = (discMass * gravity) / (density * area * tipSpeed ** 2);
      const inflow = (state[dynamics.rotorAt(0) + 1] as number) / tipSpeed;
      dynamics.controls[0] = 3 * (ct / ((solidity * 5.7) / 2) + (inflow - (state[bodyState.w] as number) / tipSpeed) / 2);
    });
    const end = state[dynamics.rotorAt(0)] as number;
    expect(Math.abs(state[bodyState.w] as number)).toBeLessThan(0.02);
    // The profile part of the power falls with the cube of the speed: hover power is that of the mean speed to within two per cent.
    const spent = (discInertia / 2) * (start ** 2 - end ** 2);
    expect(spent / (power * duration)).toBeGreaterThan(0.9);
    expect(spent / (power * duration)).toBeLessThan(1);
    expect(end).toBeLessThan(start);
  });
});
