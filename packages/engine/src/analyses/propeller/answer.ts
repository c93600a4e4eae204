import { largestTipMach } from "../../aerodynamics/propeller/index.ts";
import type { Answer, Limit } from "../contract.ts";
import { reading, type Token, words } from "../tokens.ts";
import type { PropellerOutputs, PropellerRow } from "./output-schema.ts";
import type { PropellerInputs } from "./schema.ts";

export function propellerAnswer(outputs: PropellerOutputs): Answer {
  const index = outputs.rows.findIndex((row) => row.state !== "none");
  const row = outputs.rows[index];
  if (!row) return { sentence: [words(`No point has an answer: ${outputs.rows[0]?.reason ?? "none was asked for"}`)], brief: "no answer" };
  const missing = outputs.rows.filter((one) => one.state === "none").length;
  const tail = missing > 0 ? [words(` ${missing} of ${outputs.rows.length} points have no answer.`)] : [];
  return { sentence: [...sentenceOf(row, index), ...peak(outputs), ...tail], brief: briefOf(row) };
}

function sentenceOf(row: PropellerRow, index: number): readonly Token[] {
  const at = `/rows/${index}`;
  const thrust = reading(row.thrust ?? 0, "force", `${at}/thrust`);
  const airspeed = [words(" at "), reading(row.airspeed ?? 0, "speed", `${at}/airspeed`)];
  const rate = reading(row.rotationRate ?? 0, "rotationRate", `${at}/rotationRate`);
  if (row.state === "stopped") return [words("Stopped, the propeller makes "), thrust, ...airspeed, words(".")];
  if (row.state === "folded") return [words("Folded, the propeller makes "), thrust, ...airspeed, words(".")];
  if (row.state === "freeWheeling")
    return [words("The air turns the propeller at "), rate, ...airspeed, words(", with "), thrust, words(" of thrust.")];
  return [
    words("The propeller makes "),
    thrust,
    words(" at "),
    rate,
    ...((row.airspeed ?? 0) > 0 ? [words(" and "), reading(row.airspeed ?? 0, "speed", `${at}/airspeed`)] : [words(" at rest")]),
    words(" for "),
    reading(row.power ?? 0, "power", `${at}/power`),
    words("."),
  ];
}

function peak({ peakEfficiency, peakEfficiencyAdvanceRatio }: PropellerOutputs): readonly Token[] {
  if (peakEfficiency === null || peakEfficiencyAdvanceRatio === null) return [];
  return [
    words(" Its best efficiency is "),
    reading(peakEfficiency, "dimensionless", "/peakEfficiency"),
    words(" at advance ratio "),
    reading(peakEfficiencyAdvanceRatio, "dimensionless", "/peakEfficiencyAdvanceRatio"),
    words("."),
  ];
}

function briefOf(row: PropellerRow): string {
  const thrust = `${Number((row.thrust ?? 0).toPrecision(3))} N`;
  if (row.state === "stopped" || row.state === "folded") return `${thrust}, ${row.state}`;
  if (row.state === "freeWheeling") return `${thrust}, free-wheeling`;
  return `${thrust} for ${Number((row.power ?? 0).toPrecision(3))} W`;
}

/** Tip Mach number and, where one is given, the highest rotation rate; the row that uses most of each. */
export function propellerLimits(outputs: PropellerOutputs, inputs: PropellerInputs): readonly Limit[] {
  const turning = outputs.rows.filter((row) => row.state !== "none" && row.rotationRate !== null && row.rotationRate !== 0);
  if (turning.length === 0) return [];
  const { propeller } = inputs;
  const rateLimit = "rotationRateLimit" in propeller ? propeller.rotationRateLimit : undefined;
  const limits = [worst("tip Mach number", "air", turning, (row) => row.tipMach / largestTipMach)];
  if (rateLimit !== undefined)
    limits.push(worst("rotation rate", "strength", turning, (row) => Math.abs(row.rotationRate ?? 0) / rateLimit));
  const largest = Math.max(...limits.map(({ share }) => share));
  return limits.map((limit) => ({ ...limit, binding: limit.share === largest && limit.share >= 1 }));
}

function worst(name: string, family: Limit["family"], rows: readonly PropellerRow[], shareOf: (row: PropellerRow) => number): Limit {
  const row = rows.reduce((most, one) => (shareOf(one) > shareOf(most) ? one : most));
  const rate = (Math.abs(row.rotationRate ?? 0) * 30) / Math.PI;
  const where = `at ${rate.toFixed(0)} rpm and ${(row.airspeed ?? 0).toFixed(1)} m/s`;
  return { name, family, share: shareOf(row), side: "upper", where, binding: false };
}
