import type { RunLimitName, RunRecord } from "../../drivetrain/battery/index.ts";
import type { BatterySetting } from "./setting.ts";

const celsius = (kelvin: number) => `${(kelvin - 273.15).toFixed(1).replace("-", "−")} °C`;
const percent = (share: number) => `${(100 * share).toFixed(1)} %`;

/** Why a limit is passed or not, with the numbers. */
export function limitReason(
  name: RunLimitName | "cut-off voltage" | "internal resistance" | "empty block",
  { limits, prepared }: BatterySetting,
  { watch, end }: RunRecord,
  passed: boolean,
): string {
  const none = "no such limit is stated";
  switch (name) {
    case "cut-off voltage": {
      const cutoff = `${prepared.model.cutoffVoltage.toFixed(2)} V`;
      if (passed) return `the load would bring the terminals below ${cutoff}`;
      return `the terminals stay at or above ${watch.lowestVoltage.toFixed(2)} V; cut-off is ${cutoff}`;
    }
    case "internal resistance":
      return passed
        ? "more than the pack's resistance lets through is asked for"
        : "at every instant the resistance lets the asked power through";
    case "empty block":
      return passed
        ? "the surface of the electrodes of a block has no charge left"
        : `${percent(Math.max(0, watch.lowestCharge))} of the charge is left`;
    case "continuous current":
      if (limits.continuousCurrent === null) return none;
      return passed
        ? `a block gives more than ${limits.continuousCurrent} A for ${limits.shortTime} s without a break`
        : `a block gives ${watch.largestCurrent.toFixed(2)} A at most, above ${limits.continuousCurrent} A for ${watch.longestOver.toFixed(1)} s at a stretch; ${limits.shortTime} s are allowed`;
    case "short-time current":
      if (limits.shortTimeCurrent === null) return none;
      return `a block gives ${watch.largestCurrent.toFixed(2)} A at most; ${limits.shortTimeCurrent} A are allowed`;
    case "highest temperature":
      return limits.temperatureMaximum === null
        ? none
        : `the hottest block reaches ${celsius(watch.hottest)}; ${celsius(limits.temperatureMaximum)} are allowed`;
    case "lowest temperature":
      return limits.temperatureMinimum === null
        ? none
        : `the coldest block is at ${celsius(watch.coldest)}; down to ${celsius(limits.temperatureMinimum)} is allowed`;
    case "lowest state of charge":
      return limits.lowestStateOfCharge === null
        ? none
        : `${percent(Math.max(0, watch.lowestCharge))} of the charge is left when the run ends by ${end}; ${percent(limits.lowestStateOfCharge)} are to be kept`;
  }
}
