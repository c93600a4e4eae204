import {
  createRotorWorkspace,
  type FlapStiffness,
  flapStiffness,
  momentsAboutHinge,
  momentumResidual,
  type RotorModel,
  type RotorSweepState,
  type RotorWorkspace,
  sweepRotor,
} from "../aerodynamics/rotor/index.ts";
import type { RotorPart } from "../aircraft/index.ts";
import type { AirState } from "../environment/atmosphere/index.ts";
import { aircraftRotor } from "./aircraft-rotor.ts";
import { type DiscAxes, dot, tilted, upright, type Vector } from "./axes.ts";
import type { RotorLoads, RotorSetting } from "./rotor-loads.ts";
import { groundFactor } from "./rotor-near-ground.ts";

const inputCount = 12;
const outputCount = 9;
type NineNumbers = readonly [number, number, number, number, number, number, number, number, number];

const steps = [1e-6, 1e-6, 1e-6, 1e-6, 1e-6, 1e-6, 1e-3, 1e-6, 1e-6, 1e-6, 1e-6, 1e-6] as const;

/**
 * One rotor of the aircraft: places the blade-element sweep in the airframe, in any in-plane wind, shaft tilt and sense of rotation.
 *
 * A sweep is held: asking again with the same inputs costs nothing, and after `linearise` small changes are answered from slopes,
 * which is how gradients of a whole aircraft come from a handful of sweeps.
 */
export class ElementRotor {
  readonly part: RotorPart;
  readonly model: RotorModel;
  readonly area: number;
  readonly solidity: number;
  readonly cones: boolean;
  readonly #ws: RotorWorkspace;
  readonly #air: AirState;
  readonly #sense: 1 | -1;
  readonly #state: RotorSweepState;
  /** ρ π R⁵/J [1]. */
  readonly #momentPerFlap: number;
  readonly #halfSlope: number;
  readonly #held = new Float64Array(inputCount).fill(Number.NaN);
  readonly #out = new Float64Array(outputCount);
  readonly #asked = new Float64Array(inputCount);
  readonly #base = new Float64Array(inputCount);
  readonly #baseOut = new Float64Array(outputCount);
  readonly #slopes = new Float64Array(inputCount * outputCount);
  #linear = false;
  #shaftAxes: { back: number; right: number; axes: DiscAxes } = { back: Number.NaN, right: Number.NaN, axes: upright };
  #stiffness: { rate: number; value: FlapStiffness };
  /** Height of the disc above even ground; far from it when undefined [m]. */
  groundHeight: number | undefined;
  /** What the ground does to κ in the last state, 1 far from it [1]. */
  groundFactor = 1;
  /** Sweeps run so far. */
  sweeps = 0;

  constructor(part: RotorPart, air: AirState, mesh: { readonly azimuths: number; readonly radialElements: number }) {
    this.part = part;
    this.#air = air;
    this.#sense = part.turns === "counter-clockwise" ? 1 : -1;
    this.model = aircraftRotor(part, air, mesh);
    this.#ws = createRotorWorkspace(this.model);
    this.area = Math.PI * part.radius ** 2;
    this.solidity = this.#ws.mesh.solidity;
    this.#momentPerFlap = (air.density * Math.PI * part.radius ** 5) / part.polarInertia;
    this.#halfSlope = Math.max((this.solidity * this.#ws.law.liftSlope) / 2, 1e-9);
    this.#stiffness = { rate: 1, value: flapStiffness(this.model.articulation, 1) };
    this.cones = this.#stiffness.value.cones;
    this.#state = {
      ...this.#ws.state,
      coning: part.precone,
      speedOfSound: air.speedOfSound,
      kinematicViscosity: air.dynamicViscosity / air.density,
    };
  }

  get workspace(): RotorWorkspace {
    return this.#ws;
  }

  /** Sweeps the neighbourhood of the last state: until `exact` is called, answers come from its slopes. */
  linearise(): void {
    this.#linear = false;
    this.#base.set(this.#held);
    this.#baseOut.set(this.#out);
    const turning = this.#base[7] !== 0 || this.#base[8] !== 0;
    for (let i = 0; i < inputCount; i++) {
      if ((i === 7 || i === 8) && !turning) continue;
      if ((i === 9 && !this.cones) || (i > 9 && this.#stiffness.value.hingeOffset === 0)) continue;
      this.#asked.set(this.#base);
      const step = steps[i] as number;
      this.#asked[i] = (this.#base[i] as number) + step;
      this.#sweep();
      for (let k = 0; k < outputCount; k++)
        this.#slopes[k * inputCount + i] = ((this.#out[k] as number) - (this.#baseOut[k] as number)) / step;
    }
    this.#held.set(this.#base);
    this.#out.set(this.#baseOut);
    this.#linear = true;
  }

  exact(): void {
    if (!this.#linear) return;
    this.#linear = false;
    this.#held.set(this.#base);
    this.#out.set(this.#baseOut);
  }

  #sweep(): void {
    const [mu, lambdaC, lambdaI, theta0, theta1c, theta1s, tipSpeed, turningCosine, turningSine, coning, plungeCosine, plungeSine] =
      this.#asked;
    const s = this.#state;
    s.mu = mu as number;
    s.lambdaC = lambdaC as number;
    s.lambdaI = lambdaI as number;
    s.theta0 = theta0 as number;
    s.theta1c = theta1c as number;
    s.theta1s = theta1s as number;
    s.tipSpeed = tipSpeed as number;
    s.coning = coning as number;
    this.#ws.turning.cosine = turningCosine as number;
    this.#ws.turning.sine = turningSine as number;
    this.#ws.rings.plungeCosine = plungeCosine as number;
    this.#ws.rings.plungeSine = plungeSine as number;
    sweepRotor(this.#ws, s);
    this.sweeps += 1;
    const { ct, cq, ch, cy } = this.#ws.out;
    const { hingeOffset } = this.#stiffness.value;
    const flap = hingeOffset === 0 ? this.#ws.out : momentsAboutHinge(this.#ws, hingeOffset);
    this.#out[0] = ct;
    this.#out[1] = cq;
    this.#out[2] = ch;
    this.#out[3] = cy;
    this.#out[4] = flap.momentCos;
    this.#out[5] = flap.momentSin;
    this.#out[6] = flap.meanFlapMoment;
    // Lift at a hinge off the shaft, as first-harmonic moments on the hub.
    this.#out[7] = this.#ws.out.momentCos - flap.momentCos;
    this.#out[8] = this.#ws.out.momentSin - flap.momentSin;
    this.#held.set(this.#asked);
  }

  #answer(): void {
    if (this.#linear) {
      for (let k = 0; k < outputCount; k++) {
        let value = this.#baseOut[k] as number;
        for (let i = 0; i < inputCount; i++)
          value += (this.#slopes[k * inputCount + i] as number) * ((this.#asked[i] as number) - (this.#base[i] as number));
        this.#out[k] = value;
      }
      return;
    }
    for (let i = 0; i < inputCount; i++) {
      if (this.#asked[i] !== this.#held[i]) {
        this.#sweep();
        return;
      }
    }
  }

  #shaft(back: number, right: number): DiscAxes {
    if (this.#shaftAxes.back !== back || this.#shaftAxes.right !== right)
      this.#shaftAxes = {
        back,
        right,
        axes: tilted(upright, this.part.shaftTilt.back + back, this.#sense * (this.part.shaftTilt.right + right)),
      };
    return this.#shaftAxes.axes;
  }

  #stiffnessAt(tipSpeed: number): FlapStiffness {
    const rate = Math.max(tipSpeed / this.part.radius, 1e-3);
    if (this.#stiffness.rate !== rate) this.#stiffness = { rate, value: flapStiffness(this.model.articulation, rate) };
    return this.#stiffness.value;
  }

  /**
   * Loads in a state. Sense of rotation: one that turns clockwise is computed in a mirror.
   *
   *     θ(ψ) = θ₀ + (−B + k a₁ + b₁) cos ψ + (A + k b₁ − a₁) sin ψ      in axes of the disc, ψ from aft, then turned into the wind
   *     flap moments:  M_c + (2 p/Ω + (ν² − 1) a₁)/(2 ρπR⁵/J) = 0      M_s + (−2 q/Ω + (ν² − 1) b₁)/(2 ρπR⁵/J) = 0
   *
   * with cyclic A back and B right, k = tan δ₃, p and q of the disc.
   *
   * @param hubVelocity of the hub through the air, body axes [m/s]
   * @param rates p, q, r of the body [rad/s]
   * @source johnson-1980, ch. 5, flapping with hub rates, unchecked
   * @derivation mirror for clockwise rotors; rotation into the wind of the disc
   */
  evaluate(hubVelocity: Vector, rates: Vector, setting: RotorSetting): RotorLoads {
    const m = this.#sense;
    const velocity: Vector = [hubVelocity[0], m * hubVelocity[1], hubVelocity[2]];
    const turning: Vector = [m * rates[0], rates[1], m * rates[2]];
    const b1 = m * setting.flapRight;
    const a1 = setting.flapBack;
    const shaft = this.#shaft(setting.tiltBack, setting.tiltRight);
    const disc = tilted(shaft, a1, b1);
    const { tipSpeed, inducedInflow } = setting;
    const stiffness = this.#stiffnessAt(tipSpeed);
    const windAft = -dot(velocity, disc.aft) / tipSpeed;
    const windRight = -dot(velocity, disc.right) / tipSpeed;
    const mu = Math.hypot(windAft, windRight);
    const cosine = mu > 1e-12 ? windAft / mu : 1;
    const sine = mu > 1e-12 ? windRight / mu : 0;
    const rollRate = (-dot(turning, disc.aft) * this.part.radius) / tipSpeed;
    const pitchRate = (dot(turning, disc.right) * this.part.radius) / tipSpeed;
    const lambdaC = dot(velocity, disc.up) / tipSpeed;
    const theta1c = -m * setting.lateralCyclic + stiffness.coupling * a1 + b1;
    const theta1s = setting.longitudinalCyclic + stiffness.coupling * b1 - a1;
    const asked = this.#asked;
    asked[0] = mu;
    asked[1] = lambdaC;
    asked[2] = inducedInflow;
    asked[3] = setting.collective;
    asked[4] = theta1c * cosine + theta1s * sine;
    asked[5] = theta1s * cosine - theta1c * sine;
    asked[6] = tipSpeed;
    asked[7] = -pitchRate * cosine - rollRate * sine;
    asked[8] = -rollRate * cosine + pitchRate * sine;
    asked[9] = this.cones ? setting.coning : this.part.precone;
    asked[10] = stiffness.hingeOffset * (b1 * cosine - a1 * sine);
    asked[11] = -stiffness.hingeOffset * (a1 * cosine + b1 * sine);
    this.#answer();
    const [ct, cq, ch, cy, windCos, windSin, mean, hingeCos, hingeSin] = this.#out as unknown as NineNumbers;
    const momentCos = windCos * cosine - windSin * sine;
    const momentSin = windCos * sine + windSin * cosine;
    const scale = this.#air.density * this.area * tipSpeed * tipSpeed;
    const alongAft = (ch * cosine - cy * sine) * scale;
    const alongRight = (ch * sine + cy * cosine) * scale;
    const up = ct * scale;
    const perFlap = 2 * this.#momentPerFlap;
    const residualCosine = momentCos + (2 * rollRate + stiffness.surplus * a1) / perFlap;
    const residualSine = momentSin + (-2 * pitchRate + stiffness.surplus * b1) / perFlap;
    // What the hinges' stiffness hands to the hub: front up, and down on the mirror's right.
    const reach = scale * this.part.radius;
    const offCos = hingeCos * cosine - hingeSin * sine;
    const offSin = hingeCos * sine + hingeSin * cosine;
    const hubPitch = (stiffness.rigid ? -(momentCos + (2 * rollRate) / perFlap) : (stiffness.surplus * a1) / perFlap - offCos) * reach;
    const hubRoll = (stiffness.rigid ? -(momentSin - (2 * pitchRate) / perFlap) : (stiffness.surplus * b1) / perFlap - offSin) * reach;
    const far = { ct, mu, lambdaC, kappa: this.part.inducedPowerFactor };
    this.groundFactor = this.groundHeight === undefined ? 1 : groundFactor(far, inducedInflow, this.groundHeight / this.part.radius);
    const momentum = { ...far, kappa: far.kappa * this.groundFactor };
    const momentumScale = Math.hypot(mu, lambdaC) + 0.05 + (this.part.inducedPowerFactor * this.#halfSlope) / 4;
    return {
      force: mirrored(combined(disc, alongAft, alongRight, up), m, false),
      hubMoment: mirrored(combined(shaft, -hubRoll, hubPitch, 0), m, true),
      shaft: mirrored(shaft.up, m, false),
      disc: mirrored(disc.up, m, false),
      sense: m,
      thrust: up,
      hForce: ch * scale,
      sideForce: cy * scale,
      torque: cq * scale * this.part.radius,
      ct,
      cq,
      advanceRatio: mu,
      axialInflow: lambdaC,
      inducedVelocity: inducedInflow * tipSpeed,
      inflowResidual: momentumResidual(momentum, inducedInflow) / momentumScale,
      flapResidualCosine: stiffness.rigid ? a1 : (residualCosine * 8) / this.#halfSlope,
      flapResidualSine: stiffness.rigid ? b1 : (residualSine * 8) / this.#halfSlope,
      coningResidual: this.cones
        ? setting.coning * (1 + stiffness.surplus) - stiffness.spring * this.part.precone - this.#momentPerFlap * mean
        : 0,
    };
  }
}

function combined({ aft, right, up }: DiscAxes, alongAft: number, alongRight: number, alongUp: number): Vector {
  return [
    aft[0] * alongAft + right[0] * alongRight + up[0] * alongUp,
    aft[1] * alongAft + right[1] * alongRight + up[1] * alongUp,
    aft[2] * alongAft + right[2] * alongRight + up[2] * alongUp,
  ];
}

/** A vector back from the mirror of a clockwise rotor; a moment changes its other two components. */
function mirrored(vector: Vector, sense: 1 | -1, moment: boolean): Vector {
  if (sense === 1) return vector;
  return moment ? [-vector[0], vector[1], -vector[2]] : [vector[0], -vector[1], vector[2]];
}
