import type { Answer, Limit, Warning } from "../contract.ts";
import { reading, type Token, words } from "../tokens.ts";
import type { BatteryOutputs } from "./output-schema.ts";
import type { BatterySetting } from "./setting.ts";

const longestBrief = 40;
const minutes = { unit: "min" } as const;
const wattHours = { unit: "Wh" } as const;
const ampereHours = { unit: "Ah" } as const;

/** "The pack gives 168 Wh in 42 min, until the cut-off voltage; 12 Wh are lost inside." */
export function batteryAnswer(outputs: BatteryOutputs): Answer {
  const { notDeliverable, dip } = outputs;
  const tokens: Token[] =
    notDeliverable && outputs.duration === 0
      ? [words(`${isolatedWords(outputs, "Not deliverable", "not deliverable")} at the start: `), ...largest(outputs)]
      : [
          words(`${isolatedWords(outputs, "The", "the")} ${isOneCell(outputs) ? "cell" : "pack"} gives `),
          reading(outputs.energyOut, "energy", "/energyOut", wattHours),
          words(" and "),
          reading(outputs.capacityDelivered, "capacity", "/capacityDelivered", ampereHours),
          words(" in "),
          reading(outputs.duration, "time", "/duration", minutes),
          words(`, until ${article(outputs.endedBy)}${outputs.endedBy}; `),
          reading(outputs.energyLost, "energy", "/energyLost", wattHours),
          words(" are lost inside."),
          ...(notDeliverable ? fromThere(outputs, notDeliverable) : []),
        ];
  const first = outputs.timeToLimits.findIndex((limit) => limit.time !== null && !limit.endsRun);
  const limit = outputs.timeToLimits[first];
  if (limit?.time !== null && limit !== undefined) {
    tokens.push(
      words(` The limit ${limit.name} is passed after `),
      reading(limit.time, "time", `/timeToLimits/${first}/time`, minutes),
      words("."),
    );
  }
  if (dip) {
    tokens.push(
      words(" Cold, the voltage dips to "),
      reading(dip.voltage, "voltage", "/dip/voltage"),
      words(" and then rises by "),
      reading(dip.recovery, "voltage", "/dip/recovery"),
      words(" as the cells warm themselves."),
    );
  }
  return { sentence: tokens, brief: brief(outputs) };
}

function fromThere(outputs: BatteryOutputs, { largestPower, because }: NonNullable<BatteryOutputs["notDeliverable"]>): readonly Token[] {
  if (largestPower <= 0) return [words(` From there nothing more can be drawn (${because}).`)];
  return [words(" From there not deliverable: "), ...largest(outputs)];
}

function isOneCell({ conditions: { series, parallel }, blocks }: BatteryOutputs): boolean {
  return blocks.length * series * parallel === 1;
}

/** "With block 2 off the bus, the", or "The" where all are on it. */
function isolatedWords({ blocks }: BatteryOutputs, alone: string, after: string): string {
  const off = blocks.filter(({ isolated }) => isolated).map(({ block }) => block);
  if (off.length === 0) return alone;
  const named = off.length > 4 ? `${off.length} of ${blocks.length} blocks` : `block${off.length > 1 ? "s" : ""} ${listed(off)}`;
  return `With ${named} off the bus, ${after}`;
}

function listed(numbers: readonly number[]): string {
  return numbers.length < 2 ? numbers.join("") : `${numbers.slice(0, -1).join(", ")} and ${numbers.at(-1)}`;
}

function article(end: string): string {
  return end === "empty block" ? "an " : "the ";
}

function largest({ notDeliverable }: BatteryOutputs): readonly Token[] {
  if (!notDeliverable) return [];
  const { sustained } = notDeliverable;
  const last = sustained.length - 1;
  const held = sustained[last];
  const tokens: Token[] = [
    words("at most "),
    reading(notDeliverable.largestPower, "power", "/notDeliverable/largestPower"),
    words(" at once, 99 % of it for "),
    reading(notDeliverable.largestPowerDuration, "time", "/notDeliverable/largestPowerDuration"),
  ];
  if (held) {
    tokens.push(
      words("; "),
      reading(held.power, "power", `/notDeliverable/sustained/${last}/power`),
      words(" for "),
      reading(held.duration, "time", `/notDeliverable/sustained/${last}/duration`, minutes),
    );
  }
  tokens.push(words(` (${notDeliverable.because}).`));
  return tokens;
}

function brief({ duration, endedBy, energyOut, notDeliverable }: BatteryOutputs): string {
  const text =
    notDeliverable && duration === 0
      ? `not deliverable, ${Number(notDeliverable.largestPower.toPrecision(3))} W at most`
      : `${Number((energyOut / 3600).toPrecision(3))} Wh, ${Number((duration / 60).toPrecision(3))} min, ${endedBy}`;
  return text.length <= longestBrief ? text : `${text.slice(0, longestBrief - 1)}…`;
}

/** Temperature from which shares of the temperature limits are counted [K]. */
const mild = 298.15;

/** Every limit with the largest share of it that the run uses; temperatures are counted from 25 °C. */
export function batteryLimits(outputs: BatteryOutputs): readonly Limit[] {
  const { conditions, duration } = outputs;
  const limits: Limit[] = [];
  const where = `within ${(duration / 60).toFixed(1)} min`;
  const add = (name: string, share: number, side: Limit["side"], family: Limit["family"] = "power") => {
    const stated = outputs.timeToLimits.find((limit) => limit.name === name);
    const at = stated?.time !== null && stated !== undefined ? `at ${(stated.time / 60).toFixed(1)} min` : where;
    limits.push({
      name,
      family,
      share: Math.max(0, share),
      side,
      where: at,
      binding: stated?.endsRun === true || (stated?.time ?? null) !== null,
    });
  };
  const span = outputs.startVoltage - conditions.cutoffVoltage;
  const cutoff = outputs.endedBy === "cut-off voltage" || outputs.endedBy === "internal resistance";
  add("cut-off voltage", cutoff || span <= 0 ? 1 : Math.min(1, (outputs.startVoltage - outputs.lowestVoltage) / span), "lower");
  const { bounds } = outputs;
  if (bounds.continuousCurrent !== null) add("continuous current", outputs.largestBlockCurrent / bounds.continuousCurrent, "upper");
  if (bounds.shortTimeCurrent !== null) add("short-time current", outputs.largestBlockCurrent / bounds.shortTimeCurrent, "upper");
  if (bounds.temperatureMaximum !== null && bounds.temperatureMaximum > mild)
    add("highest temperature", (outputs.highestTemperature - mild) / (bounds.temperatureMaximum - mild), "upper", "strength");
  if (bounds.temperatureMinimum !== null && bounds.temperatureMinimum < mild)
    add("lowest temperature", (mild - outputs.lowestTemperature) / (mild - bounds.temperatureMinimum), "lower", "strength");
  if (bounds.lowestStateOfCharge !== null)
    add("lowest state of charge", (1 - outputs.stateOfChargeAtEnd) / (1 - bounds.lowestStateOfCharge), "lower", "rule");
  return limits;
}

/** What to know before using the numbers. */
export function batteryWarnings({ pack, warnings }: BatterySetting, outputs: BatteryOutputs): readonly Warning[] {
  const found: Warning[] = [...warnings];
  const care = (kind: string, message: string) => found.push({ grade: "care", kind, message });
  const { temperatures, statesOfCharge, diffusion, availableCapacity } = pack.cell;
  const low = temperatures[0] ?? mild;
  const high = temperatures[temperatures.length - 1] ?? mild;
  const celsius = (kelvin: number) => `${(kelvin - 273.15).toFixed(1).replace("-", "−")} °C`;
  if (temperatures.length > 1 && (outputs.lowestTemperature < low || outputs.highestTemperature > high))
    care(
      "cell-table-left",
      `Cells were between ${celsius(outputs.lowestTemperature)} and ${celsius(outputs.highestTemperature)}; the table knows ${celsius(low)} to ${celsius(high)} and is held level beyond.`,
    );
  const top = statesOfCharge[statesOfCharge.length - 1] ?? 1;
  if (outputs.rows.some((row) => row.stateOfCharge > top + 1e-9))
    care("cell-table-left", `The table ends at a state of charge of ${top}; above that its last values are used.`);
  const flat = temperatures.length === 1 && pack.cell.ohmicActivation === 0 && diffusion === undefined && availableCapacity === undefined;
  if (flat && Math.abs(outputs.lowestTemperature - mild) > 5)
    care(
      "temperature-unknown",
      "Nothing is known about this cell away from one temperature: cold or warm cells count as those of the table.",
    );
  if (outputs.largestChargingCurrent > 0.01)
    care(
      "circulating-current",
      `Blocks of differing charge feed each other: up to ${outputs.largestChargingCurrent.toFixed(2)} A flow into a block; whether it may be charged so is not judged.`,
    );
  if (outputs.highestTemperature > hotCells)
    care(
      "hot-cells",
      `A block reaches ${celsius(outputs.highestTemperature)}: hot lithium-ion cells can catch fire; keep to the maker's limit.`,
    );
  if (outputs.dip === null && outputs.lowestTemperature < 263.15 && pack.cell.pairs.length === 0)
    care("cold-cells", "Cold cells relax slowly; this cell has no relaxation and shows the first minute too high.");
  return found;
}

const hotCells = 333.15;
