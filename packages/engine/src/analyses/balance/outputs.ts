import { type AircraftDefinition, type MassItem, massItems, massProperties } from "../../aircraft/index.ts";
import type { LimitSource } from "./centre-limits.ts";
import { ownHalfWidth, type unsureNumbers } from "./intervals.ts";
import { type AskedLoading, loadingOf, standardLoading } from "./loadings.ts";
import type { BalanceOutputs, BalanceRow } from "./output-schema.ts";
import { balanceRow, centreResult } from "./rows.ts";
import { suspensionRows } from "./suspension-check.ts";

/** Most numbers of the file that an interval is traced to. */
const mostContributions = 8;

/** Everything that is said of the loadings that were asked for. */
export function balanceOutputsOf(
  aircraft: AircraftDefinition,
  asked: readonly AskedLoading[],
  numbers: ReturnType<typeof unsureNumbers>,
  sources: readonly LimitSource[],
): BalanceOutputs {
  const found = asked.map((one) => balanceRow(aircraft, one, numbers, sources));
  const now = standardLoading(aircraft, asked);
  const rows = found.map(({ row }) => row);
  const shown = found[now]?.contributions ?? [];
  const contributions = shown
    .map((one) => ({ path: spoken(aircraft, one.pointer), text: one.text, halfWidth: ownHalfWidth(one, centreResult) }))
    .filter(({ halfWidth }) => halfWidth > 0)
    .toSorted((a, b) => b.halfWidth - a.halfWidth)
    .slice(0, mostContributions);
  return {
    rows,
    now,
    worst: worstOf(rows),
    largestMass: aircraft.limits.largestTakeoffMass,
    paths: pathsOf(aircraft, asked),
    breakdown: breakdownOf(aircraft, asked[now] as AskedLoading),
    contributions,
    suspension: [...suspensionRows(aircraft, numbers)],
    aircraft,
  };
}

/** Margin to the nearer limit [m]; negative beyond it. */
export function marginOf({ foreMargin, aftMargin }: BalanceRow): number {
  return Math.min(foreMargin, aftMargin);
}

/** A pointer as one says it, entries of lists by their names: `payloads.camera.mass`. */
function spoken(aircraft: AircraftDefinition, pointer: string): string {
  let node: unknown = aircraft;
  return pointer
    .split("/")
    .slice(1)
    .map((step) => {
      node = typeof node === "object" && node !== null ? Reflect.get(node, step) : undefined;
      const { id, name } = (node ?? {}) as { readonly id?: unknown; readonly name?: unknown };
      return /^\d+$/u.test(step) ? String(id ?? name ?? step) : step;
    })
    .join(".");
}

function worstOf(rows: readonly BalanceRow[]): number | null {
  let worst: number | null = null;
  rows.forEach((row, index) => {
    if (!row.tooHeavy && (worst === null || marginOf(row) < marginOf(rows[worst] as BalanceRow))) worst = index;
  });
  return worst;
}

function pathsOf(aircraft: AircraftDefinition, asked: readonly AskedLoading[]): BalanceOutputs["paths"] {
  const alike = (a: AskedLoading, b: AskedLoading) => a.payload === b.payload && a.place === b.place;
  const payloads = asked.filter((one, index) => asked.findIndex((other) => alike(one, other)) === index);
  return payloads.map((one) => ({
    payload: one.payload,
    place: one.place,
    points: Array.from({ length: aircraft.battery.bay.places + 1 }, (_, blocks) => {
      const { mass, centre } = massProperties(aircraft, loadingOf(aircraft, { ...one, blocks }));
      return { blocks, mass, x: centre.x };
    }),
  }));
}

const names: Readonly<Record<MassItem["kind"], string>> = {
  empty: "empty aircraft",
  "pack-fixed": "pack without blocks",
  block: "battery blocks",
  payload: "payload",
};

/** By item, the blocks as one. */
function breakdownOf(aircraft: AircraftDefinition, asked: AskedLoading): BalanceOutputs["breakdown"] {
  const items = massItems(aircraft, loadingOf(aircraft, asked));
  const whole = items.reduce((sum, { mass }) => sum + mass, 0);
  return (Object.keys(names) as MassItem["kind"][]).flatMap((kind) => {
    const own = items.filter((item) => item.kind === kind);
    const mass = own.reduce((sum, item) => sum + item.mass, 0);
    if (mass === 0) return [];
    const mean = (axis: "x" | "y" | "z") => own.reduce((sum, item) => sum + item.mass * item.place[axis], 0) / mass;
    const x = mean("x");
    return [{ item: names[kind], mass, share: mass / whole, x, y: mean("y"), z: mean("z"), pull: (mass * x) / whole }];
  });
}
