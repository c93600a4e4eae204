import type { LateralDerivatives, LongitudinalDerivatives } from "./aeroplane-derivatives.ts";

/** What coefficients are made dimensionless with, and the masses. */
export interface AeroplaneReference {
  /** [kg] */
  readonly mass: number;
  /** Wing area [m²], mean chord [m], span [m]. */
  readonly area: number;
  readonly chord: number;
  readonly span: number;
  /** About the stability axes [kg m²]. */
  readonly ix: number;
  readonly iy: number;
  readonly iz: number;
  readonly ixz: number;
  /** [m/s], [kg/m³] */
  readonly airspeed: number;
  readonly density: number;
  readonly gravity: number;
  /** [rad] */
  readonly pathAngle: number;
}

/** u over airspeed, α, rates times chord over twice the airspeed. */
export interface LongitudinalCoefficients {
  readonly cxU: number;
  readonly cxAlpha: number;
  readonly czU: number;
  readonly czAlpha: number;
  readonly czQ: number;
  readonly czAlphaDot: number;
  readonly cmU: number;
  readonly cmAlpha: number;
  readonly cmQ: number;
  readonly cmAlphaDot: number;
}

/** β, rates times span over twice the airspeed. */
export interface LateralCoefficients {
  readonly cyBeta: number;
  readonly cyP: number;
  readonly cyR: number;
  readonly clBeta: number;
  readonly clP: number;
  readonly clR: number;
  readonly cnBeta: number;
  readonly cnP: number;
  readonly cnR: number;
}

/** @source etkin-reid-1996, table of longitudinal dimensional derivatives, chapter 4, unchecked */
export function longitudinalOf(c: LongitudinalCoefficients, reference: AeroplaneReference): LongitudinalDerivatives {
  const { mass, area, chord, iy, airspeed, density, gravity, pathAngle } = reference;
  const force = (density * airspeed * area) / (2 * mass);
  const moment = (density * airspeed * area * chord) / (2 * iy);
  const weight = (mass * gravity) / ((density * airspeed * airspeed * area) / 2);
  const lag = chord / 2;
  return {
    xu: force * (c.cxU + 2 * weight * Math.sin(pathAngle)),
    xw: force * c.cxAlpha,
    zu: force * (c.czU - 2 * weight * Math.cos(pathAngle)),
    zw: force * c.czAlpha,
    zq: force * lag * c.czQ,
    zwDot: ((force * lag) / airspeed) * c.czAlphaDot,
    mu: moment * c.cmU,
    mw: moment * c.cmAlpha,
    mq: moment * lag * c.cmQ,
    mwDot: ((moment * lag) / airspeed) * c.cmAlphaDot,
  };
}

/** @source etkin-reid-1996, table of lateral dimensional derivatives, chapter 4, unchecked */
export function lateralOf(c: LateralCoefficients, reference: AeroplaneReference): LateralDerivatives {
  const { mass, area, span, ix, iz, ixz, airspeed, density } = reference;
  const force = (density * airspeed * area) / (2 * mass);
  const roll = (density * airspeed * area * span) / (2 * ix);
  const yaw = (density * airspeed * area * span) / (2 * iz);
  const lag = span / 2;
  return {
    yv: force * c.cyBeta,
    yp: force * lag * c.cyP,
    yr: force * lag * c.cyR,
    lv: roll * c.clBeta,
    lp: roll * lag * c.clP,
    lr: roll * lag * c.clR,
    nv: yaw * c.cnBeta,
    np: yaw * lag * c.cnP,
    nr: yaw * lag * c.cnR,
    productOverRoll: ixz / ix,
    productOverYaw: ixz / iz,
  };
}
