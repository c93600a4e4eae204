/**
 * A quantity as written, times a factor: its unit, its interval and its source stay. What cannot be read as a quantity is
 * returned as it is, for the reader to complain of.
 */
export function scaledText(written: unknown, factor: number): unknown {
  if (typeof written === "number") return written * factor;
  if (typeof written === "string") return scaled(written, factor);
  if (typeof written === "object" && written !== null && "value" in written)
    return { ...written, value: scaledText(written.value, factor) };
  return written;
}

const number = /^[-+−]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+−]?\d+)?/u;

function scaled(text: string, factor: number): string {
  const named = /^\s*(?<name>[A-Za-z]+)\s*\((?<inside>.*)\)\s*$/u.exec(text)?.groups;
  if (named?.name !== undefined) {
    const parts = (named.inside ?? "").split(",").map((part) => part.trim());
    const unit = (parts.at(-1) ?? "").replace(number, "").trim();
    const each = parts.map((part) => one(part.replace(number, "") === "" ? `${part} ${unit}` : part, factor));
    return `${named.name}(${(factor < 0 ? each.toReversed() : each).join(", ")})`;
  }
  const [value = "", half] = text.split(/±|\+\/?-/u).map((part) => part.trim());
  if (half === undefined) return one(value, factor);
  return `${one(value, factor)} ± ${half.endsWith("%") ? half : one(half, Math.abs(factor))}`;
}

function one(text: string, factor: number): string {
  const found = number.exec(text)?.[0];
  if (found === undefined) return text;
  return `${Number(found.replaceAll("−", "-")) * factor}${text.slice(found.length)}`;
}
