// Every trim judged by code that is not the solver's: forces, moments, momentum and power computed again from the trimmed state.
import { describe, expect, test } from "vitest";
import { type SectionLaw, sectionLaw } from "../../packages/engine/src/aerodynamics/airfoil-section/index.ts";
import { createTrimRotor, type FlightConditions, type Trimmed } from "../../packages/engine/src/equilibrium/index.ts";
import { poweredModes } from "../../packages/engine/src/performance/index.ts";
import { demoAircraft, flownLine, standardConditions } from "./demo-flight.ts";
import {
  joinedThrust,
  plainBody,
  plainDrivePower,
  plainMotorPowers,
  plainPropellerPower,
  plainWing,
  plainWingLiftCoefficient,
  plainYaw,
} from "./plain-airframe.ts";
import { momentumThrust, plainRotorLoads } from "./plain-rotor.ts";

const speeds = Array.from({ length: 11 }, (_, i) => 4 * i);
/** Of weight, or of weight times rotor radius. */
const tolerance = 1e-6;
const gravity = 9.80665;

/** What does not balance, each over weight or weight times radius, and the powers counted again [W]. */
function judged(conditions: FlightConditions, law: SectionLaw, { evaluation, point }: Trimmed) {
  const { aircraft, loading, air } = conditions;
  const { state } = evaluation;
  const { rotor, battery } = aircraft;
  const weight = (aircraft.emptyMass + battery.fixedMass + loading.blocks * battery.blockMass + loading.payloadMass) * gravity;
  const airspeed = point.forwardSpeed;
  const flow = { density: air.density, airspeed };
  const disc = {
    advanceRatio: (airspeed * Math.cos(state.discAngle)) / state.tipSpeed,
    axialFlow: (-airspeed * Math.sin(state.discAngle)) / state.tipSpeed,
    inducedFlow: state.inducedInflow,
    collective: state.collective,
    pitchCosine: state.pitchCosine,
    pitchSine: state.pitchSine,
    tipSpeed: state.tipSpeed,
  };
  const loads = plainRotorLoads(rotor, law, air, disc);
  const inducedVelocity = state.inducedInflow * state.tipSpeed;
  const left = (state.thrustSum - state.thrustDifference) / 2;
  const right = (state.thrustSum + state.thrustDifference) / 2;
  const wing = plainWing(aircraft.wing, flow, inducedVelocity, state.wingAngle);
  const body = plainBody(aircraft, flow, inducedVelocity, state.finLiftCoefficient, loading.payloadDragArea);
  const forward =
    left + right - loads.thrust * Math.sin(state.discAngle) - loads.aft * Math.cos(state.discAngle) + wing.forward + body.forward;
  const up = loads.thrust * Math.cos(state.discAngle) - loads.aft * Math.sin(state.discAngle) + wing.up + body.up - weight;
  const closed = point.mode === "clutch-closed";
  // Clutch open the free rotor's torque vanishes, and with it the need for yaw.
  const shaft = closed ? plainYaw(aircraft, flow, { left, right }, state.finLiftCoefficient) - loads.torque : loads.torque;
  const turning = weight * rotor.radius;
  return {
    unbalanced: {
      forward: forward / weight,
      up: up / weight,
      shaft: shaft / turning,
      flapCosine: loads.momentCosine / turning,
      flapSine: loads.momentSine / turning,
      momentum: (momentumThrust(rotor, air.density, disc, loads.thrust) - loads.thrust) / weight,
    },
    torque: loads.torque,
    propellers: [left, right].map((thrust) => ({
      thrust,
      electric: Math.abs(thrust) < joinedThrust ? undefined : plainPropellerPower(aircraft, flow, thrust),
    })),
    drivePower: closed ? plainDrivePower(aircraft, loads.torque, state.tipSpeed) : 0,
  };
}

/** Limits may be touched by this much of themselves. */
const touch = 1 + 1e-6;

/** Every limit of the aircraft and every setting of a control, asked of the answer itself. */
function keepsLimits({ aircraft, loading, controls, air }: FlightConditions, { evaluation, point }: Trimmed, where: string): void {
  const { state, power } = evaluation;
  const { clutchClosed, clutchOpen } = aircraft.rotorControls;
  const open = point.mode === "clutch-open";
  if (aircraft.wing.incidence.kind !== "ground-set") throw new Error("the demo sets its wing on the ground");
  const tilt = state.wingAngle - state.discAngle - aircraft.wing.incidence.value;
  expect(Math.abs(tilt), where).toBeLessThan(aircraft.rotor.flapRange * touch);
  expect(Math.abs(state.finLiftCoefficient), where).toBeLessThan(aircraft.fin.maximumLiftCoefficient * touch);
  const wing = plainWingLiftCoefficient(aircraft.wing, point.forwardSpeed, state.inducedInflow * state.tipSpeed, state.wingAngle);
  expect(Math.abs(wing), where).toBeLessThan(aircraft.wing.maximumLiftCoefficient * aircraft.wing.trimLiftFraction * touch);
  const collective = (open ? clutchOpen : clutchClosed).collective;
  if (controls === "schedule" && collective.kind === "scheduled") {
    expect(state.collective, where).toBeCloseTo(straightLine(collective.schedule, point.forwardSpeed), 9);
  } else if (collective.kind === "scheduled" || collective.kind === "free") {
    expect(state.collective, where).toBeGreaterThan(collective.minimum - 1e-9);
    expect(state.collective, where).toBeLessThan(collective.maximum + 1e-9);
  }
  if (clutchClosed.tipSpeed.kind !== "scheduled") throw new Error("the demo schedules its rotor speed");
  if (controls === "schedule" && !open) {
    const mass = aircraft.emptyMass + aircraft.battery.fixedMass + loading.blocks * aircraft.battery.blockMass + loading.payloadMass;
    const asked = straightLine(clutchClosed.tipSpeed.schedule, point.forwardSpeed) * Math.sqrt((mass / 20) * (1.225 / air.density));
    const { minimum, maximum } = clutchClosed.tipSpeed;
    expect(state.tipSpeed, where).toBeCloseTo(Math.min(maximum, Math.max(minimum, asked)), 9);
  }
  expect(state.tipSpeed * touch, where).toBeGreaterThan(clutchOpen.tipSpeedMinimum);
  expect(state.tipSpeed, where).toBeLessThan(clutchOpen.tipSpeedMaximum * touch);
  // At the voltage of an almost empty pack: 14 cells of 3.0 V.
  for (const [side, motor] of [
    [power.drive, aircraft.rotorDrive.motor],
    [power.left, aircraft.propellers.motor],
    [power.right, aircraft.propellers.motor],
  ] as const) {
    expect(side.electricPower, where).toBeLessThan(motor.continuousPower * touch);
    expect(side.current, where).toBeLessThan(motor.currentMaximum * touch);
    expect(side.voltage, where).toBeLessThan(42 * motor.controllerDutyMaximum * touch);
  }
  expect(power.electric / 42 / loading.blocks, where).toBeLessThan(aircraft.battery.continuousCurrent * touch);
}

/** Linear between the points of a schedule, held beyond them. */
function straightLine(schedule: readonly { readonly airspeed: number; readonly value: number }[], airspeed: number): number {
  const after = schedule.findIndex((point) => point.airspeed > airspeed);
  const high = schedule[after];
  const low = schedule[after - 1];
  if (high === undefined) return schedule[schedule.length - 1]?.value ?? Number.NaN;
  if (low === undefined) return high.value;
  return low.value + ((airspeed - low.airspeed) / (high.airspeed - low.airspeed)) * (high.value - low.value);
}

describe.each(["baseline", "revised"] as const)("level flight of the %s aircraft", (name) => {
  test.each(["optimum", "schedule"] as const)("balances at %s in both modes, by another hand's sums", async (controls) => {
    const aircraft = await demoAircraft(name);
    const conditions = standardConditions(aircraft, { controls });
    const law = sectionLaw(aircraft.rotor.section);
    const rotor = createTrimRotor(aircraft, conditions.air);
    let flown = 0;
    for (const mode of poweredModes) {
      for (const { outcome } of flownLine(conditions, mode, speeds, rotor)) {
        if (outcome.kind !== "trimmed") continue;
        flown += 1;
        const where = `${name}, ${controls}, ${mode}, ${outcome.point.forwardSpeed} m/s`;
        const { unbalanced, torque, propellers, drivePower } = judged(conditions, law, outcome);
        for (const [key, value] of Object.entries(unbalanced)) {
          expect(Math.abs(value), `${where}: ${key}`).toBeLessThan(tolerance);
        }
        const turning = gravity * 20 * aircraft.rotor.radius;
        if (mode === "clutch-closed") expect(torque, where).toBeGreaterThan(-tolerance * turning);
        else expect(Math.abs(torque), where).toBeLessThan(tolerance * turning);
        const { power } = outcome.evaluation;
        expect(power.drive.electricPower, where).toBeCloseTo(drivePower, 4);
        const sides = [power.left, power.right].map((side) => plainMotorPowers(aircraft.propellers.motor, side));
        sides.forEach((side, i) => {
          const own = propellers[i]?.electric;
          if (own !== undefined) expect(side.electric, `${where}: propeller at ${propellers[i]?.thrust} N`).toBeCloseTo(own, 4);
        });
        expect(power.electric, where).toBeCloseTo(drivePower + (sides[0]?.electric ?? 0) + (sides[1]?.electric ?? 0) + power.avionics, 4);
        expect(power.propellerShaft, where).toBeCloseTo((sides[0]?.shaft ?? 0) + (sides[1]?.shaft ?? 0), 4);
        const parts = power.rotorShaft + power.propellerShaft + power.rotorLosses + power.propellerLosses + power.avionics;
        expect(parts / power.electric, where).toBeCloseTo(1, 13);
        expect(power.avionics, where).toBe(25);
        keepsLimits(conditions, outcome, where);
        if (controls === "optimum") expect(outcome.stallMargin, where).toBeGreaterThanOrEqual(aircraft.rotor.stallMarginFloor - 5e-4);
      }
    }
    expect(flown).toBeGreaterThan(13);
  });
});
