import type { AircraftDefinition } from "../../aircraft/index.ts";
import type { TransitionSample } from "../../motion/index.ts";
import type { LimitUse } from "./output-schema.ts";
import type { SupplyMoment } from "./supply.ts";

/** A limit at one moment. */
interface Use {
  readonly name: string;
  readonly family: LimitUse["family"];
  readonly side: LimitUse["side"];
  readonly share: number;
  /** How long in one stretch it may be passed [s]. @defaultValue never */
  readonly allowed?: number;
}

export interface LimitSetting {
  readonly aircraft: AircraftDefinition;
  readonly airTemperature: number;
  readonly heightBand: number;
}

const words = (id: string) => id.replaceAll("-", " ");
const tolerance = 1e-6;
/** Share of what a pack can give that is asked of one that can give nothing [1]: a number for what has none. */
const nothingLeft = 99;

/** What is used of every limit along a history, most first. Stall margins are those of the reference's trims. */
export function limitsUsed(
  setting: LimitSetting,
  samples: readonly TransitionSample[],
  supply: readonly SupplyMoment[],
  leastStallMargins: readonly number[],
): LimitUse[] {
  const found = new Map<string, LimitUse & { longest: number; since: number | undefined; allowed: number }>();
  samples.forEach((sample, k) => {
    const moment = supply[k];
    if (!moment) return;
    const until = samples[k + 1]?.time ?? sample.time;
    for (const { name, family, side, share, allowed = 0 } of usesAt(setting, sample, moment)) {
      const before = found.get(name);
      const beyond = share > 1 + tolerance;
      const since = beyond ? (before?.since ?? sample.time) : undefined;
      const more = before !== undefined && before.share >= share;
      found.set(name, {
        name,
        family,
        side,
        share: more ? before.share : share,
        at: more ? before.at : sample.time,
        beyond: (before?.beyond ?? 0) + (beyond ? until - sample.time : 0),
        kept: true,
        longest: Math.max(before?.longest ?? 0, since === undefined ? 0 : until - since),
        since,
        allowed,
      });
    }
  });
  const all = [...found.values()].map(
    ({ longest, since: _, allowed, ...use }): LimitUse => ({
      ...use,
      kept: use.share <= 1 + tolerance || (allowed > 0 && longest <= allowed),
    }),
  );
  return [...all, ...stallUse(setting, leastStallMargins)].sort((a, b) => b.share - a.share);
}

function usesAt(setting: LimitSetting, sample: TransitionSample, moment: SupplyMoment): Use[] {
  return [...motorUses(setting, sample, moment), ...cellUses(setting.aircraft, moment), ...flightUses(setting, sample)];
}

function motorUses({ aircraft, airTemperature }: LimitSetting, { loads }: TransitionSample, { windings, voltage }: SupplyMoment): Use[] {
  return aircraft.driveLines.flatMap((line, i): Use[] => {
    const motor = line.motors[0]?.motor;
    const state = loads.drives[i]?.motor;
    if (!motor || !state) return [];
    const of = words(line.id);
    const upper = { family: "power", side: "upper" } as const;
    const rise = (windings[i] ?? airTemperature) - airTemperature;
    return [
      { ...upper, name: `${of}: continuous motor power`, share: state.electricPower / motor.continuousPower, allowed: motor.shortTime },
      { ...upper, name: `${of}: short-time motor power`, share: state.electricPower / motor.shortPower },
      { ...upper, name: `${of}: motor current`, share: state.current / motor.currentMaximum },
      ...(voltage === null
        ? []
        : [{ ...upper, name: `${of}: motor voltage`, share: state.voltage / (voltage * motor.controllerDutyMaximum) }]),
      { ...upper, name: `${of}: winding heat`, share: rise / Math.max(motor.temperatureMaximum - airTemperature, 1e-3) },
    ];
  });
}

function cellUses({ battery }: AircraftDefinition, { blockCurrent, voltage, restVoltage, excess }: SupplyMoment): Use[] {
  const upper = { family: "power", side: "upper" } as const;
  const cutoff = battery.cell.cutoffVoltage * battery.seriesCells;
  if (blockCurrent === null || voltage === null)
    return [{ ...upper, name: "pack voltage under load", share: Math.min(nothingLeft, Math.max(excess, 1 + 1e-3)) }];
  return [
    { ...upper, name: "continuous block current", share: blockCurrent / battery.continuousCurrent, allowed: battery.shortTime },
    { ...upper, name: "short-time block current", share: blockCurrent / battery.shortCurrent },
    { ...upper, name: "pack voltage under load", share: (restVoltage - voltage) / Math.max(restVoltage - cutoff, 1e-6) },
  ];
}

function flightUses({ aircraft, heightBand }: LimitSetting, sample: TransitionSample): Use[] {
  const many = aircraft.rotors.length > 1;
  const rotors = aircraft.rotors.flatMap((rotor, i): Use[] => {
    const of = many ? `, ${words(rotor.id)}` : "";
    const tipSpeed = (sample.rotorRates[i] ?? 0) * rotor.radius;
    return [
      { name: `slowest rotor${of}`, family: "strength", side: "lower", share: rotor.tipSpeedMinimum / Math.max(tipSpeed, 1e-6) },
      { name: `fastest rotor${of}`, family: "strength", side: "upper", share: tipSpeed / rotor.tipSpeedMaximum },
      { name: `flapping${of}`, family: "control", side: "upper", share: (sample.flapping[i] ?? 0) / rotor.flapRange },
    ];
  });
  const most = aircraft.limits.attitudeMaximum;
  const attitude = most === undefined ? [] : [{ name: "attitude", share: Math.max(Math.abs(sample.pitch), Math.abs(sample.roll)) / most }];
  return [
    ...rotors,
    ...attitude.map((use) => ({ ...use, family: "rule", side: "upper" }) as const),
    { name: "height band", family: "rule", side: "upper", share: Math.abs(sample.height) / heightBand },
  ];
}

function stallUse({ aircraft }: LimitSetting, margins: readonly number[]): LimitUse[] {
  return aircraft.rotors.flatMap((rotor, i) => {
    const margin = margins[i];
    if (margin === undefined || !Number.isFinite(margin)) return [];
    const share = rotor.stallMarginFloor / margin;
    const name = aircraft.rotors.length > 1 ? `stall margin of the reference, ${words(rotor.id)}` : "stall margin of the reference";
    return [{ name, family: "air", side: "lower", share, at: 0, beyond: 0, kept: share <= 1 + 1e-3 } as const];
  });
}
