import type { FullTrimmed } from "../../equilibrium/index.ts";
import type { ControlledFlight } from "../../motion/index.ts";
import type { Problem } from "../contract.ts";
import type { FullFlight } from "../inputs/full-flight.ts";
import { packPower } from "./pack-power.ts";
import { type PreparedStep, type StepOf, stepAt } from "./prepared-step.ts";

/**
 * Battery blocks that fall out: what is left of the pack's power, less what everything but drives draws, is shared by the drives as they shared it
 * before. A rotor's drive gives no more than its share, a propeller no more thrust than its share makes (power as thrust to the 3/2); without
 * any power the drives stop.
 */
export function blockLoss(
  flight: FullFlight,
  controlled: ControlledFlight,
  trimmed: FullTrimmed,
  step: StepOf<"block-loss">,
): PreparedStep | Problem {
  const { blocks } = flight.conditions.loading;
  const left = blocks - step.blocks;
  if (left < 0) return { kind: "loading-impossible", message: `${step.blocks} blocks cannot fall out of ${blocks}.` };
  const most = packPower(flight.definition, left, step.stateOfCharge);
  const { loads, controls } = trimmed.evaluation;
  const driven = loads.drives.reduce((sum, { electricPower }) => sum + electricPower, 0);
  const share = driven > 0 ? Math.max(0, most - (loads.electricPower - driven)) / driven : 1;
  const { dynamics } = controlled.flight;
  const { actuators } = controlled.simulation;
  const apply = (): void => {
    if (share === 0) dynamics.running = dynamics.running.map(() => false);
    dynamics.drives = dynamics.drives.map((drive) => {
      if (drive.kind !== "governed") return drive;
      return { ...drive, largestPower: Math.min(drive.largestPower, drive.torque * drive.rate * share) };
    });
    flight.definition.controls.forEach(({ what }, i) => {
      if (what === "thrust") actuators.limit(i, Math.max(0, controls[i] as number) * share ** (2 / 3));
    });
  };
  return {
    words: `${step.blocks} of ${blocks} blocks fall out (what is left gives at most ${most.toFixed(0)} W)`,
    reaction: null,
    events: [{ time: stepAt, apply }],
  };
}
