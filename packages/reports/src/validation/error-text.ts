import { powerOfTen, significantText } from "../format/index.ts";

const writtenPower = /(\d+(?:\.\d+)?)·10\^([-−+]?\d+)/g;
/** Smallest decade that is written out as a decimal fraction. */
const smallestPlain = -6;

/** An error as people read it: "5·10^-4 %" becomes "0.0005 %", smaller ones a power of ten with a raised exponent. */
export function errorText(value: number | string): string {
  if (typeof value === "number") return significantText(value, 3);
  return value
    .replace(writtenPower, (_, digits: string, written: string) => {
      const exponent = Number(written.replace("−", "-"));
      if (exponent < smallestPlain || exponent > 3) return powerOfTen(digits, exponent);
      const decimals = Math.max(0, (digits.split(".")[1]?.length ?? 0) - exponent);
      return (Number(digits) * 10 ** exponent).toFixed(decimals);
    })
    .replace(/ (?=[%°]|m$)/g, "\u00a0");
}
