import { type Airframe, rotorStateWidth } from "../../airframe/index.ts";
import { heldLift } from "./attached-lift.ts";
import type { FullConditions } from "./full-conditions.ts";
import type { FullLimit } from "./full-limits.ts";
import type { LimitNeeded } from "./full-outcome.ts";
import type { FullEvaluation } from "./full-problem.ts";

/** How far a flight goes towards a limit [SI]. */
export interface LimitMeasure {
  readonly allowed: number;
  readonly reached: number;
  readonly quantity: LimitNeeded["quantity"];
}

/** Of the pack when a limit is counted in current: the lowest voltage that cells may have [V]. */
export function cutoffVoltage({ aircraft: { battery } }: FullConditions): number {
  return battery.cell.cutoffVoltage * battery.seriesCells;
}

/** A limit as its part's data have it, and what the flight makes of it. @derivation not a formula */
export function limitMeasure(
  { of }: FullLimit,
  { loads, rotorStates, stallMargins, unstalled }: FullEvaluation,
  conditions: FullConditions,
  airframe: Airframe,
): LimitMeasure {
  const { aircraft, loading } = conditions;
  switch (of.kind) {
    case "clutch":
      return { allowed: 0, reached: loads.rotors[of.rotor]?.torque ?? 0, quantity: "torque" };
    case "stall":
    case "branch":
      return {
        allowed: airframe.rotors[of.rotor]?.part.stallMarginFloor ?? 1,
        reached: stallMargins[of.rotor] as number,
        quantity: "dimensionless",
      };
    case "flap": {
      const at = of.rotor * rotorStateWidth;
      const reached = Math.hypot(rotorStates[at + 2] as number, rotorStates[at + 3] as number);
      return { allowed: airframe.rotors[of.rotor]?.part.flapRange ?? 0, reached, quantity: "angle" };
    }
    case "lift-high":
    case "lift-low": {
      const part = aircraft.surfaces[of.surface];
      const allowed = (part?.maximumLiftCoefficient ?? 1) * (part?.trimLiftFraction ?? 1);
      const reading = loads.surfaces[of.surface];
      const held = part && reading ? heldLift(part, reading, unstalled, airframe.conditions.mass.centre.x) : { highest: 0, lowest: 0 };
      const reached = of.kind === "lift-high" ? held.highest : -held.lowest;
      return { allowed, reached, quantity: "dimensionless" };
    }
    case "block-current":
      return {
        allowed: aircraft.battery.continuousCurrent,
        reached: loads.electricPower / (cutoffVoltage(conditions) * loading.blocks),
        quantity: "current",
      };
    default: {
      const { motor } = (airframe.lines[of.line] as Airframe["lines"][number]).motors[0] as Airframe["lines"][number]["motors"][number];
      const state = loads.drives[of.line]?.motor ?? { electricPower: 0, current: 0, voltage: 0 };
      if (of.kind === "motor-power") return { allowed: motor.continuousPower, reached: state.electricPower, quantity: "power" };
      if (of.kind === "motor-current") return { allowed: motor.currentMaximum, reached: state.current, quantity: "current" };
      return { allowed: cutoffVoltage(conditions) * motor.controllerDutyMaximum, reached: state.voltage, quantity: "voltage" };
    }
  }
}
