import type { QuantityKind } from "@wingseed/engine";

const usual: Partial<Record<QuantityKind, readonly [unit: string, scale: number, offset?: number]>> = {
  angle: ["°", Math.PI / 180],
  temperature: ["°C", 1, 273.15],
  rotationRate: ["rpm", Math.PI / 30],
  dimensionless: ["", 1],
  energyPerDistance: ["Wh/km", 3.6],
  energy: ["Wh", 3600],
  length: ["m", 1],
  mass: ["kg", 1],
  speed: ["m/s", 1],
  time: ["s", 1],
  power: ["W", 1],
};
export function unitText(quantity: QuantityKind): string {
  return usual[quantity]?.[0] ?? "SI";
}
export function shown(value: number, quantity: QuantityKind): number {
  const [, scale, offset] = usual[quantity] ?? ["", 1];
  return (value - (offset ?? 0)) / scale;
}
export function fromText(text: string, quantity: QuantityKind): number | undefined {
  const [unit, scale, offset] = usual[quantity] ?? ["", 1];
  const match = /^([+-]?[\d.]+(?:e[+-]?\d+)?)\s*(.*)$/i.exec(text);
  const number = Number(match?.[1]);
  if (!match || Number.isNaN(number) || (match[2] !== "" && match[2] !== unit)) return undefined;
  return number * scale + (offset ?? 0);
}
