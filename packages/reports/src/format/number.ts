const narrowSpace = "\u202f";
const superscripts = "⁰¹²³⁴⁵⁶⁷⁸⁹";

/** A number with a fixed count of decimals: true minus, thousands parted by a narrow no-break space, no minus zero. */
export function fixedText(value: number, decimals: number): string {
  finite(value);
  const digits = Math.abs(value).toFixed(decimals);
  const [whole = "0", fraction] = digits.split(".");
  const grouped = whole.replace(/\B(?=(\d{3})+$)/g, narrowSpace);
  const sign = value < 0 && Number(digits) !== 0 ? "−" : "";
  return sign + grouped + (fraction === undefined ? "" : `.${fraction}`);
}

/** A number cut to some significant figures; powers of ten only where plain digits would be hard to read. */
export function significantText(value: number, figures: number): string {
  finite(value);
  if (value === 0) return "0";
  const rounded = Number(value.toPrecision(figures));
  const exponent = decade(rounded);
  if (exponent >= 7 || exponent < -3) return powerText(rounded, exponent, figures);
  return fixedText(rounded, Math.max(0, figures - 1 - exponent));
}

/** As `significantText`, without zeros that say nothing: for chosen round numbers, not for results. */
export function roundNumberText(value: number, figures: number): string {
  const text = significantText(value, figures);
  return text.includes(".") && !text.includes("×") ? text.replace(/\.?0+$/, "") : text;
}

/** The largest of 1, 2, 5, 10, 20 … that is not above a positive number. */
export function roundStepBelow(most: number): number {
  const unit = 10 ** decade(most);
  return ([5, 2, 1].find((step) => step * unit <= most) ?? 1) * unit;
}

/** The power of ten at or below a number's size: 2 for 100 to 999. */
export function decade(value: number): number {
  return Number(Math.abs(value).toExponential().split("e")[1]);
}

/** The decimals at which a half-width ends: one significant figure, two if it begins with 1. */
export function halfWidthDecimals(halfWidth: number): number {
  const beginsWithOne = halfWidth / 10 ** decade(halfWidth) < 2;
  return beginsWithOne ? 1 - decade(halfWidth) : -decade(Number(halfWidth.toPrecision(1)));
}

/** Cuts a number at a decimal place, which may lie left of the point (−1: tens). */
export function placedText(value: number, decimals: number): string {
  if (decimals >= 0) return fixedText(value, decimals);
  const step = 10 ** -decimals;
  return fixedText(Math.round(value / step) * step, 0);
}

function powerText(value: number, exponent: number, figures: number): string {
  return powerOfTen(fixedText(Number(value.toExponential(figures - 1).split("e")[0]), figures - 1), exponent);
}

/** Digits times a power of ten with a raised exponent. */
export function powerOfTen(digits: string, exponent: number): string {
  const power = String(Math.abs(exponent))
    .split("")
    .map((digit) => superscripts[Number(digit)])
    .join("");
  return `${digits}\u00a0×\u00a010${exponent < 0 ? "⁻" : ""}${power}`;
}

function finite(value: number): void {
  if (!Number.isFinite(value)) throw new RangeError(`only finite numbers can be shown, got ${value}`);
}
