import type { Axis, QuantityKind } from "@wingseed/engine";
import { scaleLinear } from "d3-scale";
import { type DisplayUnit, decade, displayUnit, fixedText, fromUnit, inUnit, plainNumber, type UnitSystem } from "../format/index.ts";

/** A straight scale between SI values and pixels, with ticks at 1-2-5 steps of the unit that people read. */
export interface AxisScale {
  readonly kind: QuantityKind;
  readonly unit: DisplayUnit;
  /** Label with its unit: "airspeed, km/h". */
  readonly title: string;
  /** [SI] */
  readonly domain: readonly [number, number];
  readonly ticks: readonly { readonly at: number; readonly text: string }[];
  /** Pixel of an SI value. */
  place(value: number): number;
  /** SI value at a pixel. */
  valueAt(pixel: number): number;
}

export interface AxisWish {
  readonly axis: Axis;
  /** Extent of the data [SI]. */
  readonly extent: readonly [number, number];
  /** First and last pixel. */
  readonly range: readonly [number, number];
  readonly tickCount: number;
  readonly zeroBased?: boolean;
  readonly system: UnitSystem;
  /** True where the scale must end with the data: fields of a grid. */
  readonly tight?: boolean;
}

export function axisScale(wish: AxisWish): AxisScale {
  const extent = widened(wish.extent, wish.zeroBased ?? false);
  const largest = Math.max(Math.abs(extent[0]), Math.abs(extent[1]));
  const unit = displayUnit(wish.axis.quantity, largest, { ...wish.axis, system: wish.system });
  const shown = extent.map((value) => inUnit(value, unit));
  const scale = scaleLinear().domain(shown).range(wish.range);
  if (!wish.tight) scale.nice(Math.max(2, wish.tickCount) * 2);
  const [low = 0, high = 1] = scale.domain();
  const ticks = scale.ticks(wish.tickCount);
  const decimals = tickDecimals(ticks);
  return {
    kind: wish.axis.quantity,
    unit,
    title: axisTitle(wish.axis, unit),
    domain: [fromUnit(low, unit), fromUnit(high, unit)],
    ticks: ticks.map((tick) => ({ at: scale(tick), text: fixedText(tick, decimals) })),
    place: (value) => scale(inUnit(value, unit)),
    valueAt: (at) => fromUnit(scale.invert(at), unit),
  };
}

/** A value on an axis in the axis' own unit: "31.0 m/s". */
export function readAt(scale: AxisScale, value: number): string {
  const gap = scale.unit.symbol === "" || scale.unit.close ? "" : "\u00a0";
  return `${plainNumber(inUnit(value, scale.unit), scale.kind, scale.unit)}${gap}${scale.unit.symbol}`;
}

/** "height above sea, m": label, datum, unit. */
export function axisTitle(axis: Axis, unit: DisplayUnit): string {
  const datum = axis.datum && !axis.label.includes(axis.datum) ? ` ${axis.datum}` : "";
  return `${axis.label}${datum}${unit.symbol === "" ? "" : `, ${unit.symbol}`}`;
}

/** Smallest and largest of the finite values, or undefined when there are none. */
export function extentOf(values: Iterable<number | null>): readonly [number, number] | undefined {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const value of values) {
    if (value === null || !Number.isFinite(value)) continue;
    low = Math.min(low, value);
    high = Math.max(high, value);
  }
  return low <= high ? [low, high] : undefined;
}

function widened([low, high]: readonly [number, number], zeroBased: boolean): readonly [number, number] {
  const [from, to] = zeroBased ? [Math.min(0, low), Math.max(0, high)] : [low, high];
  if (from < to) return [from, to];
  const around = Math.abs(from) > 0 ? Math.abs(from) * 0.5 : 1;
  return zeroBased ? [0, around] : [from - around, to + around];
}

function tickDecimals(ticks: readonly number[]): number {
  const step = Math.abs((ticks[1] ?? 1) - (ticks[0] ?? 0)) || 1;
  return Math.max(0, -decade(Number(step.toPrecision(6))));
}
