// A rotor to try the plain recomputation on, and one to turn the other way.
import type { PlainRotorControls, PlainRotorState, RotorPart } from "./plain-blades.ts";

export const triedRotor: RotorPart = {
  id: "rotor",
  hub: { x: 0, y: 0, z: -0.35 },
  shaftTilt: { back: 0, right: 0 },
  turns: "counter-clockwise",
  radius: 1.15,
  blades: 2,
  stations: [
    { radiusFraction: 0, chord: 0.09, twist: 0.03 },
    { radiusFraction: 1, chord: 0.09, twist: -0.01 },
  ],
  rootCutout: 0.15,
  precone: 0.03,
  articulation: { kind: "teetering", pitchFlapCoupling: 0 },
  section: { kind: "generic", liftSlope: 5.7, cd0: 0.0125, cd1: 0, cd2: 0.4, stallAngle: 0.22 },
  tipLoss: { kind: "lift-cutoff", liftRadiusFraction: 0.97 },
  inducedPowerFactor: 1.12,
  inflow: "drees",
  radialFlow: "friction",
  polarInertia: 0.55,
  flapRange: 0.14,
  stallMarginFloor: 1.15,
  tipSpeedMinimum: 55,
  tipSpeedMaximum: 100,
  alarmTipSpeed: 105,
  brakeTorque: 0,
};

export const triedState: PlainRotorState = { tipSpeed: 80, inducedRatio: 0.04, back: 0.04, right: -0.02, coning: 0.03 };

export const triedControls: PlainRotorControls = { collective: 0.12, longitudinal: -0.02, lateral: 0.01, tiltBack: 0, tiltRight: 0 };
