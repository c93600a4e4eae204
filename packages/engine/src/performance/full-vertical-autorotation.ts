import { standardGravity } from "../aircraft/index.ts";
import type { FullPoint, FullTrimmed, FullTrimmer } from "../equilibrium/index.ts";
import { border } from "../numerics/index.ts";
import type { VerticalAutorotationOutcome } from "./vertical-autorotation.ts";

/** Descent rates are looked at in steps of this share of the hover's induced velocity, up to so many times it [1]. */
const step = 0.1;
const slowest = 1.2;
const fastest = 3;
const rateTolerance = 0.01;

/**
 * The slowest steady vertical descent of the whole aircraft with everything that drives standing still.
 *
 * @derivation the slowest descent rate that balances all six components within the limits
 */
export function fullVerticalAutorotation(trimmer: FullTrimmer): VerticalAutorotationOutcome {
  const { airframe, conditions } = trimmer;
  const [rotor] = airframe.rotors;
  if (rotor === undefined) return { kind: "no-equilibrium", reason: "it has no rotor" };
  const weight = airframe.mass * standardGravity;
  const hover = Math.sqrt(weight / (2 * conditions.air.density * airframe.rotors.reduce((sum, { area }) => sum + area, 0)));
  const stopped = airframe.lines.map(({ id }) => id);
  const at = (descent: number): FullPoint => ({ mode: "clutch-open", airspeed: 0, climbRate: -descent, sideslip: 0, stopped });
  let reason = "the rotor does not autorotate at any collective";
  let found: FullTrimmed | undefined;
  const reaches = (descent: number): boolean => {
    const outcome = found ? trimmer.trimFrom(at(descent), [found.start]) : trimmer.trim(at(descent));
    if (outcome.kind === "trimmed") found = outcome;
    else reason = outcome.limit;
    return outcome.kind === "trimmed";
  };
  let first = slowest;
  while (first < fastest && !reaches(first * hover)) first += step;
  if (found === undefined) return { kind: "no-equilibrium", reason };
  const start = found as FullTrimmed;
  const descentRate = first > slowest ? border(reaches, first * hover, (first - step) * hover, rateTolerance) : first * hover;
  const last = (found ?? start) as FullTrimmed;
  const collective = airframe.collectiveControl(0);
  return {
    kind: "descends",
    autorotation: {
      descentRate,
      tipSpeed: last.evaluation.rotorStates[0] as number,
      collective: collective < 0 ? 0 : (last.evaluation.controls[collective] as number),
      stallMargin: last.stallMargins[0] as number,
    },
  };
}
